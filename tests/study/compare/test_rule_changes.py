"""What changed in the rules that two layouts were judged by."""

from dataclasses import replace

from curing import house

import plumbnet
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.rule_profile import Profile, profile, read_profile
from plumbnet.study.compare.rule_changes import rule_changes

REPORT = plumbnet.check(house())
TOWN = """profile: {name}
title: Lantern Falls
extends: ipc-2021
distribution_limit: {{value: {limit}, clause: "Town bylaw 4 (invented)", verified: true}}
findings:
  tank-waterlogged: {{severity: {severity}, clause: "Town bylaw {bylaw} (invented)", verified: true}}
"""


def town(name: str = "town", limit: str = "70 psi", severity: str = "error", bylaw: int = 5) -> Profile:
    text = TOWN.format(name=name, limit=limit, severity=severity, bylaw=bylaw)
    return read_profile(text.encode(), file="town.yaml")


def between(before: Profile, after: Profile) -> list[str]:
    (found,) = rule_changes(replace(REPORT, rules=ruled_by(before)), replace(REPORT, rules=ruled_by(after)))
    return [f"{one.field}: {one.before} -> {one.after}" for one in found.values]


def test_same_rules_have_not_changed() -> None:
    assert rule_changes(REPORT, REPORT) == ()


def test_other_profile_is_told_with_what_it_asks_for() -> None:
    ipc = profile("ipc-2021")
    (found,) = rule_changes(REPORT, replace(REPORT, rules=ruled_by(ipc)))
    assert (found.circuit, found.before, found.after) == ("", REPORT.rules.water, ipc)
    assert found.is_other_profile
    assert "bypass.value" in [one.field for one in found.values]
    assert found.clauses > 5


def test_same_name_with_another_value_is_told() -> None:
    assert between(town(), town(limit="65 psi")) == ["distribution_limit.value: 70 psi -> 65 psi"]
    (found,) = rule_changes(
        replace(REPORT, rules=ruled_by(town())), replace(REPORT, rules=ruled_by(town(limit="65 psi")))
    )
    assert not found.is_other_profile


def test_finding_that_is_graded_otherwise_is_told() -> None:
    assert between(town(), town(severity="note")) == ["tank-waterlogged.severity: error -> note"]


def test_clause_alone_is_counted_and_no_value() -> None:
    (found,) = rule_changes(replace(REPORT, rules=ruled_by(town())), replace(REPORT, rules=ruled_by(town(bylaw=6))))
    assert (found.values, found.clauses) == ((), 1)
