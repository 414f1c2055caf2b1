"""Warm-ups as text: both ends of the bracket, and the flow beside the published one.

golden/warm-up.out holds the words.
"""

from functools import cache

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.warmup.heater_warmup import HeaterWarmup, warm_up
from plumbnet.report.warmup.warmup_data import to_csv, warmup_json
from plumbnet.report.warmup.warmup_report import time_in_words, warmup_text

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}


@cache
def warmed(runs: str = HOUSE, **parts: str) -> HeaterWarmup:
    report = plumbnet.check(system(runs, **(RELIEVED | parts)))
    return warm_up(report, report.heaters[0].name)


def test_text_tells_course_events_and_sums() -> None:
    text = warmup_text(warmed())
    assert text.startswith("drawn.yaml\nWarm-up of heater from cold")
    for piece in (
        "  0 min      50 degF           60 psi             60 psi     0 gal",
        "    0 min  the burner of heater lights",
        "heater/relief opens at 150 psi",
        "heater/relief closes again at 135 psi",
        "passes the limit of 80 psi",
        "heater reaches its setpoint, 140 degF",
        "highest pressure\n150 psi.",
        "by heater/relief: 0.",
        "never plug, cap or remove one",
    ):
        assert piece in text
    assert "the burner of heater goes out" not in text


def test_text_says_where_nothing_is_let_out_and_what_the_street_took() -> None:
    tanked = warmup_text(warmed(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal"))
    assert "No water is let out." in tanked
    assert "tank takes its first water, at 60 psi" in tanked
    assert "Gone back" not in tanked
    assert "Gone back to the supply: 0.8" in warmup_text(warmed("street -> heater -> tap.hot"))


ENDS = {
    "heater stands at 300 psi, the pressure to which a heater is tested: DANGER, expect it to break; the warm-up ends "
    "here": {"heater": "volume: 50 gal"},
    "heater is so hot, 130 degF, that the temperature element of its relief valve opens; the warm-up ends here": {
        "heater": "relief: {pressure: 150 psi, temperature: 130 degF}"
    },
}


@pytest.mark.parametrize("words", ENDS)
def test_text_says_what_ends_it(words: str) -> None:
    text = " ".join(warmup_text(warmed(**ENDS[words])).split())
    assert words in text
    assert "not hot yet" in text


def test_boiling_and_a_full_tank_aretold() -> None:
    boiling = warmed(
        "street -> heater -> tap.hot", heater="setpoint: 390 degF, relief: null", street="pressure: 30 psi"
    )
    assert "the water of heater boils at 274 degF and 30 psi; the warm-up ends here" in warmup_text(boiling)
    full = warmed(f"{HOUSE}\ntee -> tank", tank="acceptance: 0.3 gal")
    assert "its membrane lets in no more" in warmup_text(full)


def test_table_is_short_and_holds_the_first_and_the_last() -> None:
    lines = warmup_text(warmed()).splitlines()
    table = [line for line in lines if line.endswith("gal") and "degF" in line and "in tanks" not in line]
    assert 8 <= len(table) <= 15
    assert table[0].split()[:2] == ["0", "min"]


def test_text_tells_both_ends_of_the_bracket_each_with_its_walls() -> None:
    text = warmup_text(warmed())
    rigid, typical = (text.index(f"With {walls} walls:") for walls in ("rigid", "typical"))
    opens = [line for line in text.splitlines() if "heater/relief opens at 150 psi" in line]
    assert "both are told." in text
    assert rigid < text.index(opens[0]) < typical < text.index(opens[1])
    times = [float(line.split()[0]) for line in opens]
    assert times[0] < 0.5 * times[1]


def test_text_says_once_what_walls_do_not_change() -> None:
    text = warmup_text(warmed(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal"))
    assert "come to the same here." in " ".join(text.split())
    assert "With rigid walls" not in text
    assert "pressure, rigid" not in text


def test_course_that_ends_early_with_rigid_walls_says_so_in_its_table() -> None:
    rows = [line.split("  ") for line in warmup_text(warmed(heater="volume: 50 gal, relief: null")).splitlines()]
    table = [row for row in rows if any("degF" in cell for cell in row)]
    assert any("ended" in " ".join(row) for row in table)
    assert "ended" not in " ".join(table[0])


def test_flow_stands_beside_the_published_one_each_with_what_it_assumes() -> None:
    text = " ".join(warmup_text(warmed()).split())
    assert "0.0189 gpm with rigid walls, 0.0176 gpm" in text
    assert "from 80 % of the input" in text
    assert "q = av Q/(500 G c): 0.0236 gpm" in text
    assert "all 40,000 Btu/h of the input" in text


def test_same_file_same_bytes() -> None:
    first, second = warmed(), warmed.__wrapped__()
    assert [make(first) for make in (warmup_text, to_csv, warmup_json)] == [
        make(second) for make in (warmup_text, to_csv, warmup_json)
    ]


def test_no_time_at_all_is_still_a_course() -> None:
    assert "   0 min" in warmup_text(warm_up(plumbnet.check(system(HOUSE)), "heater", minutes=0.0))


def test_what_happens_at_once_happens_at_the_start() -> None:
    found = warmed(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")
    assert time_in_words(found, 1e-9) == "0 min"
    assert time_in_words(found, 30.0) == "0.5 min"


def test_relief_valve_below_its_supply_runs_from_the_start_and_neither_opens_nor_closes() -> None:
    text = " ".join(warmup_text(warmed(street="pressure: 160 psi")).split())
    assert "0 min heater/relief runs from" in text
    assert "above its set of 150 psi" in text
    assert "opens at" not in text
    assert "closes again" not in text


def test_relief_valve_at_the_very_pressure_of_its_supply_opens_with_the_first_growth() -> None:
    text = warmup_text(warmed(street="pressure: 150 psi"))
    assert "heater/relief opens at 150 psi" in text
    assert "runs" not in text


LOOPED = b"""plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  back: tee
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 40000 Btu/h, relief: 150 psi}
  mixer: {kind: mixing_valve, outlet: 120 degF}
  tap: fixture
  far: tee
  pump: circulator
runs:
  - street -> cv -> back -> heater -> mixer.hot
  - back -> mixer.cold
  - {path: mixer.mixed -> far, volume: 5 gal}
  - far -> tap.hot
  - far -> pump -> back
"""


def test_mixed_water_is_told_by_its_valve() -> None:
    told = " ".join(warmup_text(warm_up(plumbnet.check(LOOPED), "heater")).split())
    assert "the water behind mixer is at 120 degF, and the valve lets it come no hotter" in told
