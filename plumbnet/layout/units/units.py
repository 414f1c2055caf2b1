"""The units a layout may use, by what they measure, and their size in SI.

One module, since most of it is one table: a dimension is an entry.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final, Literal, TypeAlias

from plumbnet.layout.units import factors

Units: TypeAlias = Literal["us", "metric", "metric-bar"]
"""What a bare number means; metric-bar is metric with pressures in bar."""
Customary: TypeAlias = Literal["us", "metric"]
"""Whose sizes are usual: tanks, steps, sheets of paper."""


def customary(units: Units) -> Customary:
    """Whose sizes are usual where quantities are given so.

    >>> customary("metric-bar")
    'metric'
    """
    return "us" if units == "us" else "metric"


PASCAL_PER_METRE: Final = 1000.0 * factors.GRAVITY
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

    A bare number takes the unit `us`, `metric` or `metric_bar`, the last like `metric` where it is "", unless `units`
    has an entry "" for it; an example and the decimals of each come in the same order. `floor` and `ceiling`
    are the SI values that nature or sense allow, the floor itself unless `floor_excluded`; what is nearer to zero than
    `finest`, and not zero, is nothing that anybody measures. What is not nature is common sense, and invented.
    `decimals` says how far reports round; None keeps three digits.
    """

    name: str
    us: str
    metric: str
    units: Mapping[str, Unit] = field(repr=False)
    examples: tuple[str, ...]
    decimals: tuple[int | None, ...] = (None, None)
    metric_bar: str = ""
    floor: float = field(kw_only=True)
    floor_excluded: bool = False
    ceiling: float = field(kw_only=True)
    finest: float = field(kw_only=True)

    def __reduce__(self) -> tuple[Callable[[str], "Dimension"], tuple[str]]:
        """Copied or sent to another process it is the very dimension of that name there."""
        return dimension_named, (self.name,)

    def bare(self, units: Units) -> Unit:
        """The unit that a bare number has."""
        return self.units.get("") or self.units[self.unit_name(units)]

    def unit_name(self, units: Units) -> str:
        """Name of the unit in which reports give it.

        >>> PRESSURE.unit_name("metric-bar"), LENGTH.unit_name("metric-bar")
        ('bar', 'm')
        """
        if units == "metric-bar" and self.metric_bar:
            return self.metric_bar
        return self.us if units == "us" else self.metric

    def example(self, units: Units | None) -> str:
        """How one is written."""
        return self.examples[self._place(units)]

    def decimals_in(self, units: Units) -> int | None:
        """How far reports round it; None keeps three digits."""
        return self.decimals[self._place(units)]

    def _place(self, units: Units | None) -> int:
        if units is None or units == "us":
            return 0
        return 2 if units == "metric-bar" and self.metric_bar else 1


def _named(*rows: tuple[str, float | Unit]) -> dict[str, Unit]:
    """Units by each of their names; names of one unit are written in one row, parted by a bar."""
    return {name: size if isinstance(size, Unit) else Unit(size) for names, size in rows for name in names.split("|")}


_FAHRENHEIT_ZERO: Final = factors.ZERO_CELSIUS - 32 * factors.DEGREE_FAHRENHEIT

_CUBIC_FOOT: Final = factors.FOOT**3

PRESSURE: Final = Dimension(
    "pressure",
    "psi",
    "kPa",
    _named(
        ("psi|psig", factors.PSI),
        ("bar|barg", factors.BAR),
        ("mbar", factors.MILLI * factors.BAR),
        ("kPa", factors.KILO),
        ("MPa", factors.MEGA),
        ("Pa", 1.0),
        ("ftH2O|ft H2O", PASCAL_PER_METRE * factors.FOOT),
        ("mH2O|m H2O", PASCAL_PER_METRE),
    ),
    ("62 psi", "430 kPa", "4.3 bar"),
    (1, 0, 2),
    metric_bar="bar",
    floor=-factors.ATMOSPHERE,
    ceiling=100 * factors.MEGA,
    finest=factors.MILLI,
)
"""Gauge pressure, in Pa; nothing lies further below the air than one atmosphere, or above what is known of water."""

LENGTH: Final = Dimension(
    "length",
    "ft",
    "m",
    _named(
        ("ft|foot|feet|'", factors.FOOT),
        ('in|inch|inches|"', factors.INCH),
        ("m|metre|metres|meter|meters", 1.0),
        ("cm", factors.CENTI),
        ("mm", factors.MILLI),
    ),
    ("30 ft", "9 m"),
    (1, 2),
    floor=-100 * factors.KILO,
    ceiling=100 * factors.KILO,
    finest=factors.MILLI * factors.CENTI,
)
"""Length or height, in m."""

HEAD: Final = Dimension(
    "head",
    "ft",
    "m",
    dict(PRESSURE.units)
    | _named(("ft|foot|feet", PASCAL_PER_METRE * factors.FOOT), ("m|metre|metres|meter|meters", PASCAL_PER_METRE)),
    ("20 ft", "6 m"),
    (1, 1),
    floor=0.0,
    ceiling=100 * factors.MEGA,
    finest=factors.MILLI,
)
"""What a pump adds to the pressure, in Pa: written as a pressure or as the height of a column of water."""

SIZE: Final = Dimension(
    "size",
    "in",
    "mm",
    _named(('in|inch|inches|"', factors.INCH), ("mm", factors.MILLI), ("cm", factors.CENTI)),
    ("3/4 in", "22 mm"),
    floor=0.0,
    floor_excluded=True,
    ceiling=100.0,
    finest=factors.MILLI * factors.CENTI,
)
"""Width of a pipe or connection, in m."""

VOLUME: Final = Dimension(
    "volume",
    "gal",
    "L",
    _named(
        ("gal|gallon|gallons", factors.GALLON),
        ("L|l|liter|liters|litre|litres", factors.LITRE),
        ("mL|ml", factors.MILLI * factors.LITRE),
        ("m3|m³", 1.0),
        ("ft3|ft³|cu ft", _CUBIC_FOOT),
        ("qt|quart|quarts", factors.GALLON / 4),
        ("fl oz", factors.FLUID_OUNCE),
    ),
    ("50 gal", "190 L"),
    floor=0.0,
    ceiling=factors.MEGA,
    finest=factors.MILLI * factors.MILLI * factors.MILLI,
)
"""Volume, in m3."""

TEMPERATURE: Final = Dimension(
    "temperature",
    "degF",
    "degC",
    _named(
        ("degF|deg F|F|°F|° F", Unit(factors.DEGREE_FAHRENHEIT, _FAHRENHEIT_ZERO)),
        ("degC|deg C|C|°C|° C", Unit(1.0, factors.ZERO_CELSIUS)),
        ("K", 1.0),
    ),
    ("140 degF", "60 degC"),
    (0, 1),
    floor=0.0,
    floor_excluded=True,
    ceiling=10 * factors.KILO,
    finest=1.0,
)
"""Temperature, in K."""

TEMPERATURE_DIFFERENCE: Final = Dimension(
    "temperature difference",
    "degF",
    "degC",
    _named(("degF|deg F|F|°F|° F", factors.DEGREE_FAHRENHEIT), ("degC|deg C|C|°C|° C|K", 1.0)),
    ("20 degF", "10 degC"),
    (1, 1),
    floor=-10 * factors.KILO,
    ceiling=10 * factors.KILO,
    finest=factors.MILLI * factors.MILLI,
)
"""Difference of two temperatures, in K."""

POWER: Final = Dimension(
    "power",
    "Btu/h",
    "kW",
    _named(
        ("Btu/h|Btu/hr|Btuh", factors.BTU / factors.HOUR),
        ("kBtu/h|kBtu/hr|MBH", factors.KILO * factors.BTU / factors.HOUR),
        ("W", 1.0),
        ("kW", factors.KILO),
        ("MW", factors.MEGA),
    ),
    ("40,000 Btu/h", "12 kW"),
    floor=0.0,
    ceiling=10 * factors.KILO * factors.MEGA,
    finest=1.0,
)
"""Heat per time, in W; the Btu is that of the International Table."""

FLOW: Final = Dimension(
    "flow",
    "gpm",
    "L/min",
    _named(
        ("gpm|gal/min", factors.GALLON / factors.MINUTE),
        ("gph|gal/h", factors.GALLON / factors.HOUR),
        ("L/min|l/min|lpm", factors.LITRE / factors.MINUTE),
        ("L/s|l/s", factors.LITRE),
        ("m3/h|m³/h", 1.0 / factors.HOUR),
    ),
    ("2.5 gpm", "9.5 L/min"),
    floor=0.0,
    ceiling=factors.MEGA,
    finest=factors.MILLI * factors.MILLI * factors.MILLI,
)
"""Volume per time, in m3/s."""

FRACTION: Final = Dimension(
    "fraction",
    "%",
    "%",
    _named(("", 1.0), ("%|percent", factors.CENTI)),
    ("85 %", "85 %"),
    (1, 1),
    floor=0.0,
    ceiling=1.0,
    finest=factors.MILLI * factors.MILLI,
)
"""Part of a whole, from 0 to 1."""

TIME: Final = Dimension(
    "time",
    "min",
    "min",
    _named(("min|minute|minutes", factors.MINUTE), ("s|sec|second|seconds", 1.0), ("h|hr|hour|hours", factors.HOUR)),
    ("30 min", "30 min"),
    floor=0.0,
    ceiling=10 * factors.KILO * factors.MEGA,
    finest=factors.MILLI,
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


def dimension_named(name: str) -> Dimension:
    """The dimension of that name. Raises StopIteration where there is none."""
    return next(one for one in DIMENSIONS if one.name == name)
