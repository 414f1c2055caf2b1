from conftest import layout, system

import plumbnet
from plumbnet.layout.model.change import Change as LayoutChange
from plumbnet.layout.yaml.fault import Fault
from plumbnet.report.output.writer import Fate, Noted
from plumbnet.report.survey.survey_entry import WhatIfFate, answered, noted_entry, refused_entry
from plumbnet.study.compare.report_difference import difference
from plumbnet.study.whatif.what_if import WhatIf, whatif

HOUSE = "street -> meter -> heater -> tap.hot"
CHECKED = LayoutChange.model_validate({"set": {"part": "meter", "check": True}})


def test_heater_stands_in_one_row_as_it_is_and_as_it_would_be() -> None:
    report = plumbnet.check(system(HOUSE))
    (row,) = answered("f", report, whatif(report, [CHECKED]), WhatIfFate.MADE).heaters
    assert (row["verdict"], row["after_verdict"]) == ("open", "sealed")
    assert (row["is_worse"], row["is_better"]) == (1, 0)
    assert row["after_stopped_by"] == "meter"
    assert "after_name" not in row


def test_nothing_supposed_leaves_what_would_be_empty() -> None:
    report = plumbnet.check(system(HOUSE))
    entry = answered("f", report, None, None)
    assert (entry.fate, entry.file["what_if"], entry.file["is_worse"]) == (Fate.CHECKED, None, None)
    assert not any(name.startswith("after_") for name in entry.heaters[0])


def test_findings_say_when_they_stand() -> None:
    report = plumbnet.check(system(HOUSE, street="pressure: 90 psi"))
    entry = answered("f", report, whatif(report, [CHECKED]), WhatIfFate.MADE)
    stands = {(row["name"], row["stands_before"], row["stands_after"]) for row in entry.findings}
    assert ("sealed-heater", 0, 1) in stands
    assert ("static-above-limit", 1, 1) in stands


def test_accepted_finding_is_kept_with_its_reason() -> None:
    text = layout("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi, temperature: 210 degF}") + (
        "accept: [{finding: trapped-expansion, part: heater, reason: cold until May}]\n"
    )
    report = plumbnet.check(plumbnet.read_bytes(text.encode()))
    (row,) = answered("f", report, None, None).findings
    assert (row["name"], row["reason"], row["accepted_by"]) == ("trapped-expansion", "cold until May", "applicant")
    assert row["accepted_line"] == len(text.splitlines())


def test_finding_that_is_accepted_in_vain_counts_and_says_so() -> None:
    text = layout("street -> cv -> heater -> tap.hot") + (
        "accept: [{finding: sealed-heater, part: heater, reason: cold until May}]\n"
    )
    report = plumbnet.check(plumbnet.read_bytes(text.encode()))
    (row,) = [one for one in answered("f", report, None, None).findings if one["name"] == "sealed-heater"]
    assert (row.get("reason"), row["claimed"]) == (None, "cold until May")
    assert row["stands_as"] == "it is a danger to life, which nobody can accept"


def test_file_that_is_no_layout_is_kept_with_what_it_is() -> None:
    entry = noted_entry("n.yaml", "abc", Noted("n.yaml", "not a layout", (Fault(2, 1, "it is empty"),)))
    assert (entry.path, entry.fate) == ("n.yaml", Fate.NO_LAYOUT)
    (row,) = entry.notes
    assert row == {"line": 2, "column": 1, "text": "it is empty", "sort": "not a layout"}


def test_heater_that_goes_or_comes_has_one_side_only() -> None:
    report = plumbnet.check(system("street -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"))
    gone = whatif(report, [LayoutChange(remove="heater2")])
    come = WhatIf(None, "", (), gone.after, report, difference(gone.after, report))
    rows = {row["name"]: row for row in answered("f", report, gone, WhatIfFate.MADE).heaters}
    assert rows["heater2"].get("after_verdict") is None
    rows = {row["name"]: row for row in answered("f", gone.after, come, WhatIfFate.MADE).heaters}
    assert (rows["heater2"].get("verdict"), rows["heater2"]["kind"]) == (None, "storage_heater")


def test_faulty_file_has_its_mistakes() -> None:
    entry = refused_entry("f", "ab", [Fault(2, 3, "unknown kind", "write valve")])
    assert entry.errors == ({"line": 2, "column": 3, "text": "unknown kind; write valve"},)
