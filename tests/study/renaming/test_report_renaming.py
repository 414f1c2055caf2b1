"""A report told by other names."""

from dataclasses import replace

from conftest import layout

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.finding import Accepted, Claimed
from plumbnet.study.renaming.part_renames import Renames
from plumbnet.study.renaming.report_renaming import renamed_report

RUNS = "street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold"
ACCEPTED = "accept: [{finding: trapped-expansion, part: heater, reason: so}]\n"
NAMES = Renames(names={"heater": "heater9", "cv": "cv9"})


def checked(runs: str = RUNS, more: str = "") -> Report:
    heater = "heater9" if "heater9" in runs else "heater"
    text = layout(runs, **{heater: "relief: {pressure: 150 psi, temperature: 210 degF}"}) + more
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml"))


def test_sentences_verdicts_and_ladders_have_the_new_names() -> None:
    told, meant = renamed_report(checked(), NAMES), checked(RUNS.replace("heater", "heater9").replace("cv", "cv9"))
    assert [one.text for one in told.findings] == [one.text for one in meant.findings]
    assert [heater.stopped_by.sets for heater in told.heaters] == [(("cv9",),)]
    assert [rung.outlet for rung in told.heaters[0].ladder] == ["heater9/relief"]


def test_without_another_name_it_is_the_same_report() -> None:
    report = checked()
    assert renamed_report(report, Renames()) is report


def test_what_was_accepted_stays_so() -> None:
    told = renamed_report(checked(more=ACCEPTED), NAMES)
    assert [(one.finding.name, one.finding.parts[0], one.reason) for one in told.accepted] == [
        ("trapped-expansion", "heater9", "so")
    ]
    assert told.findings == ()


def test_what_somebody_else_says_is_kept_and_what_nobody_does_stands() -> None:
    """Words that are in no file: those of whoever made the report."""
    report = checked()
    (finding,) = report.findings
    own = replace(report, findings=(), accepted=(Accepted(finding, "seen", 3, Acceptor.INSPECTOR, "own.yaml"),))
    (accepted,) = renamed_report(own, NAMES).accepted
    assert (accepted.reason, accepted.by, accepted.finding.parts[0]) == ("seen", Acceptor.INSPECTOR, "heater9")
    vain = replace(report, claimed=(Claimed(finding, "so", 9, "it does not count"),))
    told = renamed_report(vain, NAMES)
    assert [(one.why, one.finding) for one in told.claimed] == [("it does not count", told.findings[0])]
    assert len(renamed_report(report, NAMES).findings) == 1


def test_own_list_of_the_inspector_stays_with_the_report() -> None:
    ruled = replace(checked(), own_acceptances=OwnAcceptances())
    assert renamed_report(ruled, NAMES).own_acceptances == OwnAcceptances()
