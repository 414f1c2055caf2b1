"""Heated water in, the steps to what it grows by out, as it is and not as a sizing method allows for."""

from collections.abc import Iterator

from plumbnet.analysis.required_tank import Task, WarmedWater
from plumbnet.analysis.sizing_sheet.sheet_model import Section, SheetItem
from plumbnet.analysis.sizing_sheet.tank_pressures import pressure_section
from plumbnet.physics.fluids import GLYCOL_SOURCE, glycol_density_kg_m3, glycol_growth
from plumbnet.physics.sizing import Step, expansion_steps, growth_steps, step
from plumbnet.rules import listed


def growing(task: Task, water: WarmedWater) -> tuple[Step, ...]:
    """Steps to its expansion V_e, under the pressure at its heater.

    Raises OutsideWater (physics.water), GlycolMissing, OutsideGlycol (physics.glycol).
    """
    duty = task.duty(water)
    return expansion_steps(duty, growth_steps(duty, water.heated_abs_pa))


def growing_section(task: Task, water: WarmedWater) -> Section:
    """The same with what goes in."""
    title = f"What the water of {listed(water.heaters)} grows by"
    return pressure_section(title, [volume(water), *mixing(water), *growing(task, water)])


def volume(water: WarmedWater) -> SheetItem:
    """Its cold volume."""
    return SheetItem("V", "heated water, cold", water.volume_m3, "volume", "the sum of the pieces listed")


def mixing(water: WarmedWater) -> Iterator[Step]:
    """Steps to the growth of water with antifreeze; none for plain water.

    Raises GlycolMissing, OutsideGlycol (physics.glycol).
    """
    mixture = water.mixture
    if mixture is None:
        return
    cold, hot = (1.0 / glycol_density_kg_m3(mixture.glycol, mixture.share, t) for t in (water.cold_k, water.hot_k))
    words = f"{mixture.share:.3g} parts of {mixture.glycol} glycol by volume"
    yield step("v_1", f"volume of the cold mixture, {words}", "v_mix(T_1)", cold, GLYCOL_SOURCE, T_1=water.cold_k)
    yield step("v_2", f"volume of the hot mixture, {words}", "v_mix(T_2)", hot, GLYCOL_SOURCE, T_2=water.hot_k)
    value = glycol_growth(mixture.glycol, mixture.share, water.cold_k, water.hot_k)
    yield step("e_mix", "growth of the mixture", "v_2 / v_1 - 1", value, GLYCOL_SOURCE, v_1=cold, v_2=hot)
