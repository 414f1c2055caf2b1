"""Findings: the register of what may be wrong with a layout, and the engine that runs it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from plumbnet.rules.facts import Facts
from plumbnet.rules.profile import Profile
from plumbnet.rules.ruling import Ruling


class Severity(StrEnum):
    """How bad a finding is; an error sets the exit status."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Breach:
    """What a finding's test yields: the parts it is about, the first of them leading; what is found; what to do.

    `ruling` is the value of the profile that is breached; where it is None the profile's clause on the finding stands.
    """

    parts: tuple[str, ...]
    text: str
    advice: str
    ruling: Ruling | None = None


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


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that the file's author accepts, with the reason given and the line on which it stands."""

    finding: Finding
    reason: str
    line: int


Test = Callable[[Facts, Profile], Iterator[Breach]]


@dataclass(frozen=True, slots=True)
class Rule:
    """A finding as declared: its test, and a layout that shows it (marked by a comment) and one that does not."""

    name: str
    severity: Severity
    test: Test
    bad: str
    good: str

    @property
    def about(self) -> str:
        """What is found, why it matters, what to do: the test's own docstring."""
        return self.test.__doc__ or ""


RULES: dict[str, Rule] = {}


def finding(name: str, severity: Severity, *, bad: str, good: str) -> Callable[[Test], Test]:
    """Register a test as the finding `name`; `bad` marks the line of each finding with `# <- name`."""

    def register(test: Test) -> Test:
        RULES[name] = Rule(name, severity, test, bad, good)
        return test

    return register


def findings(facts: Facts, profile: Profile) -> tuple[Finding, ...]:
    """Every finding of the register on these facts: errors first, then by line and name."""
    found = [
        _stamped(rule, severity, breach, facts, profile)
        for rule in RULES.values()
        if (severity := severity_of(rule, profile)) is not None
        for breach in rule.test(facts, profile)
    ]
    order = list(Severity)
    return tuple(sorted(found, key=lambda one: (order.index(one.severity), one.line, one.name, one.parts)))


def severity_of(rule: Rule, profile: Profile) -> Severity | None:
    """How bad a finding is under a profile; None where the profile does not look for it."""
    graded = profile.findings[rule.name].severity
    if graded is None:
        return rule.severity
    return None if graded == "off" else Severity(graded)


def _stamped(rule: Rule, severity: Severity, breach: Breach, facts: Facts, profile: Profile) -> Finding:
    ruling = breach.ruling or profile.findings[rule.name]
    line = facts.system.line_of(breach.parts[0])
    return Finding(rule.name, severity, breach.parts, line, ruling.clause, ruling.verified, breach.text, breach.advice)
