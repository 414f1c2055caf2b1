"""Whose word silences which finding, and why another stands though somebody accepts it."""

from conftest import layout

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.rules.accepting.own_acceptances import OwnAcceptance, OwnAcceptances
from plumbnet.rules.accepting.silencing import Said, Silencer, Word
from plumbnet.rules.acceptors import Acceptor, MayAccept
from plumbnet.rules.requirement import REQUIREMENTS

SEALED = layout("street -> cv -> heater -> tap.hot")
TRAPPED = layout("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
NONE = OwnAcceptances()


def checked(text: str, *accepted: str, own: OwnAcceptances | None = None) -> Report:
    listed = "accept:\n" + "".join(f"  - {{finding: {one}, part: heater, reason: owner says ok}}\n" for one in accepted)
    read = plumbnet.read_bytes((text + (listed if accepted else "")).encode(), file="plans/a.yaml")
    return plumbnet.check(read, acceptances=own)


def own(*findings: str, file: str = "a.yaml") -> OwnAcceptances:
    entries = tuple(OwnAcceptance(file=file, finding=one, part="heater", reason="seen on site") for one in findings)
    return OwnAcceptances("own.yaml", "ab", entries, tuple(range(3, 3 + len(entries))))


def standing(report: Report) -> set[str]:
    return {one.name for one in report.findings}


def test_owner_who_accepts_a_sealed_heater_and_its_missing_valve_silences_nothing() -> None:
    report = checked(SEALED, "sealed-heater", "relief-missing")
    assert {"sealed-heater", "relief-missing"} <= standing(report)
    assert not report.is_fine
    assert report.accepted == ()
    assert {(one.finding.name, one.why, one.is_refused) for one in report.claimed} == {
        ("sealed-heater", "it is a danger to life, which nobody can accept", True),
        ("relief-missing", "no file can accept this of itself", True),
    }
    assert report.idle == ()


def test_inspector_may_accept_a_missing_valve_and_never_a_sealed_heater() -> None:
    report = checked(SEALED, own=own("relief-missing", "sealed-heater"))
    assert [(one.finding.name, one.by, one.line, one.file) for one in report.accepted] == [
        ("relief-missing", Acceptor.INSPECTOR, 3, "own.yaml")
    ]
    assert "sealed-heater" in standing(report)


def test_only_a_danger_to_life_and_a_missing_valve_are_kept_from_the_file() -> None:
    kept = {name: rule.may_accept for name, rule in REQUIREMENTS.items() if rule.may_accept is not MayAccept.ANYBODY}
    assert kept == {"sealed-heater": MayAccept.NOBODY, "relief-missing": MayAccept.INSPECTOR}


def test_applicant_silences_what_is_left_to_him_and_the_answer_says_that_it_rests_on_that() -> None:
    report = checked(TRAPPED, "trapped-expansion")
    assert report.is_fine
    assert report.rests_on_applicant
    assert not checked(TRAPPED).rests_on_applicant
    assert not checked(TRAPPED, own=own("trapped-expansion")).rests_on_applicant


def test_where_the_inspector_decides_the_applicant_silences_nothing_and_is_shown() -> None:
    for deciding, why in (
        (NONE, "acceptances in the file do not count in this review"),
        (own("heat-soak"), "the inspector's own list decides, and does not accept it"),
    ):
        report = checked(TRAPPED, "trapped-expansion", own=deciding)
        assert standing(report) == {"trapped-expansion"}
        (claim,) = report.claimed
        assert (claim.reason, claim.why, claim.by, claim.is_refused) == (
            "owner says ok",
            why,
            Acceptor.APPLICANT,
            False,
        )


def test_inspector_silences_in_his_name_what_the_applicant_accepts_too() -> None:
    report = checked(TRAPPED, "trapped-expansion", own=own("trapped-expansion"))
    assert [(one.by, one.reason) for one in report.accepted] == [(Acceptor.INSPECTOR, "seen on site")]
    assert report.claimed == ()


def test_list_says_nothing_of_other_files() -> None:
    report = checked(TRAPPED, own=own("trapped-expansion", file="b.yaml"))
    assert standing(report) == {"trapped-expansion"}
    assert report.idle == ()


def test_what_if_is_judged_by_the_same_word() -> None:
    report = checked(TRAPPED, "trapped-expansion", own=NONE)
    after = plumbnet.whatif(
        report, [plumbnet.Change.model_validate({"set": {"part": "heater", "setpoint": "150 degF"}})]
    ).after
    assert after.own_acceptances is NONE
    assert [one.finding.name for one in after.claimed] == ["trapped-expansion"]


def said(*words: Acceptance) -> tuple[Said | None, ...]:
    """What is said of two findings that one part leads."""
    silencer = Silencer(tuple(Word(one, 1, Acceptor.APPLICANT) for one in words))
    return silencer.said_of([("heat-soak", ("heater", "relief")), ("heat-soak", ("heater", "relief2"))])


def test_one_word_does_not_silence_two_findings_that_one_part_leads() -> None:
    both = said(Acceptance(finding="heat-soak", part="heater", reason="so"))
    why = "2 such findings are led by heater; name all parts of the one that is meant"
    assert [one.why if one else None for one in both] == [why, why]


def test_all_parts_silence_the_one_that_is_meant() -> None:
    both = said(Acceptance(finding="heat-soak", parts=("relief2", "heater"), reason="so"))
    assert [one.why if one else None for one in both] == [None, ""]


def test_sweep_tells_an_error_that_the_applicant_accepts_only_where_his_word_does_not_count() -> None:
    text = layout("street -> valve -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}")
    by_file, by_nobody = (
        {
            error.name
            for one in plumbnet.sweep(checked(text, "trapped-expansion", own=each)).events
            for error in one.outcome.errors
        }
        for each in (None, NONE)
    )
    assert "trapped-expansion" not in by_file
    assert "trapped-expansion" in by_nobody
