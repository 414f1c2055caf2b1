"""The calculation sheet as data: what went in and where it came from, each step, the tank, and what to mind."""

from dataclasses import dataclass

from plumbnet.layout import shown
from plumbnet.layout.units import Units
from plumbnet.physics.sizing import Step, StepDimension
from plumbnet.rules.facts import HeaterFacts, Verdict


@dataclass(frozen=True, slots=True)
class SheetItem:
    """A number that goes in, in SI, pressures gauge where they are a pressure difference; `origin` in words."""

    symbol: str
    name: str
    value: float
    dimension: StepDimension
    origin: str


@dataclass(frozen=True, slots=True)
class Content:
    """A piece of heated water: the part or pipe that holds it, what warms it, and where its volume comes from.

    `water` names what warms all the water that this piece is counted with, because it is warmed alike.
    """

    name: str
    heater: str
    volume_m3: float
    origin: str
    water: str


@dataclass(frozen=True, slots=True)
class Section:
    """Some steps that belong together; symbols hold within one section."""

    title: str
    items: tuple[SheetItem, ...] = ()
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True, slots=True)
class MethodUsed:
    """The sizing method: its name in a file, what it is called, where it comes from, and who chose it."""

    name: str
    title: str
    source: str
    verified: bool
    chosen: str


@dataclass(frozen=True, slots=True)
class SheetResult:
    """The tank that is wanted.

    `tank_m3` is the least, `nominal_m3` the next size up (None: no size is so large), of `sizes_from`;
    `charge_pa` is gauge at the tank, None for an open tank; `settled_pa` is what the next size settles at, gauge
    at the tank. `refusal` says in words why there is no tank; then nothing else but the place holds. `method_m3` is
    what the steps of the method lead to, for all the water alone; `holds_m3` the least that was found to hold when
    tried in the layout, where that is another, beside the sound tanks `beside`.
    """

    at: str
    tank_m3: float | None = None
    nominal_m3: float | None = None
    sizes_from: str = ""
    charge_pa: float | None = None
    settled_pa: float | None = None
    refusal: str = ""
    method_m3: float | None = None
    holds_m3: float | None = None
    beside: tuple[str, ...] = ()
    why: str = ""
    """Why there, as what follows "it is"."""


@dataclass(frozen=True, slots=True)
class ExistingTank:
    """What the tanks that are there can do.

    Of `growth_m3` of all heaters in `heaters`, `takes_m3` finds room below the limit and `short_m3` does not.
    `settled_pa` is where they settle, gauge at the heater; None where nothing holds the pressure.
    """

    tanks: tuple[str, ...]
    heaters: tuple[str, ...]
    growth_m3: float
    takes_m3: float
    short_m3: float
    settled_pa: float | None


@dataclass(frozen=True, slots=True)
class Sheet:
    """The calculation for one heater, from what its author wrote to the tank; `units` are those of its sentences."""

    file: str
    sha256: str
    title: str
    scenario: str | None
    rules: str
    rules_title: str
    rules_sha256: str
    heater: HeaterFacts
    method: MethodUsed
    inputs: tuple[SheetItem, ...]
    contents: tuple[Content, ...]
    sections: tuple[Section, ...]
    outcome: SheetResult
    at_hand: ExistingTank | None
    assumptions: tuple[str, ...]
    cautions: tuple[str, ...]
    units: Units

    def to_text(self) -> str:
        """What `plumbnet size` prints of it: result, what goes in, every step; ends with a line break."""
        return shown(self, "text", str)

    @property
    def verdict(self) -> Verdict:
        """What becomes of the heater's expansion as the layout stands."""
        return self.heater.verdict
