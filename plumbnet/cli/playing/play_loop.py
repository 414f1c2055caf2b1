"""One exercise after another, asked and answered in the terminal."""

import sys
from collections.abc import Callable
from contextlib import closing
from functools import partial

from plumbnet.cli.console import write
from plumbnet.cli.playing.lesson import Lesson
from plumbnet.cli.playing.results_keeper import Keeper
from plumbnet.report.worksheets import talk
from plumbnet.study.exercise import Exercise, answer_walks
from plumbnet.study.training import Dealt, PosedExercise

_LONGEST = 10_000
"""Bytes of a typed line that are read at once."""
Show = Callable[[Exercise], None]
"""Shows the picture of an exercise."""


def play_lesson(lesson: Lesson, keeper: Keeper, show: Show | None) -> None:
    """Ask what is not answered yet; the end of what is typed ends it calmly, and every answer given is kept."""
    left = [one for one in lesson.posed if not one.asked_for <= keeper.done(one, lesson.dealt)]
    if not left:
        write(f"{_all_answered(lesson, keeper) if lesson.posed else lesson.nothing}\n")
        return
    if len(left) < len(lesson.posed):
        write(f"{len(lesson.posed) - len(left)} of {len(lesson.posed)} are answered already; it goes on.\n\n")
    try:
        for one in left:
            if show is not None:
                show(one.worded)
            _talked(one, lesson.dealt, keeper)
    except EOFError:
        write("\n")
    write(keeper.told())


def _all_answered(lesson: Lesson, keeper: Keeper) -> str:
    others = f"another --seed deals others, --again {keeper.file} what was missed"
    return f"All {len(lesson.posed)} are answered in {keeper.file}; {others}."


def _talked(posed: PosedExercise, dealt: Dealt | None, keeper: Keeper) -> None:
    """Talk about one exercise; closed, the talk keeps what was tried. Raises EOFError where no more is typed."""
    exercise = posed.worded
    heard, done = partial(keeper.heard, posed, dealt), keeper.done(posed, dealt)
    with closing(talk(exercise, posed.hints, answer_walks(exercise), heard, done=done)) as talking:
        said = next(talking)
        try:
            while True:
                write(said)
                said = talking.send(_typed())
        except StopIteration:
            write("\n")


def _typed() -> str:
    """A line from standard input, whatever bytes stand in it. Raises EOFError where no more is typed."""
    sys.stdout.flush()
    line = sys.stdin.buffer.readline(_LONGEST)
    if not line:
        raise EOFError
    return line.decode(errors="replace").rstrip("\r\n")
