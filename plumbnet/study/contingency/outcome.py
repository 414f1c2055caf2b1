"""Facts of a layout to what a sweep compares: the verdict of each heater and the errors that stand."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from plumbnet.rules import REQUIREMENTS, Judging, Severity, Silencer, breaches_of, ruled_by, severity_of
from plumbnet.rules.facts import FROM_BEST_TO_WORST, Facts, Verdict


@dataclass(frozen=True, slots=True, order=True)
class Error:
    """A finding of severity error: its name, and the part that leads it."""

    name: str
    part: str


@dataclass(frozen=True, slots=True)
class WorldAnswer:
    """The verdict of each heater, in the order of the file, and the errors that stand.

    `refused` says why nothing could be computed; there are no verdicts then.
    """

    verdicts: Mapping[str, Verdict]
    errors: frozenset[Error]
    refused: str = ""
    spare_pa: Mapping[str, float] = field(default_factory=dict, compare=False, repr=False)
    """How far each heater stays below what holds it (below zero: how far above); none for one that settles nowhere."""

    def since(self, before: "WorldAnswer") -> "Outcome":
        """What differs from the answer before."""
        return outcome(before, self)


@dataclass(frozen=True, slots=True)
class Turn:
    """A heater whose verdict is another one."""

    heater: str
    before: Verdict
    after: Verdict

    @property
    def is_worse(self) -> bool:
        """Whether the verdict is worse than before."""
        return FROM_BEST_TO_WORST.index(self.after) > FROM_BEST_TO_WORST.index(self.before)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What an event changes: heaters with another verdict, in the order of the file, and new errors, sorted.

    `refused` says why nothing can be computed once it has happened.
    """

    turns: tuple[Turn, ...] = ()
    errors: tuple[Error, ...] = ()
    refused: str = ""

    @property
    def changes_nothing(self) -> bool:
        """Whether every verdict is as before and no error is new."""
        return not (self.turns or self.errors or self.refused)

    @property
    def rank(self) -> tuple[int, int, int, int]:
        """Sorts outcomes: the worst verdict that a heater comes to first, then the most heaters that are worse.

        Then those that cannot be computed, the most new errors, and the most heaters that are only different.
        """
        worse = [2 * FROM_BEST_TO_WORST.index(turn.after) for turn in self.turns if turn.is_worse]
        return -max(worse, default=int(bool(self.refused))), -len(worse), -len(self.errors), -len(self.turns)


def outcome(before: WorldAnswer, after: WorldAnswer, alone: Sequence[WorldAnswer] = ()) -> Outcome:
    """What differs between the answers before and after what happened.

    Where several events happened, `alone` are the answers to each of them: only a verdict or an error that is none of
    theirs is told.
    """
    if after.refused:
        return Outcome(refused=after.refused)
    earlier = (before, *alone)
    turns = tuple(
        Turn(heater, verdict, after.verdicts[heater])
        for heater, verdict in before.verdicts.items()
        if after.verdicts[heater] not in {one.verdicts[heater] for one in earlier}
    )
    return Outcome(turns, tuple(sorted(after.errors.difference(*(one.errors for one in earlier)))))


_NOBODY: Final = Silencer()


def answer(facts: Facts, judging: Judging, silencer: Silencer = _NOBODY) -> WorldAnswer:
    """The verdicts of facts, and the errors that rules find on them and nobody silences."""
    rules = ruled_by(judging)
    found = [
        (rule.name, breach.parts)
        for profile in rules.profiles
        for rule in REQUIREMENTS.values()
        if severity_of(rule, profile) is Severity.ERROR
        for breach in breaches_of(rule, facts, profile, rules)
    ]
    said = zip(found, silencer.said_of(found), strict=True)
    errors = frozenset(Error(name, parts[0]) for (name, parts), one in said if one is None or one.why)
    spare_pa = {one.name: one.bound_pa - one.settled_pa for one in facts.heaters if one.settled_pa is not None}
    return WorldAnswer({heater.name: heater.verdict for heater in facts.heaters}, errors, spare_pa=spare_pa)
