"""The page on which a lesson is answered by tapping."""

from plumbnet.cli.playing.lesson import Lesson
from plumbnet.cli.progress_bar import counted_on


def tapped_page(lesson: Lesson) -> str:
    """The page, made while a bar counts its exercises."""
    from plumbnet.boards import tasks_copy  # noqa: PLC0415  drawing is slow to import

    with counted_on(len(lesson.posed), "exercises") as one_more:
        return tasks_copy(lesson.posed, lesson.dealt, one_more)
