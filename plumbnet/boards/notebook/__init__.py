"""The board in a notebook: the page in a frame, the program in the kernel."""

from plumbnet.boards.notebook.board_widget import BoardWidget

__all__ = ["BoardWidget"]
