"""Exercises on paper, on a page, and in talk."""

from plumbnet.report.worksheets.exercise_session import HOP, BlankAnswered, TakenAnswer, taken_answer, talk
from plumbnet.report.worksheets.worksheet_content import Key, Worksheet, key, worksheet
from plumbnet.report.worksheets.worksheet_text import worksheets_markdown

__all__ = [
    "HOP",
    "BlankAnswered",
    "Key",
    "TakenAnswer",
    "Worksheet",
    "key",
    "taken_answer",
    "talk",
    "worksheet",
    "worksheets_markdown",
]
