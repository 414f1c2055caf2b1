import json

from conftest import layout
from running import Write, run

RUNS = """street -> meter -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
HOUSE = layout(RUNS, heater="relief: {pressure: 150 psi, temperature: 210 degF}")


def test_sweep_tells_what_each_event_would_change(write: Write) -> None:
    done = run("sweep", write("house.yaml", HOUSE))
    assert "check  heater: open to controlled" in done.stdout
    assert (done.exit_code, done.stderr) == (0, "")


def test_exit_status_is_that_of_the_layout_as_it_is(write: Write) -> None:
    trapped = layout("street -> cv -> heater -> tap.hot")
    assert run("sweep", write("trapped.yaml", trapped)).exit_code == 1
    missing = run("sweep", "nowhere.yaml")
    assert (missing.exit_code, missing.stderr) == (2, "nowhere.yaml: no such file or directory\n")


def test_formats_and_pairs_are_those_asked_for(write: Write) -> None:
    file = write("house.yaml", HOUSE)
    document = json.loads(run("sweep", file, "--format", "json", "--pairs", "--top", "2").stdout)
    assert len(document["events"]) == 2
    assert document["pairs"]["tried"] == document["pairs"]["possible"] > 0
    assert run("sweep", file, "--format", "csv").stdout.startswith("rank,event,heater,")
    assert "Pairs of events" in run("sweep", file, "--pairs").stdout


def test_rules_and_their_limit_are_those_asked_for(write: Write) -> None:
    changes = json.loads(run("sweep", write("house.yaml", HOUSE), "--rules", "uk-2010", "--format", "json").stdout)
    assert changes["rules"] == "uk-2010"
