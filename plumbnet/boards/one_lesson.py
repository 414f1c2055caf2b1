"""Posed exercises to the lesson that a page plays: each made ready once, when asked for, and its answers kept."""

import hashlib
from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache
from typing import Protocol

from plumbnet.boards.one_board import Question, Told
from plumbnet.boards.page_files import served_tasks
from plumbnet.boards.task_copy import TASKS_TITLE, TaskTold, dealt_told, task_told
from plumbnet.layout.yaml import reason_of
from plumbnet.report.worksheets import BlankAnswered, TakenAnswer, taken_answer
from plumbnet.study.training import RESULTS_KEY, Dealt, PosedExercise

_MOST_KEPT = 256
"""Exercises that are kept ready: more than are dealt at once."""
_SAVED_SINCE = "The questions were saved since, and this answer is not kept."
_NOT_ASKED = "This is nothing that was asked, and it is not kept."


class LessonKeeper(Protocol):
    """Keeps answers in a file, whose path is `file`; None where they are kept nowhere."""

    file: str | None

    def done(self, posed: PosedExercise, dealt: Dealt | None) -> Collection[int]:
        """The blanks of an exercise that are done with, counted from 1."""

    def keep(self, posed: PosedExercise, dealt: Dealt | None, answered: BlankAnswered) -> None:
        """Keep what was tried in a blank. Raises OSError where it cannot be written."""


class OneLesson:
    """The exercises of one version of a lesson; `digest` tells it from others."""

    def __init__(self, posed: Sequence[PosedExercise], dealt: Dealt | None, keeper: LessonKeeper) -> None:
        self.posed, self.dealt, self.keeper = tuple(posed), dealt, keeper
        self.digest = _digest(self.posed, dealt)
        self.html = served_tasks(TASKS_TITLE)
        self.files = {one.exercise.drawn.system.record.file for one in self.posed}
        self.task = lru_cache(_MOST_KEPT)(self._task)
        self.questions: Mapping[str, Question] = {"lesson": self._lesson, "task": self._asked}
        self.takes: Mapping[str, Question] = {"answered": self._answered}

    def _lesson(self, _asked: Told) -> Told:
        """What the page is told first; `left` has for each exercise the blanks that are not done with."""
        return {
            "key": RESULTS_KEY,
            "dealt": dealt_told(self.dealt),
            "digest": self.digest,
            "count": len(self.posed),
            "kept": self.keeper.file or "",
            "left": [sorted(one.asked_for - {*self.keeper.done(one, self.dealt)}) for one in self.posed],
        }

    def _task(self, place: int) -> TaskTold:
        return task_told(self.posed[place])

    def _asked(self, asked: Told) -> Told:
        said = str(asked.get("at", ""))
        known = {str(place): place for place in range(len(self.posed))}
        return self.task(known[said]) if said in known else {"refused": "There is no such exercise."}

    def _answered(self, told: Told) -> Told:
        """Keep one try; it is judged here, whatever the page has made of it."""
        if told.get("digest") != self.digest:
            return {"refused": _SAVED_SINCE}
        posed = next((one for one in self.posed if one.exercise.origin.number == told.get("exercise")), None)
        blank = told.get("blank")
        if posed is None or not isinstance(blank, int) or blank not in posed.asked_for:
            return {"refused": _NOT_ASKED}
        taken = _taken(posed, blank, str(told.get("given", "")))
        if taken is None:
            return {"refused": _NOT_ASKED}
        try:
            self.keeper.keep(posed, self.dealt, BlankAnswered(blank, (taken,), 0))
        except OSError as error:
            reason = reason_of(error)
            return {"refused": f"This answer is not kept: {self.keeper.file} cannot be written: {reason}."}
        return {"kept": self.keeper.file or ""}


def _taken(posed: PosedExercise, blank: int, given: str) -> TakenAnswer | None:
    """An answer as it was taken; None where it is none."""
    asked = posed.worded
    judged = asked.asked.blanks[blank - 1].judged(given, asked.report.facts.units)
    return None if judged.taken is None else taken_answer(posed.hints[blank - 1], judged)


def _digest(posed: Sequence[PosedExercise], dealt: Dealt | None) -> str:
    layouts = (one.exercise.drawn.system.record.sha256 for one in posed)
    return hashlib.sha256("\n".join([str(dealt), *layouts]).encode()).hexdigest()[:12]
