"""The copy of the board that a page to hand over holds on request, and the line that says what it holds."""

from typing import TYPE_CHECKING, Annotated

import typer

from plumbnet.analysis import Report
from plumbnet.cli.arguments import fail
from plumbnet.cli.progress_bar import counted_on
from plumbnet.study.touching import TouchStates, held_states

if TYPE_CHECKING:
    from plumbnet.report.page import PageForm, PageFrame

BoardInside = Annotated[
    bool, typer.Option("--board", help="Put the board into the page, as .html: its piping can be touched and answers.")
]


def refuse_board(form: "PageForm | None") -> None:
    """Say that a board asks for a page in HTML, and exit, where the form is another."""
    if form != "html":
        fail("--board is about a page in HTML", advice="name a file with -o that ends in .html")


def board_inside(report: Report) -> "PageFrame":
    """The board of a report, with all answers of what is most worth touching; its states are counted as they come."""
    from plumbnet.boards import framed_board  # noqa: PLC0415  drawing is slow to import

    states = TouchStates(report)
    held = held_states(states)
    with counted_on(held.count, "states") as one_more:
        return framed_board(states, held, one_more)
