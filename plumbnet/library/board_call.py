"""The board of a layout in a notebook."""

from importlib import import_module
from typing import TYPE_CHECKING

from plumbnet.analysis import Report
from plumbnet.api import Layout, as_report

if TYPE_CHECKING:
    from plumbnet.boards.notebook import BoardWidget

_HIGH = 640


class NoWidget(ImportError):
    """What shows the board in a notebook is not installed."""


def board(layout: Layout | Report, *, height: int = _HIGH) -> "BoardWidget":
    """The board of a layout for a notebook: valves turn, devices change and fail, numbers move, and it answers at once.

    `layout` is a report, or what `check` makes one of; `height` is that of the board, in pixels. What is touched on it
    can be asked for in the next cell: `report` of what this returns is the report on the layout as it stands there.
    Raises NoWidget where anywidget is not installed, and what `check` does.

    >>> touched = board("systems/house-with-check.yaml")
    >>> [heater.verdict.value for heater in touched.report.heaters]
    ['trapped']
    """
    try:
        notebook = import_module("plumbnet.boards.notebook")
    except ImportError as error:
        raise NoWidget('the board in a notebook needs anywidget: pip install "plumbnet[notebooks]"') from error
    widget: BoardWidget = notebook.BoardWidget(as_report(layout), height=height)
    return widget
