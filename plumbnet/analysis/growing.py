"""Heated water in, the steps to what it grows by out, as it is and not as a sizing method allows for."""

from collections.abc import Iterator

from plumbnet.analysis.form import Item, Section
from plumbnet.analysis.need import Task, Water
from plumbnet.analysis.pressures import section
from plumbnet.physics import glycol
from plumbnet.physics.sizing import Step, step
from plumbnet.physics.workings import expansion_steps, growth_steps
from plumbnet.rules.sentences import listed


def growing(task: Task, water: Water) -> tuple[Step, ...]:
    """Steps to its expansion V_e, under the pressure at its heater.

    Raises OutsideWater (physics.water), GlycolMissing, OutsideGlycol (physics.glycol).
    """
    duty = task.duty(water)
    return expansion_steps(duty, growth_steps(duty, water.heated_abs_pa))


def growing_section(task: Task, water: Water) -> Section:
    """The same with what goes in."""
    title = f"What the water of {listed(water.heaters)} grows by"
    return section(title, [volume(water), *mixing(water), *growing(task, water)])


def volume(water: Water) -> Item:
    """Its cold volume."""
    return Item("V", "heated water, cold", water.volume_m3, "volume", "the sum of the pieces listed")


def mixing(water: Water) -> Iterator[Step]:
    """Steps to the growth of water with antifreeze; none for plain water.

    Raises GlycolMissing, OutsideGlycol (physics.glycol).
    """
    mixture = water.mixture
    if mixture is None:
        return
    cold, hot = (1.0 / glycol.density_kg_m3(mixture.glycol, mixture.share, t) for t in (water.cold_k, water.hot_k))
    words = f"{mixture.share:.3g} parts of {mixture.glycol} glycol by volume"
    yield step("v_1", f"volume of the cold mixture, {words}", "v_mix(T_1)", cold, glycol.SOURCE, T_1=water.cold_k)
    yield step("v_2", f"volume of the hot mixture, {words}", "v_mix(T_2)", hot, glycol.SOURCE, T_2=water.hot_k)
    value = glycol.growth(mixture.glycol, mixture.share, water.cold_k, water.hot_k)
    yield step("e_mix", "growth of the mixture", "v_2 / v_1 - 1", value, glycol.SOURCE, v_1=cold, v_2=hot)
