"""Requirements: the register of what is asked of a layout, and the engine that has each of them answer.

One module, because a requirement as it is declared and what is made of its answers are read together.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from plumbnet.rules.acceptors import Acceptor, MayAccept
from plumbnet.rules.circuit_rules import Judging, Rules, ruled_by
from plumbnet.rules.deciding_values import Deciding
from plumbnet.rules.facts import Facts
from plumbnet.rules.four_answers import NOT_ASKED, Answer, AnswerWord, Breach, Measured, NotApplicable
from plumbnet.rules.known import RESTS_ON
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import Ruling, is_certain, joined


class Severity(StrEnum):
    """How bad a finding is; an error sets the exit status."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"

    @property
    def rank(self) -> int:
        """Sorts severities, the worst first."""
        return list(Severity).index(self)


@dataclass(frozen=True, slots=True)
class Finding:
    """A breach with everything that stands beside it in a report; `verified` says that its clause was read."""

    name: str
    severity: Severity
    parts: tuple[str, ...]
    line: int
    clause: str
    verified: bool
    text: str
    advice: str

    @property
    def is_certain(self) -> bool:
        """Whether nobody need look its clause up."""
        return is_certain(self.clause, verified=self.verified)


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that somebody accepts, why, and on which line of the inspector's list `file`, or of the layout."""

    finding: Finding
    reason: str
    line: int
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""


@dataclass(frozen=True, slots=True)
class Claimed:
    """A finding that stands though somebody accepts it, and why; `is_refused` where that word can never silence it."""

    finding: Finding
    reason: str
    line: int
    why: str
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""
    is_refused: bool = False


@dataclass(frozen=True, slots=True)
class Answered:
    """What a requirement answers for a subject, with everything that stands beside it on a sheet.

    `parts` are empty where nothing of the layout is its subject, `line` is 0 then. `finding` is what `check` tells of
    a broken one, else None. `text` says what was found, why it does not apply, or what is missing.
    """

    rule: "Rule"
    word: AnswerWord
    parts: tuple[str, ...]
    line: int
    ruling: Ruling
    text: str
    measured: Measured | None = None
    finding: Finding | None = None


Test = Callable[[Facts, Profile], Iterator[Answer]]


@dataclass(frozen=True, slots=True)
class Rule:
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


RULES: dict[str, Rule] = {}


def finding(  # noqa: PLR0913  # all that a finding is, said in one place
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
        RULES[name] = Rule(name, severity, test, bad, good, rests_on, practice, asks, of, held_to, may_accept)
        RESTS_ON[name] = None if practice else rests_on
        return test

    return register


def findings_of(facts: Facts, judging: Judging) -> tuple[Finding, ...]:
    """Every finding of the register on these facts: errors first, then by line and name."""
    rules = ruled_by(judging)
    found = [
        _stamped(rule, severity, breach, facts, profile)
        for profile in rules.profiles
        for rule in RULES.values()
        if (severity := severity_of(rule, profile)) is not None
        for breach in breaches_of(rule, facts, profile, rules)
    ]
    return tuple(sorted(found, key=lambda one: (one.severity.rank, one.line, one.name, one.parts)))


def breaches_of(rule: Rule, facts: Facts, profile: Profile, rules: Rules) -> Iterator[Breach]:
    """The breaches that a profile has a say in: those whose leading part belongs to a circuit that it judges."""
    breaches = rule.breaches(facts, profile)
    if rules.is_one:
        return breaches
    return (breach for breach in breaches if _has_a_say(profile, rules, facts, breach))


def _has_a_say(profile: Profile, rules: Rules, facts: Facts, answer: Answer) -> bool:
    """Whether a profile judges the part that leads an answer; one about nothing of the layout anybody may give."""
    return rules.is_one or not answer.parts or rules.of(facts.circuit_of(answer.parts[0])) is profile


def answers_of(facts: Facts, judging: Judging) -> Iterator[Answered]:
    """What every requirement of the register answers for each of its subjects, by requirement and in file order."""
    rules = ruled_by(judging)
    for name in sorted(RULES):
        for profile, answer in _answers(RULES[name], facts, rules):
            yield _answered(RULES[name], severity_of(RULES[name], profile), answer, facts, profile)


def _answers(rule: Rule, facts: Facts, rules: Rules) -> list[tuple[Profile, Answer]]:
    """The answers under the rules of each circuit; that there is no subject is said where no circuit has one."""
    given = [
        (profile, answer)
        for profile in rules.profiles
        for answer in _answers_under(rule, facts, profile)
        if _has_a_say(profile, rules, facts, answer)
    ]
    if rules.is_one:
        return given
    return [(profile, answer) for profile, answer in given if answer.parts] or given[:1]


def _answers_under(rule: Rule, facts: Facts, profile: Profile) -> list[Answer]:
    asked: list[Answer] = list(rule.test(facts, profile)) if severity_of(rule, profile) is not None else [NOT_ASKED]
    return asked or [NotApplicable((), f"the layout has no {rule.of}")]


def _answered(rule: Rule, severity: Severity | None, answer: Answer, facts: Facts, profile: Profile) -> Answered:
    ruling = ruling_behind(rule, facts, profile, answer.parts[0]) if answer.parts else ruling_of(rule, profile)
    line = facts.system.line_of(answer.parts[0]) if answer.parts else 0
    found = None
    if severity is not None and isinstance(answer, Breach):
        found = _stamped(rule, severity, answer, facts, profile)
    return Answered(rule, answer.word, answer.parts, line, ruling, answer.text, answer.measured, found)


def severity_of(rule: Rule, profile: Profile) -> Severity | None:
    """How bad a finding is under a profile; None where the profile does not look for it."""
    own = profile.findings.get(rule.name)
    if own is None or own.severity is None:
        return rule.severity
    return None if own.severity == "off" else Severity(own.severity)


def ruling_of(rule: Rule, profile: Profile) -> Ruling:
    """The clause behind a finding: the profile's on the finding itself or on what it rests on, or common practice."""
    written = profile.findings.get(rule.name) or profile.rulings().get(rule.rests_on)
    return written or Ruling(clause=rule.practice, verified=False)


def ruling_behind(rule: Rule, facts: Facts, profile: Profile, part: str) -> Ruling:
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


def _depth_of(rule: Rule, profile: Profile) -> int:
    """How many profiles lie above that which wrote the finding's clause; common practice lies below all."""
    if rule.name in profile.findings:
        return profile.source.depth_of_finding(rule.name)
    return profile.source.deepest if rule.practice else profile.source.depth_of(rule.rests_on)


def _stamped(rule: Rule, severity: Severity, breach: Breach, facts: Facts, profile: Profile) -> Finding:
    ruling = ruling_behind(rule, facts, profile, breach.parts[0])
    line = facts.system.line_of(breach.parts[0])
    return Finding(rule.name, severity, breach.parts, line, ruling.clause, ruling.verified, breach.text, breach.advice)
