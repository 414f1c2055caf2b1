"""The table for spreadsheets: its columns are a promise, and no cell of it does anything."""

import csv
import io
import re
from dataclasses import replace
from importlib.metadata import version
from pathlib import Path

import pytest
from conftest import PSI
from forms import ANYTHING, HOSTILE, accepting, fine, missing, refusal, renamed, saying, trapped, warned, written
from hypothesis import given
from two_codes import CODES, IN_A_LINE, by_two_codes

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.acceptance import Acceptance
from plumbnet.layout.yaml.fault import visible
from plumbnet.report.formats.csv1 import COLUMNS, FORMULA, CsvWriter, cell
from plumbnet.report.output.writer import Unread
from plumbnet.rules.accepting.silencing import Word
from plumbnet.rules.acceptors import Acceptor
from plumbnet.rules.rule_profile import profile

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))

Rows = list[dict[str, str]]


def rows(*answers: Report | Unread) -> Rows:
    return list(csv.DictReader(io.StringIO(written(CsvWriter(), *answers), newline=""), strict=True))


def only(table: Rows, record: str) -> dict[str, str]:
    (row,) = [row for row in table if row["record"] == record]
    return row


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_showcase_layout_is_read_back(path: Path) -> None:
    report = plumbnet.check(plumbnet.read(path))
    table = rows(report)
    heaters = [row for row in table if row["record"] == "heater"]
    assert [(row["name"], row["verdict"]) for row in heaters] == [(one.name, one.verdict) for one in report.heaters]
    assert [float(row["expansion_m3"]) for row in heaters] == [one.expansion_m3 for one in report.heaters]
    found = [(row["name"], row["severity"]) for row in table if row["record"] == "finding"]
    assert found == [(one.name, one.severity) for one in report.findings]
    assert len({row["file"] for row in table}) == 1


def test_file_comes_first_with_its_record() -> None:
    report = renamed(trapped(), title="7 Mill Row, Lantern Falls")
    first = rows(report)[0]
    assert (first["record"], first["file"], first["title"]) == ("file", "drawn.yaml", "7 Mill Row, Lantern Falls")
    assert first["sha256"] == report.system.record.sha256
    assert (first["rules"], first["rules_sha256"]) == ("general", report.profile.sha256)
    assert (first["plumbnet"], first["rules_from"]) == (version("plumbnet"), "default")


def test_heater_is_a_row_of_numbers_in_si() -> None:
    report = trapped()
    (facts,) = report.heaters
    row = only(rows(report), "heater")
    assert (row["name"], row["kind"], row["verdict"]) == ("heater", "storage_heater", "trapped")
    assert float(row["static_pa"]) == pytest.approx(60 * PSI)
    assert float(row["limit_pa"]) == pytest.approx(80 * PSI)
    assert float(row["expansion_m3"]) == facts.expansion_m3
    assert (row["opens_first"], float(row["opens_first_pa"])) == ("heater/relief", facts.ladder[0].opens_pa)
    assert (row["stopped_by"], row["settled_pa"]) == ("cv", "")
    assert facts.need is not None
    assert float(row["need_tank_m3"]) == facts.need.tank_m3
    assert row["need_at"] == facts.need.at


def test_finding_is_a_row_with_its_parts_clause_and_advice() -> None:
    (found,) = trapped().findings
    row = only(rows(trapped()), "finding")
    assert (row["name"], row["severity"], row["parts"]) == ("trapped-expansion", "error", "heater; cv")
    assert (row["text"], row["advice"], row["clause"]) == (found.text, found.advice, found.clause)
    assert row["line"] == str(found.line)


def test_accepted_finding_is_a_row_with_its_reason() -> None:
    table = rows(accepting(trapped(), "Letter of the authority, 3 May."))
    assert only(table, "accepted")["reason"] == "Letter of the authority, 3 May."
    assert not [row for row in table if row["record"] == "finding"]


def test_acceptance_of_what_is_not_found_is_a_row() -> None:
    idle = Acceptance(finding="trapped-expansion", part="heater", reason="=So be it.")
    row = only(rows(replace(fine(), idle=(Word(idle, 9, Acceptor.APPLICANT),))), "idle")
    assert (row["name"], row["parts"], row["reason"]) == ("trapped-expansion", "heater", "'=So be it.")


def test_assumption_is_a_row() -> None:
    texts = {row["text"]: row["parts"] for row in rows(trapped()) if row["record"] == "assumed"}
    assert texts["a fixture does not join hot and cold"] == "tap"


def test_mistake_of_a_file_is_a_row_with_its_place() -> None:
    table = rows(refusal("f.yaml", "one is wrong", "two is wrong"), missing("none.yaml"))
    assert [(row["record"], row["file"], row["line"], row["column"], row["text"]) for row in table] == [
        ("error", "f.yaml", "2", "3", "one is wrong"),
        ("error", "f.yaml", "3", "3", "two is wrong"),
        ("error", "none.yaml", "", "", "no such file or directory"),
    ]


def test_files_follow_one_another_under_one_head() -> None:
    text = written(CsvWriter(), fine(), warned())
    assert text.count("record,file,line") == 1
    assert [row["record"] for row in rows(fine(), warned())].count("file") == 2


def test_columns_that_hold_a_quantity_end_in_its_unit() -> None:
    assert {name for name in COLUMNS if re.search(r"_(pa|k|m3)$", name)} == {
        "static_pa",
        "limit_pa",
        "settled_pa",
        "cold_k",
        "hot_k",
        "heated_volume_m3",
        "expansion_m3",
        "opens_first_pa",
        "short_m3",
        "need_tank_m3",
        "need_nominal_m3",
        "need_precharge_pa",
    }


def test_lines_end_as_the_standard_says() -> None:
    text = written(CsvWriter(), trapped())
    assert text.count("\r\n") == text.count("\n") == len(rows(trapped())) + 1


@pytest.mark.parametrize("start", FORMULA)
def test_cell_that_begins_like_a_formula_is_defused(start: str) -> None:
    assert cell(f"{start}cmd").startswith("'")
    assert cell(f"  {start}cmd").startswith("'") or start in "\t\r\n"


def test_number_below_zero_stays_a_number() -> None:
    assert cell(-3.5) == "-3.5"


@given(ANYTHING)
def test_any_text_can_be_read_back_and_does_nothing(text: str) -> None:
    report = accepting(renamed(saying(trapped(), text), file=text or "f", title=text), text)
    answers = (report, saying(warned(), text), refusal(text or "f", text), missing(text or "f"))
    table = rows(*answers)
    assert all(row.keys() == set(COLUMNS) for row in table)
    for row in table:
        for name, value in row.items():
            assert value.isprintable()
            assert not value.lstrip().startswith(FORMULA) or float(value) < 0.0, name
    assert table[0]["title"].removeprefix("'") == visible(text)


def test_every_hostile_text_is_one_cell() -> None:
    for text in HOSTILE:
        assert len(next(csv.reader(io.StringIO(written(CsvWriter(), renamed(fine(), title=text)), newline="")))) == len(
            COLUMNS
        )


def test_rules_of_two_circuits_stand_in_one_cell_each() -> None:
    first = rows(by_two_codes())[0]
    assert (first["rules"], first["rules_from"]) == (IN_A_LINE, "call")
    hashes = "; ".join(f"{circuit}: {profile(name).sha256}" for circuit, name in CODES.items())
    assert first["rules_sha256"] == hashes
