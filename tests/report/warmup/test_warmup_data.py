"""Warm-ups as CSV and as JSON: the course with typical walls, and with rigid ones."""

import csv
import io
import json

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.warmup.heater_warmup import HeaterWarmup, warm_up
from plumbnet.report.warmup.warmup_data import to_csv, warmup_json

HOUSE = "street -> cv -> tee -> heater -> tap.hot"


def warmed() -> HeaterWarmup:
    report = plumbnet.check(system(HOUSE, heater="relief: {pressure: 150 psi}"))
    return warm_up(report, "heater")


def test_csv_has_a_row_to_a_moment_with_units_in_its_head() -> None:
    warming = warmed()
    rows = list(csv.DictReader(io.StringIO(to_csv(warming))))
    assert list(rows[0]) == [
        "time (min)",
        "heater temperature (degF)",
        "heater pressure (psi)",
        "heater firing",
        "heater/relief let out (gal)",
        "walls",
    ]
    assert len(rows) == len(warming.run.moments) + len(warming.rigid.run.moments)
    assert rows[0] == {
        "time (min)": "0",
        "heater temperature (degF)": "50",
        "heater pressure (psi)": "60",
        "heater firing": "1",
        "heater/relief let out (gal)": "0",
        "walls": "typical",
    }
    assert rows[-1]["heater pressure (psi)"] == "135"
    assert rows[-1]["heater firing"] == "0"


def test_csv_tells_typical_walls_and_below_them_rigid_ones() -> None:
    warming = warmed()
    rows = list(csv.DictReader(io.StringIO(to_csv(warming))))
    walls = [row["walls"] for row in rows]
    assert walls == ["typical"] * len(warming.run.moments) + ["rigid"] * len(warming.rigid.run.moments)
    opens = {
        each: next(
            float(row["time (min)"]) for row in rows if row["walls"] == each and row["heater pressure (psi)"] == "150"
        )
        for each in ("typical", "rigid")
    }
    assert opens["rigid"] < 0.5 * opens["typical"]


def test_csv_in_metric_units_and_with_tanks() -> None:
    tanked = system(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal")
    head = to_csv(warm_up(plumbnet.check(tanked, units="metric"), "heater")).splitlines()[0]
    assert head.split(",") == [
        "time (min)",
        "heater temperature (degC)",
        "heater pressure (kPa)",
        "heater firing",
        "tank water taken (L)",
        "walls",
    ]


def test_json_is_in_si_and_as_long_as_the_course() -> None:
    warming = warmed()
    found = json.loads(warmup_json(warming))
    (heater,) = found["heaters"]
    assert len(found["times_s"]) == len(heater["pressure_pa"]) == len(heater["temperature_k"]) == len(heater["firing"])
    assert heater["temperature_k"][0] == 283.15
    assert heater["highest_pa"] == pytest.approx(150.0 * PSI, rel=1e-6)
    assert heater["limit_pa"] == pytest.approx(80.0 * PSI)
    assert found["let_out_m3"]["heater/relief"][-1] == pytest.approx(warming.run.lost_m3)
    assert [event["what"] for event in found["events"]][:3] == ["burner on", "limit passed", "outlet opens"]


def test_json_holds_the_course_with_rigid_walls_under_a_key_of_its_own() -> None:
    warming = warmed()
    found = json.loads(warmup_json(warming))
    assert (found["walls"], found["rigid"]["walls"]) == ("typical", "rigid")
    assert set(found["rigid"]) < set(found)
    assert found["rigid"]["times_s"] == list(warming.rigid.run.times_s)
    lifts = [
        next(one["time_s"] for one in each["events"] if one["what"] == "outlet opens")
        for each in (found, found["rigid"])
    ]
    assert lifts[1] < 0.5 * lifts[0]


def test_json_holds_the_flow_beside_the_published_one() -> None:
    (flow,) = json.loads(warmup_json(warmed()))["discharge"].values()
    assert flow["typical_m3_s"] < flow["rigid_m3_s"] < flow["api_521_m3_s"]
    assert flow["rigid_m3_s"] == pytest.approx(0.8 * flow["api_521_m3_s"], rel=0.01)
