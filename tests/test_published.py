"""Numbers that standards and handbooks print, each with its source and tolerance in `published/*.yaml`."""

import math
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Literal

import pytest
import yaml
from pydantic import BaseModel, ConfigDict, TypeAdapter
from scipy.optimize import brentq

from plumbnet.layout.units.tubes import tube
from plumbnet.physics.fluids import glycol, water
from plumbnet.physics.fluids.expansion import growth
from plumbnet.physics.sizing.duty import STEEL_PER_K, Duty
from plumbnet.physics.sizing.methods import size_tank
from plumbnet.physics.sizing.sizing_steps import vessel_growth_m3
from plumbnet.physics.vessels.locked_volume import Climb, LockedVolume
from plumbnet.physics.vessels.walls import Shell, elastic_tube, heater_shell, material

FOOT_M, POUND_KG = 0.3048, 0.45359237
GALLON_M3 = 231 * 0.0254**3
PSI_PA = 4.4482216152605 / 0.0254**2
BAR_PA = 1e5


class Table(BaseModel):
    """One published table: the last column of each row is the printed value."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    table: str
    source: str
    status: Literal["read", "from memory", "computed"]
    calculation: str
    relative: float = 0.0
    absolute: float = 0.0
    columns: tuple[str, ...]
    rows: tuple[tuple[float | str, ...], ...]


def kelvin(temperature_c: float) -> float:
    return temperature_c + 273.15


def kelvin_of_f(temperature_f: float) -> float:
    return (temperature_f - 32) / 1.8 + 273.15


def psig(pressure: float) -> float:
    return pressure * PSI_PA + water.ATMOSPHERE_PA


def volume_m3_kg(temperature_k: float, pressure_mpa: float) -> float:
    return water.specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure_mpa * 1e6)


def enthalpy_kj_kg(temperature_k: float, pressure_mpa: float) -> float:
    return water.enthalpy_j_kg(temperature_k, pressure_abs_pa=pressure_mpa * 1e6) / 1e3


def heat_capacity_kj_kg_k(temperature_k: float, pressure_mpa: float) -> float:
    return water.heat_capacity_j_kg_k(temperature_k, pressure_abs_pa=pressure_mpa * 1e6) / 1e3


def heat_capacity_at_constant_volume_kj_kg_k(temperature_k: float, pressure_mpa: float) -> float:
    pressure = pressure_mpa * 1e6
    beta = water.expansivity_per_k(temperature_k, pressure_abs_pa=pressure)
    kappa = water.compressibility_per_pa(temperature_k, pressure_abs_pa=pressure)
    volume = water.specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure)
    heat = water.heat_capacity_j_kg_k(temperature_k, pressure_abs_pa=pressure)
    return (heat - temperature_k * volume * beta**2 / kappa) / 1e3


def speed_of_sound_m_s(temperature_k: float, pressure_mpa: float) -> float:
    pressure = pressure_mpa * 1e6
    kappa = water.compressibility_per_pa(temperature_k, pressure_abs_pa=pressure)
    ratio = heat_capacity_kj_kg_k(temperature_k, pressure_mpa) / heat_capacity_at_constant_volume_kj_kg_k(
        temperature_k, pressure_mpa
    )
    return math.sqrt(ratio * water.specific_volume_m3_kg(temperature_k, pressure_abs_pa=pressure) / kappa)


def saturation_mpa(temperature_k: float) -> float:
    return water.saturation_abs_pa(temperature_k) / 1e6


def density_kg_m3(temperature_c: float) -> float:
    return 1 / water.specific_volume_m3_kg(kelvin(temperature_c), pressure_abs_pa=water.ATMOSPHERE_PA)


def density_lb_gal(temperature_f: float) -> float:
    volume = water.specific_volume_m3_kg(kelvin_of_f(temperature_f), pressure_abs_pa=water.ATMOSPHERE_PA)
    return GALLON_M3 / POUND_KG / volume


def expansion_fraction(from_c: float, to_c: float, pressure_bar: float) -> float:
    return growth(kelvin(from_c), kelvin(to_c), pressure_abs_pa=pressure_bar * BAR_PA)


def volume_ratio(from_c: float, to_c: float, pressure_bar: float) -> float:
    return 1 + expansion_fraction(from_c, to_c, pressure_bar)


def expansion_gal(volume_gal: float, from_f: float, to_f: float, pressure_psig: float) -> float:
    cold, hot = kelvin_of_f(from_f), kelvin_of_f(to_f)
    return volume_gal * growth(cold, hot, pressure_abs_pa=psig(pressure_psig))


def duty_gal(system_gal: float, hot_f: float, start_psig: float, end_psig: float) -> Duty:
    """Filled at 40 degF; volumes in gallons, which cancel."""
    return Duty(
        volume_m3=system_gal,
        cold_k=kelvin_of_f(40),
        hot_k=kelvin_of_f(hot_f),
        static_abs_pa=psig(start_psig),
        limit_abs_pa=psig(end_psig),
    )


def plain_tank_gal(system_gal: float, mean_f: float, fill_psig: float, most_psig: float) -> float:
    return size_tank("asme-iv", duty_gal(system_gal, mean_f, fill_psig, most_psig)).tank_m3


def membrane_tank_for_system_gal(system_gal: float, mean_f: float, fill_psig: float, most_psig: float) -> float:
    duty = duty_gal(system_gal, mean_f, fill_psig, most_psig)
    return size_tank("asme-iv", replace(duty, charge_abs_pa=psig(fill_psig))).tank_m3


def membrane_tank_gal(expansion_gal: float, start_psig: float, end_psig: float) -> float:
    return size_tank("membrane", replace(duty_gal(expansion_gal, 140, start_psig, end_psig), growth=1.0)).tank_m3


def heater_tank_gal(heater_gal: float, start_psig: float, end_psig: float, charge_psig: float) -> float:
    duty = duty_gal(heater_gal, 140, start_psig, end_psig)
    return size_tank("membrane", replace(duty, charge_abs_pa=psig(charge_psig))).tank_m3


def hydronic_tank_gal(  # noqa: PLR0913  the six numbers the example prints
    *, method: str, system_gal: float, cold_ft3_lb: float, hot_ft3_lb: float, start_psia: float, end_psia: float
) -> float:
    """With the specific volumes that the example prints, in psia with an atmosphere of 14.7."""
    return hydronic_tank(method, system_gal, start_psia, end_psia, growth=hot_ft3_lb / cold_ft3_lb - 1)


def hydronic_tank_by_if97_gal(method: str, system_gal: float, start_psia: float, end_psia: float) -> float:
    return hydronic_tank(method, system_gal, start_psia, end_psia, growth=None)


def hydronic_tank(method: str, system_gal: float, start_psia: float, end_psia: float, *, growth: float | None) -> float:
    duty = Duty(
        volume_m3=system_gal,
        cold_k=kelvin_of_f(40),
        hot_k=kelvin_of_f(220),
        static_abs_pa=start_psia * PSI_PA,
        limit_abs_pa=end_psia * PSI_PA,
        atmosphere_abs_pa=14.7 * PSI_PA,
        growth=growth,
    )
    return size_tank(method, duty).tank_m3


def drinking_water_tank_l(heater_l: float, hot_c: float, start_bar: float, relief_bar: float) -> float:
    duty = Duty(
        volume_m3=heater_l,
        cold_k=kelvin(10),
        hot_k=kelvin(hot_c),
        static_abs_pa=(start_bar + 1) * BAR_PA,
        relief_abs_pa=(relief_bar + 1) * BAR_PA,
        atmosphere_abs_pa=BAR_PA,
    )
    return size_tank("din-4807-5", duty).tank_m3


def unvented_tank_l(method: str, heater_l: float, hot_c: float, start_bar: float, end_bar: float) -> float:
    duty = Duty(
        volume_m3=heater_l,
        cold_k=kelvin(10),
        hot_k=kelvin(hot_c),
        static_abs_pa=start_bar * BAR_PA + water.ATMOSPHERE_PA,
        limit_abs_pa=end_bar * BAR_PA + water.ATMOSPHERE_PA,
    )
    return size_tank(method, duty).tank_m3


def steel_growth_gal(volume_gal: float, rise_f: float) -> float:
    return vessel_growth_m3(volume_gal, rise_f / 1.8, linear_per_k=STEEL_PER_K)


def locked_rise_pa(cold_k: float, hot_k: float, pressure_abs_pa: float) -> float:
    """The pressure at which a heater without walls that yield has just no room left."""
    zone = LockedVolume(heated=Shell(0.2), cold_k=cold_k, start_abs_pa=pressure_abs_pa)
    return float(brentq(lambda more: Climb(zone, pressure_abs_pa + more, hot_k).room_left_kg(hot_k), 0.0, 99e6))


def locked_rise_atm(from_c: float, to_c: float) -> float:
    return locked_rise_pa(kelvin(from_c), kelvin(to_c), water.ATMOSPHERE_PA) / water.ATMOSPHERE_PA


def locked_rise_bar(from_c: float, to_c: float) -> float:
    return locked_rise_pa(kelvin(from_c), kelvin(to_c), water.ATMOSPHERE_PA) / BAR_PA


def locked_rise_psi(from_f: float, to_f: float, from_psig: float) -> float:
    return locked_rise_pa(kelvin_of_f(from_f), kelvin_of_f(to_f), psig(from_psig)) / PSI_PA


def water_rise_bar(shell: Shell, at_c: float, rise_k: float) -> float:
    """Handbook form, API 521 (2007) and ISO 23251, 5.14.4, without leakage: what grows over what yields."""
    state = {"temperature_k": kelvin(at_c), "pressure_abs_pa": water.ATMOSPHERE_PA}
    grows_per_k = water.expansivity_per_k(**state) - shell.expansion_per_k
    return grows_per_k * rise_k / (water.compressibility_per_pa(**state) + shell.compliance_per_pa) / BAR_PA


def rigid_rise_bar_k(at_c: float) -> float:
    return water_rise_bar(Shell(1.0), at_c, 1)


def elastic_rise_bar(wall: str, at_c: float, rise_k: float) -> float:
    if wall == "heater":
        return water_rise_bar(heater_shell(1.0), at_c, rise_k)
    pipe = tube(wall)
    shell = elastic_tube(1.0, material(pipe.material), inside_m=pipe.inside_m, wall_m=pipe.wall_m)
    return water_rise_bar(shell, at_c, rise_k)


def boiling_at_k(pressure_mpa: float) -> float:
    return water.boiling_k(pressure_mpa * 1e6)


def glycol_density_kg_m3(kind: glycol.Glycol, percent: float, temperature_c: float) -> float:
    return glycol.glycol_density_kg_m3(kind, percent / 100, kelvin(temperature_c))


def glycol_density_ratio(kind: glycol.Glycol, percent: float, from_f: float, to_f: float) -> float:
    return 1 + glycol.glycol_growth(kind, percent / 100, kelvin_of_f(from_f), kelvin_of_f(to_f))


def glycol_freezing_c(kind: glycol.Glycol, percent: float) -> float:
    return glycol.freezing_k(kind, percent / 100) - 273.15


def tube_ft3_ft(name: str) -> float:
    return tube(name).volume_m3_per_m / FOOT_M**2


def tube_floz_ft(name: str) -> float:
    return tube(name).volume_m3_per_m * FOOT_M / GALLON_M3 * 128


CALCULATIONS: dict[str, Callable[..., float]] = {
    calculation.__name__: calculation
    for calculation in (
        volume_m3_kg,
        enthalpy_kj_kg,
        heat_capacity_kj_kg_k,
        heat_capacity_at_constant_volume_kj_kg_k,
        speed_of_sound_m_s,
        saturation_mpa,
        density_kg_m3,
        density_lb_gal,
        expansion_fraction,
        volume_ratio,
        expansion_gal,
        plain_tank_gal,
        membrane_tank_gal,
        membrane_tank_for_system_gal,
        heater_tank_gal,
        hydronic_tank_gal,
        hydronic_tank_by_if97_gal,
        drinking_water_tank_l,
        unvented_tank_l,
        steel_growth_gal,
        locked_rise_atm,
        locked_rise_bar,
        locked_rise_psi,
        rigid_rise_bar_k,
        elastic_rise_bar,
        boiling_at_k,
        glycol_density_kg_m3,
        glycol_density_ratio,
        glycol_freezing_c,
        tube_ft3_ft,
        tube_floz_ft,
    )
}
FILES = sorted((Path(__file__).parent / "published").glob("*.yaml"))
TABLES = [
    table
    for file in FILES
    for table in TypeAdapter(list[Table]).validate_python(yaml.safe_load(file.read_text("utf-8")))
]
ROWS = [
    pytest.param(table, row, id=f"{table.calculation}-{'-'.join(map(str, row))}-{table.status}")
    for table in TABLES
    for row in table.rows
]


@pytest.mark.parametrize(("table", "row"), ROWS)
def test_printed_number_is_reproduced(table: Table, row: tuple[float | str, ...]) -> None:
    *given, printed = row
    found = CALCULATIONS[table.calculation](**dict(zip(table.columns, given, strict=True)))
    assert found == pytest.approx(printed, rel=table.relative, abs=table.absolute), table.source


def test_each_table_has_one_tolerance_and_each_calculation_a_table() -> None:
    assert all((table.relative > 0) != (table.absolute > 0) for table in TABLES)
    assert {table.calculation for table in TABLES} == set(CALCULATIONS)
