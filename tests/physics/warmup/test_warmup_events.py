"""What is waited for while water warms."""

import pytest

from plumbnet.physics.fluids.water import ATMOSPHERE_PA, saturation_abs_pa
from plumbnet.physics.vessels.tank import Tank
from plumbnet.physics.vessels.walls import Shell
from plumbnet.physics.warmup.coupled_pressures import Basin, CoupledOutlet
from plumbnet.physics.warmup.heated_bodies import Body, Burner
from plumbnet.physics.warmup.warmup_events import watches
from plumbnet.physics.warmup.warmup_result import WarmupHappening
from plumbnet.physics.warmup.warmup_step import Plant

FILL = 5.0e5


def plant(outlet: CoupledOutlet) -> Plant:
    burner = Burner(name="heater", input_w=10_000.0, hot_k=333.15)
    body = Body(name="heater", burners=(burner,), shells={0: Shell(0.2)}, cold_k=283.15, fill_abs_pa=FILL)
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    basin = Basin(static_abs_pa=FILL, cold_k=283.15, tanks={"tank": tank}, outlets=(outlet,))
    return Plant({0: basin}, (), (body,))


def waited_for(plant: Plant, *, lit: bool, opened: bool) -> set[WarmupHappening]:
    now = plant.start.with_burner("heater", lit=lit)
    return {watch.what for watch in watches(plant, now.with_open(0) if opened else now)}


RELIEF = CoupledOutlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)


def test_lit_burner_is_waited_for_to_go_out_and_a_dark_one_to_light() -> None:
    lit, dark = (waited_for(plant(RELIEF), lit=each, opened=False) for each in (True, False))
    assert WarmupHappening.BURNER_OFF in lit
    assert WarmupHappening.BURNER_ON not in lit
    assert WarmupHappening.BURNER_ON in dark


def test_only_a_shut_valve_is_waited_for_to_open_and_never_a_street() -> None:
    street = CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True)
    assert WarmupHappening.OUTLET_OPENS in waited_for(plant(RELIEF), lit=True, opened=False)
    assert WarmupHappening.OUTLET_OPENS not in waited_for(plant(RELIEF), lit=True, opened=True)
    assert WarmupHappening.OUTLET_OPENS not in waited_for(plant(street), lit=True, opened=False)


def test_nothing_of_it_has_happened_in_cold_water_but_that_the_burner_calls() -> None:
    cold = plant(RELIEF)
    now = cold.start.with_burner("heater", lit=True)
    assert all(watch.excess(now) <= 0.0 for watch in watches(cold, now))
    assert [watch.what for watch in watches(cold, cold.start) if watch.excess(cold.start) > 0.0] == [
        WarmupHappening.BURNER_ON
    ]


def test_only_what_can_come_again_is_told_again() -> None:
    again = {watch.what for watch in watches(plant(RELIEF), plant(RELIEF).start) if not watch.is_told_once}
    assert again == {WarmupHappening.BURNER_ON, WarmupHappening.OUTLET_OPENS}


#   zone 2: a store that nothing heats;   zone 3: a heater 2 m above datum with a tank and a relief valve
def upstairs() -> Plant:
    burner = Burner(name="burner", input_w=10_000.0, hot_k=333.15, differential_k=6.0)
    still = Body(name="store", burners=(), shells={2: Shell(0.1)}, cold_k=283.15, fill_abs_pa=FILL)
    above = Body(
        name="heater",
        burners=(burner,),
        shells={3: Shell(0.2)},
        cold_k=283.15,
        fill_abs_pa=FILL,
        head_pa=2e4,
        element_k=372.0,
        limit_abs_pa=6.0e5,
    )
    tank = Tank(0.02, charge_abs_pa=4.8e5, start_abs_pa=FILL, most_m3=0.01, head_pa=4e4)
    held = Basin(static_abs_pa=FILL, cold_k=283.15, tanks={"tank": tank}, outlets=(RELIEF,))
    return Plant({2: Basin(static_abs_pa=FILL, cold_k=283.15), 3: held}, (), (still, above))


@pytest.mark.parametrize(
    ("told", "excess"), [(WarmupHappening.BURNER_OFF, 283.15 - 333.15), (WarmupHappening.BURNER_ON, 44.0)]
)
def test_all_that_can_happen_to_a_heater_its_tank_and_its_relief_valve(told: WarmupHappening, excess: float) -> None:
    plant = upstairs()
    now = plant.start.with_burner("burner", lit=told is WarmupHappening.BURNER_OFF)
    expected = {
        (told, "burner", 1): excess,
        (WarmupHappening.ELEMENT_OPENS, "heater", 1): 283.15 - 372.0,
        (WarmupHappening.LIMIT_PASSED, "heater", 1): 5.0e5 - 6.0e5,
        (WarmupHappening.BREAKS, "heater", 1): 5.0e5 - (ATMOSPHERE_PA + 2_068_427.2 + 2e4),
        (WarmupHappening.BOILS, "heater", 1): saturation_abs_pa(283.15) - (5.0e5 - 2e4),
        (WarmupHappening.TANK_OPENS, "tank", None): 5.0e5 - (4.8e5 + 4e4),
        (WarmupHappening.TANK_FULL, "tank", None): 5.0e5 - (2 * 4.8e5 + 4e4),  # half of the gas is pressed away
        (WarmupHappening.OUTLET_OPENS, "relief", None): 5.0e5 - (1.1e6 + 1e-3),
    }
    upstairs_now = [one for one in watches(plant, now) if one.zone == 3]
    assert [(one.what, one.name, one.body) for one in upstairs_now] == list(expected)
    assert [one.excess(now) for one in upstairs_now] == pytest.approx(list(expected.values()), rel=1e-12)
    assert {one.name for one in watches(plant, now) if one.zone == 2} == {"store"}


def test_of_mixed_water_only_its_temperature_is_waited_for_and_once() -> None:
    held = plant(RELIEF)
    behind = Body(
        name="mixer",
        burners=(),
        shells={0: Shell(0.2)},
        cold_k=283.15,
        fill_abs_pa=FILL,
        mixed_from="heater",
        mixed_k=323.15,
    )
    now = Plant(held.basins, (), (*held.bodies, behind)).start
    (watch,) = (watch for watch in watches(held, now) if watch.name == "mixer")
    assert watch.what is WarmupHappening.MIXED_REACHED
    assert watch.excess(now) == pytest.approx(-40.0)
    assert not [watch for watch in watches(held, now.with_mixed("mixer")) if watch.name == "mixer"]
