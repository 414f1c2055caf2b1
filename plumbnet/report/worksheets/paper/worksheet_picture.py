"""Pictures for worksheets: the piping with its sizes, which says nothing of the answer, and that which tells it."""

import re
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace

from matplotlib.figure import Figure

from plumbnet.analysis import Report
from plumbnet.drawing import PicturePlace, fitted_figure, name_lines, schematic_figure
from plumbnet.drawing.items import BlockRow, Diagram, Item, Schematic
from plumbnet.layout.model import System
from plumbnet.report.figures import PALETTES, Theme, saved, settled
from plumbnet.report.schematic import LEGEND, diagram_of, schematic_of, schematic_svg
from plumbnet.report.worksheets.paper.part_settings import part_settings

_THEME: Theme = "bw"
"""Worksheets go through the copier."""
_LONGEST_LINE = 9
"""Signs of a name in one line, so that many parts stand beside each other."""
_SHORT_LINE = 6
"""Signs of a line that takes in another word, where many more have to stand beside each other."""
_WORD = re.compile(r"[^-_/ ]+[-_/ ]?|[-_/ ]")
_Lines = Callable[[str], Sequence[str]]
_ON_A_PAGE = (PicturePlace(540.0, 420.0), PicturePlace(720.0, 420.0))


def piping_figure(system: System, named: Collection[str], places: Sequence[PicturePlace] = _ON_A_PAGE) -> Figure | None:
    """The piping as wide as one of the places, with pressures and sizes at the parts; nothing judged, nothing marked.

    Joints that are `named` have their names in it whatever they cover. Where names could not be read otherwise a line
    has a word of them, and then of the sizes, too. None where in no place they can be read.
    """
    with settled():
        figures = (fitted_figure(_piping(system, named, form), PALETTES[_THEME], places) for form in _FORMS)
        return next((figure for figure in figures if figure is not None), None)


def answer_figure(report: Report, places: Sequence[PicturePlace]) -> Figure | None:
    """The same with zones, stops and the way out; None likewise."""
    said = schematic_of(report, riser=False)
    items = {name: replace(item, lines=_narrow(name, item.lines)) for name, item in said.diagram.items.items()}
    with settled():
        return fitted_figure(replace(said, diagram=_with(said.diagram, items)), PALETTES[_THEME], places)


def piping_svg(system: System, named: Collection[str] = ()) -> str:
    """The piping as `piping_figure` has it, as SVG; of a layout too large for a page at its own size."""
    figure = piping_figure(system, named)
    if figure is None:
        with settled():
            figure = schematic_figure(_piping(system, named, _FORMS[0]), PALETTES[_THEME])
    return saved(figure, "svg", title=system.title).decode()


def answer_svg(report: Report) -> str:
    """The schematic with zones, stops and the way out, as SVG."""
    return schematic_svg(report, theme=_THEME)


def _in_lines(name: str) -> Sequence[str]:
    return name_lines(name, _LONGEST_LINE)


def _word_by_word(words: str) -> Sequence[str]:
    """Words in lines that are broken after each of them, and nowhere else where none is too long."""
    lines = list[str]()
    for word in _WORD.findall(words):
        if lines and len(lines[-1]) + len(word) <= _SHORT_LINE:
            lines[-1] += word
        else:
            lines += name_lines(word, _LONGEST_LINE)
    return [line.rstrip(" ") for line in lines]


def _as_one(words: str) -> Sequence[str]:
    return (words,)


_FORMS: Sequence[tuple[_Lines, _Lines]] = (
    (_in_lines, _as_one),
    (_word_by_word, _as_one),
    (_word_by_word, _word_by_word),
)
"""How a name and a size are broken into lines, the widest first."""


def _piping(system: System, named: Collection[str], form: tuple[_Lines, _Lines]) -> Schematic:
    of_name, of_setting = form
    words = {
        name: (*of_name(name), *(line for one in part_settings(system, name) for line in of_setting(one)))
        for name in system.parts
    }
    diagram = diagram_of(system, words)
    items = {name: replace(item, is_named=name in named) for name, item in diagram.items.items()}
    return Schematic(system.title, _with(diagram, items), (BlockRow("file", system.record.file),), legend=LEGEND)


def _narrow(name: str, lines: tuple[str, ...]) -> tuple[str, ...]:
    """The lines beside a part with its name, the first of them, in shorter ones."""
    usual = name_lines(name)
    return (*name_lines(name, _LONGEST_LINE), *lines[len(usual) :]) if lines[: len(usual)] == usual else lines


def _with(diagram: Diagram, items: Mapping[str, Item]) -> Diagram:
    return Diagram(items, diagram.links, diagram.origins)
