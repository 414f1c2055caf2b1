"""The least pressure at taps, emitters and the highest places of what is heated."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.rules.facts.low_facts import LowFacts, Use

FOOT_PSI = 0.3048 * 9806.65 / PSI


def lows(runs: str, **parts: str) -> dict[str, LowFacts]:
    return {low.name: low for low in plumbnet.check(system(runs, **parts)).facts.lows}


def psi(low: LowFacts) -> float:
    return low.least_pa / PSI


def found(runs: str, **parts: str) -> list[tuple[str, tuple[str, ...]]]:
    return [(one.name, one.parts) for one in plumbnet.check(system(runs, **parts)).findings]


def test_tap_is_judged_with_the_street_at_its_lowest_and_at_its_own_height() -> None:
    one = lows("street -> heater -> tap.hot", street="highest: 75 psi, lowest: 40 psi", tap="elevation: 50 ft")["tap"]
    assert (one.use, one.at, one.at_lowest) == (Use.TAP, "tap", True)
    assert psi(one) == pytest.approx(40 - 50 * FOOT_PSI)
    assert one.static_pa / PSI == pytest.approx(75 - 50 * FOOT_PSI)


def test_well_is_at_its_lowest_before_its_pump_starts() -> None:
    assert psi(lows("well -> heater -> tap.hot")["tap"]) == pytest.approx(30)


def test_of_hot_and_cold_the_one_with_less_counts() -> None:
    one = lows("street -> tee -> prv -> heater -> tap.hot\ntee -> tap.cold")["tap"]
    assert psi(one) == pytest.approx(50)


def test_tap_that_no_water_reaches_is_no_place_for_it() -> None:
    assert "tap" not in lows("street -> tap2.hot\ntee -> tap.hot\ntee -> heater")


# street -- prv -- tee -- boiler -- pump -- mixer -- emitter (attic) -- back to tee
def test_highest_place_of_what_a_boiler_warms_is_in_its_loop_behind_a_mixing_valve_too() -> None:
    runs = """street -> prv -> tee -> boiler -> tee2 -> mixer.hot
              mixer.mixed -> pump -> emitter -> tee3 -> tee
              tee3 -> mixer.cold"""
    one = lows(runs, emitter="elevation: 20 ft", mixer="checks: false")["boiler"]
    assert (one.use, one.at, one.is_driven, one.is_vented) == (Use.HEATER, "emitter", True, False)
    assert psi(one) == pytest.approx(50 - 20 * FOOT_PSI)


def test_store_that_no_pump_drives_is_its_own_highest_place() -> None:
    one = lows("street -> heater -> tee -> tap.hot", tee="elevation: 30 ft")["heater"]
    assert (one.at, one.is_driven) == ("heater", False)
    assert psi(one) == pytest.approx(60)


def test_radiator_without_a_pump_must_be_full_too() -> None:
    runs = "street -> prv -> tee -> boiler -> emitter -> tee"
    names = found(runs, prv="set: 8 psi", emitter="elevation: 25 ft", boiler="relief: {pressure: 30 psi}")
    assert ("circuit-not-full", ("emitter",)) in names


# cistern -- tee -- boiler -- pump -- emitter -- tee, and a vent over the top that stands empty
def test_pipe_that_ends_in_the_air_may_stand_empty_at_the_top() -> None:
    runs = """cistern -> tee -> boiler -> pump -> tee2 -> emitter -> tee
              tee2 -> vent"""
    heights = {"cistern": "elevation: 20 ft", "vent": "elevation: 30 ft", "emitter": "elevation: 19 ft"}
    one = lows(runs, **heights)["boiler"]
    assert (one.at, one.is_vented) == ("emitter", True)
    assert psi(one) == pytest.approx(FOOT_PSI)
    assert not {name for name, _ in found(runs, **heights)} & {"circuit-not-full", "circuit-top-below-least"}
    assert ("circuit-not-full", ("emitter",)) in found(runs, **heights | {"emitter": "elevation: 20 ft"})


def test_open_tank_through_which_a_loop_runs_is_no_place_of_it() -> None:
    """It stands open to the air, and no water is missed there: what is judged is the boiler below it."""
    one = lows("cistern -> boiler -> pump -> emitter -> cistern.out", cistern="elevation: 20 ft")["boiler"]
    assert (one.at, one.is_driven, one.is_vented) == ("boiler", True, True)
    assert psi(one) == pytest.approx(20 * FOOT_PSI)


def test_what_keeps_hot_water_liquid_is_asked_of_plain_water_only() -> None:
    runs = "street -> loop -> tee -> boiler -> pump -> emitter -> tee"
    plain = lows(runs, boiler="setpoint: 230 degF")["boiler"]
    assert plain.hot_k == pytest.approx(383.15)
    assert plain.vapour_pa == pytest.approx(143_380 - 101_325, rel=1e-3)  # 110 degC: 1.4338 bar, steam tables
    mixed = lows(runs, boiler="setpoint: 200 degF, antifreeze: {glycol: propylene, share: 30 %}")["boiler"]
    assert (mixed.hot_k, mixed.vapour_pa, mixed.boils_k) == (None, 0.0, None)
    assert lows(runs)["boiler"].vapour_pa == 0.0


def test_one_hidden_tap_is_told_among_many_and_accepted_alone() -> None:
    runs = "street -> tee -> tap1.hot\n" + "\n".join(f"tee -> tap{number}.hot" for number in range(2, 9))
    high = {f"tap{number}": "elevation: 150 ft" for number in range(2, 9)}
    told = [parts for name, parts in found(runs, **high) if name == "tap-without-water"]
    assert told == [(f"tap{number}",) for number in range(2, 9)]


def test_circuit_with_a_tank_and_a_relief_valve_is_not_open_to_the_air_and_one_with_a_vent_is() -> None:
    closed = "street -> prv -> tee -> boiler -> pump -> emitter -> tee\ntee -> tank\ntee -> relief"
    assert not lows(closed)["boiler"].is_vented
    assert lows(f"{closed}\ntee -> vent", vent="elevation: 140 ft")["boiler"].is_vented


def test_no_pump_is_said_to_drive_the_water_at_a_tap() -> None:
    found = lows("street -> tee -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee")
    assert (found["tap"].is_driven, found["heater"].is_driven) == (False, True)


# boiler -- tee -- valve1 (attic) -- tee2 -- pump -- back, and valve2 (attic) beside valve1
@pytest.mark.parametrize(("first", "second"), [("1", "2"), ("2", "1")])
def test_of_two_places_equally_high_the_first_by_name_is_told(first: str, second: str) -> None:
    runs = f"""street -> prv -> tee3 -> boiler.return
    boiler.supply -> tee1 -> valve{first} -> tee2 -> pump -> tee3
    tee1 -> valve{second} -> tee2"""
    attic = "elevation: 20 ft"
    assert lows(runs, valve1=attic, valve2=attic)["boiler"].at == "valve1"
