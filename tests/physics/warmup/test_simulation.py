"""Warm-ups in numbers: heat and water balance, and each comes to what is known of it by other ways."""

import math
from dataclasses import replace

import pytest

from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad, settle
from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.fluids.water import ATMOSPHERE_PA, enthalpy_j_kg, specific_volume_m3_kg
from plumbnet.physics.vessels.locked_volume import Climb, LockedVolume, locked_rise_k
from plumbnet.physics.vessels.tank import Tank, settled_abs_pa
from plumbnet.physics.vessels.walls import Shell, heater_shell
from plumbnet.physics.warmup import simulation
from plumbnet.physics.warmup.coupled_pressures import Basin, CoupledOutlet
from plumbnet.physics.warmup.heated_bodies import Body, Burner
from plumbnet.physics.warmup.simulation import simulate, slowest_s, usual_step_s
from plumbnet.physics.warmup.warmup_result import WarmUp, WarmupHappening
from plumbnet.physics.warmup.warmup_step import Plant

PSI = 6894.757293168361
FILL = ATMOSPHERE_PA + 60.0 * PSI
RELIEF = CoupledOutlet(name="relief", opens_abs_pa=ATMOSPHERE_PA + 150.0 * PSI, blowdown_pa=15.0 * PSI)
GALLONS_50 = 0.18927
COLD, HOT = 283.15, 333.15
INPUT_W, EFFICIENCY = 11_723.0, 0.8


def body(
    shell: Shell | None = None, *, name: str = "heater", zone: int = 0, input_w: float = INPUT_W, **own: float
) -> Body:
    burner = Burner(name=name, input_w=input_w, hot_k=own.pop("hot_k", HOT), efficiency=EFFICIENCY)
    cold_k = own.pop("cold_k", COLD)
    shells = {zone: shell or heater_shell(GALLONS_50)}
    made = Body(name=name, burners=(burner,), shells=shells, cold_k=cold_k, fill_abs_pa=FILL)
    return replace(made, **own)  # type: ignore[arg-type]  # its fields that are numbers


def tank(volume_m3: float = 0.018, most_m3: float | None = None) -> Tank:
    return Tank(volume_m3, charge_abs_pa=FILL, start_abs_pa=FILL, most_m3=most_m3)


def grown_m3(cold_k: float, hot_k: float) -> float:
    return GALLONS_50 * growth(cold_k, hot_k, pressure_abs_pa=FILL)


def basin(*outlets: CoupledOutlet, cold_k: float = COLD, unheated: Shell | None = None, **tanks: Tank) -> Basin:
    return Basin(static_abs_pa=FILL, cold_k=cold_k, tanks=tanks, outlets=outlets, unheated=unheated or Shell(0.0))


def alone(held: Basin, water: Body | None = None) -> Plant:
    return Plant({0: held}, (), (water or body(),))


CASES = {
    "tank": alone(basin(tank=tank())),
    "tank that fills": alone(basin(RELIEF, tank=tank(most_m3=0.001))),
    "tank charged above the line": alone(basin(tank=Tank(0.018, charge_abs_pa=FILL + 15 * PSI, start_abs_pa=FILL))),
    "locked, rigid": alone(basin(RELIEF), body(Shell(GALLONS_50))),
    "locked, typical walls": alone(basin(RELIEF)),
    "locked, with cold pipes": alone(basin(RELIEF, unheated=Shell(0.05))),
    "sealed": alone(basin()),
    "colder than densest": alone(basin(tank=tank(), cold_k=274.15), body(cold_k=274.15)),
    "losing heat": alone(basin(RELIEF), body(loss_w_k=20.0)),
    "street": alone(basin(CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True))),
    "vent": alone(basin(CoupledOutlet(name="vent", opens_abs_pa=FILL + 5e4))),
    "two zones": Plant(
        {0: basin(RELIEF, left=tank()), 1: basin(right=tank(0.009))},
        (OneWayGate(0, 1),),
        (body(), body(name="other", zone=1, input_w=5000.0)),
    ),
}


@pytest.fixture(scope="module", params=CASES)
def run(request: pytest.FixtureRequest) -> WarmUp:
    return simulate(CASES[request.param], until_s=7200.0)


def test_heat_put_in_is_found_again(run: WarmUp) -> None:
    books = run.books
    put_in = books.heat_j + books.pressed_j + books.brought_j
    found = run.end_j - run.start_j + books.carried_j + books.shed_j
    assert found == pytest.approx(put_in, rel=1e-9)
    assert books.heat_j > 0.0


def test_heat_is_what_the_burners_gave_while_they_fired(run: WarmUp) -> None:
    """Counted from the moments alone: the state between two of them is that of the first."""
    given = 0.0
    inputs = {"heater": INPUT_W, "other": 5000.0}
    for now, after in zip(run.moments, run.moments[1:], strict=False):
        given += sum(inputs[name] for name in now.firing) * EFFICIENCY * (after.time_s - now.time_s)
    assert run.books.heat_j == pytest.approx(given, rel=1e-9)


def test_every_kilogram_is_accounted_for(run: WarmUp) -> None:
    lost = sum(run.books.lost_kg.values())
    assert run.end_kg + lost == pytest.approx(run.start_kg + run.books.fed_kg, rel=1e-12)


def test_time_never_runs_back_and_no_pressure_falls_below_the_fill(run: WarmUp) -> None:
    assert list(run.times_s) == sorted(run.times_s)
    assert min(min(moment.pressures_abs_pa.values()) for moment in run.moments) >= FILL


def test_pressing_and_enthalpy_are_those_of_the_course_itself() -> None:
    """Rigid walls: the integral of V dp is V times the rise, and enthalpy is read at temperature and pressure."""
    run = simulate(alone(basin(), body(Shell(GALLONS_50))))
    first, last = run.moments[0], run.moments[-1]
    assert run.books.pressed_j == pytest.approx(
        GALLONS_50 * (last.pressures_abs_pa[0] - first.pressures_abs_pa[0]), rel=1e-6
    )
    specific = enthalpy_j_kg(last.temperatures_k["heater"], pressure_abs_pa=last.pressures_abs_pa[0])
    assert run.end_j == pytest.approx(run.end_kg * specific, rel=1e-9)


def test_tank_ends_where_boyle_says() -> None:
    run = simulate(CASES["tank"])
    grown = grown_m3(COLD, HOT)
    assert run.moments[-1].pressures_abs_pa[0] == pytest.approx(settled_abs_pa(grown, [tank()]), rel=1e-9)
    assert run.moments[-1].taken_m3["tank"] == pytest.approx(grown, rel=1e-9)


def test_tank_takes_its_time_by_hand() -> None:
    """189.2 kg, 4.18 kJ/kg K, 50 K from 9378 W: 4217 s."""
    assert simulate(CASES["tank"]).times_s[-1] == pytest.approx(189.22 * 4180.0 * 50.0 / 9378.4, rel=1e-3)


def test_water_colder_than_densest_draws_from_the_supply_before_it_grows() -> None:
    run = simulate(CASES["colder than densest"])
    grown = grown_m3(274.15, HOT)
    assert run.books.fed_kg > 0.0
    assert run.moments[-1].pressures_abs_pa[0] == pytest.approx(settled_abs_pa(grown, [tank()]), rel=1e-6)
    opened = run.first(WarmupHappening.TANK_OPENS)
    assert opened is not None
    assert opened.time_s > 200.0


@pytest.mark.parametrize("shell", [Shell(GALLONS_50), heater_shell(GALLONS_50)])
@pytest.mark.parametrize("pipes", [Shell(0.0), Shell(0.05)])
def test_locked_relief_opens_after_the_rise_known_of_locked_water(shell: Shell, pipes: Shell) -> None:
    run = simulate(alone(basin(RELIEF, unheated=pipes), body(shell)))
    still = LockedVolume(heated=shell, unheated=pipes, cold_k=COLD, start_abs_pa=FILL)
    opened = run.first(WarmupHappening.OUTLET_OPENS)
    assert opened is not None
    there = next(moment for moment in run.moments if moment.time_s == opened.time_s)
    rise_k = locked_rise_k(Climb(still, RELIEF.opens_abs_pa, HOT))
    alike = 1e-6 if pipes.volume_m3 == 0.0 else 2e-4  # there, what is pushed into the pipes is cold at once
    assert there.temperatures_k["heater"] - COLD == pytest.approx(rise_k, rel=alike)
    by_hand_s = still.firing_s(rise_k, input_w=INPUT_W, efficiency=EFFICIENCY)
    assert opened.time_s == pytest.approx(by_hand_s, rel=3e-3)  # that formula leaves out what pressing gives


@pytest.mark.parametrize("shell", [Shell(GALLONS_50), heater_shell(GALLONS_50)])
def test_what_is_let_out_is_what_no_longer_fits(shell: Shell) -> None:
    run = simulate(alone(basin(RELIEF), body(shell)))
    last = run.moments[-1]
    still = LockedVolume(heated=shell, cold_k=COLD, start_abs_pa=FILL)
    fits = still.fits_kg(last.temperatures_k["heater"], pressure_abs_pa=last.pressures_abs_pa[0])
    assert run.books.lost_kg["relief"] == pytest.approx(still.water_kg - fits, rel=1e-6)
    assert last.pressures_abs_pa[0] == pytest.approx(RELIEF.opens_abs_pa - RELIEF.blowdown_pa, rel=1e-9)


def test_tank_that_fills_lets_the_relief_take_the_rest() -> None:
    run = simulate(CASES["tank that fills"])
    told = [event.what for event in run.events]
    assert told.index(WarmupHappening.TANK_FULL) < told.index(WarmupHappening.OUTLET_OPENS)
    assert run.moments[-1].taken_m3["tank"] == pytest.approx(0.001)
    no_tank = simulate(CASES["locked, typical walls"])
    assert no_tank.lost_m3 - run.lost_m3 == pytest.approx(0.001, rel=0.4)


def test_sealed_water_ends_where_it_breaks() -> None:
    run = simulate(CASES["sealed"])
    assert run.events[-1].what is WarmupHappening.BREAKS
    assert run.events[-1].pressure_abs_pa == pytest.approx(ATMOSPHERE_PA + 300.0 * PSI, rel=1e-6)
    assert run.first(WarmupHappening.SETPOINT_REACHED) is None


def test_street_holds_the_pressure_and_takes_the_growth() -> None:
    run = simulate(CASES["street"])
    assert set(run.pressure_abs_pa(0)) == {FILL}
    assert run.returned_m3 == pytest.approx(grown_m3(COLD, HOT), rel=1e-9)
    assert run.lost_m3 == 0.0


def test_vent_spills_all_that_grows_once_the_water_stands_at_its_rim() -> None:
    run = simulate(CASES["vent"])
    assert max(run.pressure_abs_pa(0)) == pytest.approx(FILL + 5e4, rel=1e-8)
    still = LockedVolume(heated=heater_shell(GALLONS_50), cold_k=COLD, start_abs_pa=FILL)
    kept = still.fits_kg(HOT, pressure_abs_pa=FILL + 5e4)
    assert run.books.lost_kg["vent"] == pytest.approx(run.start_kg - kept, rel=1e-6)


def test_water_above_its_element_s_temperature_ends_the_warm_up() -> None:
    run = simulate(alone(basin(tank=tank()), body(element_k=320.0)))
    assert run.events[-1].what is WarmupHappening.ELEMENT_OPENS
    assert run.temperature_k("heater")[-1] == pytest.approx(320.0)


def test_water_boils_where_nothing_opens_before() -> None:
    """Open to the air at the fill's pressure, 5.15 bar absolute: 153 degC."""
    street = CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True)
    run = simulate(alone(basin(street), body(element_k=math.inf, hot_k=453.15)))
    assert run.events[-1].what is WarmupHappening.BOILS
    assert run.temperature_k("heater")[-1] == pytest.approx(273.15 + 152.9, abs=0.5)


@pytest.mark.parametrize("name", ["tank", "locked, rigid", "tank that fills", "two zones"])
def test_steps_half_as_long_change_nothing(name: str) -> None:
    """Only what an outlet lets out leaves with the heat of its step's end: 2e-5 of the time for 20 s."""
    long, short = (simulate(CASES[name], step_s=step_s) for step_s in (40.0, 20.0))
    assert short.times_s[-1] == pytest.approx(long.times_s[-1], rel=5e-5)
    assert short.moments[-1].pressures_abs_pa == pytest.approx(long.moments[-1].pressures_abs_pa, rel=1e-9)
    assert short.end_kg == pytest.approx(long.end_kg, rel=1e-9)
    assert [(event.what, event.name) for event in short.events] == [(event.what, event.name) for event in long.events]


@pytest.mark.parametrize("name", ["tank", "locked, typical walls"])
def test_twice_the_input_takes_half_the_time(name: str) -> None:
    slow = simulate(CASES[name], step_s=20.0)
    fast = simulate(alone(CASES[name].basins[0], body(input_w=2.0 * INPUT_W)), step_s=10.0)
    assert fast.times_s[-1] == pytest.approx(slow.times_s[-1] / 2.0, rel=1e-9)
    assert fast.lost_m3 == pytest.approx(slow.lost_m3, rel=1e-9)


def test_thermostat_lights_its_burner_again_below_its_differential() -> None:
    run = simulate(alone(basin(tank=tank()), body(loss_w_k=30.0)), until_s=36_000.0)
    again = [event for event in run.events if event.what is WarmupHappening.BURNER_ON][1]
    assert again.temperature_k == pytest.approx(HOT - 6.0)
    assert len([event for event in run.events if event.what is WarmupHappening.SETPOINT_REACHED]) == 1


def test_cooling_lets_the_tank_give_back_what_it_took() -> None:
    run = simulate(alone(basin(tank=tank()), body(loss_w_k=30.0)), until_s=36_000.0)
    ons = [event for event in run.events if event.what is WarmupHappening.BURNER_ON]
    grown = grown_m3(COLD, HOT - 6.0)
    assert ons[1].pressure_abs_pa == pytest.approx(settled_abs_pa(grown, [tank()]), rel=1e-6)


#   heater >- gate -> other heater, each with its own tank
def test_one_heater_fired_alone_comes_to_rest_as_settled() -> None:
    plant = CASES["two zones"]
    run = simulate(Plant(plant.basins, plant.gates, plant.bodies[:1]))
    grown = grown_m3(COLD, HOT)
    loads = {0: ZoneLoad({"heater": grown}, FILL, (tank(),)), 1: ZoneLoad({}, FILL, (tank(0.009),))}
    assert {zone: pool.pressure_abs_pa for pool in settle(loads, plant.gates) for zone in pool.zones} == pytest.approx(
        dict(run.moments[-1].pressures_abs_pa), rel=1e-6
    )


def test_no_water_comes_back_through_a_gate() -> None:
    """The heater is hot first and fills both tanks; the other, slower, then has less room than if both had waited."""
    run = simulate(CASES["two zones"])
    last = run.moments[-1].pressures_abs_pa
    grown = grown_m3(COLD, HOT)
    assert last[0] < last[1]
    taken = run.moments[-1].taken_m3
    assert taken["left"] + taken["right"] == pytest.approx(2.0 * grown, rel=1e-9)
    assert taken["right"] > grown
    first_hot = run.first(WarmupHappening.SETPOINT_REACHED, "heater")
    assert first_hot is not None
    then = next(moment for moment in run.moments if moment.time_s == first_hot.time_s)
    assert last[0] == pytest.approx(then.pressures_abs_pa[0], rel=0.05)


def test_outlet_set_below_the_fill_runs_from_the_start_and_never_lets_the_pressure_fall_below_it() -> None:
    low = CoupledOutlet(name="drip", opens_abs_pa=FILL - 5e4, blowdown_pa=2e4)
    run = simulate(alone(basin(low)))
    assert max(run.pressure_abs_pa(0)) == pytest.approx(FILL, rel=1e-8)
    assert run.lost_m3 == pytest.approx(grown_m3(COLD, HOT), rel=0.2)


def test_time_given_is_the_time_it_takes() -> None:
    run = simulate(CASES["tank"], until_s=90.0)
    assert run.times_s[-1] == 90.0
    assert run.moments[-1].firing == {"heater"}


def test_usual_step_is_round_and_warms_no_body_by_more_than_half_a_kelvin() -> None:
    assert usual_step_s(CASES["tank"]) == 20.0
    assert usual_step_s(alone(basin(), body(Shell(0.001)))) == 0.2
    assert usual_step_s(CASES["tank"], until_s=86_400.0) == 50.0
    # Beside it 10 t of water that 800 W would warm by 50 K in 2.6 million seconds, of which a thousandth is 2600.
    both = Plant({0: basin(), 1: basin()}, (), (body(), body(Shell(10.0), name="other", zone=1, input_w=1000.0)))
    assert usual_step_s(both) == 2000.0


def test_step_that_suits_a_slow_body_takes_no_fast_one_beyond_liquid_water() -> None:
    """One comes to its setpoint in a quarter of a second, the other in half a year."""
    input_w = 2e8
    slow, fast = body(name="slow", input_w=2.5), body(name="fast", input_w=input_w, zone=1)
    run = simulate(Plant({0: basin(tank=tank()), 1: basin(tank=tank())}, (), (slow, fast)))
    assert run.moments[-1].temperatures_k["slow"] == pytest.approx(HOT, abs=1e-6)
    hottest = max(moment.temperatures_k["fast"] for moment in run.moments)
    assert hottest == pytest.approx(HOT, abs=1e-6)
    reached = [event for event in run.events if event.what is WarmupHappening.SETPOINT_REACHED]
    assert [event.name for event in reached] == ["fast", "slow"]
    assert reached[0].time_s == pytest.approx(189.2 * 4186.0 * 50.0 / (input_w * EFFICIENCY), rel=0.01)


def test_slowest_body_counts_and_one_without_a_burner_does_not() -> None:
    slow, idle = body(name="slow", input_w=100.0, zone=1), replace(body(name="idle", zone=2), burners=())
    plant = Plant({0: basin(), 1: basin(), 2: basin()}, (), (body(), slow, idle))
    assert slowest_s(plant) == pytest.approx(189.2 * 4186.0 * 50.0 / (100.0 * EFFICIENCY), rel=1e-3)
    assert slowest_s(Plant({2: basin()}, (), (idle,))) == 0.0


def test_two_alike_come_to_their_setpoints_at_one_moment() -> None:
    twins = [body(name=name, zone=zone) for zone, name in enumerate(("one", "other"))]
    run = simulate(Plant({0: basin(tank=tank()), 1: basin(tank=tank())}, (), tuple(twins)))
    off = [event.time_s for event in run.events if event.what is WarmupHappening.BURNER_OFF]
    assert off == pytest.approx([off[0]] * 2, rel=1e-9)
    alone_off = simulate(alone(basin(tank=tank()))).first(WarmupHappening.BURNER_OFF)
    assert alone_off is not None
    assert off[0] == pytest.approx(alone_off.time_s, rel=1e-9)


@pytest.mark.parametrize("step_s", [0.4, 7.0])
def test_event_is_found_within_a_step_however_short(step_s: float) -> None:
    fast = body(input_w=5e6)
    once = simulate(alone(basin(tank=tank()), fast)).first(WarmupHappening.SETPOINT_REACHED)
    again = simulate(alone(basin(tank=tank()), fast), step_s=step_s).first(WarmupHappening.SETPOINT_REACHED)
    assert once is not None
    assert again is not None
    assert again.time_s == pytest.approx(once.time_s, rel=1e-6)
    assert once.temperature_k == pytest.approx(HOT, abs=1e-6)


HIGHER = 12.0 * 1e5
BEYOND = {
    "a tank charged higher": basin(tank=Tank(0.018, charge_abs_pa=HIGHER, start_abs_pa=FILL)),
    "a street that stands higher": Basin(
        static_abs_pa=HIGHER, cold_k=COLD, outlets=(CoupledOutlet(name="street", opens_abs_pa=FILL, gives_back=True),)
    ),
}


@pytest.mark.parametrize("beyond", BEYOND)
def test_what_takes_water_only_above_the_relief_valve_s_set_puts_it_off_by_nothing(beyond: str) -> None:
    """Locked water lifts its valve at 150 psi, whatever lies at 12 bar beyond a check."""
    joined = Plant({0: basin(RELIEF), 1: BEYOND[beyond]}, (OneWayGate(0, 1),), (body(),))
    there, alone_there = simulate(joined), simulate(CASES["locked, typical walls"])
    assert [event.what for event in there.events] == [event.what for event in alone_there.events]
    for one, other in zip(there.events, alone_there.events, strict=True):
        assert one.time_s == pytest.approx(other.time_s, rel=1e-6, abs=1e-9)
    assert there.books.lost_m3["relief"] == pytest.approx(alone_there.books.lost_m3["relief"], rel=1e-6)


def test_usual_step_is_a_minute_where_nothing_fires() -> None:
    still = Body(name="store", burners=(), shells={0: Shell(0.2)}, cold_k=COLD, fill_abs_pa=FILL)
    assert usual_step_s(alone(basin(), still)) == 60.0


@pytest.mark.parametrize("step_s", [0.0, math.inf, math.nan])
def test_no_step_is_no_step(step_s: float) -> None:
    with pytest.raises(ValueError, match=rf"^a step of {step_s:g} s is none$"):
        simulate(CASES["tank"], step_s=step_s)


@pytest.mark.parametrize(
    ("until_s", "times_s"),
    [
        (90.0, (0.0, 20.0, 40.0, 60.0, 80.0, 90.0)),
        (80.0, (0.0, 20.0, 40.0, 60.0, 80.0)),
        (80.01, (0.0, 20.0, 40.0, 60.0, 80.01)),  # no sliver of a step is left for the end
        (10.0, (0.0, 10.0)),
    ],
)
def test_moments_stand_a_step_apart_and_at_the_end(until_s: float, times_s: tuple[float, ...]) -> None:
    assert simulate(CASES["street"], until_s=until_s, step_s=20.0).times_s == pytest.approx(times_s, rel=1e-12)


def test_moments_go_on_at_whole_steps_after_something_has_happened_between() -> None:
    lit = simulate(alone(basin(tank=tank()), body(limit_abs_pa=FILL + 1e3)), until_s=400.0, step_s=20.0)
    passed = lit.first(WarmupHappening.LIMIT_PASSED)
    assert passed is not None
    between = [time_s for time_s in lit.times_s if time_s % 20.0 > 1e-6]
    assert passed.time_s in between
    whole = sorted({time_s for time_s in lit.times_s if time_s not in between})
    assert whole == pytest.approx([20.0 * step for step in range(21)], rel=1e-12)


def test_told_warm_up_begins_with_all_water_cold_and_ends_with_it_hot() -> None:
    run = simulate(CASES["two zones"])
    volumes = (GALLONS_50, GALLONS_50)
    cold = sum(volume / specific_volume_m3_kg(COLD, pressure_abs_pa=FILL) for volume in volumes)
    assert (run.start_kg, run.end_kg) == pytest.approx((cold, cold), rel=1e-9)
    cold_j, hot_j = (cold * enthalpy_j_kg(kelvin, pressure_abs_pa=FILL) for kelvin in (COLD, HOT))
    assert (run.start_j, run.end_j) == pytest.approx((cold_j, hot_j), rel=1e-6)
    assert run.returned_m3 == 0.0


def test_cold_water_above_the_setpoint_lights_nothing() -> None:
    run = simulate(alone(basin(tank=tank()), body(hot_k=280.0)))
    assert run.events == ()
    assert run.times_s == (0.0,)


def test_limit_that_the_fill_already_passes_is_not_passed_again() -> None:
    passed = simulate(alone(basin(tank=tank()), body(limit_abs_pa=FILL + 1e4)), until_s=1800.0)
    stood = simulate(alone(basin(tank=tank()), body(limit_abs_pa=FILL - 1e4)), until_s=1800.0)
    assert passed.first(WarmupHappening.LIMIT_PASSED) is not None
    assert stood.first(WarmupHappening.LIMIT_PASSED) is None


def test_relief_valve_reseats_below_its_set_once_nothing_grows() -> None:
    run = simulate(CASES["locked, typical walls"])
    told = [(event.what, event.name) for event in run.events]
    assert told == [
        (WarmupHappening.BURNER_ON, "heater"),
        (WarmupHappening.OUTLET_OPENS, "relief"),
        (WarmupHappening.SETPOINT_REACHED, "heater"),
        (WarmupHappening.BURNER_OFF, "heater"),
        (WarmupHappening.OUTLET_RESEATS, "relief"),
    ]
    last = run.events[-1]
    assert last.pressure_abs_pa == pytest.approx(ATMOSPHERE_PA + 135.0 * PSI, rel=1e-9)
    assert last.temperature_k is None
    assert run.events[0].temperature_k == COLD


def test_relief_valve_reseats_where_growth_ends_and_not_only_in_the_end() -> None:
    run = simulate(CASES["losing heat"], until_s=7200.0)
    off, reseats = run.first(WarmupHappening.BURNER_OFF), run.first(WarmupHappening.OUTLET_RESEATS)
    assert off is not None
    assert reseats is not None
    assert off.time_s <= reseats.time_s <= off.time_s + 1.0 < 7200.0


def test_water_filled_as_hot_as_its_setpoint_lights_nothing() -> None:
    assert simulate(alone(basin(tank=tank()), body(hot_k=COLD)), until_s=60.0).events == ()


def test_step_that_nobody_gives_fits_the_time_that_is_given(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(simulation, "_MOST_STEPS", 10)  # else a thousand of them had to be taken
    assert simulate(CASES["street"], until_s=10_000.0).times_s[1] == 1000.0
    assert simulate(CASES["street"], until_s=1000.0).times_s[1] == 200.0  # a tenth of 4217 s, round


def test_rigid_plant_lifts_its_relief_valve_as_one_drawn_with_rigid_walls() -> None:
    pipes = Shell(0.02, compliance_per_pa=1e-9)
    soft = alone(basin(RELIEF, unheated=pipes))
    drawn = alone(basin(RELIEF, unheated=Shell(0.02)), body(Shell(GALLONS_50)))
    assert simulate(soft.rigid) == simulate(drawn)
    assert simulate(soft) != simulate(drawn)


def test_only_what_ends_every_warm_up_cuts_it_short() -> None:
    assert simulate(CASES["sealed"]).is_cut_short
    assert not simulate(CASES["tank"]).is_cut_short


@pytest.mark.parametrize("gives_back", [False, True])
def test_outlet_set_below_the_static_pressure_runs_from_the_start_and_is_told_once(*, gives_back: bool) -> None:
    low = CoupledOutlet(name="low", opens_abs_pa=FILL - 2.0, blowdown_pa=1e4, gives_back=gives_back)
    run = simulate(alone(basin(low)))
    told = [event.what for event in run.events if event.name == "low"]
    assert told == ([] if gives_back else [WarmupHappening.OUTLET_RUNS])
    assert run.books.lost_m3.get("low", 0.0) > 0.0 or gives_back


def test_outlet_set_at_the_static_pressure_opens_and_closes() -> None:
    run = simulate(alone(basin(CoupledOutlet(name="low", opens_abs_pa=FILL, blowdown_pa=1e4))))
    told = [event.what for event in run.events if event.name == "low"]
    assert told == [WarmupHappening.OUTLET_OPENS, WarmupHappening.OUTLET_RESEATS]


MIXED = 322.15
"""What a mixing valve lets the water behind it come to."""


def test_water_behind_a_mixing_valve_warms_with_its_heater_until_it_is_as_warm_as_that_lets_it_be() -> None:
    behind = Body(
        name="mixer",
        burners=(),
        shells={0: Shell(GALLONS_50)},
        cold_k=COLD,
        fill_abs_pa=FILL,
        mixed_from="heater",
        mixed_k=MIXED,
    )
    plant = Plant({0: basin(tank=tank(0.05))}, (), (body(Shell(GALLONS_50)), behind))
    run = simulate(plant)
    reached, hot = run.first(WarmupHappening.MIXED_REACHED), run.first(WarmupHappening.SETPOINT_REACHED)
    assert reached is not None
    assert hot is not None
    by_then, at_last = 2 * (MIXED - COLD), 2 * (MIXED - COLD) + HOT - MIXED
    assert reached.time_s / hot.time_s == pytest.approx(by_then / at_last, rel=2e-3)  # by head, of constant heat
    assert hot.time_s == pytest.approx(slowest_s(plant), rel=0.02)
    assert run.temperature_k("heater")[-1] == pytest.approx(HOT, abs=1e-6)
    assert max(run.temperature_k("mixer")) == pytest.approx(MIXED, abs=1e-6)
    taken = run.moments[-1].taken_m3["tank"]
    assert taken == pytest.approx(grown_m3(COLD, HOT) + grown_m3(COLD, MIXED), rel=1e-6)
    held = run.books.heat_j + run.books.pressed_j + run.books.brought_j - run.books.carried_j
    assert run.end_j - run.start_j == pytest.approx(held, rel=1e-9)


def test_water_that_comes_warmer_than_its_mixing_valve_is_not_warmed() -> None:
    behind = replace(body(name="mixer"), burners=(), mixed_from="heater", mixed_k=COLD - 1.0)
    run = simulate(Plant({0: basin(tank=tank(0.05))}, (), (body(), behind)))
    assert set(run.temperature_k("mixer")) == {COLD}
    assert run.first(WarmupHappening.MIXED_REACHED) is None
