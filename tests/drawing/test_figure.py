"""A schematic without a layout behind it: whoever has items and links has a drawing."""

from dataclasses import replace

from matplotlib.figure import Figure

from plumbnet.drawing.figure import schematic_figure
from plumbnet.drawing.ink.pen import Group
from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.drawing.items.schematic import BlockRow, LegendWords, Letters, Schematic, Shading
from plumbnet.drawing.palette import LineStyle, Palette, Service, Shade
from plumbnet.drawing.symbols.symbol import SYMBOLS
from plumbnet.layout.model.system import End

PALETTE = Palette(
    ground="#ffffff",
    ink="#000000",
    faint="#555555",
    ring="#aa0000",
    band="#00aa00",
    band_edge="#005500",
    services={service: LineStyle("#0000aa", 1.5) for service in Service},
    shades={"alarm": Shade("#ffeeee", "#880000", "rising")},
)
ITEMS = [
    Item("supply", SYMBOLS["main"], ("out",), ("supply",), is_source=True),
    Item("stop", SYMBOLS["valve"], ("in", "out"), ("stop", "CLOSED"), "alarm", is_ringed=True),
    Item("use", SYMBOLS["fixture"], ("hot", "cold"), ("use",)),
]
LINKS = (
    Link(0, End("supply", "out"), End("stop", "in"), Service.COLD),
    Link(1, End("stop", "out"), End("use", "cold"), Service.COLD),
)
SCHEMATIC = Schematic(
    "Three items",
    Diagram({item.name: item for item in ITEMS}, LINKS),
    (BlockRow("stop", "CLOSED", "alarm"),),
    (Shading("alarm", "NO WATER", frozenset({End("stop", "out"), End("use", "cold")})),),
    legend=LegendWords({Service.COLD: "cold"}, {"alarm": "no water"}, ring="closed"),
)


def drawn_in(figure: Figure) -> dict[str | None, list[str]]:
    """The words in each group of a figure."""
    groups = [each for each in figure.axes[0].get_children() if isinstance(each, Group)]
    return {
        group.get_gid(): [member.get_text() for member in group.members if hasattr(member, "get_text")]
        for group in groups
    }


def test_items_and_links_make_a_schematic() -> None:
    drawn = drawn_in(schematic_figure(SCHEMATIC, PALETTE))
    assert {"part-supply", "part-stop", "part-use", "pipe-0", "pipe-1", "zone-1"} <= drawn.keys()
    assert drawn["part-stop"] == ["stop", "CLOSED"]
    assert drawn["zone-1-tag"] == ["NO WATER"]
    assert drawn["title"] == ["Three items"]
    assert drawn["legend"] == ["cold", "no water", "closed", "main", "valve", "fixture"]
    assert drawn["title-block"] == ["stop", "CLOSED"]


def test_sheet_of_paper_is_larger_than_the_drawing() -> None:
    natural, on_paper = (
        schematic_figure(SCHEMATIC, PALETTE, on_paper=each).get_size_inches() for each in (False, True)
    )
    assert tuple(on_paper) != tuple(natural)
    assert max(on_paper) * 25.4 > 296.9


def test_letters_are_told_in_the_legend_and_marked_in_the_drawing() -> None:
    legend = replace(SCHEMATIC.legend, letters={"A": "added", "R": "removed", "C": "changed"})
    letters = Letters({"stop": "CA"}, {1: "C"})
    drawn = drawn_in(schematic_figure(replace(SCHEMATIC, legend=legend, letters=letters), PALETTE))
    assert (drawn["badge-1"], drawn["badge-2"]) == (["CA"], ["C"])
    assert [words for words in drawn["legend"] if words in legend.letters.values()] == ["added", "changed"]


def test_without_letters_the_legend_is_silent_of_them() -> None:
    legend = replace(SCHEMATIC.legend, letters={"A": "added"})
    plain = drawn_in(schematic_figure(replace(SCHEMATIC, legend=legend), PALETTE))
    assert plain == drawn_in(schematic_figure(SCHEMATIC, PALETTE))
