"""What was taken for granted, and by what the page was made."""

from importlib.metadata import version

import yaml
from conftest import layout, system
from two_codes import by_two_codes

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.output.imprint import program_build
from plumbnet.report.page.chapters.closing_chapters import assumptions_chapter, record_chapter
from plumbnet.report.prose.prose_blocks import Points, Table
from plumbnet.rules.rule_profile import profile
from plumbnet.study.dossier.report_dossier import Dossier
from plumbnet.study.whatif.what_if import whatif

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def test_what_the_file_does_not_say_is_listed_with_its_parts() -> None:
    _, points = assumptions_chapter(Dossier(plumbnet.check(system(HOUSE)), None, {}, (), {}))
    assert isinstance(points, Points)
    assert any(text.endswith("join hot and cold: tap") for text in points.texts)


def test_record_has_versions_and_hashes() -> None:
    report = plumbnet.check(plumbnet.read_bytes(layout(HOUSE).encode(), file="house.yaml"))
    (table,) = record_chapter(Dossier(report, None, {}, (), {}))
    assert isinstance(table, Table)
    rows = {row[0]: row[1] for row in table.rows}
    assert rows["file"] == "house.yaml"
    assert rows["SHA-256 of the file"] == report.system.record.sha256
    assert rows["SHA-256 of the profile"] == report.profile.sha256 != ""
    assert rows["program"] == f"plumbnet {version('plumbnet')}, build {program_build()}"
    assert rows["limit"] == f"80 psi [{report.profile.distribution_limit.clause}]"


def test_record_has_the_scenario_and_the_date_where_there_are_any() -> None:
    document = yaml.safe_load(layout(HOUSE))
    document["scenarios"] = {"unchecked": {"change": [{"remove": "cv"}]}}
    report = whatif(plumbnet.check(plumbnet.read_bytes(yaml.safe_dump(document).encode())), scenario="unchecked").after
    (table,) = record_chapter(Dossier(report, None, {}, (), {}, "3 May 2031"))
    assert isinstance(table, Table)
    assert ("scenario", "unchecked") in table.rows
    assert ("date", "3 May 2031") in table.rows


def test_record_says_who_named_the_rules_and_has_those_of_each_circuit() -> None:
    def rows(report: Report) -> dict[str, str]:
        (table,) = record_chapter(Dossier(report, None, {}, (), {}))
        assert isinstance(table, Table)
        return {row[0]: row[1] for row in table.rows}

    assert rows(plumbnet.check(system(HOUSE)))["rules named by"] == "default"
    two = rows(by_two_codes())
    assert two["rule profile, drinking water"] == profile("upc-2024").in_full
    assert two["SHA-256 of the profile, heating circuits"] == profile("us-boiler").sha256
    assert two["rules named by"] == "call"
