import pytest

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.report.trace.walk import MOST_LINES, walked


def _walk(text: str, heater: str = "heater") -> list[str]:
    report = plumbnet.check(plumbnet.read_bytes(text.encode()))
    facts = next(one for one in report.heaters if one.name == heater)
    return list(walked(report.facts, water_walk(report, facts)))


LAST = "opens at 150 psi: the last safety device, and no control"
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
    (line,) = [line for line in _walk(HOUSE) if "meter" in line]
    assert "STOPS" in line


def test_main_is_told_as_the_way_out_where_nothing_stops_the_water() -> None:
    lines = _walk(HOUSE.replace(", check: true", ""))
    assert any("street" in line and "the way out" in line for line in lines)
    assert not any("STOPS" in line for line in lines)


def test_quiet_branches_of_a_large_house_are_told_in_one_line() -> None:
    taps = MOST_LINES + 10
    parts = "".join(f"  t{n}: fixture\n" for n in range(taps))
    runs = "".join(f"  - split -> t{n}.cold\n" for n in range(taps))
    lines = _walk(HOUSE.replace("runs:\n", f"{parts}runs:\n") + runs)
    assert len(lines) < taps
    assert "more" in lines[-1]
    assert any("meter" in line for line in lines)


def test_relief_valve_that_runs_is_told_so() -> None:
    (line,) = [line for line in _walk(HOUSE.replace("60 psi", "160 psi")) if "heater/relief" in line]
    assert "heater/relief, a relief valve: runs" in line
    assert line.endswith("above its set of 150 psi")


def test_relief_valve_behind_a_reducer_that_shuts_before_takes_none_of_it() -> None:
    low = HOUSE.replace(
        "  tap: fixture\n",
        "  tap: fixture\n  prv: {kind: pressure_reducer, set: 70 psi}\n  far: {kind: relief_valve, pressure: 90 psi}\n",
    )
    lines = _walk(low + "  - split -> prv -> far\n")
    (line,) = [line for line in lines if "far, a relief valve" in line]
    assert "a reducer on the way" in line


def test_each_step_says_how_the_water_comes_to_it() -> None:
    steps = _walk(HOUSE)[1:]
    assert [step.partition(",")[0] for step in steps] == [
        "  by its cold connection",
        "    meter",
        "    tap",
        "  by its hot connection",
        "  by its relief connection",
    ]
    assert "STOPS it" in steps[1]
    assert steps[2].endswith("a dead end")
    assert steps[4].endswith(LAST)


@pytest.mark.parametrize(
    ("lost", "words"),
    [
        ("{kind: expansion_tank, volume: 2 gal, precharge: 60 psi, state: waterlogged}", "full: its air is gone, "),
        ("{kind: relief_valve, pressure: 150 psi, state: plugged}", "plugged: it opens at no pressure, DANGER"),
    ],
)
def test_outlet_that_takes_nothing_any_more_says_why(lost: str, words: str) -> None:
    lines = _walk(HOUSE.replace("  tap: fixture\n", f"  tap: fixture\n  far: {lost}\n") + "  - split -> far\n")
    (line,) = [line for line in lines if "far, " in line]
    assert line.partition(": ")[2].startswith(words)
