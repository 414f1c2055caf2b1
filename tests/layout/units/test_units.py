"""The sizes of units against published tables, and the units of one dimension against each other."""

import copy
import pickle
from typing import get_args

import pytest

from plumbnet.layout.units.measure import parse_measure
from plumbnet.layout.units.units import (
    CASE_MATTERS,
    DIMENSIONS,
    FLOW,
    FRACTION,
    LENGTH,
    PASCAL_PER_METRE,
    POWER,
    PRESSURE,
    SIZE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TIME,
    VOLUME,
    Dimension,
    Units,
    customary,
    dimension_named,
)

# NIST Special Publication 811 (2008), appendix B.8; figures as printed, so compared to seven digits.
PUBLISHED = [
    (PRESSURE, "psi", 6.894757e3),
    (PRESSURE, "bar", 1.0e5),
    (PRESSURE, "mbar", 1.0e2),
    (PRESSURE, "kPa", 1.0e3),
    (PRESSURE, "MPa", 1.0e6),
    (PRESSURE, "ftH2O", 2.989067e3),
    (PRESSURE, "mH2O", 9.80665e3),
    (LENGTH, "ft", 3.048e-1),
    (LENGTH, "in", 2.54e-2),
    (SIZE, "in", 2.54e-2),
    (SIZE, "mm", 1.0e-3),
    (VOLUME, "gal", 3.785412e-3),
    (VOLUME, "qt", 9.463529e-4),
    (VOLUME, "fl oz", 2.957353e-5),
    (VOLUME, "ft3", 2.831685e-2),
    (VOLUME, "L", 1.0e-3),
    (VOLUME, "mL", 1.0e-6),
    (POWER, "Btu/h", 2.930711e-1),
    (POWER, "MBH", 2.930711e2),
    (FLOW, "gpm", 6.309020e-5),
    (FLOW, "gph", 6.309020e-5 / 60),
    (FLOW, "L/min", 1.0e-3 / 60),
    (FLOW, "m3/h", 1.0 / 3600),
    (TIME, "min", 60.0),
    (TIME, "h", 3600.0),
    (TEMPERATURE_DIFFERENCE, "degF", 5.555556e-1),
]


@pytest.mark.parametrize(("dimension", "unit", "size"), PUBLISHED)
def test_size_of_unit_is_the_published_one(dimension: Dimension, unit: str, size: float) -> None:
    assert dimension.units[unit].size == pytest.approx(size, rel=2e-7)
    assert dimension.units[unit].zero == 0.0


def test_scales_of_temperature_begin_where_they_should() -> None:
    fahrenheit, celsius = TEMPERATURE.units["degF"], TEMPERATURE.units["degC"]
    assert 32 * fahrenheit.size + fahrenheit.zero == pytest.approx(273.15, rel=1e-15)
    assert 212 * fahrenheit.size + fahrenheit.zero == pytest.approx(373.15, rel=1e-15)
    assert (celsius.size, celsius.zero) == (1.0, 273.15)


def test_metre_of_water_is_the_conventional_one() -> None:
    assert PASCAL_PER_METRE == 9806.65


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_units_that_differ_in_case_alone_are_the_same_unit(dimension: Dimension) -> None:
    sizes: dict[str, set[object]] = {}
    for name, unit in dimension.units.items():
        sizes.setdefault(name.casefold(), set()).add(unit)
    assert all(len(same) == 1 for same in sizes.values())


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_bare_number_has_a_unit(dimension: Dimension) -> None:
    if dimension is FRACTION:
        assert dimension.bare("us").size == dimension.bare("metric").size == 1.0
    else:
        assert dimension.bare("us") is dimension.units[dimension.us]
        assert dimension.bare("metric") is dimension.units[dimension.metric]
        assert dimension.bare("metric-bar") is dimension.units[dimension.metric_bar or dimension.metric]


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda dimension: dimension.name)
def test_examples_are_written_in_the_unit_of_a_bare_number(dimension: Dimension) -> None:
    for units in get_args(Units):
        example = dimension.example(units)
        assert parse_measure(example, dimension, units) == parse_measure(example, dimension, None)
        assert example.endswith(dimension.unit_name(units))
    assert dimension.example(None) == dimension.examples[0]


def test_only_pressures_differ_where_units_are_metric_with_bar() -> None:
    assert [one for one in DIMENSIONS if one.unit_name("metric-bar") != one.unit_name("metric")] == [PRESSURE]
    assert (PRESSURE.unit_name("metric-bar"), PRESSURE.decimals_in("metric-bar")) == ("bar", 2)
    assert (LENGTH.example("metric-bar"), LENGTH.decimals_in("metric-bar")) == ("9 m", 2)
    assert [customary(units) for units in get_args(Units)] == ["us", "metric", "metric"]


def test_no_unit_name_would_upset_a_pattern() -> None:
    names = "".join(name for dimension in DIMENSIONS for name in dimension.units)
    assert set(names).isdisjoint(r"\.^$*+?()[]{}|-")


def test_units_whose_case_matters_exist() -> None:
    assert {name for dimension in DIMENSIONS for name in dimension.units} >= CASE_MATTERS


@pytest.mark.parametrize("dimension", DIMENSIONS, ids=lambda one: one.name)
def test_dimension_sent_or_copied_is_the_same_one(dimension: Dimension) -> None:
    assert pickle.loads(pickle.dumps(dimension)) is dimension  # noqa: S301  what we wrote ourselves
    assert copy.deepcopy(dimension) is dimension
    assert dimension_named(dimension.name) is dimension
