import pytest

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import WaterWalk
from plumbnet.report.trace.walk import MOST_ALIKE, MOST_PARTS, walked


def _walk(text: str, heater: str = "heater") -> list[str]:
    report = plumbnet.check(plumbnet.read_bytes(text.encode()))
    facts = next(one for one in report.heaters if one.name == heater)
    return list(walked(report.facts, water_walk(report, facts)))


def _flat(text: str) -> str:
    return " ".join(" ".join(_walk(text)).split())


HOUSE = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  meter: {kind: meter, check: true}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
  - split -> tap.cold
"""


def test_check_is_told_as_what_stops_the_water() -> None:
    (line,) = [line for line in _walk(HOUSE) if "STOPS" in line]
    assert "meter, a meter," in line


def test_main_is_told_as_the_way_out_where_nothing_stops_the_water() -> None:
    lines = _walk(HOUSE.replace(", check: true", ""))
    assert any("street" in line and "the way out" in line for line in lines)
    assert not any("STOPS" in line for line in lines)


def test_many_tries_alike_are_told_by_the_first_and_the_rest_by_name() -> None:
    mixers = MOST_ALIKE + 3
    parts = "".join(f"  mixer{n}: mixing_valve\n  bath{n}: fixture\n" for n in range(mixers))
    runs = "".join(f"  - hot -> mixer{n}.hot\n  - mixer{n} -> bath{n}.hot\n" for n in range(mixers))
    runs += "".join(f"  - split -> mixer{n}.cold\n" for n in range(mixers))
    house = HOUSE.replace("runs:\n", f"{parts}  hot: tee\nruns:\n").replace("heater -> tap", "heater -> hot -> tap")
    lines = _walk(house + runs)
    assert sum("STOPS it at its cold one" in line for line in lines) == 1
    assert any(f"Likewise mixer1 to {mixers - 1}." in line for line in lines)
    assert any(f"Likewise bath1 to {mixers - 1}." in line for line in lines)


def test_long_way_is_told_by_its_ends() -> None:
    valves = MOST_PARTS + 5
    parts = "".join(f"  v{n}: valve\n" for n in range(valves))
    way = " -> ".join(f"v{n}" for n in range(valves))
    told = " ".join(
        _walk(HOUSE.replace("runs:\n", f"{parts}runs:\n").replace("meter -> split", f"meter -> {way} -> split"))
    )
    assert f"split > v{valves - 1} > " in told
    assert " more) > v2 > v1 > v0 > meter." in told


def test_relief_valve_that_runs_is_told_so() -> None:
    told = _flat(HOUSE.replace("60 psi", "160 psi"))
    assert "heater/relief, a relief valve, runs all the time" in told
    assert "above its set of 150 psi." in told


def test_relief_valve_behind_a_reducer_that_shuts_before_takes_none_of_it() -> None:
    low = HOUSE.replace(
        "  tap: fixture\n",
        "  tap: fixture\n  prv: {kind: pressure_reducer, set: 70 psi}\n  far: {kind: relief_valve, pressure: 90 psi}\n",
    )
    assert "far, a relief valve, takes none of it: a reducer on the way" in _flat(low + "  - split -> prv -> far\n")


def test_tries_come_in_order_back_then_to_shut_ends_and_last_to_the_safety_device() -> None:
    assert _walk(HOUSE) == [
        "What the growing water tries, in turn:",
        "  1. Out of its cold connection: split > meter.",
        "     meter, a meter, STOPS it: water passes only the other way.",
        "  2. tap: shut, a dead end.",
        "  3. Out of its relief connection: heater/relief, a relief valve, opens at 150 psi: the last safety",
        "     device, and no control.",
    ]


def test_end_behind_a_gate_is_told_with_the_gate_that_lets_the_water_to_it() -> None:
    lines = _walk(
        HOUSE.replace("  tap: fixture\n", "  tap: fixture\n  cv: check_valve\n  far: fixture\n")
        + "  - split -> cv -> far.cold\n"
    )
    at = lines.index("  3. From split: cv.")
    assert lines[at + 1 : at + 3] == ["     cv, a check valve, lets it pass.", "     far: shut, a dead end."]


def test_heater_that_no_pipe_leads_from_tries_nothing() -> None:
    report = plumbnet.check(plumbnet.read_bytes(HOUSE.encode()))
    (said,) = walked(report.facts, WaterWalk(report.heaters[0], ()))
    assert "no pipe leads from here" in said


@pytest.mark.parametrize(
    ("lost", "words"),
    [
        ("{kind: expansion_tank, volume: 2 gal, precharge: 60 psi, state: waterlogged}", "is full: its air is gone, "),
        ("{kind: relief_valve, pressure: 150 psi, state: plugged}", "is plugged: it opens at no pressure, DANGER"),
    ],
)
def test_outlet_that_takes_nothing_any_more_says_why(lost: str, words: str) -> None:
    told = _flat(HOUSE.replace("  tap: fixture\n", f"  tap: fixture\n  far: {lost}\n") + "  - split -> far\n")
    assert words in told
