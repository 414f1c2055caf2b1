import pytest
from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.riser_pipes import RiserPipes
from plumbnet.drawing.riser.stacking.shaft_places import put_side_by_side


def pipes() -> RiserPipes:
    setting = tall(tower(storeys=6, shafts=2)).setting
    put_side_by_side(setting)
    found = RiserPipes(setting)
    found.draw()
    return found


def test_every_pipe_of_a_riser_is_drawn_and_one_to_each_door_of_a_box() -> None:
    found = pipes()
    links = [route.link for route in found.routes if route.link is not None]
    own = found.setting.structure.upright
    assert {link.number for link in links} >= own
    assert len(links) - len(own) == 2 * 12
    assert len({link.number for link in links}) == len(links)
    assert {end.part for end in found.origins.values()} == {
        f"{s}{n}{t}" for s in "hc" for n in range(1, 7) for t in "ab"
    }


def test_a_return_goes_over_the_top_of_its_riser() -> None:
    found = pipes()
    (top,) = (
        r for r in found.routes if r.link is not None and r.link.start.part == "h6a" and r.link.end.part == "balance-a"
    )
    (x, y), over, across, *_ = top.points
    assert over[0] == x
    assert over[1] == pytest.approx(y - 10.0)
    assert across[0] < x


def test_devices_in_a_riser_stand_upright_with_their_words_outside() -> None:
    found = pipes()
    balance, swing = (next(p for p in found.placements if p.item.name == name) for name in ("balance-a", "swing-a"))
    assert balance.x == swing.x
    assert balance.y < swing.y
    assert balance.quarters % 2 == swing.quarters % 2 == 1
    assert balance.words_at_side == -1
    inlet = swing.at(swing.item.symbol.sockets["in"])
    assert inlet[1] < swing.y  # water comes down
