"""The board: a page on which the piping of a layout is touched and answers at once, live or as a copy with its table.

Behind the page stands one interface: what a state comes to (`board_answer`), where all is drawn (`board_picture`), what
may be touched (`board_data`). `live` answers by a small server on this machine; `board_copy` writes all answers down.
"""

from plumbnet.boards.answer_table import board_copy
from plumbnet.boards.framed_copy import framed_board, held_in_words, left_out_in_words
from plumbnet.boards.one_board import OneBoard
from plumbnet.boards.one_lesson import LessonKeeper, OneLesson
from plumbnet.boards.page_data import board_data
from plumbnet.boards.page_files import board_file, page_html
from plumbnet.boards.state_answer import board_answer
from plumbnet.boards.state_picture import board_picture
from plumbnet.boards.task_copy import tasks_copy

__all__ = [
    "LessonKeeper",
    "OneBoard",
    "OneLesson",
    "board_answer",
    "board_copy",
    "board_data",
    "board_file",
    "board_picture",
    "framed_board",
    "held_in_words",
    "left_out_in_words",
    "page_html",
    "tasks_copy",
]
