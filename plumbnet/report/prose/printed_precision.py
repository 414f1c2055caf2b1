"""A step and units in, its numbers out as a reader types them into a calculator to get the same result."""

import ast
import math
from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.layout.units import (
    BAR,
    CONVERSION_ROUNDING,
    FOOT,
    GALLON,
    KILO,
    LITRE,
    POUND,
    PSI,
    TEMPERATURE,
    Units,
    show,
)
from plumbnet.physics.sizing import Step, StepDimension, StepNumber

RESULT_DIGITS = 6
"""Significant digits of a result."""
LOOKED_UP_DIGITS = 9
"""Significant digits of a volume that is looked up in a table, and of what anything is looked up by."""
MOST_DIGITS = 15
"""Significant digits of a double that mean something."""
_LEAST_DIGITS = 4
_CLOSE = 0.6  # of the last digit printed: half of it is rounding


@dataclass(frozen=True, slots=True)
class Written:
    """A number as it is printed, its unit, and the same in words where a gauge or thermometer reads otherwise."""

    symbol: str
    text: str
    unit: str
    aside: str = ""

    @property
    def with_unit(self) -> str:
        """The number and its unit."""
        return f"{self.text} {self.unit}".rstrip() + (f" ({self.aside})" if self.aside else "")


@dataclass(frozen=True, slots=True)
class WrittenStep:
    """A step as it is printed."""

    symbol: str
    name: str
    formula: str
    numbers: tuple[Written, ...]
    result: Written
    source: str


@dataclass(frozen=True, slots=True)
class _Unit:
    """A unit's name and its size in SI."""

    name: str
    size: float = 1.0


_POUND_VOLUME = FOOT**3 / POUND
_UNITS: Mapping[Units, Mapping[StepDimension, _Unit]] = {
    "us": {
        "volume": _Unit("gal", GALLON),
        "specific volume": _Unit("ft3/lb", _POUND_VOLUME),
        "pressure": _Unit("psi abs", PSI),
        "pressure difference": _Unit("psi", PSI),
    },
    "metric": {
        "volume": _Unit("L", LITRE),
        "specific volume": _Unit("L/kg", LITRE),
        "pressure": _Unit("kPa abs", KILO),
        "pressure difference": _Unit("kPa", KILO),
    },
    "metric-bar": {
        "volume": _Unit("L", LITRE),
        "specific volume": _Unit("L/kg", LITRE),
        "pressure": _Unit("bar abs", BAR),
        "pressure difference": _Unit("bar", BAR),
    },
}
_EVERYWHERE: Mapping[StepDimension, _Unit] = {
    "temperature": _Unit("K"),
    "degrees Fahrenheit": _Unit("degF"),
    "ratio": _Unit(""),
    "per kelvin": _Unit("1/K"),
}


def written_step(step: Step, units: Units) -> WrittenStep:
    """The step with as few digits as give a reader the printed result, to its last digit.

    Where the step only takes a number over, its formula is that number.
    """
    if step.formula == step.symbol:
        number = _bare(step.symbol, step.numbers[step.symbol], units, MOST_DIGITS - 3)
        return WrittenStep(step.symbol, step.name, number.text, (), number, step.source)
    looked_up = _reached(step.formula, {symbol: number.value for symbol, number in step.numbers.items()}) is None
    is_volume = looked_up and step.dimension == "specific volume"
    shown = LOOKED_UP_DIGITS if is_volume else RESULT_DIGITS
    result = _written(step.symbol, StepNumber(step.value, step.dimension), units, shown)
    for digits in range(LOOKED_UP_DIGITS if looked_up else RESULT_DIGITS, MOST_DIGITS + 1):
        numbers = tuple(_bare(symbol, number, units, digits) for symbol, number in step.numbers.items())
        reached = _reached(step.formula, {number.symbol: float(number.text) for number in numbers})
        if reached is None or abs(reached - float(result.text)) <= _CLOSE * last_digit(result.text):
            break
    return WrittenStep(step.symbol, step.name, step.formula, numbers, result, step.source)


def _reached(formula: str, numbers: Mapping[str, float]) -> float | None:
    """What a formula comes to; not a number where it would divide by nothing, as it may with too few digits."""
    try:
        return evaluate(formula, numbers)
    except ZeroDivisionError:
        return math.nan


def printed_number(symbol: str, value: float, dimension: StepDimension, units: Units) -> Written:
    """A number by itself, with all the digits it has."""
    return _bare(symbol, StepNumber(value, dimension), units, LOOKED_UP_DIGITS)


def decimal(value: float, digits: int) -> str:
    """A number with so many significant digits and no exponent; digits before the point are never rounded away.

    >>> decimal(0.0000117, 6), decimal(123456.7, 3), decimal(0.0, 6)
    ('0.0000117000', '123457', '0')
    """
    if value == 0.0:
        return "0"
    return f"{value:.{max(0, digits - 1 - math.floor(math.log10(abs(value))))}f}"


def at_least(volume_m3: float, units: Units) -> str:
    """A volume to four digits, never less than it is.

    >>> at_least(0.0100001, "metric"), at_least(0.01, "metric")
    ('10.01 L', '10 L')
    """
    unit = _UNITS[units]["volume"]
    exact = volume_m3 / unit.size
    text = decimal(exact, _LEAST_DIGITS)
    if float(text) < exact * (1.0 - CONVERSION_ROUNDING):
        text = decimal(float(text) + last_digit(text), _LEAST_DIGITS)
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} {unit.name}"


def last_digit(text: str) -> float:
    """What one in the last digit of a printed number is worth.

    >>> last_digit("4.416"), last_digit("123457")
    (0.001, 1.0)
    """
    return float(10.0 ** -len(text.partition(".")[2]))


def evaluate(formula: str, numbers: Mapping[str, float]) -> float | None:
    """What a formula comes to; None where it looks something up in a table of water.

    >>> evaluate("max(0, V * (1 - p_1 / p_2))", {"V": 10.0, "p_1": 1.0, "p_2": 2.0})
    5.0
    """
    return _value(ast.parse(formula, mode="eval").body, numbers)


def _written(symbol: str, number: StepNumber, units: Units, digits: int) -> Written:
    unit = _EVERYWHERE.get(number.dimension) or _UNITS[units][number.dimension]
    return Written(symbol, decimal(number.value / unit.size, digits), unit.name, _aside(number, units))


def _bare(symbol: str, number: StepNumber, units: Units, digits: int) -> Written:
    """A number without the zeros at its end."""
    plain = _written(symbol, number, units, digits)
    text = plain.text.rstrip("0").rstrip(".") if "." in plain.text else plain.text
    return Written(symbol, text, plain.unit, plain.aside)


def _aside(number: StepNumber, units: Units) -> str:
    if number.dimension == "temperature":
        return show(number.value, TEMPERATURE, units, RESULT_DIGITS)
    return ""


def _value(node: ast.expr, numbers: Mapping[str, float]) -> float | None:
    match node:
        case ast.Constant(value=int() | float() as value):
            return float(value)
        case ast.Name(id=symbol):
            return numbers[symbol]
        case ast.BinOp(left=left, op=operation, right=right):
            return _result(operation, _value(left, numbers), _value(right, numbers))
        case ast.Call(func=ast.Name(id="max" | "min" as name), args=arguments):
            values = [_value(argument, numbers) for argument in arguments]
            known = [value for value in values if value is not None]
            if len(known) < len(values):
                return None
            return max(known) if name == "max" else min(known)
        case _:
            return None


def _result(operation: ast.operator, left: float | None, right: float | None) -> float | None:
    if left is None or right is None:
        return None
    match operation:
        case ast.Add():
            return left + right
        case ast.Sub():
            return left - right
        case ast.Mult():
            return left * right
        case ast.Div():
            return left / right
        case _:
            raise ValueError(f"a formula has no {type(operation).__name__}")
