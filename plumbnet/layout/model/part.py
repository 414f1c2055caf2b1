"""What every part has: named ports, passages between them, water in it; and the register of kinds.

One module, because these are the words in which every kind speaks and in which the network listens.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, ClassVar, Literal, TypeVar

from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.base_model import Declared, file_name_of
from plumbnet.layout.model.event import Alternative, Event, Extremes, Sort
from plumbnet.layout.model.inside import Inside
from plumbnet.layout.units import LEAST_SET_PA, PRESSURE, Elevation, Quantity

IN, OUT = "in", "out"
HOT, COLD, MIXED = "hot", "cold", "mixed"
RETURN, SUPPLY, RELIEF = "return", "supply", "relief"
JOINT = "joint"
Rating = Annotated[float, Quantity(PRESSURE, at_least=LEAST_SET_PA)]


@dataclass(frozen=True, slots=True)
class Free:
    """Water passes both ways between ports `a` and `b`."""

    a: str
    b: str


@dataclass(frozen=True, slots=True)
class OneWay:
    """Water passes from `inlet` to `outlet` once the difference exceeds `opens_pa`, and never back."""

    inlet: str
    outlet: str
    opens_pa: float = 0.0


@dataclass(frozen=True, slots=True)
class Reducing:
    """Water passes forward while the outlet stands below `set_pa` (gauge, at the part's own height).

    With `bypass` it also passes back once the outlet exceeds the inlet.
    """

    inlet: str
    outlet: str
    set_pa: float
    bypass: bool


@dataclass(frozen=True, slots=True)
class Boosting:
    """A pump that holds its outlet `rise_pa` above its inlet; unless `checked`, water can pass back."""

    inlet: str
    outlet: str
    rise_pa: float
    checked: bool


@dataclass(frozen=True, slots=True)
class Shut:
    """A passage that a shut valve closes; opened, water would pass both ways."""

    a: str
    b: str


Passage = Free | OneWay | Reducing | Boosting | Shut


@dataclass(frozen=True, slots=True)
class Source:
    """Water enters here: gauge pressures at the part's own height, temperature in kelvin.

    `pressure_pa` is the highest it works at, which counts for all that must hold. `cut_in_pa` is the pressure a pump
    lets it fall to before it starts; that of any other supply is `pressure_pa`. `usual_pa` is what a main stands at as
    a rule, `least_pa` what any supply may fall to; None where they are `pressure_pa` and `cut_in_pa`.
    """

    port: str
    pressure_pa: float
    cut_in_pa: float
    temperature_k: float
    usual_pa: float | None = None
    least_pa: float | None = None
    is_filled_by_hand: bool = False
    """Whether a hand sets its pressure at each filling."""
    feeds_on: bool = True
    """Whether it makes up for water that shrinks or leaves; one by which a circuit was filled once does not."""


class Role(StrEnum):
    """What becomes of water that leaves by an outlet."""

    STREET = "main"
    AIR = "open air"
    TANK = "expansion tank"
    EXPANSION_RELIEF = "expansion relief"
    SAFETY_RELIEF = "safety relief"

    @property
    def is_way_out(self) -> bool:
        """Whether water leaves here freely and without limit: to the street or to open air."""
        return self in {Role.STREET, Role.AIR}

    @property
    def is_control(self) -> bool:
        """Whether it is there to take growth day by day, as a safety relief valve is not."""
        return self in {Role.TANK, Role.EXPANSION_RELIEF}

    @property
    def is_relief(self) -> bool:
        """Whether a valve opens there at a pressure, and drips."""
        return self in {Role.EXPANSION_RELIEF, Role.SAFETY_RELIEF}


@dataclass(frozen=True, slots=True)
class Outlet:
    """Expanding water can leave here once the port exceeds `opens_pa` (gauge, at the part's own height).

    A relief valve may also open at `opens_k` and be rated to carry off `capacity_w`. `guards` says of one that lets
    growth off day by day that it is the safety relief valve, too, of what it touches.
    """

    port: str
    role: Role
    opens_pa: float
    opens_k: float | None = None
    capacity_w: float | None = None
    guards: bool = False

    @property
    def is_safety(self) -> bool:
        """Whether what it touches has its safety relief valve in it."""
        return self.guards or self.role is Role.SAFETY_RELIEF


@dataclass(frozen=True, slots=True)
class Mixture:
    """Water with a share, from 0 to 1 by volume, of propylene or ethylene glycol."""

    glycol: Literal["propylene", "ethylene"]
    share: float


@dataclass(frozen=True, slots=True)
class HeatSource:
    """What a heater warms: the water between two ports.

    `hot_k` is the highest temperature it is set to, `input_w` its firing rate (None: not given). `on_flow`
    says that it fires only while water moves through it. `mixture` is what it warms where that is not plain
    water, `sizing` the name of the method its tank is sized by (None: the profile's).
    """

    inlet: str
    outlet: str
    volume_m3: float
    hot_k: float
    input_w: float | None
    on_flow: bool = False
    mixture: Mixture | None = None
    sizing: str | None = None
    is_electric: bool | None = None
    """Whether electricity heats it; None where the file does not say."""


@dataclass(frozen=True, slots=True)
class Cushion:
    """What an expansion tank is made of: its whole volume, the gauge charge at the tank, the most water it lets in."""

    volume_m3: float
    precharge_pa: float
    acceptance_m3: float | None
    is_sound: bool


@dataclass(frozen=True, slots=True)
class Stray:
    """A field, by its name in code, whose value drifts, is read off a gauge, or was never measured.

    `together` says that more of it is only ever worse, or only ever better, for anything that is judged, and so for all
    such fields of its dimension: then several may be tried at once.
    """

    field: str
    together: bool = False


class Part(Declared):
    """Anything with connections; a kind of part is a subclass under `@kind`.

    `ports` are its connections, `shared` those that take any number of pipes. A run enters at `inlet` and
    leaves at `outlet`, unless it names a port; then it leaves by that port's mate in `through`. `failures`
    are what can go wrong, as fields and their values then, `fails_as` the one of several that a change means which
    names none; `chosen` are the fields whose numbers a hand sets or a fitter picks; `assumed` says in words what a
    field means that is left out. `symbol` names the symbol it is drawn by; left out, it is the kind's own name, or a
    box with that name in it. A fitting only joins pipes, a vessel holds hot water under pressure, a check is a device
    whose whole purpose is that water passes one way; what `cools` is there to give the water's heat away, what
    `keeps_hot` is a store of hot water for people to draw. `protects` says how it keeps water from coming back to its
    supply, None where that is not what it is for. What `admits_air` lets air in before the water draws a vacuum. What
    `opens_into` others never stands in a system itself: they do. `ports_are_of_its_kind` says that all parts of a kind
    have the same ports and are passed by a run alike.
    """

    kind: ClassVar[str]
    symbol: ClassVar[str]
    ports: ClassVar[tuple[str, ...]] = (IN, OUT)
    shared: ClassVar[frozenset[str]] = frozenset()
    inlet: ClassVar[str | None] = IN
    outlet: ClassVar[str | None] = OUT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((IN, OUT),)
    failures: ClassVar[Mapping[str, Mapping[str, object]]] = {}
    fails_as: ClassVar[str] = ""
    chosen: ClassVar[tuple[str, ...]] = ()
    assumed: ClassVar[Mapping[str, str]] = {}
    is_fitting: ClassVar[bool] = False
    is_vessel: ClassVar[bool] = False
    is_check: ClassVar[bool] = False
    cools: ClassVar[bool] = False
    keeps_hot: ClassVar[bool] = False
    admits_air: ClassVar[bool] = False
    protects: ClassVar[BackflowProtection | None] = None
    opens_into: ClassVar[Inside | None] = None
    ports_are_of_its_kind: ClassVar[bool] = True

    elevation_m: Elevation = 0.0
    """Height above the layout's datum; 0 when left out."""
    rating_pa: Rating | None = None
    """Highest working pressure the part is rated for."""

    def drawn_as(self) -> str:
        """Name of the symbol that shows the part as it stands."""
        return self.symbol

    def stands(self) -> str:
        """How it stands now, in a word or two, as it is told beside what it may be instead."""
        return str(getattr(self, "state", "as drawn")).replace("_", " ")

    def port_names(self) -> tuple[str, ...]:
        """Every connection of this part."""
        return self.ports

    def enters_at(self) -> str | None:
        """The port by which a run enters that names none; None where one must be named."""
        return self.inlet

    def leaves_at(self) -> str | None:
        """The port by which a run leaves that names none; None where the run must end or name one."""
        return self.outlet

    def mate(self, port: str) -> str | None:
        """The port by which a run leaves that has entered at `port`; None where it must be named."""
        for first, second in self.through:
            if port == first:
                return second
            if port == second:
                return first
        return None

    def passages(self) -> Iterator[Passage]:
        """Ways through the part, from port to port."""
        for first, second in self.through:
            yield Free(first, second)

    def contents(self) -> Iterator[tuple[str, float]]:
        """Water the part holds, as (port that it stands at, m3)."""
        yield from ()

    def source(self) -> Source | None:
        """The supply this part is, if it is one."""
        return None

    def outlets(self) -> Iterator[Outlet]:
        """Where expanding water can leave through this part."""
        yield from ()

    def safety_sets(self) -> Iterator[tuple[str, float]]:
        """Sets, by port, gauge at the part, of the safety relief valve that this part is, whether or not it can open.

        One that is plugged sets a limit still: what it guards is as strong as it was, and no stronger.
        """
        yield from ((one.port, one.opens_pa) for one in self.outlets() if one.is_safety)

    def opens_daily(self) -> bool:
        """Whether it is a safety relief valve made to let growth off day by day, so that all may come up to its set."""
        return False

    def heat(self) -> HeatSource | None:
        """The heat source this part is, if it is one."""
        return None

    def is_out_of_service(self) -> bool:
        """Whether it is a heater that was put out: cold, full of water, and water passes it."""
        return False

    def creeps_past_pa(self) -> float | None:
        """The set that a worn pressure reducer no longer holds; None where it is sound, or is none."""
        return None

    def tempers_k(self) -> float | None:
        """How warm water leaves it at the most, where it mixes hot and cold; None where it does not, or nobody says."""
        return None

    def cushion(self) -> Cushion | None:
        """The air cushion this part is, if it is an expansion tank."""
        return None

    def is_fed_from_below(self) -> bool | None:
        """Whether it is a store whose cold water comes in at the bottom; None where the file does not say."""
        return None

    def can_be_shut(self) -> bool:
        """Whether it is a valve by which whoever serves the system parts it, locked or not, open or shut."""
        return False

    def driven(self) -> tuple[str, str] | None:
        """The ports a running pump drives water between, from and to."""
        return None

    def driving_pa(self) -> float | None:
        """What the pump between those ports adds to the pressure at no flow; None where the file does not say."""
        return None

    def draws_at(self) -> tuple[str, ...]:
        """Ports at which people draw water, where the highest distribution pressure applies."""
        return ()

    def draws_outdoors(self) -> bool:
        """Whether what people draw there is drawn outside the building, by a hose or from a hydrant."""
        return False

    def carries_heat_at(self) -> tuple[str, ...]:
        """Ports at which water stands that is there to carry heat, and to be drawn only where a tap is joined to it."""
        return self.ports if self.cools else ()

    def is_valve(self) -> bool:
        """Whether a hand can shut it: open now and not locked."""
        return False

    def is_accidental(self) -> bool:
        """Whether its free passage joins hot and cold though nobody counts on it."""
        return False

    def is_door(self) -> bool:
        """Whether its free passage is one that water cannot be counted upon to find open."""
        return self.is_valve() or self.is_accidental()

    def strays(self) -> Iterator[Stray]:
        """Its numbers that nobody knows exactly."""
        yield from ()

    def unsaid(self) -> Iterator[str]:
        """Fields that its author left out and that mean something then, by their names in the file."""
        fields = type(self).model_fields
        written = {fields[field].alias or field for field in self.model_fields_set}
        yield from (field for field in self.assumed if field not in written)

    def taken(self, field: str) -> str:
        """What a field means that its author left out, in words."""
        return self.assumed[field]

    def can_fail(self) -> Iterator[str]:
        """Its failures, less those that it has suffered already."""
        for how, values in self.failures.items():
            if not self._has(values):
                yield how

    def events(self, _extremes: Extremes) -> Iterator[Event]:
        """What may happen to it by itself: each of its failures, unless it has failed so already."""
        for how in self.can_fail():
            yield Event(how.replace("_", " "), "fail", {"how": how})

    def alternatives(self, extremes: Extremes) -> Iterator[Alternative]:
        """What it may be instead: turned, exchanged or failed, and then each number that somebody chose.

        An event that only brings a number to an extreme is none of these: the number itself is offered.
        """
        yield from (event for event in self.events(extremes) if event.sort is not Sort.NUMBER)
        yield from self.instead()
        for field in self.chosen:
            if getattr(self, field) is not None:
                words = file_name_of(field).replace("_", " ")
                yield Alternative(words, "set", {field: getattr(self, field)}, Sort.NUMBER)

    def instead(self) -> Iterator[Alternative]:
        """What may be made of it that comes about by nobody's mistake, and is no event therefore: it is mended."""
        failed = [values for values in self.failures.values() if self._has(values)]
        fields = type(self).model_fields
        wrong = {field for values in failed for field, value in values.items() if fields[field].default != value}
        if wrong:
            yield Alternative("mended", "set", dict.fromkeys(sorted(wrong)), Sort.OTHER_DEVICE)

    def _has(self, values: Mapping[str, object]) -> bool:
        return all(getattr(self, field) == value for field, value in values.items())

    def fixed(self) -> Iterator[tuple[str, str, "Part"]]:
        """Parts that come with this one, as (own port, name, part)."""
        yield from ()


KINDS: dict[str, type[Part]] = {}
Kind = TypeVar("Kind", bound=type[Part])


def kind(name: str) -> Callable[[Kind], Kind]:
    """Register a class as the kind of part that the file calls `name`."""

    def register(declared: Kind) -> Kind:
        declared.kind = name
        if not hasattr(declared, "symbol"):
            declared.symbol = name
        KINDS[name] = declared
        return declared

    return register
