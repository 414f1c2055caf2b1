"""Marks of verdicts and severities."""

from plumbnet.report.figures.colours import PALETTES
from plumbnet.report.page.entry_marks import looks
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.finding import Severity


def test_every_verdict_and_severity_has_its_look_in_every_theme() -> None:
    for palette in PALETTES.values():
        assert looks(palette).keys() == {*(each.value for each in Verdict), *(each.value for each in Severity)}


def test_verdicts_look_as_in_every_picture() -> None:
    light = PALETTES["light"]
    assert looks(light)["trapped"] == light.shades[Verdict.TRAPPED]
