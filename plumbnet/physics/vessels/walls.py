"""Dimensions and material of a wall in, the room it yields to warmth and pressure out."""

import csv
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType

from plumbnet.layout.units import INCH

TYPICAL_HEATER_INSIDE_M, TYPICAL_HEATER_WALL_M = 20 * INCH, 0.075 * INCH
"""A storage heater's shell of 20 in by 0.075 in: typical of the trade, no maker's data; from memory."""

_TABLE = "walls.csv"
_GIGA, _MILLIONTH = 1e9, 1e-6


class UnknownWall(ValueError):
    """No wall of that material is in the table; the text says which are."""


@dataclass(frozen=True, slots=True)
class Material:
    """What a wall is made of: Young's modulus, Poisson's ratio and linear expansion.

    `credited` says whether its stretch may be counted on; `source` and `status` how its values were come by.
    """

    name: str
    modulus_pa: float
    poisson: float
    expansion_per_k: float
    credited: bool
    source: str
    status: str


@dataclass(frozen=True, slots=True)
class Shell:
    """Walls round a volume of water, as soft as they are to pressure and as they grow with warmth.

    `compliance_per_pa` and `expansion_per_k` are parts of the volume by which it grows with each pascal and each
    kelvin; both zero are rigid walls. Raises ValueError for a number below zero or none at all.

    >>> Shell(0.1, compliance_per_pa=1e-9, expansion_per_k=36e-6).room_m3(rise_k=50.0, rise_pa=1e6)
    0.10028
    """

    volume_m3: float
    compliance_per_pa: float = 0.0
    expansion_per_k: float = 0.0

    def __post_init__(self) -> None:
        for value in (self.volume_m3, self.compliance_per_pa, self.expansion_per_k):
            if not 0.0 <= value < math.inf:
                raise ValueError(f"walls cannot have a volume, compliance or expansion of {value:g}")

    def room_m3(self, *, rise_k: float, rise_pa: float) -> float:
        """Room within the walls when they are warmer and the pressure is higher than at the start.

        A rise below zero is a fall.

        >>> Shell(0.2).room_m3(rise_k=50.0, rise_pa=1e6)
        0.2
        """
        return self.volume_m3 * (1.0 + self.expansion_per_k * rise_k + self.compliance_per_pa * rise_pa)

    @property
    def rigid(self) -> "Shell":
        """The same room within walls that yield to nothing.

        >>> Shell(0.2, compliance_per_pa=1e-9).rigid
        Shell(volume_m3=0.2, compliance_per_pa=0.0, expansion_per_k=0.0)
        """
        return Shell(self.volume_m3)


def joined_shells(shells: Iterable[Shell]) -> Shell:
    """One shell that yields as all of them together do at one temperature and one pressure.

    No shells are a shell without room.

    >>> joined_shells([Shell(0.25, compliance_per_pa=2e-9), Shell(0.25)])
    Shell(volume_m3=0.5, compliance_per_pa=1e-09, expansion_per_k=0.0)
    """
    pieces = tuple(shells)
    volume = math.fsum(piece.volume_m3 for piece in pieces)
    if volume <= 0.0:
        return Shell(0.0)
    return Shell(
        volume,
        math.fsum(piece.volume_m3 * piece.compliance_per_pa for piece in pieces) / volume,
        math.fsum(piece.volume_m3 * piece.expansion_per_k for piece in pieces) / volume,
    )


def elastic_tube(volume_m3: float, material: Material, *, inside_m: float, wall_m: float) -> Shell:
    """A thin-walled tube as elasticity has it, whatever its material: see `tube_shell` for what may be counted on.

    The room grows by d c/(E w) for each pascal: inside diameter d, wall w, Young's modulus E, Poisson's ratio mu,
    and c = (2.5 - 2 mu)/2, for it carries the pressure on its own closed ends. It grows by 3 alpha for each kelvin.
    Raises ValueError for a tube without bore or wall. Source: API 521 (2007) and ISO 23251, 5.14.4; own derivation too.

    >>> typical = elastic_tube(0.189, material("steel"), inside_m=0.508, wall_m=0.001905)
    >>> f"{typical.compliance_per_pa:.3e}"  # by head: 0.508 * 1.9/2 / (200e9 * 0.001905)
    '1.267e-09'
    """
    if not (0.0 < inside_m < math.inf and 0.0 < wall_m < math.inf):
        raise ValueError(f"a tube needs a bore and a wall: not {inside_m:g} m and {wall_m:g} m")
    give = 1.25 - material.poisson
    return Shell(volume_m3, inside_m * give / (material.modulus_pa * wall_m), 3.0 * material.expansion_per_k)


def tube_shell(volume_m3: float, material: Material, *, inside_m: float, wall_m: float) -> Shell:
    """A tube as far as its yielding may be counted on: elastic if of metal, rigid if of plastic.

    The room in a tube of PEX grows by 3 alpha, about 4.8e-4 of itself, with each kelvin: more than water does below
    some 53 degC, so that elasticity finds no rise of pressure at all, or a fall. That holds only while the whole
    pipe warms with the water, for a modulus which heat and time lower, and it takes the pipe's life as the spring.
    No code counts it as a control, and neither does this program. Errors, range and source as `elastic_tube`.

    >>> tube_shell(0.001, material("pex"), inside_m=0.0173, wall_m=0.0025) == Shell(0.001)
    True
    """
    elastic = elastic_tube(volume_m3, material, inside_m=inside_m, wall_m=wall_m)
    return elastic if material.credited else elastic.rigid


def heater_shell(volume_m3: float) -> Shell:
    """A storage heater's shell of steel, 20 in wide and 0.075 in thick: typical, and no maker's data.

    The curved ends count as if they were more of the cylinder, which is softer than they are.

    >>> round(heater_shell(0.189).compliance_per_pa / 4.5e-10, 1)  # times as soft as the water within
    2.8
    """
    return elastic_tube(volume_m3, material("steel"), inside_m=TYPICAL_HEATER_INSIDE_M, wall_m=TYPICAL_HEATER_WALL_M)


def material(name: str) -> Material:
    """The material of that name, or of the family before the first hyphen: `copper-L` is copper.

    Raises UnknownWall. Source: data/walls.csv, each row with its own.

    >>> material("copper-L").modulus_pa, material("pex").credited
    (117000000000.0, False)
    """
    known = materials()
    found = known.get(name) or known.get(name.partition("-")[0])
    if found is None:
        raise UnknownWall(f"nothing is known of walls of {name}; known are {', '.join(known)}")
    return found


@lru_cache(maxsize=1)
def materials() -> Mapping[str, Material]:
    """Every material of the table, by name.

    >>> list(materials())
    ['copper', 'steel', 'cpvc', 'pex', 'stainless']
    """
    table = files("plumbnet") / "data" / _TABLE
    rows = csv.DictReader(table.read_text(encoding="utf-8").splitlines())
    return MappingProxyType({row["material"]: _material(row) for row in rows})


def _material(row: Mapping[str, str]) -> Material:
    return Material(
        name=row["material"],
        modulus_pa=float(row["modulus_gpa"]) * _GIGA,
        poisson=float(row["poisson"]),
        expansion_per_k=float(row["expansion_per_million_k"]) * _MILLIONTH,
        credited={"yes": True, "no": False}[row["credited"]],
        source=row["source"],
        status=row["status"],
    )
