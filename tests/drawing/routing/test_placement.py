import pytest
from drawing_board import sketch

from plumbnet.drawing.columns.mounts import FRAME, MARGIN, RING
from plumbnet.drawing.items.item import Item
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing.placement import Placement, Route
from plumbnet.drawing.symbols.symbol import SYMBOLS


def placement(
    symbol: str = "check_valve", *, is_ringed: bool = False, is_framed: bool = False, **facing: float
) -> Placement:
    item = Item("x", SYMBOLS[symbol], ("in", "out"), ("check",), is_ringed=is_ringed, is_framed=is_framed)
    return Placement(item, 100.0, 50.0, **facing)  # type: ignore[arg-type]  # keywords of several types


def test_quarter_turn_to_the_left_points_the_outlet_up() -> None:
    assert placement().at((13.0, 0.0)) == (113.0, 50.0)
    assert placement(quarters=1).at((13.0, 0.0)) == (100.0, 37.0)
    assert placement(quarters=2).at((13.0, 0.0)) == (87.0, 50.0)
    assert placement(quarters=3).at((13.0, 0.0)) == (100.0, 63.0)


def test_mirrored_symbol_points_to_the_left_and_turned_one_down() -> None:
    assert placement(is_mirrored=True).at((13.0, 5.0)) == (87.0, 55.0)
    assert placement(is_turned=True).at((13.0, 5.0)) == (113.0, 45.0)


@pytest.mark.parametrize("quarters", range(4))
def test_outer_box_holds_every_stroke(quarters: int) -> None:
    turned = placement(quarters=quarters)
    left, top, right, bottom = turned.outer_box
    for point in [(-13.0, 0.0), (13.0, 0.0), (0.0, -turned.item.symbol.reach[0]), (0.0, turned.item.symbol.reach[1])]:
        x, y = turned.at(point)
        assert left <= x <= right
        assert top <= y <= bottom


def test_ring_widens_the_outer_box_and_moves_the_words() -> None:
    plain, ringed = placement(), placement(is_ringed=True)
    assert ringed.outer_box[0] == plain.outer_box[0] - RING
    assert ringed.words_box[1] == plain.words_box[1] + RING
    assert plain.words_box[1] == plain.outer_box[3] + MARGIN


def test_whole_of_a_route_takes_in_what_it_shares() -> None:
    route = Route(None, "tee", Service.COLD, ((1, 0), (2, 0)), before=((0, 0), (1, 0)), after=((2, 0), (3, 0)))
    assert route.whole[0] == (0, 0)
    assert route.whole[-1] == (3, 0)


def test_segments_name_their_route() -> None:
    house = sketch("street -> meter -> tap.cold")
    assert [number for number, _, _ in house.arrangement.segments] == [0, 1]


def test_frame_widens_the_outer_box_beyond_the_ring() -> None:
    plain, framed = placement(is_ringed=True), placement(is_ringed=True, is_framed=True)
    assert framed.outer_box[0] == plain.outer_box[0] - FRAME
    assert framed.ring_box == plain.outer_box == plain.ring_box
    assert framed.words_box[1] == plain.words_box[1] + FRAME
