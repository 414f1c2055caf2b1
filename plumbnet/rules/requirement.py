"""A requirement as it is declared, the register of all, and the clause behind each under a profile."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from plumbnet.rules.acceptors import MayAccept
from plumbnet.rules.deciding_values import Deciding
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach
from plumbnet.rules.known import RESTS_ON
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import Ruling, joined

Test = Callable[[Facts, Profile], Iterator[Answer]]


@dataclass(frozen=True, slots=True)
class Requirement:
    """A requirement as declared: its test, and a layout that breaks it (marked by a comment) and one that does not.

    `asks` says in a sentence what is asked, `of` what its subjects are, in the plural. `rests_on` names the value of a
    profile that it holds a layout to; empty where it rests on no value. `practice` is the clause where common practice
    stands behind it and a profile writes no other; empty where profiles must. `may_accept` says whose word silences it.
    `held_to` are other values that decide what it says: names, or what finds them for the part that leads a breach.
    """

    name: str
    severity: Severity
    test: Test
    bad: str
    good: str
    rests_on: str = ""
    practice: str = ""
    asks: str = ""
    of: str = ""
    held_to: tuple[str | Deciding, ...] = ()
    may_accept: MayAccept = MayAccept.ANYBODY

    @property
    def about(self) -> str:
        """What is found, why it matters, what to do: the test's own docstring."""
        return self.test.__doc__ or ""

    @property
    def chapter(self) -> str:
        """What it is about in a word: the folder in which it stands."""
        return self.test.__module__.split(".")[-2]

    def breaches(self, facts: Facts, profile: Profile) -> Iterator[Breach]:
        """The broken of its answers."""
        return (answer for answer in self.test(facts, profile) if isinstance(answer, Breach))


REQUIREMENTS: dict[str, Requirement] = {}


def requirement(  # noqa: PLR0913  # all that a finding is, said in one place
    name: str,
    severity: Severity,
    *,
    bad: str,
    good: str,
    rests_on: str = "",
    practice: str = "",
    asks: str = "",
    of: str = "",
    held_to: tuple[str | Deciding, ...] = (),
    may_accept: MayAccept = MayAccept.ANYBODY,
) -> Callable[[Test], Test]:
    """Register a test as the requirement whose breach is the finding `name`; `bad` marks its lines with `# <- name`."""

    def register(test: Test) -> Test:
        REQUIREMENTS[name] = Requirement(
            name, severity, test, bad, good, rests_on, practice, asks, of, held_to, may_accept
        )
        RESTS_ON[name] = None if practice else rests_on
        return test

    return register


def severity_of(rule: Requirement, profile: Profile) -> Severity | None:
    """How bad a finding is under a profile; None where the profile does not look for it."""
    own = profile.findings.get(rule.name)
    if own is None or own.severity is None:
        return rule.severity
    return None if own.severity == "off" else Severity(own.severity)


def ruling_of(rule: Requirement, profile: Profile) -> Ruling:
    """The clause behind a finding: the profile's on the finding itself or on what it rests on, or common practice."""
    written = profile.findings.get(rule.name) or profile.rulings().get(rule.rests_on)
    return written or Ruling(clause=rule.practice, verified=False)


def ruling_behind(rule: Requirement, facts: Facts, profile: Profile, part: str) -> Ruling:
    """The clause behind a finding about a part, and before it those of values on which it rests.

    A value counts where it was written later than the finding's clause: in a profile that extends that one. A town that
    lowers a limit is so quoted wherever the limit is.
    """
    own, source = ruling_of(rule, profile), profile.source
    if source.deepest == 0:
        return own
    rulings, depth = profile.rulings(), _depth_of(rule, profile)
    decide = (rule.rests_on, *(name for one in rule.held_to for name in _names(one, facts, profile, part)))
    later = [rulings[name] for name in decide if name in rulings and source.depth_of(name) < depth]
    return joined([*later, own])


def _names(one: str | Deciding, facts: Facts, profile: Profile, part: str) -> Iterable[str]:
    return (one,) if isinstance(one, str) else one(facts, profile, part)


def _depth_of(rule: Requirement, profile: Profile) -> int:
    """How many profiles lie above that which wrote the finding's clause; common practice lies below all."""
    if rule.name in profile.findings:
        return profile.source.depth_of_finding(rule.name)
    return profile.source.deepest if rule.practice else profile.source.depth_of(rule.rests_on)
