"""The drawing in DXF is opened again, sound, and what is in it lies where the SVG has it."""

import io
import re
import sys
from collections import Counter
from functools import cache
from html import unescape
from typing import Any

import pytest
from ezdxf.filemanagement import read
from ezdxf.units import MM

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.drawing.dxf_entities import MM_PER_POINT
from plumbnet.drawing.dxf_file import NoDxf, schematic_dxf
from plumbnet.drawing.figure import Sheet
from plumbnet.report.figures.colours import PALETTES
from plumbnet.report.schematic.schematic_contents import schematic_of

_PATH = re.compile(r'<g id="(?:pipe|run)-[0-9]+">.*?<path d="([^"]+)"', re.DOTALL)
_TEXT = re.compile(r'<text style="[^"]*" x="([0-9.-]+)" y="([0-9.-]+)"[^>]*>([^<]*)</text>')
_NUMBER = re.compile(r"-?[0-9]+(?:[.][0-9]+)?")


@cache
def report() -> Report:
    return plumbnet.check("systems/tower-low-zone-return.yaml")


SHEETS: tuple[Sheet, ...] = ("natural", "a4")


@cache
def content(sheet: Sheet = "natural") -> bytes:
    return plumbnet.draw(report(), form="dxf", sheet=sheet).content


@cache
def drawing(sheet: Sheet = "natural") -> Any:  # noqa: ANN401  as ezdxf has it
    return read(io.StringIO(content(sheet).decode()))


@cache
def svg(sheet: Sheet = "natural") -> str:
    return plumbnet.draw(report(), form="svg", sheet=sheet).content.decode()


@cache
def size(sheet: Sheet = "natural") -> tuple[float, float]:
    """Width and height of the SVG in mm."""
    found = re.search(r'width="([0-9.]+)pt" height="([0-9.]+)pt"', svg(sheet))
    assert found is not None
    return float(found[1]) * MM_PER_POINT, float(found[2]) * MM_PER_POINT


def test_it_is_sound_and_the_same_bytes_again() -> None:
    audit = drawing().audit()
    assert (audit.errors, audit.fixes) == ([], [])
    assert plumbnet.draw(report(), form="dxf").content == content()


def test_it_is_in_millimetres_and_as_large_as_the_sheet() -> None:
    assert drawing().units == MM
    for sheet in SHEETS:
        assert tuple(drawing(sheet).modelspace().dxf.extmax)[:2] == pytest.approx(size(sheet), abs=0.01)
    assert size("a4") == pytest.approx((297, 210))


def test_sheet_lies_behind_everything_on_a_layer_of_its_own() -> None:
    first = drawing().modelspace()[0]
    assert (first.dxftype(), first.dxf.layer, first.rgb) == ("HATCH", "paper", (255, 255, 255))
    corners = {tuple(point[:2]) for point in first.paths[0].vertices}
    assert {round(x, 2) for x, _ in corners} == {0.0, round(size()[0], 2)}
    assert {round(y, 2) for _, y in corners} == {0.0, round(size()[1], 2)}
    assert sum(one.dxf.layer == "paper" for one in drawing().modelspace()) == 1


@pytest.mark.parametrize("sheet", SHEETS)
def test_pipes_end_where_the_svg_has_them_on_the_layers_of_their_services(sheet: Sheet) -> None:
    height = size(sheet)[1]
    wanted = sorted(_in_order(*(_on_sheet(end, height) for end in _ends(piece))) for piece in _pieces(sheet))
    lines = [one for one in drawing(sheet).modelspace().query("LWPOLYLINE") if one.dxf.layer.startswith("pipes-")]
    found = sorted(_in_order(*(tuple(point[:2]) for point in (one[0], one[-1]))) for one in lines if not one.closed)
    assert len(found) == len(wanted)
    for ours, theirs in zip(found, wanted, strict=True):
        assert ours == pytest.approx(theirs, abs=0.01)
    assert {one.dxf.layer for one in lines} == {"pipes-cold", "pipes-hot", "pipes-return"}
    assert {one.dxf.linetype for one in lines} == {"BYLAYER"}


def _pieces(sheet: Sheet) -> list[str]:
    """The lines of pipes in the SVG, those that are interrupted in as many pieces."""
    return [piece for path in _PATH.findall(svg(sheet)) for piece in path.split("M") if piece.strip()]


def _ends(path: str) -> tuple[tuple[float, float], tuple[float, float]]:
    numbers = [float(number) for number in _NUMBER.findall(path)]
    return (numbers[0], numbers[1]), (numbers[-2], numbers[-1])


def _on_sheet(point: tuple[float, float], height: float) -> tuple[float, float]:
    return point[0] * MM_PER_POINT, height - point[1] * MM_PER_POINT


def _in_order(*ends: tuple[float, float]) -> tuple[float, ...]:
    first, second = sorted((round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y in ends)
    return (*first, *second)


@pytest.mark.parametrize("sheet", SHEETS)
def test_words_are_text_where_the_svg_has_them(sheet: Sheet) -> None:
    wanted = Counter(unescape(words) for _, _, words in _TEXT.findall(svg(sheet)))
    texts = list(drawing(sheet).modelspace().query("TEXT"))
    assert Counter(one.dxf.text for one in texts) == wanted
    found = _TEXT.findall(svg(sheet))
    places = {unescape(words): _on_sheet((float(x), float(y)), size(sheet)[1]) for x, y, words in found}
    for one in texts:
        if wanted[one.dxf.text] == 1:
            x, y, _ = one.get_placement()[1]
            left, base = places[one.dxf.text]
            assert (x, y - one.dxf.height / 2) == (pytest.approx(left, abs=0.05), pytest.approx(base, abs=0.5))


def test_every_symbol_is_a_block_and_equal_ones_share_it() -> None:
    placed = Counter(one.dxf.name.rpartition("-")[0] for one in drawing().modelspace().query("INSERT"))
    items = schematic_of(report()).diagram.items.values()
    assert placed == Counter(item.symbol.name for item in items if item.symbol.name != "joint")
    assert placed["fixture"] > sum(block.name.startswith("fixture-") for block in drawing().blocks)


def test_without_its_writer_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(NoDxf) as refused:
        schematic_dxf(schematic_of(report()), PALETTES["light"])
    assert str(refused.value) == ('a drawing in DXF needs ezdxf, which is not installed: pip install "plumbnet[dxf]"')
