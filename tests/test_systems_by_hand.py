"""Numbers of the showcase, worked out a second time from CoolProp's water and Boyle's law, without plumbnet."""

import math
from pathlib import Path

import pytest
from CoolProp.CoolProp import PropsSI

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.rules.facts.heater_answer import HeaterFacts

SYSTEMS = Path(__file__).parents[1] / "systems"

PSI = 6894.757293168361
ATMOSPHERE = 101_325.0
GALLON = 231 * 0.0254**3
FOOT = 0.3048
HEAD = 1000.0 * 9.80665  # Pa in a metre of water, as every static head here
DEGREE_F = 5.0 / 9.0

GROWTH = 2e-3
"""Relative: of two formulations of water that agree to 2e-5 in density, the difference of two of them."""
GAUGE = 0.05 * PSI
"""What that makes of a settled pressure, in pascal; no gauge shows it."""


def report(name: str, scenario: str | None = None) -> Report:
    system = plumbnet.read(SYSTEMS / f"{name}.yaml")
    if scenario is not None:
        system = with_changes(system, system.scenarios[scenario].change)
    return plumbnet.check(system)


def heater(name: str, called: str = "heater", scenario: str | None = None) -> HeaterFacts:
    return next(one for one in report(name, scenario).heaters if one.name == called)


def fahrenheit(degrees: float) -> float:
    """Kelvin."""
    return (degrees + 459.67) * DEGREE_F


def celsius(degrees: float) -> float:
    """Kelvin."""
    return degrees + 273.15


def grown(volume: float, cold_k: float, hot_k: float, gauge_pa: float) -> float:
    """The same mass takes up density_cold / density_hot of its volume."""
    cold, hot = (PropsSI("D", "T", t, "P", gauge_pa + ATMOSPHERE, "Water") for t in (cold_k, hot_k))
    return volume * (float(cold) / float(hot) - 1.0)


def bore_volume(inside_diameter: float, length: float) -> float:
    return math.pi / 4.0 * inside_diameter**2 * length


def test_bakery_settles_where_the_air_of_its_tank_is_squeezed_by_the_growth() -> None:
    # 80 gal from 50 to 140 degF at 50 psi grow by 1.34 gal. The tank is charged to the line, so all its 6 gal are
    # air when heating starts: 64.696 psi x 6 gal = p x (6 - 1.34) gal, so p = 83.3 psi absolute, 68.7 on the gauge.
    growth = grown(80 * GALLON, fahrenheit(50), fahrenheit(140), 50 * PSI)
    settled = (50 * PSI + ATMOSPHERE) * 6 * GALLON / (6 * GALLON - growth) - ATMOSPHERE
    assert growth / GALLON == pytest.approx(1.34, abs=0.005)
    assert settled / PSI == pytest.approx(68.7, abs=0.05)
    assert heater("bakery-tank-right").expansion_m3 == pytest.approx(growth, rel=GROWTH)
    assert heater("bakery-tank-right").settled_pa == pytest.approx(settled, abs=GAUGE)


def test_bakery_limit_is_the_ovens_rating_read_three_feet_lower() -> None:
    # The oven, 3 ft up, is rated for 70 psi; at the heater a gauge shows 3 x 0.4335 psi more.
    assert heater("bakery-tank-right").limit_pa == pytest.approx(70 * PSI + 3 * FOOT * HEAD, abs=1.0)


def test_undercharged_bakery_tank_has_less_room_because_it_stands_part_full() -> None:
    # Charged to 40 psi: 54.696 psi x 6 gal of air. Under the line's 64.696 psi it fills 5.073 gal, at the limit of
    # 71.301 + 14.696 psi it fills 3.816 gal. It takes the difference, 1.257 gal, of the 1.34 that come.
    air = (40 * PSI + ATMOSPHERE) * 6 * GALLON
    limit = 70 * PSI + 3 * FOOT * HEAD
    takes = air / (50 * PSI + ATMOSPHERE) - air / (limit + ATMOSPHERE)
    growth = grown(80 * GALLON, fahrenheit(50), fahrenheit(140), 50 * PSI)
    assert takes / GALLON == pytest.approx(1.257, abs=0.002)
    assert heater("bakery-tanks-worn-out").short_m3 == pytest.approx(growth - takes, abs=GROWTH * growth)


def test_house_with_a_check_needs_a_tank_of_three_gallons_and_four_tenths() -> None:
    # 40 gal grow by 0.672 gal. The lowest tap that the growth comes to is the hose, 2 ft up behind its vacuum breaker.
    # A tank charged to the line gives 1 - (62 + 14.696) / (80.867 + 14.696) = 0.1974 of itself, so
    # 0.672 / 0.1974 = 3.40 gal; the next size is 5.
    start, end = 62 * PSI + ATMOSPHERE, 80 * PSI + 2 * FOOT * HEAD + ATMOSPHERE
    needed = grown(40 * GALLON, fahrenheit(50), fahrenheit(140), 62 * PSI) / (1.0 - start / end)
    need = heater("house-with-check").need
    assert need is not None
    assert needed / GALLON == pytest.approx(3.40, abs=0.01)
    assert need.tank_m3 == pytest.approx(needed, rel=GROWTH)
    assert need.nominal_m3 == pytest.approx(5 * GALLON)


TOWER_WATER = 2 * 100 * GALLON + bore_volume(1.505 * 0.0254, 95 * FOOT) + bore_volume(0.785 * 0.0254, 95 * FOOT)
"""Two stores, the hot riser of 1-1/2 in and the return of 3/4 in, type L: what the pump keeps hot."""


def test_tower_gauges_read_forty_psi_less_on_the_roof() -> None:
    # 94 ft x 0.4335 psi = 40.75 psi: 68 in the basement are 27.25 on the roof, and 80 psi at the tap 4 ft up are
    # 80 - 90 x 0.4335 = 40.98.
    facts = heater("tower-tank-on-the-roof", "heater-1")
    assert facts.static_pa == pytest.approx(68 * PSI - 94 * FOOT * HEAD, abs=1.0)
    assert facts.limit_pa == pytest.approx(80 * PSI - 90 * FOOT * HEAD, abs=1.0)
    assert facts.limit_pa / PSI == pytest.approx(40.98, abs=0.01)


def test_tower_tank_on_the_roof_settles_below_its_limit() -> None:
    # 211 gal grow by 2.94 gal. Air: (27 + 14.696) x 15 gal; cold, under 41.95 psi absolute, it fills 14.91 gal;
    # hot, 14.91 - 2.94 = 11.97 gal, so 52.3 psi absolute, 37.6 on the gauge.
    cold = 68 * PSI - 94 * FOOT * HEAD
    growth = grown(TOWER_WATER, fahrenheit(50), fahrenheit(130), cold)
    air = (27 * PSI + ATMOSPHERE) * 15 * GALLON
    settled = air / (air / (cold + ATMOSPHERE) - growth) - ATMOSPHERE
    facts = heater("tower-tank-on-the-roof", "heater-1")
    assert facts.heated_volume_m3 == pytest.approx(TOWER_WATER, rel=1e-6)
    assert settled / PSI == pytest.approx(37.6, abs=0.05)
    assert facts.settled_pa == pytest.approx(settled, abs=GAUGE)


def test_the_same_tank_in_the_basement_has_too_little_room() -> None:
    # Down there it works from 68 to 80 + 4 x 0.4335 = 81.7 psi: 15 x (1 - 82.7 / 96.4) = 2.14 gal, of 2.94 wanted.
    start, end = 68 * PSI + ATMOSPHERE, 80 * PSI + 4 * FOOT * HEAD + ATMOSPHERE
    takes = 15 * GALLON * (1.0 - start / end)
    growth = grown(TOWER_WATER, fahrenheit(50), fahrenheit(130), 68 * PSI - 94 * FOOT * HEAD)
    facts = heater("tower-tank-on-the-roof", "heater-1", "tank-in-the-basement")
    assert takes / GALLON == pytest.approx(2.14, abs=0.01)
    assert facts.short_m3 == pytest.approx(growth - takes, abs=GROWTH * growth)


def test_boiler_settles_with_the_water_of_its_radiators_pipes_and_coil() -> None:
    # 6 in the boiler, 4 + 5 + 4 in the radiators, 1.5 in the coil, and 120 ft of 3/4 in type M: 23.7 gal.
    water = (6 + 4 + 5 + 4 + 1.5) * GALLON + bore_volume(0.811 * 0.0254, 120 * FOOT)
    growth = grown(water, fahrenheit(50), fahrenheit(180), 12 * PSI)
    settled = (12 * PSI + ATMOSPHERE) * 4 * GALLON / (4 * GALLON - growth) - ATMOSPHERE
    facts = heater("boiler-loop-with-indirect-heater", "boiler")
    assert facts.heated_volume_m3 == pytest.approx(water, rel=1e-6)
    assert settled / PSI == pytest.approx(17.8, abs=0.05)
    assert facts.settled_pa == pytest.approx(settled, abs=GAUGE)
    assert facts.limit_pa == pytest.approx(0.9 * 30 * PSI)


def test_school_tanks_take_the_growth_of_both_heaters_and_both_circulations_and_of_nothing_else() -> None:
    # Two stores of 400 L and the pipes that the pumps keep hot. The laboratory's heater cannot push back through
    # its own preventer, so its half litre is not in it. Two tanks of 50 L are one of 100 L, for they hang together.
    pipes = bore_volume(25.6e-3, 25) + bore_volume(13.0e-3, 25) + bore_volume(32.2e-3, 60) + bore_volume(19.8e-3, 60)
    growth = grown(0.8 + pipes, celsius(8), celsius(65), 420e3)
    settled = (420e3 + ATMOSPHERE) * 0.1 / (0.1 - growth) - ATMOSPHERE
    facts = heater("school-shared-tanks", "heater-1")
    assert facts.heated_volume_m3 == pytest.approx(0.8 + pipes, rel=1e-6)
    assert settled == pytest.approx(529.7e3, abs=500)
    assert facts.settled_pa == pytest.approx(settled, abs=GAUGE)


def test_laboratory_that_is_hot_last_comes_higher_than_where_all_would_settle_at_once() -> None:
    # Alone the laboratory would settle at 456 kPa, below the house's 530; so the house, hot first, pushes on through
    # lab-rp into all 108 L of tanks, to p1. That water cannot go back: then the laboratory has but what air is left in
    # its own 8 L. All at once they would come to rest together, lower.
    pipes = bore_volume(25.6e-3, 25) + bore_volume(13.0e-3, 25) + bore_volume(32.2e-3, 60) + bore_volume(19.8e-3, 60)
    house = grown(0.8 + pipes, celsius(8), celsius(65), 420e3)
    laboratory = grown(0.03, celsius(8), celsius(60), 420e3)
    alone = (420e3 + ATMOSPHERE) * 0.008 / (0.008 - laboratory) - ATMOSPHERE
    together = (420e3 + ATMOSPHERE) * 0.108 / (0.108 - house - laboratory) - ATMOSPHERE
    first = (420e3 + ATMOSPHERE) * 0.108 / (0.108 - house)
    air_left = 0.008 * (420e3 + ATMOSPHERE) / first
    last = (420e3 + ATMOSPHERE) * 0.008 / (air_left - laboratory) - ATMOSPHERE
    assert alone < together < last
    facts = heater("school-shared-tanks", "lab-heater", "lab-tank-fitted")
    assert facts.settled_pa == pytest.approx(last, abs=GAUGE)
    assert facts.history[-1] == ("lab-heater",)


def test_solar_loop_settles_at_the_collector_twenty_feet_above_its_tank() -> None:
    # 1.5 gal in the collector, 2 in the coil, 80 ft of 3/4 in type M. The tank stands under 30 psi; hot, its 3 gal
    # of air are squeezed by 0.32 gal to 35.3 psi, which reads 20 x 0.4335 psi less at the collector.
    water = 3.5 * GALLON + bore_volume(0.811 * 0.0254, 80 * FOOT)
    at_collector = 30 * PSI - 20 * FOOT * HEAD
    growth = grown(water, fahrenheit(50), fahrenheit(240), at_collector)
    settled = (30 * PSI + ATMOSPHERE) * 3 * GALLON / (3 * GALLON - growth) - ATMOSPHERE - 20 * FOOT * HEAD
    facts = heater("farmhouse-solar-loop", "collector")
    assert settled / PSI == pytest.approx(26.6, abs=0.05)
    assert facts.settled_pa == pytest.approx(settled, abs=GAUGE)


def test_vented_cylinder_never_sees_more_than_the_height_of_its_cistern() -> None:
    # 6.7 m of water: 65.7 kPa, a tenth of what the limit at the sink allows.
    facts = heater("cistern-vented-cylinder", "cylinder")
    assert facts.static_pa == pytest.approx(6.7 * HEAD, abs=1.0)
    assert facts.settled_pa == pytest.approx(6.7 * HEAD, abs=1.0)
