"""Numbers that standards and handbooks print, each with its source and tolerance in `published/*.yaml`."""

import math
from collections.abc import Callable
from pathlib import Path
from typing import Literal

import pytest
import yaml
from pydantic import BaseModel, ConfigDict, TypeAdapter

from plumbnet.layout.tubes import tube
from plumbnet.physics import water
from plumbnet.physics.expansion import expansion_m3, growth
from plumbnet.physics.tank import tank_volume_m3

FOOT_M, POUND_KG = 0.3048, 0.45359237
GALLON_M3 = 231 * 0.0254**3
PSI_PA = 4.4482216152605 / 0.0254**2
BAR_PA = 1e5
STEEL_PER_F = 6.5e-6  # linear expansion as the ASHRAE handbook has it (from memory)


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
    return expansion_m3(volume_gal, cold, hot, pressure_abs_pa=psig(pressure_psig))


def boiler_expansion_gal(system_gal: float, mean_f: float) -> float:
    """The bracket of ASME BPVC section IV, HG-709: water less steel, from 40 degF."""
    return (0.00041 * mean_f - 0.0466) * system_gal


def plain_tank_gal(system_gal: float, mean_f: float, fill_psig: float, most_psig: float) -> float:
    return tank_volume_m3(
        boiler_expansion_gal(system_gal, mean_f),
        charge_abs_pa=water.ATMOSPHERE_PA,
        start_abs_pa=psig(fill_psig),
        end_abs_pa=psig(most_psig),
    )


def membrane_tank_gal(expansion_gal: float, start_psig: float, end_psig: float) -> float:
    start, end = psig(start_psig), psig(end_psig)
    return tank_volume_m3(expansion_gal, charge_abs_pa=start, start_abs_pa=start, end_abs_pa=end)


def membrane_tank_for_system_gal(system_gal: float, mean_f: float, fill_psig: float, most_psig: float) -> float:
    return membrane_tank_gal(boiler_expansion_gal(system_gal, mean_f), fill_psig, most_psig)


def drinking_water_tank_l(heater_l: float, expansion_fraction: float, start_bar: float, relief_bar: float) -> float:
    """DIN 4807-5: the charge stands 0.2 bar below the start, the tank ends at 0.8 of the relief set."""
    return tank_volume_m3(
        heater_l * expansion_fraction,
        charge_abs_pa=(start_bar - 0.2 + 1) * BAR_PA,
        start_abs_pa=(start_bar + 1) * BAR_PA,
        end_abs_pa=(0.8 * relief_bar + 1) * BAR_PA,
    )


def tank_by_handbook_volumes_gal(  # noqa: PLR0913  the seven numbers the example prints
    *,
    system_gal: float,
    cold_ft3_lb: float,
    hot_ft3_lb: float,
    rise_f: float,
    charge_psia: float,
    start_psia: float,
    end_psia: float,
) -> float:
    net = hot_ft3_lb / cold_ft3_lb - 1 - 3 * STEEL_PER_F * rise_f
    return tank_volume_m3(system_gal * net, charge_abs_pa=charge_psia, start_abs_pa=start_psia, end_abs_pa=end_psia)


def tank_less_steel_gal(  # noqa: PLR0913  the six numbers the example prints
    *, system_gal: float, from_f: float, to_f: float, charge_psia: float, start_psia: float, end_psia: float
) -> float:
    grown = expansion_gal(1, from_f, to_f, start_psia - 14.7)
    net = grown - 3 * STEEL_PER_F * (to_f - from_f)
    return tank_volume_m3(system_gal * net, charge_abs_pa=charge_psia, start_abs_pa=start_psia, end_abs_pa=end_psia)


def locked_rise_pa(cold_k: float, hot_k: float, pressure_abs_pa: float) -> float:
    volume = water.specific_volume_m3_kg(cold_k, pressure_abs_pa=pressure_abs_pa)
    return water.locked_pressure_abs_pa(hot_k, specific_volume_m3_kg=volume) - pressure_abs_pa


def locked_rise_atm(from_c: float, to_c: float) -> float:
    return locked_rise_pa(kelvin(from_c), kelvin(to_c), water.ATMOSPHERE_PA) / water.ATMOSPHERE_PA


def locked_rise_psi(from_f: float, to_f: float, from_psig: float) -> float:
    return locked_rise_pa(kelvin_of_f(from_f), kelvin_of_f(to_f), psig(from_psig)) / PSI_PA


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
        drinking_water_tank_l,
        tank_by_handbook_volumes_gal,
        tank_less_steel_gal,
        locked_rise_atm,
        locked_rise_psi,
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
