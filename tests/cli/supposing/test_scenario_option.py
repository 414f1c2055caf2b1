"""A layout in one of its scenarios, whichever command asks for it."""

import json
from pathlib import Path

import pytest
from conftest import layout
from running import Write, run

COMMANDS = {
    "draw": ["-o", "out.svg"],
    "report": ["-o", "out.html"],
    "chart": ["--of", "ladder", "-o", "out.svg"],
    "trace": [],
    "size": [],
    "warmup": ["heater"],
    "sweep": [],
}
SCENARIO = """
scenarios:
  closed: {note: n, change: [{close: valve}]}
  high: {note: n, change: [{set: {part: heater, elevation: 900 ft}}]}
  twin:
    note: n
    change:
      - add: {part: second, kind: storage_heater, volume: 40 gal, setpoint: 120 degF, run: tee -> second}
"""
RUNS = "street -> valve -> tee -> heater -> tap.hot\nheater.relief -> relief"
HOUSE = layout(RUNS, heater="input: 40000 Btu/h") + SCENARIO


@pytest.mark.parametrize("command", COMMANDS)
def test_scenario_that_is_not_there_or_cannot_be_reckoned_is_one_calm_sentence(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    result = run(command, "house.yaml", *COMMANDS[command], "--scenario", "closd")
    assert result.exit_code == 2
    assert '"closd": did you mean "closed"?' in result.output
    result = run(command, "house.yaml", *COMMANDS[command], "--scenario", "high")
    assert result.exit_code == 2
    assert 'with the scenario "high" made nothing ' in result.output
    assert "higher than the supply" in result.output
    assert not Path("out.svg").exists()
    assert not Path("out.html").exists()


@pytest.mark.parametrize("command", COMMANDS)
def test_answer_is_that_of_the_scenario_and_names_it(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    plain = run(command, "house.yaml", *COMMANDS[command])
    shut = run(command, "house.yaml", *COMMANDS[command], "--scenario", "closed")
    assert (plain.exit_code, shut.exit_code) == (0, 1)
    written = [Path(name).read_text(encoding="utf-8") for name in COMMANDS[command] if Path(name).suffix]
    assert "closed" in "".join([shut.output, *written])


@pytest.mark.parametrize("command", ["size", "sweep", "warmup"])
def test_record_for_machines_names_the_scenario(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    for given, name in (([], None), (["--scenario", "closed"], "closed")):
        told = json.loads(run(command, "house.yaml", *COMMANDS[command], *given, "--format", "json").stdout)
        assert told.get("sheets", [told])[0]["scenario"] == name


def test_heater_may_be_one_that_the_scenario_adds(write: Write) -> None:
    write("house.yaml", HOUSE)
    assert "second is a storage heater" in run("trace", "house.yaml", "second", "--scenario", "twin").stdout
    refused = run("trace", "house.yaml", "second")
    assert refused.exit_code == 2
    assert refused.output.startswith("no heater is called ")
    assert refused.output.endswith('"second" in house.yaml; there is heater\n')


CHANGING = {name: words for name, words in COMMANDS.items() if name in {"draw", "chart", "trace", "warmup"}}


@pytest.mark.parametrize("command", CHANGING)
def test_changes_are_made_and_named_as_a_scenario_is(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    shut = run(command, "house.yaml", *CHANGING[command], "--close", "valve")
    assert shut.exit_code == 1
    written = [Path(name).read_text(encoding="utf-8") for name in CHANGING[command] if Path(name).suffix]
    assert "close valve" in "".join([shut.output, *written])


@pytest.mark.parametrize("command", CHANGING)
def test_changes_come_in_their_order_after_those_of_a_scenario(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    words = ["--scenario", "closed", "--open", "valve", "--fail", "valve:shut", "--open", "valve"]
    assert run(command, "house.yaml", *CHANGING[command], *words).exit_code == 0
    assert run(command, "house.yaml", *CHANGING[command], *words[:-2]).exit_code == 1


@pytest.mark.parametrize("command", [*CHANGING, "whatif"])
def test_change_that_cannot_be_made_names_its_option(write: Write, command: str) -> None:
    write("house.yaml", HOUSE)
    own = CHANGING.get(command, [])
    refused = run(command, "house.yaml", *own, "--scenario", "closed", "--close", "valv")
    assert refused.exit_code == 2
    assert '--close valv: no part is called "valv": did you mean "valve"?' in refused.output
    unknown = run(command, "house.yaml", *own, "--fail", "valve:shutt")
    assert unknown.exit_code == 2
    assert '--fail valve:shutt: valve, a valve, cannot fail as "shutt": did you mean "shut"?' in unknown.output


def test_faulty_scenario_is_told_with_its_line_where_it_is_asked_for(write: Write) -> None:
    write("house.yaml", HOUSE + "  bad: {change: [{close: valvv}]}\n")
    for command, words in COMMANDS.items():
        assert run(command, "house.yaml", *words, "--scenario", "closed").exit_code == 1
        told = run(command, "house.yaml", *words, "--scenario", "bad")
        assert told.exit_code == 2
        assert 'no part is called "valvv": did you mean "valve"?\n' in told.output
        assert "{close: valvv}" in told.output
