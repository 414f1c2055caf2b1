"""Exercises answered in the terminal: which are asked, the talk about each, and the file that keeps the answers."""

from plumbnet.cli.playing.lesson import Lesson, Wanted, day_of, lesson_again, lesson_of, results_of
from plumbnet.cli.playing.play_loop import play_lesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.cli.playing.tapping import tapped_page

__all__ = [
    "Keeper",
    "Lesson",
    "Wanted",
    "day_of",
    "lesson_again",
    "lesson_of",
    "play_lesson",
    "results_of",
    "tapped_page",
]
