from pathlib import Path

import pytest
from running import CONTROL, FAULTY, HOSTILE, OPEN, TRAPPED, Write, document, real, run


def test_status_is_0_where_every_heater_is_fine(write: Write) -> None:
    result = run("check", write("open.yaml", OPEN))
    assert result.exit_code == 0
    assert "heater: OPEN" in result.stdout
    assert result.stderr == ""


def test_status_is_1_where_a_finding_of_severity_error_stands(write: Write) -> None:
    result = run("check", write("trapped.yaml", TRAPPED))
    assert result.exit_code == 1
    assert "heater: TRAPPED" in result.stdout


def test_status_is_2_where_a_file_is_not_understood(write: Write) -> None:
    result = run("check", write("faulty.yaml", FAULTY))
    assert result.exit_code == 2
    assert result.stdout == ""
    assert result.stderr == (
        'faulty.yaml:2:19: unknown kind "mian": did you mean "main"?\n'
        "  2 | parts: {m: {kind: mian}, t: tee}\n"
        "    |                   ^~~~\n"
    )


def test_bad_file_among_many_hides_no_other(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    write("open.yaml", OPEN)
    result = run("check", "trapped.yaml", "faulty.yaml", "none.yaml", "open.yaml")
    assert result.exit_code == 2
    assert "heater: TRAPPED" in result.stdout
    assert "heater: OPEN" in result.stdout
    assert "\n\nopen.yaml" in result.stdout
    assert 'unknown kind "mian"' in result.stderr
    assert "none.yaml: no such file or directory\n" in result.stderr


def test_bad_file_among_many_hides_no_other_in_json(write: Write) -> None:
    write("trapped.yaml", TRAPPED)
    write("faulty.yaml", FAULTY)
    result = run("check", "--format", "json", "trapped.yaml", "faulty.yaml", "none.yaml")
    assert result.exit_code == 2
    assert result.stderr == ""
    assert [report["file"] for report in document(result)["reports"]] == ["trapped.yaml"]
    assert document(result)["errors"] == [
        {"file": "faulty.yaml", "line": 2, "column": 19, "text": 'unknown kind "mian": did you mean "main"?'},
        {"file": "none.yaml", "line": 0, "column": 0, "text": "no such file or directory"},
    ]


def test_json_sets_the_same_status_as_text(write: Write) -> None:
    assert run("check", "--format", "json", write("open.yaml", OPEN)).exit_code == 0
    assert run("check", "--format", "json", write("trapped.yaml", TRAPPED)).exit_code == 1


def test_hostile_title_is_escaped_in_text_and_in_json(write: Write) -> None:
    write("f.yaml", HOSTILE + OPEN)
    for result in (run("check", "f.yaml"), run("check", "f.yaml", "--format", "json"), run("trace", "f.yaml")):
        assert result.exit_code == 0
        assert not any(character in result.output for character in CONTROL)
    assert r"\x1b[2J\u202eevil\x07" in run("check", "f.yaml").stdout


@pytest.mark.parametrize("command", [["check"], ["check", "--format", "json"], ["trace"], ["remedies"]])
def test_same_layout_gives_the_same_bytes_whatever_the_seed_of_hashes(write: Write, command: list[str]) -> None:
    school = Path(__file__).parents[2] / "systems" / "school-shared-tanks.yaml"
    write("f.yaml", school.read_text(encoding="utf-8"))
    written = {real(*command, "f.yaml", PYTHONHASHSEED=seed).stdout for seed in ("0", "1")}
    assert len(written) == 1
    assert written != {b""}


def test_same_faults_come_in_the_same_order_whatever_the_seed_of_hashes(write: Write) -> None:
    several = Path(__file__).parents[1] / "faults" / "several-at-once.yaml"
    write("several-at-once.yaml", several.read_text(encoding="utf-8"))
    for seed in ("0", "1"):
        done = real("check", "several-at-once.yaml", PYTHONHASHSEED=seed)
        assert done.stderr == several.with_suffix(".out").read_bytes()
