"""Held states to the copy of the board in a frame of another page, and what a copy holds in words."""

from collections.abc import Callable

from plumbnet.boards.answer_table import board_copy
from plumbnet.boards.page_files import script_hash
from plumbnet.report.page import PageFrame
from plumbnet.rules import listed
from plumbnet.study.touching import HeldStates, TouchStates

TITLE = "The board"


def framed_board(states: TouchStates, held: HeldStates, told: Callable[[], None] = lambda: None) -> PageFrame:
    """The copy with its own policy and caution, to be set into a page; `told` is called after each state."""
    left = left_out_in_words(states, held)
    words = " ".join([f"It {held_in_words(states, held)}.", *([f"{left}."] if left else [])])
    return PageFrame(TITLE, words, board_copy(states, held, told), script_hash())


def held_in_words(states: TouchStates, held: HeldStates) -> str:
    """How many states a copy holds, and of what."""
    every = "all combinations of" if held.has_all else f"up to {held.at_once} at a time of"
    return f"holds {held.count} states: {every} {listed([states.touchables[at].name for at in held.options])}"


def left_out_in_words(states: TouchStates, held: HeldStates) -> str:
    """What could be touched and is not held; empty where nothing is left out."""
    left = listed([states.touchables[at].name for at in held.left_out])
    return f"Left out: {left}" if left else ""
