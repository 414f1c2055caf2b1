"""The way of the water in words, whole lines of it."""

import pytest
from conftest import system

import plumbnet
from plumbnet.report.text import CAUTION
from plumbnet.report.trace import trace
from plumbnet.report.walk import MOST_LINES

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def traced(runs: str, name: str = "heater", **parts: str) -> str:
    report = plumbnet.check(system(runs, **parts))
    return trace(report, next(one for one in report.heaters if one.name == name))


def flat(told: str) -> str:
    return " ".join(told.split())


def walk(told: str) -> list[str]:
    """The lines of the walk, from what the water meets to the ladder."""
    lines = told.splitlines()
    start = lines.index("The water pushes out of every connection. In turn it meets:") + 1
    return lines[start : lines.index("", start)]


def test_trace_of_a_trapped_heater_from_end_to_end() -> None:
    told = traced(CLOSED)
    assert told.startswith("heater is a storage heater. Every fixture is shut, and it heats up.\n")
    assert "It warms 50 gal from 50 degF to 140 degF; that water grows by 0.839 gal" in flat(told)
    assert "Cold, it stands at 60 psi. The limit is 80 psi (fixture tap)." in told
    assert walk(told) == [
        "  by its cold connection, tee, a tee: it goes every way from here",
        "  then cv, a check valve: STOPS it: water passes only the other way",
        "  by its hot connection, tap, a fixture: shut, a dead end",
        "  by its relief connection, relief, a relief valve: opens at 150 psi: the last safety device, and no control",
    ]
    assert "As the pressure climbs, these open in turn (read at the heater):" in told
    assert "     150 psi  relief, safety relief  past the limit" in told
    assert "What stops it on its way out: cv." in told
    assert (
        "So heater is TRAPPED: nothing holds it at or below 80 psi. The last to stand behind it is relief at 150 psi, "
        "for emergencies only. What it needs: an expansion tank of 5 gal" in flat(told)
    )
    assert flat(told).endswith(CAUTION)


def test_walk_goes_deeper_where_the_way_forks() -> None:
    lines = walk(traced(f"{CLOSED}\ntee -> valve -> tap2.cold"))
    assert lines[:4] == [
        "  by its cold connection, tee, a tee: it goes every way from here",
        "    cv, a check valve: STOPS it: water passes only the other way",
        "    valve, a valve: lets it through",
        "    then tap2, a fixture: shut, a dead end",
    ]


@pytest.mark.parametrize(
    ("runs", "parts", "said"),
    [
        ("street -> valve -> heater -> tap.hot", {"valve": "state: shut"}, "valve, a valve: is shut and STOPS it"),
        (
            "street -> prv -> heater -> tap.hot",
            {"prv": "bypass: true"},
            "prv, a pressure reducer: lets it back through its bypass once it stands above 60 psi",
        ),
        (
            "street -> prv -> heater -> tap.hot",
            {"prv": "bypass: true", "street": "pressure: 95 psi"},
            "lets it back through its bypass only above 95 psi, which is past the limit",
        ),
        ("street -> prv -> heater -> tap.hot", {}, "prv, a pressure reducer: STOPS it"),
        (
            "street -> booster -> heater -> tap.hot",
            {"booster": "check: false"},
            "booster, a booster pump: has no check and lets it back",
        ),
        ("street -> cv -> tee -> heater -> cv2 -> tap.hot", {}, "cv2, a check valve: lets it pass"),
        ("street -> tee -> heater -> tap.hot\ntee -> tank", {}, "tank, an expansion tank: takes water in against its"),
        ("street -> heater -> tap.hot", {}, "street, a main: takes back any amount once it stands above 60 psi"),
        (
            "street -> cv -> heater -> tap.hot\nheater.relief -> vent",
            {},
            "vent, a vent: open to the air, takes any amount above 17.3 psi: the way out",
        ),
        (
            "street -> cv -> tee -> heater -> tap.hot\ntee -> spill",
            {},
            "spill, an expansion relief: opens at 100 psi and lets the growth off to a drain",
        ),
    ],
)
def test_each_device_is_told_by_what_it_does(runs: str, parts: dict[str, str], said: str) -> None:
    assert said in flat(traced(runs, **parts))


def test_reducer_with_its_set_already_beyond_is_told_as_stopping() -> None:
    told = traced("street -> cv -> tee -> heater -> prv -> tap.hot", prv="set: 50 psi")
    assert "STOPS it: what lies beyond stands at the set pressure already" in flat(told)


def test_pressures_are_read_at_the_heater() -> None:
    told = traced("street -> heater -> tap.hot", heater="elevation: 30 ft")
    assert "takes back any amount once it stands above 47 psi" in told
    assert "Cold, it stands at 47 psi." in told


def test_open_heater_ends_with_its_way_and_the_valves_that_matter() -> None:
    told = flat(traced("street -> valve -> heater -> tap.hot"))
    assert "So heater is OPEN: heater > valve > street. Shut valve, and it would have nowhere to go." in told


def test_controlled_heater_ends_with_where_it_stands() -> None:
    told = flat(traced(f"{CLOSED}\ntee -> tank", tank="volume: 5 gal"))
    assert (
        "So heater is closed but CONTROLLED: the growth is taken up below the limit. All hot, it stands at 75.1 psi."
        in told
    )


def test_sealed_heater_ends_with_the_danger() -> None:
    told = traced("street -> cv -> heater -> tap.hot")
    assert "Nothing it can reach opens, at any pressure." in told
    assert "So heater is SEALED: not even a relief valve opens. DANGER: heated, something breaks." in flat(told)


def test_heater_on_demand_is_followed_as_if_it_were_heated() -> None:
    told = flat(traced("street -> cv -> tankless -> tap.hot", "tankless"))
    assert told.startswith("tankless is a tankless heater: it fires only while water runs through it.")
    assert "follow where that could go." in told
    assert "So tankless is closed, but ON-DEMAND: it fires only while water runs, out of an open tap." in told


def test_driven_loop_is_told() -> None:
    told = traced("street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee")
    assert "With every fixture shut, pump drives water through " in told


def test_heater_no_water_reaches_is_told_without_a_pressure() -> None:
    told = traced("tee -> heater -> tap.hot\nstreet -> tap2.cold")
    assert "Cold, it stands" not in told
    assert "from cold to 140 degF" in told


def test_worst_piece_of_a_loop_is_told_without_losing_the_way() -> None:
    """The piece between two checks stands at a limit of its own; the ladder is read from there."""
    runs = """street -> prv -> tee1 -> heater -> tee2 -> tap.hot
              tee2 -> pump -> cv2 -> store -> cv3 -> tee1
              heater.relief -> relief"""
    told = traced(runs, street="pressure: 70 psi", prv="bypass: true", store="rating: 55 psi")
    assert "The limit is 55 psi (rating of store)." in told
    assert "So heater is TRAPPED: nothing holds it at or below 55 psi." in told


def test_long_walk_tells_what_matters_and_counts_the_rest() -> None:
    far = "\n".join(f"tee{n} -> tee{n + 1}\ntee{n} -> tap{n}.cold" for n in range(1, 60))
    lines = walk(traced(f"street -> cv -> tee1 -> heater -> tap.hot\nheater.relief -> relief\n{far}"))
    assert len(lines) < MOST_LINES
    assert "cv, a check valve: STOPS it: water passes only the other way" in " ".join(lines)
    assert lines[-1].endswith(" more steps that end at shut fixtures and capped pipes")
