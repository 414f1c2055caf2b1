"""A report to the widget of its board: what the page asks is answered in the kernel."""

import anywidget
import traitlets

from plumbnet.analysis import Report
from plumbnet.boards.notebook.page_questions import AskedBoard
from plumbnet.boards.one_board import OneBoard
from plumbnet.boards.page_files import framed_page, page_script


class BoardWidget(anywidget.AnyWidget):
    """The board of a report, in a notebook: a frame, `height` pixels high.

    `asked` has what is touched on it.
    """

    _esm = page_script("notebook.mjs")
    page = traitlets.Unicode().tag(sync=True)
    height = traitlets.Int().tag(sync=True)

    def __init__(self, report: Report, *, height: int) -> None:
        board = OneBoard(report)
        self.asked = AskedBoard(board)
        super().__init__(page=framed_page(str(board.data["title"])), height=height)
        self.on_msg(lambda _widget, question, _buffers: self.send(self.asked.reply(question)))

    @property
    def report(self) -> Report:
        """What stands now: the report on the layout as it is touched."""
        return self.asked.report
