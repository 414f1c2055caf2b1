"""The chapter of findings."""

import yaml
from conftest import layout

import plumbnet
from plumbnet.report.page.chapters.findings_chapter import findings
from plumbnet.report.page.page_content import Entry, PageBlock
from plumbnet.report.prose.prose_blocks import Heading, Paragraph
from plumbnet.study.dossier.report_dossier import Dossier


def blocks(runs: str, accept: list[dict[str, str]]) -> list[PageBlock]:
    document = yaml.safe_load(layout(runs, heater="relief: {pressure: 150 psi, temperature: 210 degF}"))
    document["accept"] = accept
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode()))
    return list(findings(Dossier(report, None, {}, (), {})))


HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def test_finding_has_its_severity_place_text_advice_and_clause() -> None:
    (entry,) = blocks(HOUSE, [])
    assert isinstance(entry, Entry)
    assert (entry.mark, entry.meaning) == ("error", "error")
    assert entry.title.startswith("trapped-expansion: heater")
    text, advice, clause = entry.told
    assert text.text.startswith("heater is closed (stopped by cv)")
    assert advice.text.startswith("Fit an expansion tank")
    assert clause.text.startswith("[IPC 607.3")


def test_accepted_finding_stands_by_itself_with_its_reason() -> None:
    nothing, heading, entry = blocks(
        HOUSE, [{"finding": "trapped-expansion", "part": "heater", "reason": "exempt by letter"}]
    )
    assert nothing == Paragraph("No findings; 1 accepted by the applicant: trapped-expansion (heater).")
    assert heading == Heading("Accepted in the file, by the applicant (1)", 3)
    assert isinstance(entry, Entry)
    assert entry.mark == "accepted"
    assert entry.told[-1].label == "reason given"
    assert entry.told[-1].text.startswith("exempt by letter (accepted by the applicant in line ")


def test_finding_that_is_accepted_in_vain_says_so_behind_its_clause() -> None:
    document = yaml.safe_load(layout(HOUSE))
    document["accept"] = [{"finding": "sealed-heater", "part": "heater", "reason": "owner says ok"}]
    report = plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode()))
    (sealed,) = [one for one in report.claimed if one.finding.name == "sealed-heater"]
    entries = [one for one in findings(Dossier(report, None, {}, (), {})) if isinstance(one, Entry)]
    (entry,) = [one for one in entries if one.title.startswith("sealed-heater")]
    assert entry.mark == "error"
    assert entry.told[-1].text == (
        f'The applicant accepts this (line {sealed.line}): "owner says ok". '
        "It stands: it is a danger to life, which nobody can accept."
    )


def test_acceptance_of_what_was_not_found_is_named() -> None:
    found = blocks(
        "street -> tee -> heater -> tap.hot", [{"finding": "trapped-expansion", "part": "heater", "reason": "x"}]
    )
    last = found[-1]
    assert isinstance(last, Paragraph)
    assert " not found: " in last.text
    assert "trapped-expansion of heater" in last.text
