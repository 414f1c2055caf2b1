"""Requirements: the register of what is asked of a layout, and the engine that has each of them answer."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from plumbnet.rules.facts import Facts
from plumbnet.rules.four_answers import NOT_ASKED, Answer, AnswerWord, Breach, Measured, NotApplicable
from plumbnet.rules.known import RESTS_ON
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import Ruling, is_certain


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


class Acceptor(StrEnum):
    """Who accepts a finding: the applicant in the submitted file, or the inspector in a list of his own."""

    APPLICANT = "applicant"
    INSPECTOR = "inspector"


class MayAccept(StrEnum):
    """Whose word silences a finding."""

    ANYBODY = "anybody"
    """The applicant's, in the file, or the inspector's."""
    INSPECTOR = "inspector"
    """The inspector's alone, in a list of his own."""
    NOBODY = "nobody"
    """Nobody's: a danger to life is put right, and no list makes it less."""


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that somebody accepts, with the reason given and the line on which it stands.

    `file` is the inspector's list; empty where the line is one of the layout.
    """

    finding: Finding
    reason: str
    line: int
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""


@dataclass(frozen=True, slots=True)
class Claimed:
    """A finding that stands though somebody accepts it: the reason given, its line, and why it silences nothing."""

    finding: Finding
    reason: str
    line: int
    why: str
    by: Acceptor = Acceptor.APPLICANT
    file: str = ""
    is_refused: bool = False
    """Whether it is of a finding that this word can never silence, and not only one that is not looked at."""


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
    may_accept: MayAccept = MayAccept.ANYBODY,
) -> Callable[[Test], Test]:
    """Register a test as the requirement whose breach is the finding `name`; `bad` marks its lines with `# <- name`."""

    def register(test: Test) -> Test:
        RULES[name] = Rule(name, severity, test, bad, good, rests_on, practice, asks, of, may_accept)
        RESTS_ON[name] = None if practice else rests_on
        return test

    return register


def findings_of(facts: Facts, profile: Profile) -> tuple[Finding, ...]:
    """Every finding of the register on these facts: errors first, then by line and name."""
    found = [
        _stamped(rule, severity, breach, facts, profile)
        for rule in RULES.values()
        if (severity := severity_of(rule, profile)) is not None
        for breach in rule.breaches(facts, profile)
    ]
    return tuple(sorted(found, key=lambda one: (one.severity.rank, one.line, one.name, one.parts)))


def answers_of(facts: Facts, profile: Profile) -> Iterator[Answered]:
    """What every requirement of the register answers for each of its subjects, by requirement and in file order."""
    for name in sorted(RULES):
        rule = RULES[name]
        severity = severity_of(rule, profile)
        asked = list(rule.test(facts, profile)) if severity is not None else [NOT_ASKED]
        for answer in asked or [NotApplicable((), f"the layout has no {rule.of}")]:
            yield _answered(rule, severity, answer, facts, profile)


def _answered(rule: Rule, severity: Severity | None, answer: Answer, facts: Facts, profile: Profile) -> Answered:
    ruling = ruling_of(rule, profile)
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


def _stamped(rule: Rule, severity: Severity, breach: Breach, facts: Facts, profile: Profile) -> Finding:
    ruling = ruling_of(rule, profile)
    line = facts.system.line_of(breach.parts[0])
    return Finding(rule.name, severity, breach.parts, line, ruling.clause, ruling.verified, breach.text, breach.advice)
