"""The units a layout may use, by what they measure, and their size in SI."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal, TypeAlias

from scipy import constants

Units: TypeAlias = Literal["us", "metric"]
"""What a bare number means."""

PASCAL_PER_METRE: Final = 1000.0 * constants.g
"""Pressure under a metre of still water, in Pa/m: 9806.65.

Source: the conventional metre of water, 1000 kg/m3 (water at 4 degC) times standard gravity; NIST Special
Publication 811 (2008), appendix B.8, "meter of water, conventional (mH2O)".
"""


@dataclass(frozen=True, slots=True)
class Unit:
    """Size of one unit in SI, and the SI value at which its scale begins."""

    size: float
    zero: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Dimension:
    """Something that can be measured: its name, the units a bare number has, and every unit that is read.

    A bare number takes the unit `us` or `metric`, unless `units` has an entry "" for it. `floor` and `ceiling`
    are the SI values that nature or sense allow, the floor itself unless `floor_excluded`. `decimals` says how
    far reports round in US and metric units; None keeps three digits.
    """

    name: str
    us: str
    metric: str
    units: Mapping[str, Unit] = field(repr=False)
    examples: tuple[str, str]
    decimals: tuple[int | None, int | None] = (None, None)
    floor: float | None = None
    floor_excluded: bool = False
    ceiling: float | None = None

    def bare(self, units: Units) -> Unit:
        """The unit that a bare number has."""
        return self.units.get("") or self.units[self.metric if units == "metric" else self.us]


def _named(*rows: tuple[str, float | Unit]) -> dict[str, Unit]:
    """Units by each of their names; names of one unit are written in one row, parted by a bar."""
    return {name: size if isinstance(size, Unit) else Unit(size) for names, size in rows for name in names.split("|")}


_KELVIN: Final = constants.degree_Fahrenheit  # one degree Fahrenheit in kelvin
_FAHRENHEIT_ZERO: Final = constants.zero_Celsius - 32 * _KELVIN
_FOOT: Final = 12 * constants.inch
_CUBIC_FOOT: Final = _FOOT**3

PRESSURE: Final = Dimension(
    "pressure",
    "psi",
    "kPa",
    _named(
        ("psi|psig", constants.psi),
        ("bar|barg", constants.bar),
        ("mbar", constants.milli * constants.bar),
        ("kPa", constants.kilo),
        ("MPa", constants.mega),
        ("Pa", 1.0),
        ("ftH2O|ft H2O", PASCAL_PER_METRE * _FOOT),
        ("mH2O|m H2O", PASCAL_PER_METRE),
    ),
    ("62 psi", "430 kPa"),
    (1, 0),
    floor=-constants.atm,
    ceiling=100 * constants.mega,
)
"""Gauge pressure, in Pa; nothing lies further below the air than one atmosphere, or above what is known of water."""

LENGTH: Final = Dimension(
    "length",
    "ft",
    "m",
    _named(
        ("ft|foot|feet|'", _FOOT),
        ('in|inch|inches|"', constants.inch),
        ("m|metre|metres|meter|meters", 1.0),
        ("cm", constants.centi),
        ("mm", constants.milli),
    ),
    ("30 ft", "9 m"),
    (1, 2),
    floor=-100 * constants.kilo,
    ceiling=100 * constants.kilo,
)
"""Length or height, in m."""

HEAD: Final = Dimension(
    "head",
    "ft",
    "m",
    dict(PRESSURE.units)
    | _named(("ft|foot|feet", PASCAL_PER_METRE * _FOOT), ("m|metre|metres|meter|meters", PASCAL_PER_METRE)),
    ("20 ft", "6 m"),
    (1, 1),
    floor=0.0,
    ceiling=100 * constants.mega,
)
"""What a pump adds to the pressure, in Pa: written as a pressure or as the height of a column of water."""

SIZE: Final = Dimension(
    "size",
    "in",
    "mm",
    _named(('in|inch|inches|"', constants.inch), ("mm", constants.milli), ("cm", constants.centi)),
    ("3/4 in", "22 mm"),
    floor=0.0,
    floor_excluded=True,
)
"""Width of a pipe or connection, in m."""

VOLUME: Final = Dimension(
    "volume",
    "gal",
    "L",
    _named(
        ("gal|gallon|gallons", constants.gallon),
        ("L|l|liter|liters|litre|litres", constants.litre),
        ("mL|ml", constants.milli * constants.litre),
        ("m3|m³", 1.0),
        ("ft3|ft³|cu ft", _CUBIC_FOOT),
        ("qt|quart|quarts", constants.gallon / 4),
        ("fl oz", constants.fluid_ounce),
    ),
    ("50 gal", "190 L"),
    floor=0.0,
    ceiling=constants.mega,
)
"""Volume, in m3."""

TEMPERATURE: Final = Dimension(
    "temperature",
    "degF",
    "degC",
    _named(
        ("degF|deg F|F|°F|° F", Unit(_KELVIN, _FAHRENHEIT_ZERO)),
        ("degC|deg C|C|°C|° C", Unit(1.0, constants.zero_Celsius)),
        ("K", 1.0),
    ),
    ("140 degF", "60 degC"),
    (0, 1),
    floor=0.0,
    floor_excluded=True,
    ceiling=10 * constants.kilo,
)
"""Temperature, in K."""

TEMPERATURE_DIFFERENCE: Final = Dimension(
    "temperature difference",
    "degF",
    "degC",
    _named(("degF|deg F|F|°F|° F", _KELVIN), ("degC|deg C|C|°C|° C|K", 1.0)),
    ("20 degF", "10 degC"),
    (1, 1),
)
"""Difference of two temperatures, in K."""

POWER: Final = Dimension(
    "power",
    "Btu/h",
    "kW",
    _named(
        ("Btu/h|Btu/hr|Btuh", constants.Btu_IT / constants.hour),
        ("kBtu/h|kBtu/hr|MBH", constants.kilo * constants.Btu_IT / constants.hour),
        ("W", 1.0),
        ("kW", constants.kilo),
        ("MW", constants.mega),
    ),
    ("40,000 Btu/h", "12 kW"),
    floor=0.0,
    ceiling=constants.tera,
)
"""Heat per time, in W; the Btu is that of the International Table."""

FLOW: Final = Dimension(
    "flow",
    "gpm",
    "L/min",
    _named(
        ("gpm|gal/min", constants.gallon / constants.minute),
        ("gph|gal/h", constants.gallon / constants.hour),
        ("L/min|l/min|lpm", constants.litre / constants.minute),
        ("L/s|l/s", constants.litre),
        ("m3/h|m³/h", 1.0 / constants.hour),
    ),
    ("2.5 gpm", "9.5 L/min"),
    floor=0.0,
)
"""Volume per time, in m3/s."""

FRACTION: Final = Dimension(
    "fraction",
    "%",
    "%",
    _named(("", 1.0), ("%|percent", constants.centi)),
    ("85 %", "85 %"),
    (1, 1),
    floor=0.0,
    ceiling=1.0,
)
"""Part of a whole, from 0 to 1."""

TIME: Final = Dimension(
    "time",
    "min",
    "min",
    _named(
        ("min|minute|minutes", constants.minute),
        ("s|sec|second|seconds", 1.0),
        ("h|hr|hour|hours", constants.hour),
    ),
    ("30 min", "30 min"),
    floor=0.0,
)
"""Time, in s."""

CASE_MATTERS: Final = frozenset({"mbar", "MPa", "MW", "mL", "ml"})
"""Units whose first letter is milli or mega: in the other case it would make them another unit."""

DIMENSIONS: Final = (
    PRESSURE,
    LENGTH,
    SIZE,
    VOLUME,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    POWER,
    FLOW,
    FRACTION,
    TIME,
    HEAD,
)
"""Every dimension, in the order in which a unit is looked for."""
