"""The answers of a lesson, each kept in a file as soon as it is given."""

from datetime import date
from pathlib import Path

from plumbnet.cli.output_file import fail_unwritten
from plumbnet.cli.playing.lesson import results_of
from plumbnet.report.output import write_whole
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

    def __init__(self, file: str | None, name: str, today: date) -> None:
        """Says what is wrong with the file and exits where it is there and cannot be read."""
        self.file, self.today = file, today
        known = Results() if file is None or not Path(file).exists() else results_of(file)
        self.results = known.model_copy(update={"name": name}) if name else known
        self.answers = dict[tuple[str, int, int], AnswerGiven]()

    def done(self, posed: PosedExercise, dealt: Dealt | None) -> set[int]:
        """The blanks of an exercise that are done with; none of what is asked again, which is due until it is."""
        number = posed.exercise.origin.number
        mine = (answer for sitting, answer in self.results.answers if sitting.dealt == dealt is not None)
        return {answer.blank for answer in mine if answer.exercise == number and answer.is_done}

    def heard(self, posed: PosedExercise, dealt: Dealt | None, answered: BlankAnswered) -> None:
        """Keep one answer; says so and exits where it cannot be written."""
        try:
            self.keep(posed, dealt, answered)
        except OSError as error:
            fail_unwritten(Path(self.file or ""), error)

    def keep(self, posed: PosedExercise, dealt: Dealt | None, answered: BlankAnswered) -> None:
        """Keep one answer, or what is tried after it in the same blank. Raises OSError where it cannot be written."""
        origin, answer = posed.exercise.origin, _given(posed, answered)
        sitting = Sitting(day=self.today.isoformat(), dealt=dealt, level=origin.level.number, units=origin.units)
        self.results = with_answer(self.results, sitting, answer)
        version = "" if dealt is None else dealt.sha256 or ""
        self.answers[version, answer.exercise, answer.blank] = self.results.sittings[-1].answers[-1]
        if self.file is not None:
            write_whole(Path(self.file), results_text(self.results).encode())

    def told(self) -> str:
        """What came of it, in a sentence or two; ends with a line break."""
        count, at_once = len(self.answers), sum(one.is_right_at_once for one in self.answers.values())
        later = sum(one.is_right for one in self.answers.values()) - at_once
        and_later = f", {later} more at the second try" if later else ""
        kept = f" The answers are in {self.file}." if self.file is not None and count else ""
        return f"{at_once} of {count} right at once{and_later}.{kept}\n"


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
