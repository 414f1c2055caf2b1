import os
from importlib.resources import files

import pytest
from running import CONTROL, Write, run

OURS = """profile: ours
title: The rules of our town (invented)
extends: ipc-2021
distribution_limit: {value: 70 psi, clause: an invented bylaw, verified: true}
findings:
  tank-charge-differs: {severity: error, clause: an invented bylaw, verified: true}
"""
NEAR = """plumbnet: 1
parts:
  street: {kind: main, pressure: 75 psi}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
runs: [street -> heater -> tap.hot]
"""


def test_profiles_findings_and_each_of_them_are_printed() -> None:
    assert "uk-2010" in run("rules").stdout
    assert run("rules", "ipc-2021").stdout.splitlines()[0].endswith("(ipc-2021)")
    assert "tank-cut-off" in run("rules", "--findings").stdout
    assert run("rules", "tank-cut-off").stdout.startswith("tank-cut-off\n===")
    assert "UPC 608.3" in run("rules", "tank-cut-off", "--rules", "upc-2024").stdout


def test_unknown_name_is_told_with_the_nearest() -> None:
    result = run("rules", "ipc2021")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.endswith('"ipc2021": did you mean "ipc-2021"?\n')
    assert run("rules", "tank-cutoff").stderr.endswith('did you mean "tank-cut-off"?\n')
    assert run("rules", "--rules", "genral").exit_code == 2
    assert not any(sign in run("rules", "\x1b[2J").output for sign in CONTROL)


def test_profile_of_the_users_own_is_printed_and_applied(write: Write) -> None:
    write("ours.yaml", OURS)
    write("near.yaml", NEAR)
    assert "70 psi (483 kPa)" in run("rules", "ours.yaml").stdout
    assert run("check", "near.yaml").exit_code == 0
    result = run("check", "near.yaml", "--rules", "ours.yaml")
    assert result.exit_code == 1
    assert "rules: The rules of our town (invented)" in result.stdout
    assert "static-above-limit" in result.stdout
    assert run("size", "near.yaml", "--rules", "./ours.yaml").exit_code == 1


def test_faulty_profile_is_told_with_its_line_and_missing_one_by_name(write: Write) -> None:
    write("near.yaml", NEAR)
    write("ours.yaml", OURS.replace("70 psi", "70 gal"))
    for command in ("check", "trace", "remedies"):
        result = run(command, "near.yaml", "--rules", "ours.yaml")
        assert (result.exit_code, result.stdout) == (2, "")
        assert result.stderr.startswith("ours.yaml:4:29: value: ")
    write("ours.yaml", OURS.replace("ipc-2021", "ipc2021"))
    told = run("rules", "ours.yaml").stderr.splitlines()[0]
    assert told.startswith("ours.yaml:3:10: ")
    assert told.endswith('"ipc2021": did you mean "ipc-2021"?')
    assert run("check", "near.yaml", "--rules", "none.yaml").stderr == "none.yaml: no such file or directory\n"


def test_profile_that_forgets_a_finding_is_no_finding_but_not_understood(write: Write) -> None:
    write("near.yaml", NEAR)
    general = (files("plumbnet") / "data" / "profiles" / "general.yaml").read_text(encoding="utf-8")
    write("ours.yaml", f"{general.partition('findings:')[0]}findings: {{}}\n")
    for command in ("check near.yaml", "sweep near.yaml", "rules", "rules ours.yaml"):
        result = run(*command.split(), "--rules", "ours.yaml")
        assert (result.exit_code, result.stdout) == (2, "")
        assert "has none for check-on-hot-side" in result.stderr


@pytest.mark.parametrize(("command", "status"), [("check near.yaml near.yaml", 1), ("compare near.yaml near.yaml", 0)])
def test_profile_is_read_once_so_that_it_may_come_through_a_pipe(command: str, status: int, write: Write) -> None:
    write("near.yaml", NEAR)
    reading, writing = os.pipe()
    os.write(writing, OURS.encode())
    os.close(writing)
    result = run(*command.split(), "--rules", f"/dev/fd/{reading}")
    os.close(reading)
    assert (result.exit_code, result.stderr) == (status, "")
    assert "rules: The rules of our town (invented)" in result.stdout


def test_layout_can_name_only_profiles_that_come_with_the_program(write: Write) -> None:
    write("ours.yaml", OURS)
    result = run("check", write("near.yaml", f"rules: ./ours.yaml\n{NEAR}"))
    assert result.exit_code == 2
    assert result.stderr.startswith("near.yaml:1:8: no rule profile ")
    assert '"./ours.yaml"' in result.stderr
