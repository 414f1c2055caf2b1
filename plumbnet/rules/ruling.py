"""What a rule profile is made of: values and choices, each with the clause behind it and whether that was read.

One module, since a profile is one table: a class is what an entry of it holds.
"""

from collections.abc import Sequence
from enum import StrEnum
from typing import Annotated, ClassVar, Literal, TypeAlias

from pydantic import Field

from plumbnet.layout.model import BackflowProtection, Declared
from plumbnet.layout.model.kinds import SizingMethod
from plumbnet.layout.units import (
    FREEZES_K,
    HOTTEST_K,
    HOTTEST_OPENING_K,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    Fraction,
    Quantity,
    standing_pressure,
    water_inside,
)

COMMON_PRACTICE = "common practice"
"""How a clause begins that no document stands behind."""

BETWEEN_SCALES_PA = 1_000.0
"""Rounding of a pressure between the scales: 150 psi is 1034 kPa, 550 kPa is 79.8 psi."""

_Pressure: TypeAlias = Annotated[float, standing_pressure()]
_Temperature: TypeAlias = Annotated[float, Quantity(TEMPERATURE, at_least=FREEZES_K, at_most=HOTTEST_OPENING_K)]
_Exempt: TypeAlias = Annotated[float, water_inside()]
_Sort: TypeAlias = Annotated[BackflowProtection, Field(strict=False)]


class Ground(StrEnum):
    """What a clause rests on, the firmest first."""

    READ = "read"
    """Its words were read, in the document or as others quote it."""
    PRACTICE = COMMON_PRACTICE
    """No document stands behind it, and it says so."""
    MEMORY = "from memory"
    """It was recalled, and has to be looked up."""


def ground_of(clause: str, *, verified: bool) -> Ground:
    """What a clause rests on; practice is practice, whatever is said of reading it."""
    if clause.startswith(COMMON_PRACTICE):
        return Ground.PRACTICE
    return Ground.READ if verified else Ground.MEMORY


def is_certain(clause: str, *, verified: bool) -> bool:
    """Whether nobody need look a clause up: it was read, or nothing stands behind it but practice."""
    return ground_of(clause, verified=verified) is not Ground.MEMORY


class Ruling(Declared):
    """Where a rule stands; `verified` says that the clause was read, in the document or as others quote it."""

    called: ClassVar[str] = "a ruling"

    clause: str
    """Document, edition and clause, or "common practice"."""
    verified: bool
    """Whether the text was seen by whoever wrote the profile; false where it is recalled."""

    @property
    def ground(self) -> Ground:
        """What the clause rests on."""
        return ground_of(self.clause, verified=self.verified)

    @property
    def is_certain(self) -> bool:
        """Whether nobody need look the clause up."""
        return is_certain(self.clause, verified=self.verified)


def joined(rulings: Sequence[Ruling]) -> Ruling:
    """Several clauses as one, each once, in their order, practice behind documents; read where all that is one was."""
    if len(rulings) == 1:
        return rulings[0]
    documents = [one for one in rulings if one.ground is not Ground.PRACTICE]
    ordered = rulings if rulings[0] in documents else [*documents, *rulings]
    clause = "; ".join(dict.fromkeys(one.clause for one in ordered))
    return Ruling(clause=clause, verified=bool(documents) and all(one.verified for one in documents))


class PressureRuling(Ruling):
    """A pressure that a rule sets, gauge, in pascal."""

    value_pa: _Pressure
    """The pressure."""


class TemperatureRuling(Ruling):
    """A temperature that a rule sets, in kelvin."""

    value_k: _Temperature
    """The temperature."""


class StoredRuling(TemperatureRuling):
    """The lowest temperature to which stores of hot drinking water are set."""

    only_electric: bool = False
    """Whether the rules name stores heated by electricity alone."""


class TemperatureDifferenceRuling(Ruling):
    """A difference of temperatures that a rule sets, in kelvin."""

    value_k: Annotated[float, Quantity(TEMPERATURE_DIFFERENCE, at_least=0.0, at_most=HOTTEST_K - FREEZES_K)]
    """The difference."""


class FractionRuling(Ruling):
    """A share that a rule sets, from 0 to 1."""

    value: Fraction
    """The share."""


class SizingRuling(Ruling):
    """The method by which a rule sizes expansion tanks."""

    value: SizingMethod
    """Name of the method."""


class HeatersRuling(Ruling):
    """Which closed heaters must have a control of expansion."""

    value: Literal["storage", "every"]
    """Those that keep water hot, or every one, those that fire on flow included."""
    exempt_volume_m3: _Exempt = 0.0
    """Heaters that hold no more than this are exempt."""


class ReliefForRuling(Ruling):
    """Which heaters must have a relief valve of their own."""

    value: Literal["storage", "every"]
    """Those that keep water hot or are driven by a pump, or every one, those that fire on flow included."""


class BypassRuling(Ruling):
    """What a reducer's bypass is worth as the only way back to the main."""

    value: Literal["counts", "counts-up-to-set", "does-not-count"]
    """It counts; it counts while the building is not pushed above the reducer's set; it does not count."""


class ExpansionReliefRuling(Ruling):
    """Whether an expansion relief valve counts as the control of expansion."""

    value: Literal["counts", "by-design", "does-not-count"]
    """It counts; it counts in a design by a licensed professional; it does not count."""
    highest_set_pa: _Pressure | None = None
    """The highest set at which it counts; none where the rules name none."""

    def takes_set(self, set_pa: float) -> bool:
        """Whether a valve of that set, gauge, is low enough to count."""
        return self.highest_set_pa is None or set_pa <= self.highest_set_pa + BETWEEN_SCALES_PA


class SideRuling(Ruling):
    """On which side of the heater its control belongs."""

    value: Literal["cold", "either"]
    """The cold supply, or anywhere on the building's side of what closes it."""


class ChoiceRuling(Ruling):
    """Something that a rule asks for, or does not."""

    value: Literal["asked", "not-asked"]
    """Whether it is asked for."""

    @property
    def is_asked(self) -> bool:
        """Whether it is asked for."""
        return self.value == "asked"


class CheckRuling(ChoiceRuling):
    """Whether a check is asked for in the cold feed of heaters, and of which."""

    heaters: Literal["storage", "every"] = "every"
    """Those that keep water hot, or every one, those that fire on flow included."""
    exempt_volume_m3: _Exempt = 0.0
    """Heaters that hold no more than this are exempt."""


class TankBehindReducerRuling(ChoiceRuling):
    """Whether an expansion tank is asked for behind reducers."""

    above_pa: _Pressure | None = None
    """Only behind those before which more than this stands; behind each where the rules name none."""

    def asks_behind(self, upstream_pa: float | None) -> bool:
        """Whether a tank is asked for behind a reducer before which so much stands, gauge (None: not known)."""
        if self.above_pa is None or upstream_pa is None:
            return self.is_asked
        return self.is_asked and upstream_pa > self.above_pa + BETWEEN_SCALES_PA


class OutdoorTapsRuling(Ruling):
    """Whether the highest pressure where people draw water holds for hose bibbs and hydrants, too."""

    value: Literal["held", "exempt"]
    """They are held to it like any tap, or exempt."""
    highest_pa: _Pressure | None = None
    """The highest pressure at those that are exempt; none where the rules name none."""

    def limit_pa(self, indoors_pa: float, *, outdoors: bool) -> float | None:
        """The highest pressure, gauge, at a place where people draw water; None for one without a limit."""
        return indoors_pa if self.value == "held" or not outdoors else self.highest_pa


class FillPreventerRuling(Ruling):
    """Behind which backflow preventers a heating circuit may stay joined to the cold pipe."""

    value: Annotated[tuple[_Sort, ...], Field(strict=False, min_length=1)]
    """The sorts that are good enough, each by its name; a code that wants no less than one names all above it."""
    with_antifreeze: Annotated[tuple[_Sort, ...], Field(strict=False)] = ()
    """Those that are where the circuit holds antifreeze; the same where the rules make no difference."""

    def takes(self, sort: BackflowProtection | None, *, antifreeze: bool = False) -> bool:
        """Whether a sort of protection is good enough."""
        return sort in self.asked(antifreeze=antifreeze)

    def asked(self, *, antifreeze: bool) -> tuple[BackflowProtection, ...]:
        """The sorts of which one is asked for."""
        return (self.with_antifreeze or self.value) if antifreeze else self.value


class VacuumReliefRuling(Ruling):
    """Which stores of hot drinking water have a vacuum relief valve."""

    value: Literal["not-asked", "above-outlets", "fed-from-below", "both"]
    """None; those above an outlet that they serve; those whose cold water comes in at the bottom; both of these."""
    dip_tube_serves: bool = False
    """Whether a hole near the top of the tube by which cold water comes in does as well for one above an outlet."""

    @property
    def is_asked(self) -> bool:
        """Whether it is asked of any."""
        return self.value != "not-asked"

    @property
    def asks_above_outlets(self) -> bool:
        """Whether it is asked of those above an outlet."""
        return self.value in {"above-outlets", "both"}

    @property
    def asks_fed_from_below(self) -> bool:
        """Whether it is asked of those fed from below."""
        return self.value in {"fed-from-below", "both"}


class WayBackRuling(Ruling):
    """How far expanding water may go back."""

    value: Literal["main", "supply-pipe"]
    """Into the main, or no further than the building's own supply pipe."""
    warmest_k: _Temperature | None = None
    """The warmest that water in the supply pipe may become; none where the rules name none."""


class FindingRuling(Ruling):
    """The clause behind a finding, and how a profile grades it."""

    severity: Literal["error", "warning", "note", "off"] | None = None
    """How bad it is under this profile, or off; as the finding says itself when left out."""


class SiteRuling(Ruling):
    """Something that a rule asks for and no layout can tell: it is to be seen on site."""

    asks: Annotated[str, Field(min_length=1)] = Field(examples=["a pan under the heater"])
    """What is to be seen, in our own words."""
