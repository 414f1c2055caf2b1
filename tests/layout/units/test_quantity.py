"""Quantities as fields of a model: read with the units of the file, bounded, described for editors."""

import re
from typing import Annotated

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from plumbnet.layout.units.measure import QuantityError, parse_measure
from plumbnet.layout.units.quantity import (
    Duration,
    Elevation,
    Flow,
    Fraction,
    Length,
    Power,
    Pressure,
    Quantity,
    Size,
    Temperature,
    TemperatureDifference,
    Volume,
)
from plumbnet.layout.units.units import CASE_MATTERS, DIMENSIONS, PRESSURE, TEMPERATURE, VOLUME, Dimension, Units

US, METRIC = {"units": "us"}, {"units": "metric"}


class Tank(BaseModel):
    model_config = ConfigDict(frozen=True, strict=True)

    volume: Annotated[float, Quantity(VOLUME, above=0.0)]
    charge: Annotated[Pressure, Field(title="Charge", description="air side")] = 300_000.0
    rating: Annotated[float, Quantity(PRESSURE, at_least=100_000.0, at_most=1_000_000.0)] | None = None


class Everything(BaseModel):
    a: Pressure = 0.0
    b: Length = 0.0
    c: Elevation = 0.0
    d: Size = 1.0
    e: Volume = 0.0
    f: Temperature = 300.0
    g: TemperatureDifference = 0.0
    h: Power = 0.0
    i: Flow = 0.0
    j: Fraction = 0.0
    k: Duration = 0.0


def refused(values: dict[str, object], context: dict[str, str] | None = None) -> str:
    with pytest.raises(ValidationError) as caught:
        Tank.model_validate(values, context=context)
    (error,) = caught.value.errors()
    assert error["type"] == "value_error"
    assert isinstance(error["ctx"]["error"], QuantityError)
    return str(error["ctx"]["error"])


def test_field_is_read_with_the_units_of_the_file() -> None:
    tank = Tank.model_validate({"volume": 2, "charge": "62 psi"}, context=US)
    assert tank.volume == pytest.approx(0.007570823568)
    assert tank.charge == pytest.approx(427_474.95)
    assert Tank.model_validate({"volume": 2}, context=METRIC).volume == pytest.approx(0.002)


def test_field_without_context_is_si() -> None:
    assert Tank(volume=2.0, charge=5.0).model_dump() == {"volume": 2.0, "charge": 5.0, "rating": None}
    assert Tank.model_validate({"volume": 2}).volume == 2.0
    assert type(Tank.model_validate({"volume": 2}).volume) is float


def test_text_without_context_needs_its_unit() -> None:
    assert Tank.model_validate({"volume": "2 L"}).volume == pytest.approx(0.002)
    assert refused({"volume": "2"}) == '"2" has no unit; write it like "50 gal"'


@pytest.mark.parametrize(
    ("values", "context", "said"),
    [
        ({"volume": 0}, US, '"0 gal" is too low; more than 0 gal is wanted here'),
        ({"volume": "0 L"}, US, '"0 L" is too low; more than 0 L is wanted here'),
        ({"volume": 0.0}, None, '"0 L" is too low; more than 0 L is wanted here'),
        ({"volume": "-1 L"}, METRIC, '"-1 L" is too low; more than 0 L is wanted here'),
        ({"volume": 1, "rating": "10 psi"}, US, '"10 psi" is too low; at least 14.6 psi is wanted here'),
        ({"volume": 1, "rating": 2000}, METRIC, '"2000 kPa" is too high; at most 1000 kPa is wanted here'),
        ({"volume": "62 psi"}, US, '"62 psi" is a pressure; a volume is wanted here, for example "50 gal"'),
        ({"volume": True}, US, 'a volume is wanted here, for example "50 gal"'),
        ({"volume": None}, METRIC, 'a volume is wanted here, for example "190 L"'),
        ({"volume": {"gal": 5}}, US, 'a volume is wanted here, for example "50 gal"'),
        ({"volume": float("nan")}, None, 'a volume is a finite number, for example "50 gal"'),
    ],
)
def test_value_out_of_bounds_is_said_in_the_units_of_the_file(
    values: dict[str, object], context: dict[str, str] | None, said: str
) -> None:
    assert refused(values, context) == said


def test_bounds_themselves_are_allowed() -> None:
    assert Tank.model_validate({"volume": 1, "rating": "1 bar"}, context=US).rating == 100_000.0
    assert Tank.model_validate({"volume": 1, "rating": "10 bar"}, context=US).rating == 1_000_000.0


def test_ready_made_quantities_read_their_examples() -> None:
    dimensions = {"a": 0, "b": 1, "c": 1, "d": 2, "e": 3, "f": 4, "g": 5, "h": 6, "i": 7, "j": 8, "k": 9}
    for field, index in dimensions.items():
        for example in DIMENSIONS[index].examples:
            read = Everything.model_validate({field: example}, context=US)
            assert getattr(read, field) == parse_measure(example, DIMENSIONS[index], "us")


def test_length_is_never_negative_and_elevation_may_be() -> None:
    assert Everything.model_validate({"c": "-5 ft"}, context=US).c == pytest.approx(-1.524)
    with pytest.raises(ValidationError, match=r'"-5 ft" is too low; at least 0 ft is wanted here'):
        Everything.model_validate({"b": "-5 ft"}, context=US)


def test_pressure_may_be_below_that_of_the_air() -> None:
    assert Everything.model_validate({"a": "-5 psi"}, context=US).a < 0


def test_schema_takes_a_number_or_a_text_with_a_unit() -> None:
    schema = Tank.model_json_schema()["properties"]
    assert [choice["type"] for choice in schema["volume"]["anyOf"]] == ["number", "string"]
    assert schema["volume"]["anyOf"][1]["examples"] == ["50 gal", "190 L"]
    assert schema["volume"]["title"] == "Volume"
    assert schema["volume"]["description"] == ("A volume; a bare number is in gal or, where units are metric, in L.")


def test_schema_keeps_title_and_description_of_the_field() -> None:
    charge = Tank.model_json_schema()["properties"]["charge"]
    assert (charge["title"], charge["description"], charge["default"]) == ("Charge", "air side", 300_000.0)


def test_schema_says_what_a_bare_number_is() -> None:
    schema = Everything.model_json_schema()["properties"]
    assert schema["j"]["description"] == "A fraction."
    assert schema["k"]["description"] == "A time; a bare number is in min."


def test_schema_of_what_is_written_out_is_a_number() -> None:
    assert Tank.model_json_schema(mode="serialization")["properties"]["volume"]["type"] == "number"


def test_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(Everything.model_json_schema())


def pattern(dimension: Dimension) -> str:
    class Model(BaseModel):
        field: Annotated[float, Quantity(dimension)]

    text: str = Model.model_json_schema()["properties"]["field"]["anyOf"][1]["pattern"]
    return text


PATTERNS = [(dimension, re.compile(pattern(dimension))) for dimension in DIMENSIONS]
NUMBERS = st.from_regex(
    r"[-+−]?( ?[0-9]{1,4}(,[0-9]{3})?(\.[0-9]{0,3})?(e-?[0-9])?|[0-9] ?[- ]?[1-9]/[1-9]|[0-9]?½) *", fullmatch=True
)
NAMES = st.sampled_from([name for dimension in DIMENSIONS for name in dimension.units])


@given(NUMBERS, NAMES, st.sampled_from([str, str.upper, str.lower]), st.sampled_from(PATTERNS))
def test_schema_accepts_every_text_that_is_read(
    number: str, name: str, case: type[str], known: tuple[Dimension, re.Pattern[str]]
) -> None:
    dimension, accepted = known
    text = number + case(name)
    try:
        parse_measure(text, dimension, "us")
    except QuantityError:
        return
    assert accepted.search(text)


@pytest.mark.parametrize("text", ["62 gal", "x", "psi", "62 psi 5", "", "5 mPA", "5 mpa"])
def test_schema_refuses_what_is_no_pressure(text: str) -> None:
    assert not re.search(pattern(PRESSURE), text)


def test_schema_minds_the_case_of_milli_and_mega() -> None:
    joined = "".join(known.pattern for _, known in PATTERNS)
    assert all(name[0] + f"[{name[1].lower()}{name[1].upper()}]" in joined for name in CASE_MATTERS)


def test_temperatures_differ_from_their_differences() -> None:
    read = Everything.model_validate({"f": "18 degF", "g": "18 degF"}, context=US)
    assert read.f == pytest.approx(265.372, abs=1e-3)
    assert read.g == pytest.approx(10.0)
    assert Quantity(TEMPERATURE).read(300.0, None) == 300.0


@pytest.mark.parametrize("units", ["us", "metric"])
def test_quantity_can_be_read_without_a_model(units: Units) -> None:
    assert Quantity(VOLUME, at_least=0.001).read("1 L", units) == pytest.approx(0.001)
