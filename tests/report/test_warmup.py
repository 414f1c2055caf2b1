"""Warm-ups as text, CSV and JSON."""

import csv
import io
import json

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.warming import Warming, warm_up
from plumbnet.report.warmup import time_in_words, to_csv, to_json, to_text

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}


def warmed(runs: str = HOUSE, **parts: str) -> Warming:
    report = plumbnet.check(system(runs, **(RELIEVED | parts)))
    return warm_up(report, report.heaters[0].name)


def test_text_tells_course_events_and_sums() -> None:
    text = to_text(warmed())
    assert text.startswith("drawn.yaml\nWarm-up of heater from cold, every fixture shut. 80 % of the input reaches")
    for line in (
        "    time  temperature   pressure  in tanks     let out",
        "   0 min      50 degF     60 psi     0 gal       0 gal",
        "    0 min  the burner of heater lights",
        "heater/relief opens at 150 psi and lets out what must go",
        "heater/relief closes again at 135 psi, once nothing more grows",
        "the pressure at heater passes the limit of 80 psi",
        "heater reaches its setpoint, 140 degF, and its burner goes out",
        "highest pressure 150 psi.",
        "Let out at this heat-up: 0.",
        "never plug, cap or remove one",
    ):
        assert line in text
    assert "the burner of heater goes out" not in text


def test_text_says_where_nothing_is_let_out_and_what_the_street_took() -> None:
    tanked = to_text(warmed(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal"))
    assert "No water is let out." in tanked
    assert "tank takes its first water, at 60 psi" in tanked
    assert "Gone back" not in tanked
    assert "Gone back to the supply: 0.8" in to_text(warmed("street -> heater -> tap.hot"))


ENDS = {
    "heater stands at 300 psi, the pressure to which a heater is tested: DANGER, expect it to break; the warm-up ends "
    "here": {"heater": "volume: 50 gal"},
    "heater is so hot, 130 degF, that the temperature element of its relief valve opens; the warm-up ends here": {
        "heater": "relief: {pressure: 150 psi, temperature: 130 degF}"
    },
}


@pytest.mark.parametrize("words", ENDS)
def test_text_says_what_ends_it(words: str) -> None:
    text = " ".join(to_text(warmed(**ENDS[words])).split())
    assert words in text
    assert "not hot yet" in text


def test_boiling_and_a_full_tank_aretold() -> None:
    boiling = warmed(
        "street -> heater -> tap.hot", heater="setpoint: 390 degF, relief: null", street="pressure: 30 psi"
    )
    assert "the water of heater boils at 274 degF and 30 psi; the warm-up ends here" in to_text(boiling)
    full = warmed(f"{HOUSE}\ntee -> tank", tank="acceptance: 0.3 gal")
    assert "its membrane lets in no more" in to_text(full)


def test_table_is_short_and_holds_the_first_and_the_last() -> None:
    lines = to_text(warmed()).splitlines()
    table = [line for line in lines if line.endswith("gal") and "degF" in line and "in tanks" not in line]
    assert 8 <= len(table) <= 15
    assert table[0].split()[:2] == ["0", "min"]


def test_csv_has_a_row_to_a_moment_with_units_in_its_head() -> None:
    warming = warmed()
    rows = list(csv.DictReader(io.StringIO(to_csv(warming))))
    assert list(rows[0]) == [
        "time (min)",
        "heater temperature (degF)",
        "heater pressure (psi)",
        "heater firing",
        "heater/relief let out (gal)",
    ]
    assert len(rows) == len(warming.run.moments)
    assert rows[0] == {
        "time (min)": "0",
        "heater temperature (degF)": "50",
        "heater pressure (psi)": "60",
        "heater firing": "1",
        "heater/relief let out (gal)": "0",
    }
    assert rows[-1]["heater pressure (psi)"] == "135"
    assert rows[-1]["heater firing"] == "0"


def test_csv_in_metric_units_and_with_tanks() -> None:
    tanked = system(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")
    head = to_csv(warm_up(plumbnet.check(tanked, units="metric"), "heater")).splitlines()[0]
    assert head == "time (min),heater temperature (degC),heater pressure (kPa),heater firing,tank water taken (L)"


def test_json_is_in_si_and_as_long_as_the_course() -> None:
    warming = warmed()
    found = json.loads(to_json(warming))
    (heater,) = found["heaters"]
    assert len(found["times_s"]) == len(heater["pressure_pa"]) == len(heater["temperature_k"]) == len(heater["firing"])
    assert heater["temperature_k"][0] == 283.15
    assert heater["highest_pa"] == pytest.approx(150.0 * PSI, rel=1e-6)
    assert heater["limit_pa"] == pytest.approx(80.0 * PSI)
    assert found["let_out_m3"]["heater/relief"][-1] == pytest.approx(warming.run.lost_m3)
    assert [event["what"] for event in found["events"]][:3] == ["burner on", "limit passed", "outlet opens"]


def test_same_file_same_bytes() -> None:
    first, second = warmed(), warmed()
    assert [make(first) for make in (to_text, to_csv, to_json)] == [make(second) for make in (to_text, to_csv, to_json)]


def test_no_time_at_all_is_still_a_course() -> None:
    assert "   0 min" in to_text(warm_up(plumbnet.check(system(HOUSE)), "heater", minutes=0.0))


def test_what_happens_at_once_happens_at_the_start() -> None:
    found = warmed(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")
    assert time_in_words(found, 1e-9) == "0 min"
    assert time_in_words(found, 30.0) == "0.5 min"
