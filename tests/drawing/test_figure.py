"""A schematic without a layout behind it: whoever has items and links has a drawing."""

from dataclasses import replace

import pytest
from matplotlib.figure import Figure
from tall_buildings import tall, tower

from plumbnet.drawing.figure import SHEETS, schematic_figure
from plumbnet.drawing.ink.pen import Group
from plumbnet.drawing.items.item import Diagram, Item, Link
from plumbnet.drawing.items.schematic import BlockRow, LegendWords, Letters, Schematic, Shading
from plumbnet.drawing.palette import LineStyle, Palette, Service, Shade
from plumbnet.drawing.symbols.symbol import SYMBOLS
from plumbnet.layout.model.system import End
from plumbnet.report.figures.colours import PALETTES

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
    natural, on_paper = (schematic_figure(SCHEMATIC, PALETTE, each).get_size_inches() for each in SHEETS[:2])
    assert tuple(on_paper) != tuple(natural)
    assert max(on_paper) * 25.4 > 296.9


def test_sheet_is_the_one_that_is_named_and_the_drawing_as_large_as_it_holds() -> None:
    figure = schematic_figure(SCHEMATIC, PALETTE, "11x17")
    assert sorted(figure.get_size_inches()) == pytest.approx([11.0, 17.0])


def test_riser_diagram_that_is_small_on_its_sheet_is_folded_further() -> None:
    text = tower(storeys=8, shafts=4)
    for name in (f"{storey}{shaft}" for storey in range(1, 9) for shaft in "cd"):
        text = text.replace(f"flat{name}: {{kind: fixture", f"flat{name}: {{kind: fixture, rating: 150 psi")
    said = tall(text).schematic
    natural = drawn_in(schematic_figure(said, PALETTES["light"]))
    small = drawn_in(schematic_figure(said, PALETTES["light"], "letter"))
    counts = [words for group in (natural, small) for each in group.values() for words in each if "alike" in words]
    assert counts == ["× 2 shafts alike", "× 2 shafts alike"]


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
