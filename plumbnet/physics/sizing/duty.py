"""What is to be sized and the steps of a calculation; the shapes in which a sizing method takes and gives them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import NoTank

StepDimension: TypeAlias = Literal[
    "volume",
    "specific volume",
    "pressure",
    "pressure difference",
    "temperature",
    "degrees Fahrenheit",
    "ratio",
    "per kelvin",
]
"""What a number of a step measures: in m3, m3/kg, Pa absolute, Pa, K, degF, nothing, 1/K."""

_DIMENSIONS: Mapping[str, StepDimension] = {
    "V": "volume",
    "v": "specific volume",
    "p": "pressure",
    "d": "pressure difference",
    "T": "temperature",
    "F": "degrees Fahrenheit",
    "e": "ratio",
    "a": "per kelvin",
}
"""What a symbol stands for, by its first letter."""

STEEL_PER_K = 6.5e-6 * 1.8
"""Linear expansion of steel as the ASHRAE handbook has it for sizing, 6.5e-6 per degF; from memory."""


class MissingInput(ValueError):
    """A sizing method was asked without a number that it needs; the text names each."""


class OutsideMethod(ValueError):
    """A sizing method has no answer for these numbers; the text says why."""


@dataclass(frozen=True, slots=True)
class StepNumber:
    """A number that goes into a step, and what it measures."""

    value: float
    dimension: StepDimension


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a calculation: `symbol` = `formula`, with the numbers that stand in the formula.

    The formula is arithmetic that a reader repeats by hand with `numbers`, save for v(T, p) and p_sat(T), which
    are looked up in a table of water. Numbers are in SI, pressures absolute; `source` says where it comes from.
    """

    symbol: str
    name: str
    formula: str
    value: float
    dimension: StepDimension
    source: str
    numbers: Mapping[str, StepNumber]


def step(symbol: str, name: str, formula: str, value: float, source: str, /, **numbers: float) -> Step:
    """A step whose symbols say by their first letter what they measure.

    V volume, v specific volume, p pressure, d pressure difference, T temperature, F degrees Fahrenheit, e ratio,
    a expansion for each kelvin.

    >>> step("V_e", "expansion", "V * e", 0.004, "", V=0.2, e=0.02).numbers["e"]
    StepNumber(value=0.02, dimension='ratio')
    """
    known = {each: StepNumber(number, _DIMENSIONS[each[0]]) for each, number in numbers.items()}
    return Step(symbol, name, formula, value, _DIMENSIONS[symbol[0]], source, known)


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """What a tank is sized for; a method names those it needs of the numbers that may be None.

    All pressures are absolute and at the tank's height, the relief valve's set too. `static_abs_pa` stands there
    while the water is cold, `limit_abs_pa` may not be passed, `head_pa` is the column of water above the tank,
    `charge_abs_pa` a charge that was chosen. `mean_k` is the mean operating temperature of a circuit. `growth` is
    what the liquid expands by, part of its cold volume, where it is no plain water or a table is to be followed,
    and `growth_source` where it comes from. `vessel_per_k` is the linear expansion of pipes and vessel.
    `heated_abs_pa` stands at the heated water, whose growth it bears on a little, where it is not that at the tank.
    """

    volume_m3: float
    cold_k: float
    hot_k: float
    static_abs_pa: float | None = None
    limit_abs_pa: float | None = None
    relief_abs_pa: float | None = None
    charge_abs_pa: float | None = None
    head_pa: float | None = None
    mean_k: float | None = None
    growth: float | None = None
    growth_source: str = "given"
    vessel_per_k: float = STEEL_PER_K
    heated_abs_pa: float | None = None
    atmosphere_abs_pa: float = ATMOSPHERE_PA

    def demand(self, name: str) -> float:
        """A number that a method cannot do without.

        Raises MissingInput where it is None.

        >>> Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, limit_abs_pa=6e5).demand("limit_abs_pa")
        600000.0
        """
        value: float | None = getattr(self, name)
        if value is None:
            raise MissingInput(f"the method needs {INPUTS[name]}")
        return value


INPUTS: Mapping[str, str] = {
    "static_abs_pa": "the static pressure at the tank",
    "limit_abs_pa": "the highest pressure allowed at the tank",
    "relief_abs_pa": "the set of the relief valve",
    "head_pa": "the column of water above the tank",
}
"""What a method may demand, by its name in `Duty`, in words."""


@dataclass(frozen=True, slots=True)
class FillRange:
    """Cold pressures between which a system may be filled: the reserve is in the vessel, and there is room to grow."""

    lowest_abs_pa: float
    highest_abs_pa: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizing:
    """A tank, and how it was arrived at.

    `expansion_m3` is what the tank must take as the method counts it, `reserve_m3` the water it holds besides.
    Pressures are absolute, at the tank; None where the method has none, as for an open tank. `notes` are warnings
    for the reader. The step of symbol V_t is the tank.
    """

    method: str
    tank_m3: float
    expansion_m3: float
    reserve_m3: float = 0.0
    charge_abs_pa: float | None = None
    start_abs_pa: float | None = None
    end_abs_pa: float | None = None
    fill_abs_pa: float | None = None
    steps: tuple[Step, ...] = ()
    notes: tuple[str, ...] = ()

    def fill_range(self, tank_m3: float) -> FillRange:
        """Cold pressures at which a tank of this size, charged as sized, holds its reserve and takes the expansion.

        A tank just as large as needed has one such pressure only. Raises NoTank for a smaller one, OutsideMethod
        for an open tank. Source: EN 12828, annex D, from memory; the same by Boyle's law, own derivation.

        >>> sized = Sizing(method="", tank_m3=0.1, expansion_m3=0.04, charge_abs_pa=1e5, end_abs_pa=2e5)
        >>> sized.fill_range(0.16)
        FillRange(lowest_abs_pa=100000.0, highest_abs_pa=133333.33333333334)
        """
        charge, end = self.charge_abs_pa, self.end_abs_pa
        if charge is None or end is None:
            raise OutsideMethod("an open tank has no charge and no pressure to be filled to")
        if tank_m3 < self.tank_m3:
            raise NoTank(f"a tank of {tank_m3 * 1000:.1f} L is smaller than the {self.tank_m3 * 1000:.1f} L needed")
        lowest = tank_m3 * charge / (tank_m3 - self.reserve_m3)
        highest = end / (1.0 + self.expansion_m3 * end / (tank_m3 * charge))
        return FillRange(lowest, max(lowest, highest))


@dataclass(frozen=True, slots=True, kw_only=True)
class Method:
    """A way to size a tank, by the name it has in a file.

    `verified` says whether its source was read or is from memory; `needs` names the numbers of a `Duty` that may
    not be None. `size` may raise NoTank, MissingInput, OutsideMethod and physics.water.OutsideWater.
    """

    name: str
    title: str
    source: str
    verified: bool
    needs: tuple[str, ...]
    size: Callable[[Duty], Sizing] = field(repr=False)

    def missing(self, duty: Duty) -> tuple[str, ...]:
        """What the method needs and the duty does not have, in words.

        >>> from plumbnet.physics.sizing.methods import METHODS
        >>> METHODS["membrane"].missing(Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15))
        ('the static pressure at the tank', 'the highest pressure allowed at the tank')
        """
        return tuple(INPUTS[name] for name in self.needs if getattr(duty, name) is None)
