import json

from conftest import layout
from running import Write, run

RUNS = """street -> meter -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
HOUSE = layout(RUNS, heater="relief: {pressure: 150 psi, temperature: 210 degF}", meter="check: true")


def test_margins_tell_how_far_each_number_may_stray(write: Write) -> None:
    done = run("margins", write("house.yaml", HOUSE))
    assert "number              in the file  holds from" in done.stdout
    assert "precharge of tank" in done.stdout
    assert done.stderr == ""


def test_exit_status_is_that_of_the_layout_as_it_is(write: Write) -> None:
    trapped = layout("street -> cv -> heater -> tap.hot")
    assert run("margins", write("trapped.yaml", trapped)).exit_code == 1
    assert run("margins", write("house.yaml", HOUSE)).exit_code == 0
    missing = run("margins", "nowhere.yaml")
    assert (missing.exit_code, missing.stderr) == (2, "nowhere.yaml: no such file or directory\n")


def test_options_are_those_of_other_commands(write: Write) -> None:
    file = write("house.yaml", f"{HOUSE}scenarios: {{shut: {{change: [{{close: valve}}]}}}}\n")
    document = json.loads(run("margins", file, "heater", "--format", "json", "--rules", "uk-2010").stdout)
    assert (document["heater"], document["rules"]) == ("heater", "uk-2010")
    assert " kPa" in run("margins", file, "--units", "metric").stdout
    assert "scenario: shut" in run("margins", file, "--scenario", "shut").stdout
    assert 'no heater is called "boiler"' in run("margins", file, "boiler").stderr
