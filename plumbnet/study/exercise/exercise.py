"""A task for apprentices: a layout as a file, what is supposed of it, a question, and the report that answers it."""

from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.api import check, read_bytes
from plumbnet.layout.model import System
from plumbnet.layout.units import Customary
from plumbnet.study.exercise.level import Level
from plumbnet.study.exercise.question import Asked, Question
from plumbnet.study.exercise.suppositions import Supposition
from plumbnet.study.remedies import scenario_text
from plumbnet.study.whatif import whatif

SCENARIO = "what-if"
"""Name of the scenario that holds what an exercise supposes."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Where an exercise comes from: the same origin gives the same exercise.

    `source` says so in words where it is not its seed, as of a question that somebody wrote.
    """

    seed: int
    level: Level
    number: int
    units: Customary
    source: str = ""

    @property
    def name(self) -> str:
        """A name for it, fit for a file."""
        units = "" if self.units == "us" else f"{self.units}-"
        return f"exercise-{units}{self.level.number}-{self.seed}-{self.number}"

    @property
    def in_words(self) -> str:
        """What it teaches, and what gives the same exercise again."""
        units = "" if self.units == "us" else f", {self.units} units"
        dealt = f"Level {self.level.number}: {self.level.teaches}. Seed {self.seed}, number {self.number}{units}."
        return self.source or dealt


@dataclass(frozen=True, slots=True)
class Exercise:
    """A task: the layout as a file, the report on it as drawn, and that with what is supposed of it.

    `supposed` says that in words; where it is empty the two reports are one.
    """

    origin: Origin
    text: str
    drawn: Report
    supposed: str
    report: Report
    question: Question
    asked: Asked

    @property
    def system(self) -> System:
        """The layout as drawn."""
        return self.drawn.system


def exercise(origin: Origin, layout: str, supposed: Supposition | None, question: Question, asked: Asked) -> Exercise:
    """The exercise, its supposition written into the layout as a scenario and made."""
    words = "" if supposed is None else supposed.words
    text = layout if supposed is None else f"{layout}\nscenarios:\n{scenario_text(SCENARIO, words, supposed.changes)}"
    system = read_bytes(text.encode(), file=f"{origin.name}.yaml")
    report = drawn = check(system)
    if supposed is not None:
        report = whatif(drawn, scenario=SCENARIO).after
    return Exercise(origin, text, drawn, words, report, question, asked)
