"""Letters in badges: where they stand, what frames them, how they look."""

from drawing_board import sketch
from matplotlib.colors import to_hex
from matplotlib.patches import PathPatch
from matplotlib.text import Text

from plumbnet.drawing.ink.badges import Badge, badge_marks, badges, letter_marks
from plumbnet.drawing.ink.pen import Pen
from plumbnet.drawing.ink.spots import Occupancy, taken
from plumbnet.drawing.items.schematic import Letters
from plumbnet.drawing.routing.placement import Box
from plumbnet.report.figures.colours import PALETTES

DRAWN = sketch("street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tank")
PEN = Pen(PALETTES["light"], 2.0)


def placed(letters: Letters) -> list[Badge]:
    arrangement = DRAWN.arrangement
    return list(badges(arrangement, letters, Occupancy(taken(arrangement))))


def overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def test_item_has_a_frame_and_its_badge_on_the_edge_of_it() -> None:
    (badge,) = placed(Letters({"meter": "C"}))
    (meter,) = (each for each in DRAWN.arrangement.placements if each.item.name == "meter")
    assert badge.frame is not None
    left, top, right, bottom = meter.outer_box
    assert badge.frame == (left + 1.0, top + 1.0, right - 1.0, bottom - 1.0)
    x, y = (badge.box[0] + badge.box[2]) / 2, (badge.box[1] + badge.box[3]) / 2
    assert (
        min(abs(x - badge.frame[0]), abs(x - badge.frame[2]), abs(y - badge.frame[1]), abs(y - badge.frame[3])) < 1e-6
    )


def test_joint_has_a_frame_round_its_dot() -> None:
    (badge,) = placed(Letters({"tee": "A"}))
    (tee,) = (each for each in DRAWN.arrangement.junctions if each.item.name == "tee")
    x, y = tee.dots[0]
    assert badge.frame == (x - 6.0, y - 6.0, x + 6.0, y + 6.0)


def test_pipe_has_a_badge_in_its_middle_and_no_frame() -> None:
    (route,) = (each for each in DRAWN.arrangement.routes if each.link is not None and each.link.number == 0)
    (badge,) = placed(Letters(links={0: "R"}))
    assert badge.frame is None
    x, y = (badge.box[0] + badge.box[2]) / 2, (badge.box[1] + badge.box[3]) / 2
    (x1, y1), (x2, y2) = route.points[0], route.points[-1]
    assert min(x1, x2) <= x <= max(x1, x2)
    assert min(y1, y2) <= y <= max(y1, y2)


def test_badges_do_not_cover_each_other() -> None:
    found = placed(Letters({"meter": "N", "tee": "A", "tank": "C", "heater": "NC"}, {0: "R"}))
    assert len(found) == 5
    assert not any(overlap(one.box, other.box) for at, one in enumerate(found) for other in found[:at])


def test_what_a_badge_covers_is_kept_free_of_the_next() -> None:
    occupancy = Occupancy(taken(DRAWN.arrangement))
    (first,), (second,) = (list(badges(DRAWN.arrangement, Letters({"meter": "C"}), occupancy)) for _ in range(2))
    assert first.frame == second.frame
    assert not overlap(first.box, second.box)


def test_several_letters_take_a_wider_field() -> None:
    one, two = (placed(Letters({"meter": letters}))[0].box for letters in ("C", "NC"))
    assert two[2] - two[0] > one[2] - one[0]


def test_what_is_not_in_the_drawing_has_no_badge() -> None:
    assert placed(Letters({"elsewhere": "A"}, {99: "A"})) == []


def test_badge_is_a_word_in_the_colour_of_the_ground_on_ink() -> None:
    field, word = letter_marks((0.0, 0.0), "A", PEN)
    assert isinstance(field, PathPatch)
    assert isinstance(word, Text)
    assert to_hex(field.get_facecolor()) == PALETTES["light"].ink
    assert (word.get_text(), word.get_color(), word.get_fontsize()) == ("A", PALETTES["light"].ground, 15.0)


def test_frame_is_drawn_where_there_is_one() -> None:
    boxed = Badge("A", (0, 0, 10, 10), (5, 5, 50, 50))
    assert len(list(badge_marks(boxed, PEN))) == 3
    assert len(list(badge_marks(Badge("A", (0, 0, 10, 10)), PEN))) == 2
