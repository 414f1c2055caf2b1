"""The tank that a place asks for: the least that holds, by Boyle's law on paper, and what is said beside it."""

from dataclasses import replace

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.required_tank.tank_location import tank_place
from plumbnet.analysis.required_tank.tank_trial import TankTrial
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.vessels.tank import nominal_sizes
from plumbnet.rules.rule_profile import profile

GALLON = 231 * 0.0254**3
METRE_PA = 9806.65
ONE = "street -> cv -> tee -> heater -> tap.hot"
TANKED = f"{ONE}\ntee -> tank"
ROW = "street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot"


def trial(runs: str, name: str = "heater", serves: tuple[str, ...] = (), **parts: str) -> TankTrial:
    """The place beside a heater, for it and those served with it."""
    layout = drawn(runs, **parts)
    judge = judge_of(layout.network, profile("general"))
    case = judge.case(next(one for one in layout.network.heated if one.name == name))
    heaters = tuple(one for one in layout.network.heated if one.name in (serves or (name,)))
    loading = judge.settling.loading
    return TankTrial(layout.network, judge.limits, case.neighbourhood, case.tank.task, case.method, heaters, loading)


def growth_m3(trial: TankTrial) -> float:
    """What one heater grows by; all of a test are alike."""
    return max(trial.neighbourhood.growths_m3.values())


def share(end: float, *, cold: float = 60.0) -> float:
    """Share of the gas, charged to the cold pressure, that is pressed away at the end, both in psi."""
    return 1.0 - (cold * PSI + ATMOSPHERE_PA) / (end * PSI + ATMOSPHERE_PA)


# The least


def test_least_tank_is_boyles() -> None:
    one = trial(ONE)
    least = growth_m3(one) / share(80)
    assert one.least_m3 == pytest.approx(least, rel=1e-4)
    assert one.holds_m3(least * 1.0001)
    assert not one.holds_m3(least * 0.9999)
    assert one.takes_m3 == pytest.approx(growth_m3(one), rel=1e-4)
    assert one.comes_to_pa(least) == pytest.approx(80 * PSI, rel=1e-6)
    need = one.need()
    assert (need.tank_m3, need.at, need.serves, need.beside) == (one.least_m3, "tee", ("heater",), ())
    assert (need.asked_m3, need.method, need.recharge, need.is_tight) == (None, "", (), True)
    assert need.precharge_pa == pytest.approx(60 * PSI)
    assert need.nominal_m3 == min(size for size in nominal_sizes("us") if size >= least)


def test_tank_is_charged_and_read_at_its_own_height() -> None:
    # the tee 10 m up: 14.22 psi less there, cold and hot
    one = trial(ONE, tee="elevation: 10 m")
    assert one.charge_pa == pytest.approx(60 * PSI - 10 * METRE_PA)
    assert one.comes_to_pa(one.least_m3 or 0.0) == pytest.approx(80 * PSI - 10 * METRE_PA, abs=2.0)
    lower = share(80 - 10 * METRE_PA / PSI, cold=60 - 10 * METRE_PA / PSI)
    assert one.least_m3 == pytest.approx(growth_m3(one) / lower, rel=1e-4)


def test_static_pressure_at_the_limit_leaves_no_tank() -> None:
    one = trial(ONE, street="pressure: 80 psi")
    assert one.least_m3 is None
    assert one.takes_m3 == 0.0
    need = one.need()
    assert (need.tank_m3, need.nominal_m3, need.asked_m3, need.is_tight) == (None, None, None, True)


def test_water_that_does_not_grow_needs_none() -> None:
    one = trial(ONE, heater="setpoint: 50 degF")
    assert one.neighbourhood.growths_m3 == {}
    assert one.least_m3 is None
    assert one.need().tank_m3 is None


def test_sound_tank_at_hand_is_counted_on() -> None:
    # charge right: 2 gal of the least are there
    one = trial(TANKED, tank="volume: 2 gal")
    least = growth_m3(one) / share(80)
    assert one.least_m3 == pytest.approx(least - 2 * GALLON, rel=1e-3)
    assert one.takes_m3 == pytest.approx(growth_m3(one) - 2 * GALLON * share(80), rel=1e-3)
    assert one.need().beside == ("tank",)
    assert one.need().recharge == ()


def test_worn_tank_is_not() -> None:
    one = trial(TANKED, tank="volume: 2 gal, state: waterlogged")
    assert one.least_m3 == pytest.approx(growth_m3(one) / share(80), rel=1e-4)
    assert one.need().beside == ()


def test_tank_beyond_a_check_stands_beside_and_one_before_it_does_not() -> None:
    beyond = trial("street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\ntee2 -> tank", tank="volume: 2 gal")
    assert beyond.need().beside == ("tank",)
    before = trial("street -> cv -> tee1 -> cv2 -> tee -> heater -> tap.hot\ntee1 -> tank", tank="volume: 2 gal")
    assert before.need().beside == ()


def test_both_in_a_row_are_held_in_the_worst_order() -> None:
    # the tank at the second, which also takes what the first pushes: 10 gal of the first keep their part.
    # first: V + 10 take G; second: G on top into V:  G / (10 + V) + G / V = share(80)
    one = trial(f"{ROW}\ntee1 -> tank1", "heater2", ("heater1", "heater2"), tank1="volume: 10 gal")
    grown, low, high = growth_m3(one), 1e-4, 1.0
    for _ in range(80):
        middle = (low + high) / 2
        enough = grown / (10 * GALLON + middle) + grown / middle <= share(80)
        low, high = (low, middle) if enough else (middle, high)
    assert one.task.place.name == "tee2"
    assert one.least_m3 == pytest.approx(high, rel=1e-4)
    assert one.need().serves == ("heater1", "heater2")


def test_tank_before_the_check_holds_nothing_beyond_it() -> None:
    # the second has no tank of its own: whatever stands at the first, the second brings the tap too high
    one = trial(ROW, "heater2", ("heater1", "heater2"))
    first = next(heated for heated in one.network.heated if heated.name == "heater1")
    at_first = replace(one, task=replace(one.task, place=tank_place(one.network, first, one.limits.rules)))
    assert (one.task.place.name, at_first.task.place.name) == ("tee2", "tee1")
    assert one.least_m3 == pytest.approx(2 * growth_m3(one) / share(80), rel=1e-4)
    assert at_first.least_m3 is None


# What is said beside it


def test_tank_charged_wrong_that_would_do_is_charged_right_first() -> None:
    # 5 gal do if charged to 60 psi (least 3.97); charged to 30 they are half full already
    one = trial(TANKED, tank="volume: 5 gal, precharge: 30 psi")
    (charge,) = one.need().recharge
    assert charge.tank == "tank"
    assert charge.right_pa == pytest.approx(60 * PSI)
    assert charge.wrong_pa == pytest.approx(30 * PSI)


def test_tank_charged_wrong_that_would_not_do_is_not_told() -> None:
    need = trial(TANKED, tank="volume: 3 gal, precharge: 30 psi").need()
    assert (need.recharge, need.beside) == ((), ("tank",))


def test_only_tanks_charged_wrong_are_charged_right() -> None:
    runs = f"{ONE}\ntee -> tee2 -> tank1\ntee2 -> tank2"
    one = trial(runs, tank1="volume: 2.5 gal", tank2="volume: 2.5 gal, precharge: 20 psi")
    assert [charge.tank for charge in one.need().recharge] == ["tank2"]
    assert one.need().beside == ("tank1", "tank2")


@pytest.mark.parametrize(("off_pa", "told"), [(0.8, False), (1.2, True)])
def test_charge_within_a_pascal_is_right(off_pa: float, told: bool) -> None:  # noqa: FBT001 - a table's column
    # two tanks of which one is far off, so that there is something to tell
    runs = f"{ONE}\ntee -> tee2 -> tank1\ntee2 -> tank2"
    parts = {
        "tank1": f"volume: 2.5 gal, precharge: {60 + off_pa / PSI} psi",
        "tank2": "volume: 2.5 gal, precharge: 20 psi",
    }
    assert (
        "tank1" in [charge.tank for charge in trial(runs, tank1=parts["tank1"], tank2=parts["tank2"]).need().recharge]
    ) is told


def test_method_that_asks_for_more_is_told() -> None:
    # four hundredths of 50 gal is more than they grow by, 0.83 gal or so
    need = trial(ONE, heater="sizing: uk-4-percent").need()
    assert need.tank_m3 is not None
    assert need.asked_m3 is not None
    assert need.asked_m3 > need.tank_m3
    assert need.method == "uk-4-percent"
    assert need.nominal_m3 == min(size for size in nominal_sizes("us") if size >= need.asked_m3 * (1 - 1e-9))


def test_method_that_asks_for_less_is_not_told() -> None:
    # four hundredths are less than what water grows by up to 210 degF
    need = trial(ONE, heater="setpoint: 210 degF, sizing: uk-4-percent").need()
    assert need.tank_m3 is not None
    assert (need.asked_m3, need.method) == (None, "")


def test_method_is_not_asked_where_a_tank_stands_beside() -> None:
    need = trial(TANKED, heater="sizing: uk-4-percent", tank="volume: 1 gal").need()
    assert (need.asked_m3, need.method) == (None, "")
    assert need.tank_m3 is not None


def test_method_is_not_asked_where_no_tank_holds() -> None:
    need = trial(ONE, heater="sizing: uk-4-percent", street="pressure: 80 psi").need()
    assert (need.tank_m3, need.asked_m3, need.method) == (None, None, "")


def test_heater_that_grows_by_nothing_is_held_by_no_less_than_keeps_the_relief_valve_shut() -> None:
    """It breaks no limit itself; the other's growth lifts the valve at 150 psi, unless a tank takes that before."""
    runs = f"{ONE}\ntee -> heater2 -> tap2.hot\nheater.relief -> relief"
    one = trial(runs, "heater2", heater2="setpoint: 50 degF")
    assert one.least_m3 == pytest.approx(growth_m3(one) / share(150), rel=1e-3)


def test_charge_by_the_method_is_more_at_a_tank_below_the_place_and_less_above_it() -> None:
    # EN 12828: the column up to the tap 10 m up and 0.3 bar, at the tee; 5 m below it 5 m of water more
    for below_m in (5, -5):
        one = trial(
            TANKED,
            heater="sizing: en-12828, relief: {pressure: 150 psi}",
            tap="elevation: 10 m",
            tank=f"elevation: {-below_m} m",
        )
        assert one.charge_pa == pytest.approx(10 * METRE_PA + 0.3e5)
        assert one.method_charge_pa("tank") == pytest.approx(one.charge_pa + below_m * METRE_PA)


def test_plain_tank_is_filled_from_the_air_at_whatever_height_it_hangs() -> None:
    # the air in the tank cannot be below the air: 12 m above the place nothing is taken from it
    for above_m in (12, 0, -12):
        one = trial(TANKED, heater="sizing: ashrae-air-water", tank=f"elevation: {above_m} m")
        assert one.charge_pa == 0.0
        assert one.method_charge_pa("tank") == 0.0
