"""A number with its unit, as an author writes it, to SI and back.

One module, so that what is shown in a report or as a bound can be read again as it stands.
"""

import fractions
import math
import re
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from functools import cache, lru_cache

from plumbnet.layout.units import factors
from plumbnet.layout.units.units import CASE_MATTERS, DIMENSIONS, PRESSURE, SIZE, Dimension, Unit, Units
from plumbnet.layout.yaml import nearest, quoted

CONVERSION_ROUNDING = 1e-12
"""Share of a quantity that the conversion of units leaves."""
_LONGEST = 100  # characters of a quantity
_VULGAR = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
_SIGNS = str.maketrans({"−": "-", "º": "°"} | _VULGAR)
_QUANTITY = re.compile(
    r"""\s* (?P<sign> [-+]? ) \s*
    (?: (?: (?P<whole> [0-9]+ ) (?: \s*-\s* | \s+ ) )? (?P<over> [0-9]+ ) \s*/\s* (?P<under> [0-9]+ )
      | (?P<decimal> (?: (?: [0-9]{1,3} (?: ,[0-9]{3} )+ | [0-9]+ ) (?: \.[0-9]* )? | \.[0-9]+ )
                     (?: [eE][-+]?[0-9]+ )? )
    ) (?! [0-9.,/] ) \s* (?P<unit> .*? ) \s*""",
    re.VERBOSE | re.DOTALL,
)
_SI = Unit(1.0)
_LEAST = 5e-324  # the machine's smallest number
_NO_SIGN = 0.0  # added to -0.0 it gives 0.0
_SIGNIFICANT, _OF_BOUND = 6, 3  # digits that tell a bound from another, and those that are shown of one
_THOUSANDS = 10_000  # numbers from here on are written with commas
_LARGEST_DENOMINATOR = 10**12
_SIXTEENTH_TOLERANCE = 1e-6  # sixteenths of an inch: what conversion to SI and back leaves
_ABSOLUTE: dict[str, Units] = {"psia": "us", "bara": "metric-bar", "bar(a)": "metric-bar", "kpaa": "metric"}


class QuantityError(ValueError):
    """A quantity that cannot be used, in one sentence that says what would be right."""


def parse_measure(text: str | float, dimension: Dimension, units: Units | None) -> float:
    """The SI value of what an author wrote, within what nature and sense allow.

    A number, or a text without a unit, has the unit that `units` gives the dimension; without `units` a number
    is SI already and a text must carry its unit. Raises QuantityError.

    >>> parse_measure("1/2 in", SIZE, "metric")
    0.0127
    >>> round(parse_measure(62, PRESSURE, "us"))
    427475
    """
    value = measured(text, dimension, units)
    demand_sense(value, text, dimension, units)
    return value


def measured(text: str | float, dimension: Dimension, units: Units | None) -> float:
    """The SI value as `parse_measure`, whatever its size: infinite where it is larger than the machine's numbers.

    Raises QuantityError.
    """
    if isinstance(text, str):
        return _read(text, dimension, units)
    return _number(text, dimension, units)


def demand_sense(value: float, written: str | float, dimension: Dimension, units: Units | None) -> None:
    """Refuse a value that nature or sense do not allow, or that is next to nothing. Raises QuantityError."""
    floor, ceiling, finest, name = dimension.floor, dimension.ceiling, dimension.finest, dimension.name
    is_low, is_high = value < floor or (value == floor and dimension.floor_excluded), value > ceiling
    is_nothing = value != 0.0 and abs(value) < finest * (1.0 - CONVERSION_ROUNDING)
    if not (is_low or is_high or is_nothing):
        return
    unit = unit_as_written(written, dimension, units)
    if is_low:
        bound = f"{'above' if dimension.floor_excluded else 'at least'} {show_in(floor, unit, dimension)}"
        raise QuantityError(f"{measure_as_written(written, dimension, units)} is too low; a {name} is {bound}")
    if is_high:
        most = show_in(ceiling, unit, dimension)
        raise QuantityError(f"{measure_as_written(written, dimension, units)} is too high; a {name} is at most {most}")
    least = f"{'' if dimension.floor_excluded else '0 or '}at least {show_bound(finest, unit, dimension, low=True)}"
    raise QuantityError(f"{measure_as_written(written, dimension, units)} is next to nothing; write {least}")


def unit_as_written(written: str | float, dimension: Dimension, units: Units | None) -> str:
    """The name of the unit that an author used or, with a bare number, meant: that of the files in `units`.

    >>> unit_as_written("3 kpa", PRESSURE, "us"), unit_as_written(3, PRESSURE, "us")
    ('kPa', 'psi')
    """
    match = _QUANTITY.fullmatch(written.translate(_SIGNS)) if isinstance(written, str) else None
    named = _spelling(match["unit"], dimension) if match is not None else None
    return named or dimension.unit_name(units or "metric")


def show_bound(bound: float, unit: str, dimension: Dimension, *, low: bool) -> str:
    """A bound in words, of few digits, and never outside it: rounded up where it is the lowest that is allowed.

    >>> show_bound(10e6, "psi", PRESSURE, low=False), show_bound(1e3, "psi", PRESSURE, low=True)
    ('1450 psi', '0.146 psi')
    """
    exact = Decimal(f"{to(bound, unit, dimension):.{_SIGNIFICANT}g}")
    place = Decimal(1).scaleb(exact.adjusted() - _OF_BOUND + 1)
    rounded = exact.quantize(place, ROUND_CEILING if low else ROUND_FLOOR)
    return f"{_rounded(float(rounded), max(0, -int(place.adjusted())), _OF_BOUND)} {unit}"


def show_in(value: float, unit: str, dimension: Dimension) -> str:
    """The SI value in the named unit, to six significant digits.

    >>> show_in(10e6, "bar", PRESSURE)
    '100 bar'
    """
    return f"{_rounded(to(value, unit, dimension), None, _SIGNIFICANT)} {unit}"


def show(value: float, dimension: Dimension, units: Units, digits: int | None = None) -> str:
    """The quantity as a report writes it, rounded as the trade does or to so many significant digits.

    Digits before the decimal point are never rounded away.

    >>> show(427_475, PRESSURE, "us"), show(0.01905, SIZE, "us"), show(427_475, PRESSURE, "metric")
    ('62 psi', '3/4 in', '427 kPa')
    >>> show(427_475, PRESSURE, "metric-bar")
    '4.27 bar'
    """
    name = dimension.unit_name(units)
    number = to(value, name, dimension)
    if digits is None and dimension is SIZE and units == "us" and (fraction := _sixteenths(number)):
        return f"{fraction} {name}"
    decimals = dimension.decimals_in(units) if digits is None else None
    return f"{_rounded(number, decimals, digits or 3)} {name}"


def to(value: float, unit: str, dimension: Dimension) -> float:
    """The SI value as a number of the named unit.

    >>> round(to(0.0127, "mm", SIZE), 6)
    12.7
    """
    found = dimension.units[unit]
    return (value - found.zero) / found.size


@lru_cache(maxsize=65536)
def _read(text: str, dimension: Dimension, units: Units | None) -> float:
    match = _match(text, dimension, units)
    unit = _unit(match["unit"], text, dimension, units)
    return _in_si(_value(match), unit)


def _match(text: str, dimension: Dimension, units: Units | None) -> re.Match[str]:
    """Number and unit as they are written. Raises QuantityError."""
    example = dimension.example(units)
    if len(text) > _LONGEST:
        raise QuantityError(f"{quoted(text)} is too long for a {dimension.name}; write it like {quoted(example)}")
    match = _QUANTITY.fullmatch(text.translate(_SIGNS))
    if match is None:
        raise QuantityError(f"{quoted(text)} is no {dimension.name}; {_advice(text, example)}")
    if match["under"] and not int(match["under"]):
        raise QuantityError(f"{quoted(text)} divides by zero; write it like {quoted(example)}")
    return match


def number_and_unit(written: str | float, dimension: Dimension, units: Units) -> tuple[fractions.Fraction, str, Unit]:
    """What an author wrote as its exact number, the name of its unit as written and the unit itself.

    The name is "" where none is written. Raises QuantityError.

    >>> number_and_unit("1/2 in", SIZE, "us")[:2]
    (Fraction(1, 2), 'in')
    """
    if not isinstance(written, str):
        return _exact(_demand_number(written, dimension, units)), "", dimension.bare(units)
    match = _match(written, dimension, units)
    unit = _unit(match["unit"], written, dimension, units)
    decimal = (match["decimal"] or "").replace(",", "")
    if decimal and "e" not in decimal.lower():
        number = fractions.Fraction(decimal) * (-1 if match["sign"] == "-" else 1)
    else:
        number = _exact(_value(match))
    return number, match["unit"], unit


def _exact(number: float) -> fractions.Fraction:
    """The number, as short as it can be written. Raises QuantityError where it is not finite."""
    if not math.isfinite(number):
        raise QuantityError("a quantity is a finite number")
    return fractions.Fraction(number).limit_denominator(_LARGEST_DENOMINATOR)


def _number(number: object, dimension: Dimension, units: Units | None) -> float:
    """The SI value of a bare number."""
    number = _demand_number(number, dimension, units)
    unit = dimension.bare(units) if units else _SI
    try:
        return _in_si(number, unit)
    except OverflowError:
        return math.inf if number > 0 else -math.inf


def _in_si(number: float, unit: Unit) -> float:
    """A number of a unit in SI; without a sign where it is zero, and not zero where it is not."""
    size = number * unit.size
    if number and not size:
        size = math.copysign(_LEAST, number)
    return size + unit.zero + _NO_SIGN


def _demand_number(number: object, dimension: Dimension, units: Units | None) -> float:
    """The number as it is. Raises QuantityError for anything else."""
    if isinstance(number, bool) or not isinstance(number, int | float):
        example = dimension.example(units)
        raise QuantityError(f"a {dimension.name} is wanted here, for example {quoted(example)}")
    if isinstance(number, float) and not math.isfinite(number):
        raise QuantityError(f"a {dimension.name} is a finite number, for example {quoted(dimension.example(units))}")
    return number


def _value(match: re.Match[str]) -> float:
    """The number before the unit."""
    if match["decimal"]:
        number = float(match["decimal"].replace(",", ""))
    else:
        number = float(match["whole"] or 0) + _ratio(match["over"], match["under"])
    return -number if match["sign"] == "-" else number


def _advice(text: str, example: str) -> str:
    """What to write instead of a text that holds no number."""
    if re.match(r"\s*[-+]?[0-9]+,[0-9]", text):
        return f"commas part thousands, a point the decimals, as in {quoted('1,250.5')}"
    return f"write it like {quoted(example)}"


def _unit(name: str, text: str, dimension: Dimension, units: Units | None) -> Unit:
    """The unit of that name. Raises QuantityError where the dimension has none."""
    if not name and (units or "" in dimension.units):
        return dimension.bare(units or "metric")
    found = _spelling(name, dimension)
    if found is None:
        raise QuantityError(_no_unit(name, text, dimension, dimension.example(units)))
    if _turns_prefix(name, found):
        raise QuantityError(f"unknown unit {quoted(name)} in {quoted(text)}: did you mean {quoted(found)}?")
    return dimension.units[found]


def _no_unit(name: str, text: str, dimension: Dimension, example: str) -> str:
    """The sentence for a unit that the dimension does not have."""
    if not name:
        return f"{quoted(text)} has no unit; write it like {quoted(example)}"
    if dimension is PRESSURE and (gauge := _ABSOLUTE.get(name.casefold())):
        air = show(factors.ATMOSPHERE, PRESSURE, gauge)
        return f"{quoted(text)} is an absolute pressure and gauge pressures are read; take off the air's {air}"
    for other in DIMENSIONS:
        if _spelling(name, other):
            wanted = f"a {dimension.name} is wanted here, for example {quoted(example)}"
            return f"{quoted(text)} is a {other.name}; {wanted}"
    hint = nearest(name, dimension.units)
    advice = f": {hint}" if hint else f"; write it like {quoted(example)}"
    return f"unknown unit {quoted(name)} in {quoted(text)}{advice}"


def _spelling(name: str, dimension: Dimension) -> str | None:
    """The unit's name as the dimension spells it, whatever the case of the letters."""
    return name if name in dimension.units else _folded(dimension).get(name.casefold())


@cache
def _folded(dimension: Dimension) -> dict[str, str]:
    return {name.casefold(): name for name in dimension.units if name}


def _turns_prefix(name: str, meant: str) -> bool:
    """Whether the case of the first letter turns milli into mega or the other way."""
    return meant in CASE_MATTERS and name[0] != meant[0]


def _ratio(over: str, under: str) -> float:
    """A fraction, infinite where it is larger than the machine's numbers."""
    try:
        return int(over) / int(under)
    except OverflowError:
        return math.inf


def measure_as_written(written: str | float, dimension: Dimension, units: Units | None) -> str:
    """What the author wrote, a bare number with the unit it is taken in."""
    if isinstance(written, str):
        return quoted(written)
    if units is None:
        return quoted(_si_as_written(written, dimension))
    unit = "" if "" in dimension.units else f" {dimension.unit_name(units)}"
    return quoted(f"{_number_as_written(written)}{unit}")


def _si_as_written(number: float, dimension: Dimension) -> str:
    """A number in SI in the metric unit."""
    try:
        is_readable = not number or abs(number) >= dimension.finest
        return show(float(number), dimension, "metric", 6) if is_readable else f"{number!r} in SI"
    except OverflowError:
        return f"{_number_as_written(number)} in SI"


def _number_as_written(number: float) -> str:
    """A number as an author would write it; of one with more digits than anybody reads, how large it is."""
    try:
        return min(f"{number:.12g}", repr(float(number)), key=len)
    except OverflowError:
        return f"{'-' if number < 0 else ''}1e{int(number).bit_length() * math.log10(2):.0f}"


def _rounded(number: float, decimals: int | None, digits: int) -> str:
    if not math.isfinite(number):
        return str(number)
    if decimals is None:
        decimals = max(0, digits - 1 - math.floor(math.log10(abs(number)))) if number else 0
    comma = "," if abs(number) >= _THOUSANDS else ""
    text = f"{number:{comma}.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if decimals else text
    return "0" if text == "-0" else text


def _sixteenths(inches: float) -> str:
    """The number as whole inches and a fraction, or "" where it is no sixteenth."""
    count = round(inches * 16)
    if count <= 0 or abs(inches * 16 - count) > _SIXTEENTH_TOLERANCE:
        return ""
    whole, rest = divmod(count, 16)
    return "-".join(str(piece) for piece in (whole, fractions.Fraction(rest, 16)) if piece)
