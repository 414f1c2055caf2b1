"""Every requirement asked of a layout: what it answers, and what of that check tells."""

from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.rules.circuit_rules import Judging, Rules, ruled_by
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Finding, Severity
from plumbnet.rules.four_answers import NOT_ASKED, Answer, AnswerWord, Breach, Measured, NotApplicable
from plumbnet.rules.requirement import REQUIREMENTS, Requirement, ruling_behind, ruling_of, severity_of
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.ruling import Ruling


@dataclass(frozen=True, slots=True)
class Answered:
    """What a requirement answers for a subject, with everything that stands beside it on a sheet.

    `parts` are empty where nothing of the layout is its subject, `line` is 0 then. `finding` is what `check` tells of
    a broken one, else None. `text` says what was found, why it does not apply, or what is missing.
    """

    rule: "Requirement"
    word: AnswerWord
    parts: tuple[str, ...]
    line: int
    ruling: Ruling
    text: str
    measured: Measured | None = None
    finding: Finding | None = None


def findings_of(facts: Facts, judging: Judging) -> tuple[Finding, ...]:
    """Every finding of the register on these facts: errors first, then by line and name."""
    rules = ruled_by(judging)
    found = [
        _stamped(rule, severity, breach, facts, profile)
        for profile in rules.profiles
        for rule in REQUIREMENTS.values()
        if (severity := severity_of(rule, profile)) is not None
        for breach in breaches_of(rule, facts, profile, rules)
    ]
    return tuple(sorted(found, key=lambda one: (one.severity.rank, one.line, one.name, one.parts)))


def breaches_of(rule: Requirement, facts: Facts, profile: Profile, rules: Rules) -> Iterator[Breach]:
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
    for name in sorted(REQUIREMENTS):
        for profile, answer in _answers(REQUIREMENTS[name], facts, rules):
            yield _answered(REQUIREMENTS[name], severity_of(REQUIREMENTS[name], profile), answer, facts, profile)


def _answers(rule: Requirement, facts: Facts, rules: Rules) -> list[tuple[Profile, Answer]]:
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


def _answers_under(rule: Requirement, facts: Facts, profile: Profile) -> list[Answer]:
    asked: list[Answer] = list(rule.test(facts, profile)) if severity_of(rule, profile) is not None else [NOT_ASKED]
    return asked or [NotApplicable((), f"the layout has no {rule.of}")]


def _answered(rule: Requirement, severity: Severity | None, answer: Answer, facts: Facts, profile: Profile) -> Answered:
    ruling = ruling_behind(rule, facts, profile, answer.parts[0]) if answer.parts else ruling_of(rule, profile)
    line = facts.system.line_of(answer.parts[0]) if answer.parts else 0
    found = None
    if severity is not None and isinstance(answer, Breach):
        found = _stamped(rule, severity, answer, facts, profile)
    return Answered(rule, answer.word, answer.parts, line, ruling, answer.text, answer.measured, found)


def _stamped(rule: Requirement, severity: Severity, breach: Breach, facts: Facts, profile: Profile) -> Finding:
    ruling = ruling_behind(rule, facts, profile, breach.parts[0])
    line = facts.system.line_of(breach.parts[0])
    return Finding(rule.name, severity, breach.parts, line, ruling.clause, ruling.verified, breach.text, breach.advice)
