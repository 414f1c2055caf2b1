"""What a warm-up is told as: moments, events and the books that balance."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class WarmupHappening(StrEnum):
    """What can happen to water while it warms."""

    BURNER_ON = "burner on"
    BURNER_OFF = "burner off"
    SETPOINT_REACHED = "setpoint reached"
    """By each burner, the first time."""
    MIXED_REACHED = "mixed temperature reached"
    """By water behind a mixing valve, which lets it come no hotter."""
    TANK_OPENS = "tank opens"
    """A tank takes its first water."""
    TANK_FULL = "tank full"
    """The membrane of a tank lets in no more."""
    OUTLET_OPENS = "outlet opens"
    OUTLET_RESEATS = "outlet reseats"
    OUTLET_RUNS = "outlet runs"
    """It is set below the static pressure: it stands open from the start, and does not close."""
    LIMIT_PASSED = "limit passed"
    ELEMENT_OPENS = "temperature element opens"
    """So hot that the temperature element of a relief valve opens: the warm-up ends here."""
    BOILS = "water boils"
    """The warm-up ends here."""
    BREAKS = "pressure to break"
    """More than a heater is tested to, and nothing has opened: the warm-up ends here."""

    @property
    def is_the_end(self) -> bool:
        """Whether what follows is no warm-up any more."""
        return self in {WarmupHappening.ELEMENT_OPENS, WarmupHappening.BOILS, WarmupHappening.BREAKS}


@dataclass(frozen=True, slots=True)
class WarmupEvent:
    """What happens, when and to what: to a burner, a body of water, a tank or an outlet.

    `temperature_k` is that of the body, where one is meant; `pressure_abs_pa` stands at datum.
    """

    time_s: float
    what: WarmupHappening
    name: str
    pressure_abs_pa: float
    temperature_k: float | None = None


@dataclass(frozen=True, slots=True)
class Moment:
    """The state at one time: temperatures by body, pressures by zone (absolute, at datum), burners that fire.

    `lost_m3` is what each outlet has let out so far, measured as hot as it left, `taken_m3` what each tank holds
    beyond what it held at the start. At an event there are two moments of one time where a pressure falls at once.
    """

    time_s: float
    temperatures_k: Mapping[str, float]
    pressures_abs_pa: Mapping[int, float]
    firing: frozenset[str]
    lost_m3: Mapping[str, float]
    taken_m3: Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Books:
    """Heat and water since the start; both sides are counted independently, so that they can be held together.

    Heat: `heat_j` + `pressed_j` + `brought_j` = growth of enthalpy of the water held + `carried_j` + `shed_j`.
    Water: start + `fed_kg` = held, tanks included, + `lost_kg`.
    """

    heat_j: float = 0.0
    """What reached the water from its burners."""
    pressed_j: float = 0.0
    """Work of pressing: the integral of V dp of water in stiff zones."""
    carried_j: float = 0.0
    """Enthalpy of the water let out."""
    brought_j: float = 0.0
    """Enthalpy of cold water that came in where water shrank."""
    shed_j: float = 0.0
    """Heat lost to the room."""
    fed_kg: float = 0.0
    lost_kg: Mapping[str, float] = field(default_factory=dict)
    lost_m3: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class WarmUp:
    """A warm-up from cold, with every fixture shut.

    `start` and `end` of the books: mass and enthalpy of all heated water, tanks included.
    """

    moments: tuple[Moment, ...]
    events: tuple[WarmupEvent, ...]
    books: Books
    start_kg: float
    end_kg: float
    start_j: float
    end_j: float
    returned_m3: float
    """What a street or cistern has taken back, measured as hot as the heated water."""

    @property
    def times_s(self) -> tuple[float, ...]:
        """Time of every moment."""
        return tuple(moment.time_s for moment in self.moments)

    def temperature_k(self, body: str) -> tuple[float, ...]:
        """Temperature of a body at every moment."""
        return tuple(moment.temperatures_k[body] for moment in self.moments)

    def pressure_abs_pa(self, zone: int) -> tuple[float, ...]:
        """Pressure of a zone at every moment; absolute, at datum."""
        return tuple(moment.pressures_abs_pa[zone] for moment in self.moments)

    @property
    def is_cut_short(self) -> bool:
        """Whether something happened that ends every warm-up."""
        return any(event.what.is_the_end for event in self.events)

    @property
    def lost_m3(self) -> float:
        """Water that all outlets have let out, measured as hot as it left."""
        return math.fsum(self.books.lost_m3.values())

    def first(self, what: WarmupHappening, name: str | None = None) -> WarmupEvent | None:
        """The first event of a sort, to one thing or to anything; None where it does not happen.

        >>> event = WarmupEvent(60.0, WarmupHappening.BOILS, "kettle", 101_325.0)
        >>> quiet = dict(books=Books(), start_kg=1.0, end_kg=1.0, start_j=0.0, end_j=0.0, returned_m3=0.0)
        >>> WarmUp(moments=(), events=(event,), **quiet).first(WarmupHappening.BOILS).name
        'kettle'
        """
        return next((one for one in self.events if one.what is what and name in {None, one.name}), None)
