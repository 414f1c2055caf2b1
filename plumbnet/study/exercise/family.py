"""A list of parts and a question in, layouts of just these parts out, by the answer that the engine gives to each."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from random import Random

from plumbnet.analysis import Report
from plumbnet.api import check, read_bytes
from plumbnet.layout.edits import with_changes
from plumbnet.layout.yaml import LayoutError
from plumbnet.rules import Severity
from plumbnet.study.exercise.question import Ask, Asked, Question, World
from plumbnet.study.exercise.stock import Stock, placed
from plumbnet.study.exercise.suppositions import Supposition

MOST_TWINS = 72
"""Layouts that one list is tried in."""
_STALE = 28
"""Layouts without an answer that is new after which a list is given up."""
MISTAKES = frozenset({"unreached-part", "pump-drives-nothing", "tank-on-hot-side"})
"""Findings of which nobody would believe that it was built so."""
MEANT = frozenset(
    {
        "trapped-expansion",
        "sealed-heater",
        "relief-missing",
        "relief-behind-valve",
        "static-above-limit",
        "tank-cut-off",
        "tank-too-small",
        "tank-waterlogged",
    }
)
"""Errors that layouts may have as they are drawn, since they are what is taught; another would be a trap nobody set."""


@dataclass(frozen=True, slots=True)
class Twin:
    """One layout of a list, and the question with its answer."""

    layout: str
    asked: Asked


@dataclass
class Family:
    """Layouts of one list, all with the same event and the same question, by the heater asked about and the answer."""

    stock: Stock
    supposed: Supposition | None
    question: Question
    level: int
    chance: Random
    found: dict[str | None, dict[str, list[Twin]]] = field(default_factory=lambda: defaultdict(dict))

    def __post_init__(self) -> None:
        self._same_chance = str(self.chance.random())

    def answers(self) -> Mapping[str, list[Twin]] | None:
        """Layouts by their answers, for the first heater of which the list has the makings of enough answers.

        When it ends does not hang on which answer is dealt afterwards. None where the list is not rich enough.
        """
        needed, last = self.question.fewest[self.level], 0
        ask = self.question.quick or self.question.ask
        for number, layout in enumerate(self._layouts()):
            for asked in self._asked(layout, ask):
                by_answer = self.found[asked.heater]
                last = last if asked.answer in by_answer else number
                by_answer.setdefault(asked.answer, []).append(Twin(layout, asked))
                if len(by_answer) >= needed:
                    return by_answer
            if number >= last + _STALE:
                return None
        return None

    def in_full(self, twin: Twin) -> Asked | None:
        """The question put to a twin with all its blanks; None where the rest of them makes it no question."""
        if self.question.quick is None:
            return twin.asked
        found = (one for one in self._asked(twin.layout, self.question.ask) if one.heater == twin.asked.heater)
        return next((one for one in found if one.answer == twin.asked.answer), None)

    def _layouts(self) -> Iterator[str]:
        seen = set[str]()
        for _ in range(MOST_TWINS):
            stretches = placed(self.stock, self.chance)
            if stretches is not None and (text := self.stock.text(stretches)) not in seen:
                seen.add(text)
                yield text

    def _asked(self, layout: str, ask: Ask) -> list[Asked]:
        """The question put to each heater of a layout; nothing where it is no layout that anybody would build."""
        system = read_bytes(layout.encode())
        try:
            report = drawn = check(system)
            if not _is_believed(drawn):
                return []
            if self.supposed is not None:
                report = check(with_changes(system, self.supposed.changes))
        except LayoutError:  # nothing can be computed of it
            return []
        chance = Random(self._same_chance)  # noqa: S311  the same for every layout of the list
        return list(ask(World(report, self.level, chance)))


def _is_believed(drawn: Report) -> bool:
    """Whether somebody might have built it so."""
    names = {finding.name for finding in drawn.findings}
    errors = {one.name for one in drawn.findings if one.severity is Severity.ERROR}
    return not MISTAKES & names and errors <= MEANT
