"""What is waited for while water warms."""

from plumbnet.physics.course import Happening
from plumbnet.physics.heating import Body, Burner
from plumbnet.physics.joined import Basin, Outlet
from plumbnet.physics.moving import Plant
from plumbnet.physics.tank import Tank
from plumbnet.physics.walls import Shell
from plumbnet.physics.watching import watches

FILL = 5.0e5


def plant(outlet: Outlet) -> Plant:
    burner = Burner(name="heater", input_w=10_000.0, hot_k=333.15)
    body = Body(name="heater", burners=(burner,), shells={0: Shell(0.2)}, cold_k=283.15, fill_abs_pa=FILL)
    tank = Tank(0.02, charge_abs_pa=FILL, start_abs_pa=FILL)
    basin = Basin(static_abs_pa=FILL, cold_k=283.15, tanks={"tank": tank}, outlets=(outlet,))
    return Plant({0: basin}, (), (body,))


def waited_for(plant: Plant, *, lit: bool, opened: bool) -> set[Happening]:
    now = plant.start.with_burner("heater", lit=lit)
    return {watch.what for watch in watches(plant, now.with_open(0) if opened else now)}


RELIEF = Outlet(name="relief", opens_abs_pa=1.1e6, blowdown_pa=1e5)


def test_lit_burner_is_waited_for_to_go_out_and_a_dark_one_to_light() -> None:
    lit, dark = (waited_for(plant(RELIEF), lit=each, opened=False) for each in (True, False))
    assert Happening.BURNER_OFF in lit
    assert Happening.BURNER_ON not in lit
    assert Happening.BURNER_ON in dark


def test_only_a_shut_valve_is_waited_for_to_open_and_never_a_street() -> None:
    street = Outlet(name="street", opens_abs_pa=FILL, gives_back=True)
    assert Happening.OUTLET_OPENS in waited_for(plant(RELIEF), lit=True, opened=False)
    assert Happening.OUTLET_OPENS not in waited_for(plant(RELIEF), lit=True, opened=True)
    assert Happening.OUTLET_OPENS not in waited_for(plant(street), lit=True, opened=False)


def test_nothing_of_it_has_happened_in_cold_water_but_that_the_burner_calls() -> None:
    cold = plant(RELIEF)
    now = cold.start.with_burner("heater", lit=True)
    assert all(watch.excess(now) <= 0.0 for watch in watches(cold, now))
    assert [watch.what for watch in watches(cold, cold.start) if watch.excess(cold.start) > 0.0] == [
        Happening.BURNER_ON
    ]


def test_only_what_can_come_again_is_told_again() -> None:
    again = {watch.what for watch in watches(plant(RELIEF), plant(RELIEF).start) if not watch.is_told_once}
    assert again == {Happening.BURNER_ON, Happening.OUTLET_OPENS}
