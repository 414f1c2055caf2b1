"""The record under a report."""

from dataclasses import replace
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

import pytest
from conftest import layout
from forms import renamed, trapped
from running import TRAPPED, run
from two_codes import CODES, by_two_codes

import plumbnet
from plumbnet.report.output.imprint import imprint_lines, record_lines
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
from plumbnet.rules.rule_profile import profile


def test_record_names_program_file_and_rules_with_their_sums() -> None:
    report = plumbnet.check(plumbnet.read_bytes(TRAPPED.encode(), file="house.yaml"))
    assert dict(imprint_lines(report)) == {
        "program": f"plumbnet {version('plumbnet')}",
        "file": f"SHA-256 {sha256(TRAPPED.encode()).hexdigest()}",
        "rules": f"general, SHA-256 {report.profile.sha256}",
    }


def test_scenario_is_named_where_there_is_one() -> None:
    report = replace(trapped(), scenario="\x1b[2J shut")
    assert dict(imprint_lines(report))["scenario"] == r"\x1b[2J shut"


def test_whose_acceptances_decide_is_named_where_those_of_the_file_do_not() -> None:
    own = OwnAcceptances("\x1bown.yaml", "abc")
    assert dict(imprint_lines(replace(trapped(), own_acceptances=own)))["accepts"] == r"\x1bown.yaml, SHA-256 abc"
    none = dict(imprint_lines(replace(trapped(), own_acceptances=OwnAcceptances())))
    assert none["accepts"] == "nothing that the file accepts of itself"
    assert "accepts" not in dict(imprint_lines(trapped()))


def test_layout_from_no_file_says_so() -> None:
    bare = replace(trapped().system, record=replace(trapped().system.record, sha256=""))
    assert dict(imprint_lines(replace(trapped(), system=bare)))["file"] == "none"


def test_lines_stand_under_a_heading() -> None:
    lines = list(record_lines(renamed(trapped(), file="\x1b[2J")))
    assert lines[:2] == ["Record:", f"  program   plumbnet {version('plumbnet')}"]
    assert max(map(len, lines)) <= 100


def test_same_file_makes_the_same_record_in_another_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    written = []
    for name in ("here", "there"):
        folder = tmp_path / name
        folder.mkdir()
        (folder / "house.yaml").write_text(TRAPPED, encoding="utf-8")
        monkeypatch.chdir(folder)
        written.append(
            [run("check", "house.yaml", "--format", form).stdout for form in ("text", "json", "sarif", "csv")]
        )
    assert written[0] == written[1]
    assert "Record:" in written[0][0]


@pytest.mark.parametrize("command", [["check"], ["remedies"], ["whatif", "--close", "valve"], ["sweep"], ["size"]])
def test_whatever_is_told_of_a_layout_ends_with_the_record(command: list[str]) -> None:
    given = layout("street -> valve -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
    told = run(command[0], "-", *command[1:], given=given).stdout
    assert f"SHA-256 {sha256(given.encode()).hexdigest()}" in told
    assert f"plumbnet {version('plumbnet')}" in told


def test_record_has_the_rules_of_each_circuit_with_their_sums() -> None:
    lines = dict(imprint_lines(by_two_codes()))
    assert lines["rules"] == "; ".join(
        f"{circuit}: {name}, SHA-256 {profile(name).sha256}" for circuit, name in CODES.items()
    )
