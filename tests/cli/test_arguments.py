from pathlib import Path

import pytest
from conftest import layout
from running import CONTROL, FAULTY, ONLY_PIPE, OPEN, TRAPPED, Write, document, run


def test_hyphen_reads_standard_input() -> None:
    result = run("check", "-", given=TRAPPED)
    assert result.exit_code == 1
    assert result.stdout.startswith("standard input\n")
    assert run("check", "-", given=FAULTY).stderr.startswith("standard input:2:19: ")
    assert run("trace", "-", given=OPEN).exit_code == 0


def test_folder_and_missing_file_are_told_in_a_line(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "folder").mkdir()
    for command in ("trace", "remedies"):
        result = run(command, "folder")
        assert (result.exit_code, result.stdout, result.stderr) == (2, "", "folder: is a directory\n")
    for command in ("check", "trace", "remedies"):
        result = run(command, "none.yaml")
        assert (result.exit_code, result.stderr) == (2, "none.yaml: no such file or directory\n")


def test_file_that_may_not_be_opened_is_told_in_a_line(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path) -> bytes:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("plumbnet.cli.check_file.bytes_of", refuse)
    result = run("check", write("locked.yaml", OPEN))
    assert (result.exit_code, result.stderr) == (2, "locked.yaml: permission denied\n")


def test_file_that_is_no_text_is_told_with_its_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("photo.yaml").write_bytes(b"plumbnet: 1\n\x89PNG\x00")
    result = run("check", "photo.yaml")
    assert result.exit_code == 2
    assert result.stderr.startswith("photo.yaml:2:1: the byte 0x89 ")


def test_unknown_profile_on_the_command_line_is_told_once(write: Write) -> None:
    write("open.yaml", OPEN)
    for command in (
        ["check", "open.yaml", "open.yaml"],
        ["trace", "open.yaml"],
        ["remedies", "open.yaml"],
        ["check", "--format", "json", "open.yaml"],
    ):
        result = run(*command, "--rules", "genral")
        assert (result.exit_code, result.stdout) == (2, "")
        assert result.stderr.count("genral") == 1
        assert result.stderr.endswith(': did you mean "general"?\n')


def test_unknown_profile_in_the_file_is_told_with_its_line(write: Write) -> None:
    write("f.yaml", f"rules: genral\n{ONLY_PIPE}")
    said = (
        'f.yaml:1:8: no rule profile is called "genral": did you mean "general"?\n'
        "  1 | rules: genral\n"
        "    |        ^~~~~~\n"
    )
    for command in ("check", "trace", "remedies"):
        result = run(command, "f.yaml")
        assert (result.exit_code, result.stderr) == (2, said)
    errors = document(run("check", "f.yaml", "--format", "json"))["errors"]
    assert [(error["line"], error["column"]) for error in errors] == [(1, 8)]
    assert run("check", "f.yaml", "--rules", "general").exit_code == 0


def test_unknown_heater_is_told_with_the_nearest_or_all(write: Write) -> None:
    write("open.yaml", OPEN)
    write("pipe.yaml", ONLY_PIPE)
    near = run("trace", "open.yaml", "heter").stderr
    assert '"heter" in open.yaml' in near
    assert near.endswith(': did you mean "heater"?\n')
    assert run("trace", "open.yaml", "boiler9").stderr.endswith('"boiler9" in open.yaml; there is heater\n')
    result = run("trace", "pipe.yaml", "heater")
    assert (result.exit_code, result.stderr) == (2, 'no heater is called "heater" in pipe.yaml; there is none\n')


@pytest.mark.parametrize(
    "text",
    [
        ONLY_PIPE.replace("t: tee", '"t\\e[2J\\u202e": tee'),
        ONLY_PIPE.replace("m -> t", '"m -> \\e[2J\\u202e"'),
        ONLY_PIPE.replace("tee", '"\\e[2J\\u202e"'),
        ONLY_PIPE.replace("pressure: 60", 'pressure: "60 \\e[2J\\u202e"'),
        ONLY_PIPE.replace("pressure: 60", 'pressure: 60, "\\e[2J\\u202e": 1'),
        f'rules: "\\e[2J\\u202e"\n{ONLY_PIPE}',
        f'scenarios: {{"\\e[2J": {{change: [{{close: "\\u202e"}}]}}}}\n{ONLY_PIPE}',
        "a: \x1b[2J",
        "\u202ea: [",
    ],
)
def test_hostile_text_is_escaped_in_errors(write: Write, text: str) -> None:
    result = run("check", write("f.yaml", text))
    assert result.exit_code == 2
    assert result.stderr
    assert not any(character in result.output for character in CONTROL)


def test_hostile_arguments_are_escaped(write: Write) -> None:
    write("open.yaml", OPEN)
    hostile = "\x1b[2J\u202e"
    for arguments in (
        ["check", hostile],
        ["check", "open.yaml", "--rules", hostile],
        ["trace", "open.yaml", hostile],
        ["remedies", "open.yaml", hostile],
        ["kinds", hostile],
    ):
        result = run(*arguments)
        assert result.exit_code == 2
        assert r"\x1b[2J\u202e" in result.stderr
        assert not any(character in result.output for character in CONTROL)


def test_hostile_file_name_is_escaped(write: Write) -> None:
    result = run("check", write("\x1b[2J.yaml", OPEN))
    assert result.stdout.startswith(r"\x1b[2J.yaml")
    assert document(run("check", "\x1b[2J.yaml", "--format", "json"))["reports"][0]["file"] == "\x1b[2J.yaml"


def test_option_names_rules_for_every_circuit_or_one_for_each(write: Write) -> None:
    write("f.yaml", f"rules: {{water: irc-2021, heating: en-12828}}\n{ONLY_PIPE}")

    def judged(*options: str) -> tuple[object, object]:
        (report,) = document(run("check", "f.yaml", "--format", "json", *options))["reports"]
        return report["rules"], report["rules_from"]

    both = {"water": "upc-2024", "heating": "us-boiler"}
    assert judged() == ({"water": "irc-2021", "heating": "en-12828"}, "file")
    assert judged("--rules", "upc-2024") == ("upc-2024", "command line")
    assert judged("--rules", "water=upc-2024", "--rules", "heating=us-boiler") == (both, "command line")
    # what is named for one circuit leaves the other to the file, or to what is named for all
    assert judged("--rules", "heating=us-boiler") == (
        {"water": "irc-2021", "heating": "us-boiler"},
        {"water": "file", "heating": "command line"},
    )
    assert judged("--rules", "upc-2024", "--rules", "heating=us-boiler") == (both, "command line")


def test_option_names_a_file_for_a_circuit_and_a_path_with_an_equals_sign_for_all(write: Write) -> None:
    write("f.yaml", ONLY_PIPE)
    write("ours=1.yaml", "profile: ours\ntitle: Ours\nextends: ipc-2021\n")
    for option, rules in (("water=ours=1.yaml", {"water": "ours", "heating": "general"}), ("./ours=1.yaml", "ours")):
        (report,) = document(run("check", "f.yaml", "--format", "json", "--rules", option))["reports"]
        assert report["rules"] == rules


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (["watr=ipc-2021"], '--rules watr=ipc-2021: no circuit is called "watr": did you mean "water"?'),
        (["solar=ipc-2021"], '--rules solar=ipc-2021: no circuit is called "solar"; there is water and heating'),
        (["water=genral"], 'no rule profile is called "genral": did you mean "general"?'),
        (["heating="], 'no rule profile is called ""; there is as-nzs-3500, '),
        (
            ["water=upc-2024", "water=ipc-2021"],
            "--rules names two profiles for the circuit water, upc-2024 and ipc-2021; name one",
        ),
        (["upc-2024", "ipc-2021"], "--rules names two profiles for every circuit, upc-2024 and ipc-2021; name one"),
    ],
)
def test_option_that_names_rules_wrongly_is_told_in_a_sentence(write: Write, options: list[str], said: str) -> None:
    write("f.yaml", ONLY_PIPE)
    given = [word for option in options for word in ("--rules", option)]
    for command in ("check", "trace", "survey"):
        result = run(command, "f.yaml", *given)
        assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (2, "", 1)
        assert result.stderr.startswith(said)


@pytest.mark.parametrize(
    "words",
    [
        "check f.yaml", "trace f.yaml", "size f.yaml", "sweep f.yaml", "sweep f.yaml --pairs", "remedies f.yaml",
        "survey f.yaml", "compare f.yaml f.yaml", "whatif f.yaml --close valve", "report f.yaml -o o.html",
        "report f.yaml -o o.pdf", "draw f.yaml -o o.svg", "chart f.yaml --of ladder -o o.svg",
        "chart f.yaml --of tank --heater boiler -o o.svg", "check f.yaml --format sarif",
        "check f.yaml --format junit", "check f.yaml --format csv",
    ],
)  # fmt: skip
def test_every_command_that_judges_takes_rules_by_circuit(write: Write, words: str) -> None:
    drawn = """
    street -> valve -> tee1 -> heater -> tap.hot
    tee1 -> cv -> prv -> tee2 -> boiler -> pump -> emitter -> tee2
    tee2 -> tank
    """
    write("f.yaml", layout(drawn, heater="relief: {pressure: 150 psi}", prv="set: 15 psi"))
    result = run(*words.split(), "--rules", "water=upc-2024", "--rules", "heating=us-boiler")
    assert result.exit_code in {0, 1}, result.stderr
    assert result.exception is None or isinstance(result.exception, SystemExit)
