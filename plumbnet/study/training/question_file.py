"""A trainer's own questions: a file that names layouts, scenarios and sorts of question, with wording of its own."""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from random import Random

from plumbnet.analysis import Report
from plumbnet.api import check, read, read_bytes
from plumbnet.layout.model import Mistake, System
from plumbnet.layout.units import customary
from plumbnet.layout.yaml import LayoutError, quoted, reason_of
from plumbnet.study.exercise import LEVELS, QUESTIONS, Asked, Exercise, Origin, Question, World
from plumbnet.study.training.own_options import NotPut, own_answers, own_wording, tied_hints, unknown_beliefs
from plumbnet.study.training.posed_exercise import PosedExercise
from plumbnet.study.training.question_form import OwnQuestion, declared_questions
from plumbnet.study.training.shipped_lessons import lesson_layout, lesson_layout_names, questions_bytes
from plumbnet.study.whatif import whatif

_SEED = 0
"""Seed of what is left to chance in a question of a file."""


@dataclass(frozen=True, slots=True)
class OwnQuestions:
    """The questions of a file as exercises, and the hash of the file."""

    file: str
    sha256: str
    posed: tuple[PosedExercise, ...]


def questions_at(path: str) -> OwnQuestions:
    """The questions of a file, or of the shipped lesson of that name where there is no such file.

    Raises LayoutError with every fault of it, OSError.
    """
    data = questions_bytes(path)
    declared = declared_questions(data, path)
    posing = _Posing(Path(path), declared.form.title)
    posed = [posing.posed(number, one) for number, one in enumerate(declared.form.questions)]
    if posing.mistakes:
        faults = [mistake.fault(declared.root) for mistake in posing.mistakes]
        raise LayoutError(path, faults, declared.text, because=posing.because)
    return OwnQuestions(path, hashlib.sha256(data).hexdigest(), tuple(one for one in posed if one is not None))


class _Posing:
    """Questions put to their layouts, and what of the file cannot be put."""

    def __init__(self, path: Path, title: str) -> None:
        self.path, self.title = path, title
        self.mistakes: list[Mistake] = []
        self.because: LayoutError | None = None

    def posed(self, number: int, own: OwnQuestion) -> PosedExercise | None:
        """A question of the file, counted from 0; None where there is a mistake in it."""
        found = list(self._mistakes(own))
        if not found:
            try:
                return self._put(number, own)
            except NotPut as error:
                found.append(error.mistake)
        self.mistakes += [mistake.under("questions", number) for mistake in found]
        return None

    def _mistakes(self, own: OwnQuestion) -> Iterator[Mistake]:
        if own.about not in QUESTIONS:
            text, hint = f"there is no question {quoted(own.about)}", f"there are {', '.join(sorted(QUESTIONS))}"
            yield Mistake(("about",), text, hint, meant=(own.about, QUESTIONS))
        yield from unknown_beliefs(own)
        if "\0" in own.layout:
            yield Mistake(("layout",), f"{quoted(own.layout)} is no name of a file", "name a file beside this one")

    def _put(self, number: int, own: OwnQuestion) -> PosedExercise:
        drawn = self._drawn(own)
        report, supposed = self._supposed(own, drawn)
        question = QUESTIONS[own.about]
        level = _level(own, question, report)
        asked = _asked(own, question, report, level)
        words = self.title or self.path.name
        origin = Origin(
            _SEED, LEVELS[level], number + 1, customary(drawn.system.units), f"{words}, question {number + 1}."
        )
        wording = own_wording(own, asked)
        asked = replace(asked, prompt=own.prompt or asked.prompt)
        exercise = Exercise(origin, drawn.system.record.text, drawn, supposed, report, question, asked)
        return PosedExercise(exercise, wording, tied_hints(own, exercise))

    def _drawn(self, own: OwnQuestion) -> Report:
        """The layout as drawn."""
        try:
            return check(self._read(own.layout))
        except OSError as error:
            text = f"{quoted(own.layout)} cannot be read: {reason_of(error)}"
            raise NotPut(Mistake(("layout",), text, "name a file beside this one")) from error
        except LayoutError as error:
            self.because = self.because or error
            text = f"there are mistakes in {quoted(own.layout)}"
            raise NotPut(Mistake(("layout",), text, "plumbnet check shows them")) from error

    def _read(self, layout: str) -> System:
        """A file beside the questions, or the shipped layout of that name where there is none."""
        try:
            return read(self.path.parent / layout)
        except FileNotFoundError:
            if layout not in lesson_layout_names():
                raise
            return read_bytes(lesson_layout(layout), file=f"{layout}.yaml")

    def _supposed(self, own: OwnQuestion, drawn: Report) -> tuple[Report, str]:
        """The layout with the scenario made, and what that supposes in words, without the end of the sentence."""
        if own.scenario is None:
            return drawn, ""
        known = drawn.system.scenarios
        if own.scenario not in known:
            text = f"{quoted(own.layout)} has no scenario {quoted(own.scenario)}"
            hint = f"it has {', '.join(known)}" if known else "it has none"
            raise NotPut(Mistake(("scenario",), text, hint, meant=(own.scenario, known)))
        try:
            made = whatif(drawn, scenario=own.scenario)
        except LayoutError as error:
            self.because = self.because or error
            text = f"the scenario {quoted(own.scenario)} cannot be made"
            raise NotPut(Mistake(("scenario",), text, "plumbnet whatif shows why")) from error
        return made.after, (made.note or f"the scenario {own.scenario}").rstrip(".")


def _level(own: OwnQuestion, question: Question, report: Report) -> int:
    """The lowest level that offers its options, at which it is asked again; the highest where it gives none."""
    for level in sorted(question.outcomes):
        offered = {option for one in _all_asked(question, report, level) for option in one.choice.options}
        if own.options is not None and own_answers(own) <= offered:
            return level
    return max(question.outcomes)


def _asked(own: OwnQuestion, question: Question, report: Report, level: int) -> Asked:
    """What the sort of question asks of the layout, about the heater that is meant."""
    names = [heater.name for heater in report.heaters]
    if own.heater is not None and own.heater not in names:
        text = f"{quoted(own.layout)} has no heater {quoted(own.heater)}"
        raise NotPut(Mistake(("heater",), text, f"it has {', '.join(names)}", meant=(own.heater, names)))
    for heater in (own.heater, None):
        found = [one for one in _all_asked(question, report, level) if heater is None or one.heater in {heater, None}]
        if found and (heater is not None or own.heater is None):
            return min(found, key=lambda one: names.index(one.heater) if one.heater in names else 0)
    text = f"the question {quoted(question.name)} has no one answer on {quoted(own.layout)}"
    others = [name for name, one in sorted(QUESTIONS.items()) if _can_be_asked(own, one, report)]
    hint = f"it can be asked {', '.join(others)}" if others else "take another layout, or another scenario"
    raise NotPut(Mistake(("about",), text, hint))


def _can_be_asked(own: OwnQuestion, question: Question, report: Report) -> bool:
    found = _all_asked(question, report, max(question.outcomes))
    return any(own.heater in {None, one.heater} or one.heater is None for one in found)


def _all_asked(question: Question, report: Report, level: int) -> list[Asked]:
    return list(question.ask(World(report, level, Random(_SEED))))  # noqa: S311  the same question each time
