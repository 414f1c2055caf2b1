"""A lesson answered by tapping: on a page that is written, or on one that is served and keeps the answers."""

from collections.abc import Callable
from pathlib import Path

from plumbnet.cli.board_pages import LivePage, followed_page, serve
from plumbnet.cli.console import write
from plumbnet.cli.playing.lesson import Lesson, mistakes_told
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.cli.progress_bar import counted_on


def tapped_page(lesson: Lesson) -> str:
    """The page, made while a bar counts its exercises."""
    from plumbnet.boards import tasks_copy  # noqa: PLC0415  drawing is slow to import

    with counted_on(len(lesson.posed), "exercises") as one_more:
        return tasks_copy(lesson.posed, lesson.dealt, one_more)


def play_by_tapping(read: Callable[[], Lesson], own: str | None, keeper: Keeper, live: LivePage) -> None:
    """Serve a lesson until Ctrl-C, then say what came of it; it follows the file of questions that it is from.

    Says what is wrong with that and exits.
    """
    from plumbnet.boards import OneLesson  # noqa: PLC0415  drawing is slow to import

    def shown() -> OneLesson:
        lesson = read()
        return OneLesson(lesson.posed, lesson.dealt, keeper)

    path = None if own is None or not Path(own).exists() else Path(own)
    with mistakes_told(own):
        followed = followed_page(path, shown)
    serve(followed, live)
    if keeper.answers:
        write(keeper.told())
