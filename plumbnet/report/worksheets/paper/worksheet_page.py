"""Worksheets and keys as one self-contained HTML page that prints a sheet of paper for each."""

import base64
from collections.abc import Mapping, Sequence
from functools import lru_cache

from jinja2 import Environment, PackageLoader, StrictUndefined, Template

from plumbnet.layout.yaml import visible
from plumbnet.report.page import width_in
from plumbnet.report.text import CAUTION
from plumbnet.report.worksheets.worksheet_content import HEIGHTS, Key, Worksheet

_UPRIGHT_IN = 7.6
"""A picture wider than this asks for a sheet that lies across."""


def worksheets_html(
    sheets: Sequence[Worksheet],
    keys: Sequence[Key] = (),
    pictures: Mapping[int, str] | None = None,
    answers: Mapping[int, str] | None = None,
) -> str:
    """The page; `pictures` are SVG by the number of the worksheet, `answers` those that stand on the keys.

    They are embedded as images, so that nothing in them can reach the page.
    """
    return _template().render(
        sheets=sheets,
        keys=keys,
        pictures={number: _data(svg) for number, svg in (pictures or {}).items()},
        answers={number: _data(svg) for number, svg in (answers or {}).items()},
        across={number for number, svg in (pictures or {}).items() if width_in(svg.encode()) > _UPRIGHT_IN},
        heights=HEIGHTS,
        caution=CAUTION,
    )


def _data(svg: str) -> str:
    """A picture as the address of an image."""
    return f"data:image/svg+xml;base64,{base64.b64encode(svg.encode()).decode('ascii')}"


@lru_cache
def _template() -> Template:
    house = Environment(
        loader=PackageLoader("plumbnet", "report/templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=lambda value: visible(value) if isinstance(value, str) else value,
    )
    return house.get_template("worksheet.html")
