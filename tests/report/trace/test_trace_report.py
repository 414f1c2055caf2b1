"""The way of the water: what is met, in which order, and where it ends; the words are in golden/trace.out."""

import pytest
from conftest import system

import plumbnet
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.report.text.heater_text import CAUTION
from plumbnet.report.trace.trace_report import trace_text

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def traced(runs: str, name: str = "heater", **parts: str) -> str:
    report = plumbnet.check(system(runs, **parts))
    return trace_text(report.facts, water_walk(report, next(one for one in report.heaters if one.name == name)))


def flat(told: str) -> str:
    return " ".join(told.split())


def walk(told: str) -> list[str]:
    """The lines of the walk, from what the water meets to the ladder."""
    lines = told.splitlines()
    start = lines.index("What the growing water tries, in turn:") + 1
    return lines[start : lines.index("", start)]


def test_trace_of_a_trapped_heater_from_end_to_end() -> None:
    told = flat(traced(CLOSED))
    met = ["grows by 0.839 gal", "cold connection: tee > cv", "STOPS", "tap: shut", "relief connection"]
    ends = [
        "80 psi - the limit -",
        "150 psi relief, safety relief",
        "on its way out: cv.",
        "heater is TRAPPED",
        "behind it is relief",
        "5 gal",
    ]
    places = [told.index(piece) for piece in [*met, *ends, CAUTION]]
    assert places == sorted(places)


def rungs(told: str) -> list[str]:
    """The lines of the ladder."""
    lines = told.splitlines()
    start = lines.index("As the pressure climbs, these open in turn (read at the heater):") + 1
    return lines[start : lines.index("", start)]


@pytest.mark.parametrize(("spill", "beyond"), [("80 psi", ""), ("81 psi", "  past the limit")])
def test_outlet_at_the_limit_is_not_past_it(spill: str, beyond: str) -> None:
    told = traced("street -> cv -> tee -> heater -> tap.hot\ntee -> spill", spill=f"pressure: {spill}")
    limit, opens = "      80 psi  - the limit -", f"      {spill}  spill, expansion relief{beyond}"
    assert rungs(told) == ([limit, opens] if beyond else [opens, limit])


def test_outlet_that_opens_at_the_pressure_of_the_fill_is_not_past_the_limit_though_that_is() -> None:
    told = traced("street -> valve -> heater -> tap.hot\nheater.relief -> relief", street="pressure: 95 psi")
    limit, by_street, by_relief = rungs(told)
    assert "80 psi  - the limit" in limit
    assert "95 psi  street" in by_street
    assert not by_street.endswith("past the limit")
    assert "150 psi  relief" in by_relief
    assert by_relief.endswith("past the limit")


def test_second_try_goes_on_from_where_the_first_has_been() -> None:
    lines = walk(traced(f"{CLOSED}\ntee -> valve -> tank"))
    assert [line.partition(", a")[0] for line in lines[:5]] == [
        "  1. Out of its cold connection: tee > cv.",
        "     cv",
        "  2. tap: shut",
        "  3. From tee: valve > tank.",
        "     tank",
    ]


@pytest.mark.parametrize(
    ("runs", "parts", "said"),
    [
        ("street -> valve -> heater -> tap.hot", {"valve": "state: shut"}, "valve, a valve, is shut"),
        (
            "street -> prv -> heater -> tap.hot",
            {"prv": "bypass: true"},
            "through its bypass once it stands above 60 psi",
        ),
        (
            "street -> prv -> heater -> tap.hot",
            {"prv": "bypass: true", "street": "pressure: 95 psi"},
            "through its bypass only above 95 psi",
        ),
        ("street -> prv -> heater -> tap.hot", {}, "prv, a pressure reducer, STOPS it"),
        (
            "street -> booster -> heater -> tap.hot",
            {"booster": "check: false"},
            "booster, a booster pump, has no check",
        ),
        ("street -> cv -> tee -> heater -> cv2 -> tap.hot", {}, "cv2, a check valve, lets it pass"),
        ("street -> tee -> heater -> tap.hot\ntee -> tank", {}, "tank, takes water in"),
        ("street -> heater -> tap.hot", {}, "any amount once it stands above 60 psi"),
        ("street -> cv -> heater -> tap.hot\nheater.relief -> vent", {}, "any amount above 17.3 psi: the way out"),
        ("street -> cv -> tee -> heater -> tap.hot\ntee -> spill", {}, "spill, an expansion relief, opens at 100 psi"),
    ],
)
def test_each_device_is_told_by_what_it_does(runs: str, parts: dict[str, str], said: str) -> None:
    assert said in flat(traced(runs, **parts))


def test_reducer_with_its_set_already_beyond_is_told_as_stopping() -> None:
    told = traced("street -> cv -> tee -> heater -> prv -> tap.hot", prv="set: 50 psi")
    assert "stands at the set pressure already" in flat(told)


def test_pressures_are_read_at_the_heater() -> None:
    told = traced("street -> heater -> tap.hot", heater="elevation: 30 ft")
    assert "once it stands above 47 psi" in told
    assert "Cold, it stands at 47 psi." in told


def test_open_heater_ends_with_its_way_and_the_valves_that_matter() -> None:
    told = flat(traced("street -> valve -> heater -> tap.hot"))
    assert "OPEN: heater > valve > street. " in told
    assert "Shut valve" in told


def test_controlled_heater_ends_with_where_it_stands() -> None:
    told = flat(traced(f"{CLOSED}\ntee -> tank", tank="volume: 5 gal"))
    assert "CONTROLLED" in told
    assert "It comes to 75.1 psi when" in told


def test_sealed_heater_ends_with_the_danger() -> None:
    told = traced("street -> cv -> heater -> tap.hot")
    assert "Nothing it can reach opens" in told
    assert "SEALED: not even a relief valve" in flat(told)
    assert "DANGER" in told


def test_heater_on_demand_is_followed_as_if_it_were_heated() -> None:
    told = flat(traced("street -> cv -> tankless -> tap.hot", "tankless"))
    assert told.startswith("tankless is a tankless heater: it fires")
    assert "follow where that could go." in told
    assert "ON-DEMAND: it fires only while" in told


def test_driven_loop_is_told() -> None:
    told = traced("street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee")
    assert "pump drives water through " in told


def test_heater_no_water_reaches_is_told_without_a_pressure() -> None:
    told = traced("tee -> heater -> tap.hot\nstreet -> tap2.cold")
    assert "Cold, it stands" not in told
    assert "from cold to 140 degF" in told


def test_worst_piece_of_a_loop_is_told_without_losing_the_way() -> None:
    """The piece between two checks stands at a limit of its own, to which the heater's growth pushes."""
    runs = """street -> prv -> tee1 -> heater -> tee2 -> tap.hot
              tee2 -> pump -> cv2 -> store -> cv3 -> tee1
              heater.relief -> relief"""
    told = traced(runs, street="pressure: 70 psi", prv="bypass: true", store="rating: 55 psi")
    assert "store is made for no more, reached through" in told
    assert "cv2, comes to 70 psi, above its 55 psi." in told


def test_ends_of_a_long_walk_are_told_in_one_line() -> None:
    far = "\n".join(f"tee{n} -> tee{n + 1}\ntee{n} -> tap{n}.cold" for n in range(1, 60))
    lines = walk(traced(f"street -> cv -> tee1 -> heater -> tap.hot\nheater.relief -> relief\n{far}"))
    assert len(lines) < 8
    assert "cv, a check valve, STOPS it" in " ".join(lines)
    assert "tap1 to 59" in " ".join(lines)


def test_each_heater_s_own_relief_valve_is_the_last_to_stand_behind_it() -> None:
    runs = "street -> cv -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"
    fitted = {"heater1": "relief: {pressure: 150 psi}", "heater2": "relief: {pressure: 150 psi}"}
    for name in ("heater1", "heater2"):
        assert f"behind it is {name}/relief at 150 psi" in flat(traced(runs, name, **fitted))


def test_heater_without_a_relief_valve_of_its_own_is_told_the_one_it_reaches() -> None:
    runs = "street -> cv -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"
    told = flat(traced(runs, "heater2", heater1="relief: {pressure: 150 psi}"))
    assert "behind it is heater1/relief at 150 psi" in told


def test_walk_goes_on_past_the_limit_to_what_the_ladder_has() -> None:
    told = traced("street -> prv -> heater -> tap.hot", prv="bypass: true", street="pressure: 95 psi")
    assert walk(told)[0] == "  1. Out of its cold connection: prv > street."
    assert "prv, a pressure reducer, lets it back through its bypass only above 95 psi, which is past" in flat(told)
    assert "street, a main, takes back any amount once it stands above 95 psi: the way out, past the" in flat(told)
    assert "      95 psi  street, main  past the" in told


def test_outlet_beyond_what_takes_any_amount_takes_none_as_the_ladder_has_it() -> None:
    told = traced("street -> tee -> heater -> cv -> tee2 -> tap.hot\ntee2 -> spill")
    assert "takes none of it: street takes any" in flat(told)
    assert "psi  spill" not in told


def test_gate_beyond_what_takes_any_amount_is_not_passed() -> None:
    told = flat(traced("street -> tee -> heater -> cv -> tee2 -> tap.hot\nstreet2 -> tee2", street2="pressure: 75 psi"))
    assert "cv, a check valve, lets it pass" in told
    assert "only above 75 psi: street" in told
    assert "street2" not in told


def test_waterlogged_tank_is_full_and_a_plugged_relief_valve_a_danger() -> None:
    told = flat(
        traced(
            "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief",
            tank="state: waterlogged",
            relief="state: plugged",
        )
    )
    assert "tank, an expansion tank, is full" in told
    assert "relief, a relief valve, is plugged" in told


def test_reducer_that_stands_wide_open_is_not_counted() -> None:
    open_now = "prv, a pressure reducer, is open now"
    assert open_now in flat(traced("street -> prv -> heater -> tap.hot", street="pressure: 45 psi"))
    assert open_now not in flat(traced("street -> prv -> heater -> tap.hot", street="pressure: 50 psi"))
    assert open_now not in flat(traced("street -> cv -> heater -> tap.hot"))


@pytest.mark.parametrize(
    ("tank", "said"),
    [
        (
            "precharge: 40 psi",
            "from 60 psi on; it is charged to 40 psi where the line stands at 60 psi: it is part full; charge",
        ),
        (
            "precharge: 70 psi",
            "from 70 psi on; it is charged to 70 psi where the line stands at 60 psi: it takes nothing before",
        ),
        ("precharge: 59 psi", "from 60 psi on."),
    ],
)
def test_tank_that_is_charged_wrong_is_named_with_its_charge(tank: str, said: str) -> None:
    told = flat(traced("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank=tank))
    assert told.partition("its air ")[2].startswith(said)


def test_tank_of_a_well_belongs_charged_to_just_under_the_cut_in() -> None:
    runs = "well -> tee -> cv -> tee2 -> heater -> tap.hot\ntee2 -> tank"
    told = flat(traced(runs, tank="precharge: 20 psi")).partition("its air ")[2]
    assert "part full" in told
    assert "to just under the 30 psi" in told
