"""The name of a tube in, its dimensions and the water it holds out."""

import csv
import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType

from plumbnet.layout.units.factors import INCH, MILLI
from plumbnet.layout.yaml import nearest, quoted

_TABLE = "tubes.csv"
_COLUMNS = ("material", "size", "unit", "outside", "wall", "standard", "status")
_METRE_PER = {"in": INCH, "mm": MILLI, "DN": MILLI}
_UNITS = {"": "", '"': "in", "in": "in", "mm": "mm", "dn": "DN"}
_NAME = re.compile(
    r'([a-z][a-z-]*?-s\d(?:\.\d)?|[a-z][a-z-]*?) ?(dn|) ?([^"a-z]*?) ?(in|mm|"|)', re.IGNORECASE | re.ASCII
)
_DN_PER_INCH = 25.0  # DN 20 is 3/4 in
_LEAST_MM = 9.0  # a bare size from here on is no number of inches
_LONGEST_NAME = 60  # characters; keeps the pattern's backtracking short
_SIZE = re.compile(r"(?:(\d{1,3})[- ])?(\d{1,3})/([1-9]\d{0,2})|\d{1,4}(?:\.\d{1,6})?", re.ASCII)
_LENGTH = re.compile(r"\d{1,4}(?:\.\d{1,6})?", re.ASCII)


class UnknownTube(ValueError):
    """No tube of that name is in the tables; the text says which would be."""


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube of the tables, by its nominal dimensions.

    `size` is the trade's name with its unit; `source` names the standard and how its values were come by.
    A real wall differs within the standard's tolerance: a PEX tube may hold 6 % less.
    """

    material: str
    size: str
    outside_m: float
    wall_m: float
    source: str

    @property
    def unit(self) -> str:
        """The unit of its nominal size: in, mm, or DN."""
        return "DN" if self.size.startswith("DN") else self.size.split()[1]

    @property
    def bare_size(self) -> str:
        """Its nominal size without the unit."""
        return self.size.removeprefix("DN ").split()[0]

    @property
    def inside_m(self) -> float:
        """Diameter of the bore.

        >>> round(tube("copper-L 3/4 in").inside_m / 0.0254, 3)  # ASTM B88: 0.785 in
        0.785
        """
        return self.outside_m - 2.0 * self.wall_m

    @property
    def volume_m3_per_m(self) -> float:
        """Water in a metre of it.

        >>> round(tube("copper-B 22 mm").volume_m3_per_m * 1000, 3)  # litres: pi/4 of 19.8 mm squared
        0.308
        """
        return math.pi / 4.0 * self.inside_m**2


def tube(text: str) -> Tube:
    """The tube called by material and nominal size: `copper-L 3/4 in`, `pex 1/2`, `pex-S5 20 mm`, `steel-M DN 20`.

    Letter case does not matter, a size may be written as a decimal, its unit may be left out.
    Raises UnknownTube. Source: data/tubes.csv, each row with its standard.

    >>> tube("copper-L 0.75 in").size
    '3/4 in'
    """
    plain = " ".join(text.split())
    found = _NAME.fullmatch(plain) if len(plain) <= _LONGEST_NAME else None
    if found is None:
        raise UnknownTube(f"{quoted(text)} names no tube; write one like copper-L 3/4 in")
    material, before, size, after = found.groups()
    known, unit = _table().get(material.lower()), before or after
    if known is None:
        raise UnknownTube(_no_material(material))
    fitting = known.by_size.get(_size(size))
    if fitting is None or (before and after) or _UNITS[unit.lower()] not in known.units:
        given = " ".join(filter(None, (before, size, after)))
        raise UnknownTube(_no_size(known, given, _Asked.of(_size(size), _UNITS[unit.lower()])))
    return fitting


def read_tubes(text: str) -> Iterator[Tube]:
    r"""The tubes of a table in CSV, row by row.

    Raises ValueError at the first bad row and names its line.

    >>> head = "material,size,unit,outside,wall,standard,status"
    >>> [each.size for each in read_tubes(f"{head}\npex,1/2,in,0.625,0.07,ASTM F876,from memory")]
    ['1/2 in']
    """
    rows = csv.reader(text.splitlines())
    if tuple(next(rows, ())) != _COLUMNS:
        raise ValueError(f"{_TABLE} line 1: the columns must be {', '.join(_COLUMNS)}")
    seen: set[tuple[str, Fraction | None]] = set()
    for row in rows:
        try:
            each = _tube(row)
        except ValueError as error:
            raise ValueError(f"{_TABLE} line {rows.line_num}: {error}") from None
        name = (each.material.lower(), _size(row[1]))
        if name in seen:
            raise ValueError(f"{_TABLE} line {rows.line_num}: {each.material} {each.size} stands here twice")
        seen.add(name)
        yield each


def every_tube() -> Iterator[Tube]:
    """Every tube of the tables, in their order: material by material, the smallest first."""
    for material in _table().values():
        yield from material.by_size.values()


@dataclass(frozen=True, slots=True)
class _Material:
    name: str
    unit: str
    by_size: Mapping[Fraction | None, Tube]

    @property
    def units(self) -> frozenset[str]:
        """What may stand with a size: nothing, or its unit; DN is millimetres to many."""
        return frozenset({"", self.unit, *(("mm",) if self.unit == "DN" else ())})

    @property
    def sizes(self) -> str:
        """All its sizes with their unit."""
        bare = ", ".join(each.bare_size for each in self.by_size.values())
        return f"DN {bare}" if self.unit == "DN" else f"{bare} {self.unit}"

    def nearest(self, asked: "_Asked") -> Tube:
        """The tube nearest to a size of another system; of two the smaller."""
        return min(self.by_size.values(), key=lambda each: abs(self._measure(each, asked) - asked.number))

    def _measure(self, each: Tube, asked: "_Asked") -> float:
        """What of a tube that size stands for: its bore in inches, or its outside in millimetres, or its number."""
        nominal = float(_size(each.bare_size) or 0)
        match asked.unit, self.unit:
            case "in", "DN":
                return nominal / _DN_PER_INCH
            case "in", _:
                return each.inside_m / INCH
            case "DN", "in":
                return nominal * _DN_PER_INCH
            case "DN", _:
                return each.inside_m / MILLI
            case _:
                return each.outside_m / MILLI


@dataclass(frozen=True, slots=True)
class _Asked:
    """A size that was asked for, and the system it is of."""

    number: float
    unit: str

    @classmethod
    def of(cls, size: Fraction | None, unit: str) -> "_Asked | None":
        """Of a bare size its number tells the system: fractions and small ones are inches."""
        if size is None:
            return None
        return cls(float(size), unit or ("mm" if size >= _LEAST_MM else "in"))


@lru_cache(maxsize=1)
def _table() -> Mapping[str, _Material]:
    """Tubes by material in lower case, then by nominal size."""
    text = (files("plumbnet") / "data" / _TABLE).read_text(encoding="utf-8")
    found: dict[str, dict[Fraction | None, Tube]] = {}
    for each in read_tubes(text):
        found.setdefault(each.material, {})[_size(each.bare_size)] = each
    return MappingProxyType({name.lower(): _material(name, own) for name, own in found.items()})


def _material(name: str, by_size: Mapping[Fraction | None, Tube]) -> _Material:
    units = {each.unit for each in by_size.values()}
    if len(units) != 1:
        raise ValueError(f"{_TABLE}: the sizes of {name} must be of one unit")
    return _Material(name, units.pop(), MappingProxyType(by_size))


def _tube(row: list[str]) -> Tube:
    if len(row) != len(_COLUMNS) or not all(row):
        raise ValueError(f"wants a value in each of {len(_COLUMNS)} columns")
    material, size, unit, outside, wall, standard, status = row
    if _size(size) is None or unit not in _METRE_PER:
        raise ValueError(f"{size} {unit} is no nominal size")
    if not (_LENGTH.fullmatch(outside) and _LENGTH.fullmatch(wall) and 0.0 < 2.0 * float(wall) < float(outside)):
        raise ValueError(f"a wall of {wall} does not fit an outside diameter of {outside}")
    metre = _METRE_PER[unit]
    name = f"DN {size}" if unit == "DN" else f"{size} {unit}"
    return Tube(material, name, float(outside) * metre, float(wall) * metre, f"{standard}, {status}")


def _size(text: str) -> Fraction | None:
    found = _SIZE.fullmatch(text)
    if found is None:
        return None
    whole, above, below = found.groups()
    return int(whole or 0) + Fraction(int(above), int(below)) if above else Fraction(text)


def _no_material(given: str) -> str:
    names = [material.name for material in _table().values()]
    family = [name for name in names if name.lower().startswith(given.lower())]
    if family:
        return f"{quoted(given)} tubes are {', '.join(family)}: name one of them"
    hint = nearest(given, names) or f"known are {', '.join(names)}"
    return f"no tubes are called {quoted(given)}: {hint}"


def _no_size(known: _Material, given: str, asked: _Asked | None) -> str:
    if not given:
        return f"{known.name} tubes come in {known.sizes}; name one of them"
    told = f"{known.name} tubes come in {known.sizes}; not {quoted(given)}"
    if asked is None or asked.unit == known.unit:
        return told
    return f"{told}, to which the nearest is {known.nearest(asked).size}"
