"""Findings that are told together."""

from plumbnet.report.prose.grouped_findings import MANY_ALIKE, alike
from plumbnet.rules.finding import Finding, Severity


def finding(name: str, part: str, advice: str) -> Finding:
    return Finding(name, Severity.ERROR, (part,), 1, "", verified=True, text="", advice=advice)


def test_only_many_findings_of_one_name_and_one_cure_are_told_together() -> None:
    many = [finding("tap-without-water", f"tap{number}", "raise") for number in range(MANY_ALIKE)]
    others = [finding("tap-without-water", "attic", "boost"), finding("unreached-part", "yard", "raise")]
    assert list(alike([many[0], *others, *many[1:]])) == [many, *([one] for one in others)]
    assert list(alike(many[1:])) == [[one] for one in many[1:]]
