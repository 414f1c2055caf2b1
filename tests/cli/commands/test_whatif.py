import json
import re
from pathlib import Path

import pytest
from conftest import layout
from running import Write, run

RUNS = """street -> valve -> tee -> heater -> tap.hot
          tee -> tank"""
SCENARIOS = """
scenarios:
  shut: {note: Left shut after a repair., change: [{close: valve}]}
  bare: {change: [{close: valve}, {remove: tank}]}
"""
HOUSE = layout(RUNS, heater="relief: {pressure: 150 psi, temperature: 210 degF}") + SCENARIOS


def asked(write: Write, *arguments: str) -> tuple[int, str]:
    """Exit status, and what is printed: of a failure what it says."""
    done = run("whatif", write("house.yaml", HOUSE), *arguments)
    return done.exit_code, done.stderr or done.stdout


def test_scenario_of_the_file_is_shown_before_and_after(write: Write) -> None:
    status, text = asked(write, "--scenario", "shut")
    assert (status, "what if: shut" in text, "heater is worse: open before, controlled" in text) == (1, True, True)


def test_all_scenarios_stand_in_one_table(write: Write) -> None:
    status, text = asked(write, "--all", "--units", "metric")
    assert (status, "2 what-ifs" in text, "! controlled, 532 kPa" in text) == (1, True, True)


def test_changes_are_made_in_the_order_of_their_options(write: Write) -> None:
    status, text = asked(write, "--close", "valve", "--fail", "tank", "--open", "valve")
    (asked_for,) = re.findall("what if: (.+)\n", text)
    assert asked_for.split(", then ") == ["close valve", "let tank fail", "open valve"]
    assert (status, "open before" in text) == (1, False)
    again = asked(write, "--close", "valve", "--open", "valve", "--close", "valve")[1]
    assert "then open valve, then close valve" in again


def test_options_come_after_each_scenario(write: Write) -> None:
    status, text = asked(write, "--scenario", "shut", "--set", "tank.volume=1 gal", "--format", "json")
    (found,) = json.loads(text)["whatifs"]
    assert status == 1
    assert found["change"] == [{"close": "valve"}, {"set": {"part": "tank", "volume": "1 gal"}}]
    assert found["after"]["heaters"][0]["verdict"] == "trapped"


def test_every_action_has_its_option(write: Write) -> None:
    options = {
        "--close": "valve",
        "--open": "valve",
        "--draw": "tap",
        "--fail": "tank:waterlogged",
        "--set": "heater.setpoint=150 degF",
        "--insert": "{part: cv, kind: check_valve, between: [tee, heater]}",
        "--add": "{part: v, kind: vent, elevation: 200 ft, run: tee -> v}",
        "--remove": "tank",
    }
    words = [word for option in options.items() for word in option]
    found = json.loads(asked(write, *words, "--format", "json")[1])["whatifs"][0]["change"]
    assert [next(iter(change)) for change in found] == [option[2:] for option in options]


def test_layout_that_stays_fine_ends_with_status_0(write: Write) -> None:
    assert asked(write, "--set", "heater.setpoint=150 degF")[0] == 0


def test_file_stays_as_it_is(write: Write) -> None:
    asked(write, "--close", "valve")
    assert Path("house.yaml").read_text(encoding="utf-8") == HOUSE


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ([], 'nothing is supposed; name one with --scenario: "shut", "bare"'),
        (["--scenario", "sut"], 'no scenario is called "sut": did you mean "shut"?'),
        (["--close", "valv"], '--close valv: no part is called "valv": did you mean "valve"?'),
        (["--open", "tank"], "--open tank: tank is an expansion_tank; only a valve can be opened or closed"),
        (["--draw", "tank"], "--draw tank: tank is an expansion_tank; water is drawn at a fixture"),
        (
            ["--close", "valve", "--remove", "tee"],
            "--remove tee: tee joins 3 pipes; a part with at most two can be taken out",
        ),
        (
            ["--fail", "tank:dry"],
            '--fail tank:dry: tank, an expansion_tank, cannot fail as "dry"; write how: waterlogged, charge_lost',
        ),
        (
            ["--fail", "heater"],
            (
                "--fail heater: heater, a storage_heater, can fail in several ways; write how: "
                "as_hot_as_its_relief_valve_lets_it, exchanged_for_a_tankless_one"
            ),
        ),
        (["--set", "heater"], '--set heater: write it as part.field=value, for example "heater.setpoint=140 degF"'),
        (
            ["--set", "heater.setpont=150"],
            '--set heater.setpont=150: heater, a storage_heater, has no field "setpont": did you mean "setpoint"?',
        ),
        (
            ["--set", "heater.volume=-1 gal"],
            '--set heater.volume=-1 gal: volume: "-1 gal" is too low; at least 0.000265 gal is wanted here',
        ),
        (
            ["--insert", "{part: cv}"],
            (
                '--insert {part: cv}: insert needs "kind"; for example kind: expansion_tank\n'
                '--insert {part: cv}: insert needs "between"; for example between: [split, heater]'
            ),
        ),
        (
            ["--add", "{part: [}"],
            '--add {part: [}: a value is missing before "}"; put text with brackets or commas in quotes',
        ),
        (["--scenario", "bare", "--fail", "tank"], '--fail tank: no part is called "tank"; name one that is there'),
        (
            ["--set", "heater.elevation=400 ft"],
            (
                "with the changes made nothing can be computed: heater: its piping reaches higher than the supply "
                "can lift water; look at the elevations"
            ),
        ),
        (
            ["--scenario", "shut", "--set", "heater.elevation=400 ft"],
            (
                'with the scenario "shut" made nothing can be computed: heater: its piping reaches higher than the '
                "supply can lift water; look at the elevations"
            ),
        ),
    ],
)
def test_mistake_names_the_option_and_what_would_be_right(write: Write, arguments: list[str], said: str) -> None:
    assert asked(write, *arguments) == (2, f"{said}\n")


def test_file_without_scenarios_asks_for_a_change(write: Write) -> None:
    write("bare.yaml", layout("street -> heater"))
    assert run("whatif", "bare.yaml").stderr.startswith("nothing is supposed; give a change")
    assert run("whatif", "bare.yaml", "--all").stderr.startswith("the file has no scenario")


def test_nothing_of_an_option_reaches_the_terminal_as_it_is(write: Write) -> None:
    status, text = asked(write, "--close", "a\x1b[2J")
    assert (status, "\x1b" in text) == (2, False)


def test_bad_scenario_is_told_behind_the_others(write: Write) -> None:
    write("house.yaml", layout("street -> valve -> heater -> tap.hot") + BAD)
    told = run("whatif", "house.yaml", "--all")
    assert told.exit_code == 2
    assert "shut      ! " in told.stdout
    assert 'house.yaml:21:26: no part is called "valvv": did you mean "valve"?' in told.stderr
    alone = run("whatif", "house.yaml", "--scenario", "bad")
    assert (alone.exit_code, alone.stdout) == (2, "")
    assert run("whatif", "house.yaml", "--scenario", "shut").exit_code == 1


def test_scenario_shows_the_changes_of_what_it_builds_on(write: Write) -> None:
    write("house.yaml", layout("street -> valve -> heater -> tap.hot") + BAD)
    told = run("whatif", "house.yaml", "--scenario", "more")
    assert "changes: close valve, then draw tap\n" in told.stdout


BAD = """
scenarios:
  shut: {change: [{close: valve}]}
  bad: {change: [{close: valvv}]}
  more: {after: shut, change: [{draw: tap}]}
"""
