"""Every quantity that an author can write has bounds: they refuse slips in a sentence, and nothing ever built."""

from typing import Annotated

import pytest
from fuzzing.extremes import BEYOND, quantities_in
from pydantic import TypeAdapter, ValidationError

from plumbnet.layout.file.document import Document, RunWithPipe
from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.kinds import heat  # noqa: F401  every kind is registered where the reader is
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.units import sensible_bounds
from plumbnet.layout.units.measure import QuantityError, show, to
from plumbnet.layout.units.quantity import Quantity
from plumbnet.layout.units.units import PRESSURE, TEMPERATURE, Units
from plumbnet.layout.yaml.plain_scalar import resolved
from plumbnet.rules.rule_profile import Profile

DECLARED: dict[str, type[Declared]] = {
    **{name: KINDS[name] for name in sorted(KINDS)},
    "a run": RunWithPipe,
    "a layout": Document,
    "rules": Profile,
}
FIELDS = [
    pytest.param(quantity, id=f"{name} {path}")
    for name, declared in DECLARED.items()
    for path, quantity in quantities_in(declared).items()
]
TO_ZERO = ("-0.0", "-0", "1e-400")


def test_every_sort_of_field_is_among_them() -> None:
    names = {str(field.id) for field in FIELDS}
    assert len(names) > 150
    assert {"main pressure", "boiler relief.pressure", "device passages.opens", "a run length"} <= names
    assert {"a layout tank_sizes", "rules distribution_limit.value", "rules way_back.warmest"} <= names


@pytest.mark.parametrize("quantity", FIELDS)
@pytest.mark.parametrize("units", ["us", "metric", "metric-bar"])
def test_number_that_nobody_means_is_refused_in_the_units_of_the_file(quantity: Quantity, units: Units) -> None:
    for number in BEYOND:
        if number in TO_ZERO or number in {"1/3", "0x10"} or _is_a_difference(quantity, number):
            continue
        with pytest.raises(QuantityError) as refused:
            quantity.read(_as_the_reader_has_it(number), units)
        said = str(refused.value)
        assert any(word in said for word in ("too low", "too high", "next to nothing", "finite", "too long", " is no "))
        assert len(said) < 160


def _as_the_reader_has_it(number: str) -> str | float:
    value = resolved(number)
    assert isinstance(value, str | int | float)
    return value


def _is_a_difference(quantity: Quantity, number: str) -> bool:
    """Degrees of an ordinary scale begin anywhere: next to nothing is as good as none."""
    return quantity.dimension is TEMPERATURE and (number.startswith(("1e-", "5e-", "2.2e-", "-1e-")))


@pytest.mark.parametrize("quantity", FIELDS)
def test_what_is_usual_and_ten_times_that_lies_far_within_the_bounds(quantity: Quantity) -> None:
    if quantity.usual is None:
        return
    low, high = quantity.usual
    if quantity.dimension is not TEMPERATURE:
        low, high = low / 10, high * 10
    assert [quantity.read(value, None) for value in (low, high)] == [low, high]


REAL = [
    ("main pressure", "0 bar", "25 bar"),  # a street that is shut off; the foot of a hydraulic town main
    ("pressure_reducer set", "0.2 bar", "40 bar"),  # for a drip line; in a riser of a tower
    ("relief_valve pressure", "0.3 bar", "63 bar"),  # of an open steam-like plant; of hot mains
    ("expansion_tank volume", "0.05 L", "500 m3"),  # a shock arrester; the vessels of a town's heating
    ("expansion_tank acceptance", "0 L", "200 m3"),
    ("storage_heater volume", "2 L", "50 m3"),  # under a basin; of a hospital
    ("tankless_heater volume", "0.02 L", "200 L"),
    ("boiler volume", "0.5 L", "300 m3"),  # on a wall; of a shell boiler with its economisers
    ("boiler input", "3 kW", "500 MW"),
    ("tankless_heater input", "0 kW", "200 kW"),
    ("check_valve opens", "0 psi", "15 psi"),
    ("circulator head", "1 kPa", "120 m"),  # in a solar loop; in the heating of a town
    ("booster_pump rise", "0 bar", "60 bar"),  # one that stands still; to the top of a tower at once
    ("tee elevation", "-3,000 m", "5,100 m"),  # a mine; the highest town, above the sea
    ("valve rating", "1 bar", "6000 psi"),  # of a basin; of forged steel
    ("main temperature", "32 degF", "180 degC"),  # as it thaws; of a town's hot main
    ("filling_loop temperature", "-30 degC", "40 degC"),  # with antifreeze, in winter
    ("boiler setpoint", "20 degC", "200 degC"),
    ("relief_valve temperature", "85 degC", "210 degC"),
    ("storage_tank volume", "10 L", "5000 m3"),
    ("boiler antifreeze.share", "5 %", "60 %"),
    ("a run length", "1 cm", "30,000 m"),
    ("a run volume", "0.001 L", "9000 m3"),
    ("a layout tank_sizes", "0.16 L", "100 m3"),
]
"""The smallest and the largest of the kind that were ever heard of, from memory."""


@pytest.mark.parametrize(("field", "smallest", "largest"), REAL)
@pytest.mark.parametrize("units", ["us", "metric", "metric-bar"])
def test_smallest_and_largest_that_were_ever_heard_of_are_read(
    field: str, smallest: str, largest: str, units: Units
) -> None:
    quantity = next(one.values[0] for one in FIELDS if one.id == field)
    assert isinstance(quantity, Quantity)
    quantity.read(smallest, units)
    quantity.read(largest, units)


def test_street_of_a_hundred_thousand_kilopascal_is_told_at_its_own_line_in_its_own_unit() -> None:
    with pytest.raises(ValidationError, match=r'"100000 kPa" is too high; at most 10,000 kPa is wanted here'):
        KINDS["main"].model_validate({"pressure": 1e5}, context={"units": "metric"})


def test_freezing_and_the_hottest_are_read_in_whichever_scale() -> None:
    cold, hot = quantities_in(KINDS["main"])["temperature"], quantities_in(KINDS["boiler"])["setpoint"]
    assert cold.read("32 degF", "us") == pytest.approx(273.15)
    assert cold.read(0, "metric") == pytest.approx(273.15)
    assert hot.read("392 degF", "us") == hot.read(200, "metric") == pytest.approx(473.15)


def test_every_bound_says_what_was_thought_of() -> None:
    told = (sensible_bounds.__doc__ or "").splitlines()
    assert "Common sense bounds, invented" in "".join(told)
    assert show(sensible_bounds.MOST_STANDING_PA, PRESSURE, "us", 3) == "1450 psi"


@pytest.mark.parametrize("quantity", FIELDS)
def test_schema_carries_bounds_that_refuse_nothing_that_is_read(quantity: Quantity) -> None:
    number = TypeAdapter(Annotated[float, quantity]).json_schema()["anyOf"][0]
    least, most = number["minimum"], number["maximum"]
    for units in ("us", "metric", "metric-bar"):
        unit = quantity.dimension.bare(units)
        for value in (quantity.lowest, quantity.highest):
            assert least <= (value - unit.zero) / unit.size <= most
    dimension = quantity.dimension
    assert most <= 1.001 * max(to(quantity.highest, one, dimension) for one in {dimension.us, dimension.metric} if one)
