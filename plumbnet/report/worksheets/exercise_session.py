"""An exercise in talk: what is said and asked, what comes of what is typed, and why."""

from collections.abc import Callable, Collection, Generator, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import partial

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.layout.units import Units
from plumbnet.report.prose import Heading, Lines, Paragraph, document_text
from plumbnet.report.text import piping_tree
from plumbnet.report.trace import single_hops
from plumbnet.report.worksheets.worksheet_content import line_of, worksheet
from plumbnet.report.worksheets.worksheet_text import options_text, task_text
from plumbnet.rules.facts import Facts
from plumbnet.study.beliefs import BlankHints, ChoiceHints, Hint
from plumbnet.study.exercise import Blank, Exercise, Judged

PATIENCE = 3
"""Lines that are not understood before the answer is told."""
MOST_DRAWN = 120
"""Parts of a layout that is drawn in letters; of a larger one the table and the list tell more."""
TRIES = 2
"""Answers that are taken before the right one is told."""
_LINE = "\n"
HOP = "?"
"""What is typed to follow the water a hop further."""

Talk = Generator[str, str, None]
"""Yields what is said, ending in a question; takes what is typed."""


@dataclass(frozen=True, slots=True)
class TakenAnswer:
    """An answer that was taken, in words, and what was said of it: None where it is right."""

    given: str
    hint: Hint | None


@dataclass(frozen=True, slots=True)
class BlankAnswered:
    """A blank, counted from 1, with all that was tried and how many hops of the water were followed before that."""

    blank: int
    tries: tuple[TakenAnswer, ...]
    hops: int


Heard = Callable[[BlankAnswered], None]
"""Called as soon as a blank is done with."""


def talk(
    exercise: Exercise,
    hints: Sequence[BlankHints],
    walks: Iterable[WaterWalk],
    heard: Heard,
    *,
    done: Collection[int] = (),
) -> Talk:
    """The talk about one exercise; a blank that is to stay empty is not asked for, nor one that is `done` already.

    An answer that is not the right one is met with its hint, and asked for once more. `walks` are followed a hop at a
    time, whenever that is asked for. The reason follows the last answer, before one more line is typed. Closed
    before its end, it tells what was tried.
    """
    talking = _Talking(exercise.report.facts, _steps(exercise, walks))
    drawn = _drawn(exercise) if len(exercise.system.parts) <= MOST_DRAWN else ""
    said = f"{task_text(worksheet(exercise))}\n{drawn}\n"
    for number, (blank, hint) in enumerate(zip(exercise.asked.blanks, hints, strict=False), start=1):
        if number not in done:
            said = yield from talking.asked(said, blank, hint, partial(_told, heard, number, talking))
    reason = document_text([Paragraph(one) for one in exercise.asked.because])
    yield from talking.heard_out(f"{said}\n{reason}\n", f"Enter to go on, {HOP} to follow the water: ")


def _told(heard: Heard, number: int, talking: "_Talking", tries: Sequence[TakenAnswer]) -> None:
    heard(BlankAnswered(number, tuple(tries), talking.hops))


def _drawn(exercise: Exercise) -> str:
    return document_text([Heading("The piping, as water normally flows", 2), Lines(piping_tree(exercise.system))])


def _steps(exercise: Exercise, walks: Iterable[WaterWalk]) -> Iterator[str]:
    """Every hop of the water."""
    for walk in walks:
        yield from single_hops(exercise.report.facts, walk)


@dataclass
class _Talking:
    """A talk as far as it has come: the hops that are left, and how many were followed."""

    facts: Facts
    steps: Iterator[str]
    hops: int = field(default=0, init=False)

    def heard_out(self, said: str, question: str) -> Generator[str, str, str]:
        """What is typed, once it is no wish to follow the water."""
        typed = yield f"{said}{question}"
        while typed.strip() == HOP:
            self.hops += 1
            hop = document_text([Paragraph(next(self.steps, "That is all it meets."))])
            typed = yield f"{hop}{question.rpartition(_LINE)[2]}"
        return typed

    def asked(
        self, said: str, blank: Blank, hints: BlankHints, done: Callable[[Sequence[TakenAnswer]], None]
    ) -> Generator[str, str, str]:
        """Ask until it is answered, and tell the tries; what is to be said of the last."""
        tries: list[TakenAnswer] = []
        try:
            said = yield from self._tried(said, blank, hints, tries)
        except BaseException:
            if tries:
                done(tries)
            raise
        done(tries)
        return said

    def _tried(self, said: str, blank: Blank, hints: BlankHints, tries: list[TakenAnswer]) -> Generator[str, str, str]:
        """Take answers until one is right or there were enough; each is added to the tries."""
        units = self.facts.units
        while len(tries) < TRIES:
            judged = yield from self._understood(said, blank, units)
            if judged is None:
                said = ""
                break
            taken = taken_answer(hints, judged)
            tries.append(taken)
            if taken.hint is None:
                return f"Right: {taken.given}.\n"
            said = f"{document_text([Paragraph(taken.hint.text)])}\n"
        return f"{said}The answer is {blank.answer(units)}.\n"

    def _understood(self, said: str, blank: Blank, units: Units) -> Generator[str, str, Judged | None]:
        """What is typed, as an answer; None where it is not understood too often."""
        question = options_text(line_of(blank, units))
        for _ in range(PATIENCE):
            typed = yield from self.heard_out(said, question)
            judged = blank.judged(typed, units)
            if judged.taken is not None:
                return judged
            said = f"That is not understood: {judged.advice}; {HOP} follows the water a hop.\n"
        return None


def taken_answer(hints: BlankHints, judged: Judged) -> TakenAnswer:
    """An answer that was understood, with what is said of it."""
    given = judged.taken or ""
    if judged.is_right:
        return TakenAnswer(given, None)
    hint = hints.options[given] if isinstance(hints, ChoiceHints) else hints.of(judged.value or 0.0)
    return TakenAnswer(given, hint)
