import pytest
from drawing_board import sketch
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text

from plumbnet.drawing.ink.marks import (
    dot_marks,
    junction_marks,
    ring_marks,
    symbol_marks,
    tag_marks,
    way_marks,
    zone_marks,
)
from plumbnet.drawing.ink.pen import Cut, Pen
from plumbnet.drawing.items.schematic import Shading
from plumbnet.report.figures.colours import PALETTES, Theme
from plumbnet.rules.facts.verdict_words import Verdict

THEMES: list[Theme] = ["light", "dark", "bw"]
PEN = Pen(PALETTES["light"], 2.0)
SQUARE = Path([(0, 0), (50, 0), (50, 50), (0, 50), (0, 0)], closed=True)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("verdict", [Verdict.TRAPPED, Verdict.SEALED])
def test_zone_is_filled_hatched_and_outlined_in_every_theme(theme: Theme, verdict: Verdict) -> None:
    fill, hatch, edge = zone_marks(SQUARE, verdict, Pen(PALETTES[theme]))
    assert isinstance(fill, PathPatch)
    assert isinstance(hatch, Cut)
    assert isinstance(edge, PathPatch)
    assert fill.get_facecolor()[:3] != (1.0, 1.0, 1.0)
    assert hatch.get_path().vertices.shape[0] > 6  # type: ignore[union-attr]  # an array
    assert edge.get_linewidth() > 0


def test_trapped_and_sealed_differ_in_hatch_and_outline() -> None:
    one, other = (list(zone_marks(SQUARE, verdict, PEN)) for verdict in (Verdict.TRAPPED, Verdict.SEALED))
    lines = [len(marks[1].get_path().vertices) for marks in (one, other)]  # type: ignore[attr-defined]  # patches
    styles = [marks[2].get_linestyle() for marks in (one, other)]  # type: ignore[attr-defined]  # patches
    assert lines[0] != lines[1]
    assert styles[0] != styles[1]


def test_tag_is_a_framed_word() -> None:
    marks = list(tag_marks((0, 0, 60, 10), Shading(Verdict.TRAPPED, "TRAPPED: heater", frozenset()), PEN))
    words = marks[-1]
    assert isinstance(words, Text)
    assert (words.get_text(), words.get_fontsize()) == ("TRAPPED: heater", 14.0)


def test_arrowheads_of_a_way_point_along_it() -> None:
    _, *heads = way_marks([((100, 0), (0, 0))], PEN)
    assert len(heads) == 2
    for head in heads:
        tip, wing = head.get_path().vertices[:2]  # type: ignore[attr-defined]  # a patch
        assert tip[0] < wing[0]


def test_ring_lies_inside_the_room_kept_for_it() -> None:
    (ring,) = ring_marks((0, 0, 40, 30), PEN)
    x, y, wide, high = ring.get_path().get_extents().bounds  # type: ignore[attr-defined]  # a patch
    assert x > 0
    assert y > 0
    assert x + wide < 40
    assert y + high < 30


def test_verdict_of_a_heater_is_written_in_its_colour() -> None:
    house = sketch("street -> cv -> heater -> tap.hot")
    words = [mark for mark in symbol_marks(house.placement("heater"), None, PEN) if isinstance(mark, Text)]
    assert [word.get_text() for word in words] == ["heater", "SEALED"]
    assert words[1].get_color() == PALETTES["light"].shades[Verdict.SEALED].edge


def test_what_stops_the_water_has_a_ring_and_nothing_else_has() -> None:
    house = sketch("street -> cv -> valve -> heater -> tap.hot")
    stop = PALETTES["light"].ring

    def rings(name: str) -> int:
        marks = symbol_marks(house.placement(name), None, PEN)
        return sum(isinstance(mark, PathPatch) and mark.get_linewidth() == 4.0 for mark in marks)

    assert stop
    assert (rings("cv"), rings("valve")) == (1, 0)


def test_joint_has_a_mark_for_each_dot_and_its_name() -> None:
    house = sketch("street -> tee -> heater -> tap.hot\ntee -> tap.cold")
    joint = house.joint("tee")
    bare = list(junction_marks(joint, None, None, PEN))
    named = list(junction_marks(joint, (0, 0, 10, 5), None, PEN))
    assert len(bare) == len(joint.dots) * len(list(dot_marks((0, 0), PEN)))
    assert isinstance(named[-1], Text)
    assert named[-1].get_text() == "tee"
