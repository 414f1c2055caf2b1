"""Exercises answered in the terminal or on a page: which are asked, the talk, and the file that keeps the answers."""

from plumbnet.cli.playing.lesson import Lesson, Wanted, day_of, lesson_again, lesson_of, read_lesson, results_of
from plumbnet.cli.playing.play_loop import play_lesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.cli.playing.tapping import play_by_tapping, tapped_page

__all__ = [
    "Keeper",
    "Lesson",
    "Wanted",
    "day_of",
    "lesson_again",
    "lesson_of",
    "play_by_tapping",
    "play_lesson",
    "read_lesson",
    "results_of",
    "tapped_page",
]
