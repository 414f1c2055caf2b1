"""Worksheets and keys as one self-contained HTML page that prints a sheet of paper for each."""

import base64
from collections.abc import Mapping, Sequence
from functools import lru_cache

from jinja2 import Environment, PackageLoader, StrictUndefined, Template

from plumbnet.layout.yaml import visible
from plumbnet.report.text import CAUTION
from plumbnet.report.worksheets.worksheet_content import Key, Worksheet


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
