"""The answers of a lesson, each kept in a file as soon as it is given."""

from collections import Counter
from datetime import date
from pathlib import Path

from plumbnet.cli.output_file import save
from plumbnet.cli.playing.lesson import results_of
from plumbnet.report.worksheets import BlankAnswered
from plumbnet.study.training import (
    AnswerGiven,
    Dealt,
    PosedExercise,
    Results,
    Sitting,
    TryGiven,
    results_text,
    with_answer,
)


class Keeper:
    """Counts answers, and keeps them in a file where one is named; what stands in it already is gone on with."""

    def __init__(self, file: str | None, name: str, today: date, dealt: Dealt | None) -> None:
        """Says what is wrong with the file and exits where it is there and cannot be read."""
        self.file, self.today, self.dealt = file, today, dealt
        known = Results() if file is None or not Path(file).exists() else results_of(file)
        self.results = known.model_copy(update={"name": name}) if name else known
        self.outcomes: Counter[str] = Counter()

    def done(self, posed: PosedExercise) -> set[int]:
        """The blanks of an exercise that are done with; none of what is asked again, which is due until it is."""
        number = posed.exercise.origin.number
        mine = (answer for sitting, answer in self.results.answers if sitting.dealt == self.dealt is not None)
        return {answer.blank for answer in mine if answer.exercise == number and answer.is_done}

    def heard(self, posed: PosedExercise, answered: BlankAnswered) -> None:
        """Keep one answer; says so and exits where it cannot be written."""
        answer = _given(posed, answered)
        self.outcomes["at once" if answer.is_right_at_once else "later" if answer.is_right else "not"] += 1
        if self.file is not None:
            origin = posed.exercise.origin
            sitting = Sitting(
                day=self.today.isoformat(), dealt=self.dealt, level=origin.level.number, units=origin.units
            )
            self.results = with_answer(self.results, sitting, answer)
            save(Path(self.file), results_text(self.results).encode())

    def told(self) -> str:
        """What came of it, in a sentence or two; ends with a line break."""
        count = self.outcomes.total()
        later = f", {self.outcomes['later']} more at the second try" if self.outcomes["later"] else ""
        kept = f" The answers are in {self.file}." if self.file is not None and count else ""
        return f"{self.outcomes['at once']} of {count} right at once{later}.{kept}\n"


def _given(posed: PosedExercise, answered: BlankAnswered) -> AnswerGiven:
    exercise = posed.exercise
    blank = posed.worded.asked.blanks[answered.blank - 1]
    return AnswerGiven(
        exercise=exercise.origin.number,
        blank=answered.blank,
        question=exercise.question.name,
        right=blank.answer(exercise.report.facts.units),
        tries=tuple(
            TryGiven(given=one.given, held=None if one.hint is None else one.hint.name) for one in answered.tries
        ),
        hops=answered.hops,
        could=posed.could_hold if answered.blank == 1 else (),
        again=posed.again,
    )
