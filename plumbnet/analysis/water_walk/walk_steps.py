"""A walk of the water as data: its steps from part to part, and what each part does to it.

Pressures are gauge, in pascal, as they read at the height of the heater.
"""

from dataclasses import dataclass
from enum import Enum, auto
from typing import TypeAlias

from plumbnet.layout.model import Role
from plumbnet.layout.units import PASCAL_PER_METRE
from plumbnet.rules.facts import HeaterFacts, ReliefFacts, TankFacts


class Conduct(Enum):
    """What a part without a gate or a sound outlet does to the water."""

    SPREADS = auto()
    """A fitting: it goes every way from there."""
    LETS_THROUGH = auto()
    ENDS = auto()
    """Shut, a dead end."""
    IS_FULL = auto()
    """A tank whose air is gone: it takes nothing."""
    IS_PLUGGED = auto()
    """A relief valve that opens at no pressure: danger."""

    @property
    def is_loss(self) -> bool:
        """Whether something is wrong: an outlet that takes nothing any more."""
        return self in {Conduct.IS_FULL, Conduct.IS_PLUGGED}


@dataclass(frozen=True, slots=True)
class Taking:
    """An outlet that takes water from `opens_pa` on, which may be past what its heater may come to.

    `running` is the relief valve itself where its supply stands above its set, `wrong_charge` the tank itself where it
    is charged to what neither its line nor its sizing method asks for.
    """

    role: Role
    opens_pa: float
    is_past_limit: bool
    running: ReliefFacts | None = None
    wrong_charge: TankFacts | None = None


@dataclass(frozen=True, slots=True)
class Refusing:
    """An outlet that takes none of the water: `before` takes any amount first; None: a reducer on the way shuts."""

    before: str | None


class Direction(Enum):
    """How water that comes to a gate stands to it."""

    FORWARD = auto()
    BYPASS = auto()
    """Back to a reducer: through its bypass, where it has one."""
    BACK = auto()


class GateAnswer(Enum):
    """Whether a gate lets the water pass that comes to one side of it, and from when on."""

    PASSES = auto()
    PASSES_ABOVE = auto()
    PASSES_PAST_LIMIT = auto()
    OUTRUN = auto()
    """It would pass above a pressure to which it never comes: a way out takes any amount before."""
    SET_STANDS_BEYOND = auto()
    """A reducer, behind which its set or more stands already."""
    ONE_WAY = auto()
    """Water passes only the other way."""
    OPEN_NOW = auto()
    """A reducer met from behind, which stands open and need not stay so: not counted."""
    SHUT = auto()

    @property
    def passes(self) -> bool:
        """Whether the walk goes on behind it."""
        return self in {GateAnswer.PASSES, GateAnswer.PASSES_ABOVE, GateAnswer.PASSES_PAST_LIMIT}


@dataclass(frozen=True, slots=True)
class GateMet:
    """A gate inside a part, on the way to its connection `toward`.

    `opens_pa` is the pressure above which water passes, None where that is at once or never; `before` the outlet that
    takes any amount before, where the gate is outrun.
    """

    toward: str
    direction: Direction
    answer: GateAnswer
    opens_pa: float | None = None
    before: str = ""


@dataclass(frozen=True, slots=True)
class Gated:
    """A part with gates on the way to its other connections, in the order in which the water comes to them."""

    gates: tuple[GateMet, ...]


Meeting: TypeAlias = Conduct | Taking | Refusing | Gated
"""What a part does to the water that comes to one of its connections."""


@dataclass(frozen=True, slots=True)
class WalkStep:
    """A part of a kind, met at its connection `port`.

    `came_from` is the number of the step before it; None where that is the heater, whose connection is then `by` (else
    empty).
    """

    part: str
    kind: str
    port: str
    came_from: int | None
    by: str
    met: Meeting


@dataclass(frozen=True, slots=True)
class Try:
    """One thing that the water tries: by a connection of its heater, `by`, or from the part `start` it has come to.

    `way` are the steps from there, each step of a walk in one way at most. `met` is what the last of them does to the
    water; None where it only comes to parts beyond it that are `shut`, or that lead `nowhere` new.
    """

    by: str
    start: str
    way: tuple[WalkStep, ...]
    met: Meeting | None
    shut: tuple[str, ...] = ()
    nowhere: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WaterWalk:
    """The walk of a heater's water, depth first; a part is a step once for each side of it that the water meets.

    `tries` are what its steps come to, in the order in which one would tell them; `below_limit_m` is how far the heater
    sits below the part that sets its limit, negative where it sits above.
    """

    heater: HeaterFacts
    steps: tuple[WalkStep, ...]
    tries: tuple[Try, ...] = ()
    below_limit_m: float = 0.0

    @property
    def limit_head_pa(self) -> float:
        """Pressure by which the heater reads more for its height alone than the part that sets its limit."""
        return PASCAL_PER_METRE * self.below_limit_m
