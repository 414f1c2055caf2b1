"""Parts that stand in a pipe: tees, meters, valves, reducers, treatment, mixing."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from plumbnet.layout.model.event import Alternative, Event, Extremes, Sort
from plumbnet.layout.model.kinds.store import Store
from plumbnet.layout.model.part import (
    IN,
    JOINT,
    OUT,
    RELIEF,
    RETURN,
    Free,
    OneWay,
    Part,
    Passage,
    Reducing,
    Shut,
    Stray,
    kind,
)
from plumbnet.layout.units import set_pressure, vessel_volume, water_inside


class Checkable(Part):
    """A device that some makes fit with a check in its outlet."""

    check: bool = False
    """Whether a check valve is built in."""

    def drawn_as(self) -> str:
        """With the check that is built in."""
        return f"checked_{self.symbol}" if self.check else self.symbol

    def stands(self) -> str:
        """Whether a check is built in."""
        return "with a check" if self.check else "without a check"

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """It may be exchanged for one with a check, or its check stick open."""
        yield from super().events(extremes)
        if self.check:
            yield Event("check stuck open", "set", {"check": False})
        else:
            yield Event("exchanged for one with a check", "set", {"check": True}, Sort.OTHER_DEVICE)

    def instead(self) -> Iterator[Alternative]:
        """One without a check may take its place."""
        yield from super().instead()
        if self.check:
            yield Alternative("exchanged for one without a check", "set", {"check": False}, Sort.OTHER_DEVICE)

    def passages(self) -> Iterator[Passage]:
        """Both ways, or one way where a check is built in."""
        yield OneWay(IN, OUT) if self.check else Free(IN, OUT)


@kind("tee")
class Tee(Part):
    """A fitting that joins any number of pipes; water passes freely between all of them."""

    symbol: ClassVar[str] = "joint"
    ports: ClassVar[tuple[str, ...]] = (JOINT,)
    shared: ClassVar[frozenset[str]] = frozenset({JOINT})
    inlet: ClassVar[str | None] = JOINT
    outlet: ClassVar[str | None] = JOINT
    through: ClassVar[tuple[tuple[str, str], ...]] = ((JOINT, JOINT),)
    is_fitting: ClassVar[bool] = True

    def passages(self) -> Iterator[Passage]:
        """None needed: all pipes meet in the one joint."""
        yield from ()


@kind("meter")
class Meter(Checkable):
    """A water meter. Many new meters carry a check or a dual check: ask the water utility."""

    symbol: ClassVar[str] = "meter"
    assumed: ClassVar = {"check": "has no check valve"}


@kind("valve")
class Valve(Part):
    """A shut-off valve: gate or ball. Shut, it closes the system; locked, nobody turns it by mistake."""

    symbol: ClassVar[str] = "valve"
    assumed: ClassVar = {"state": "stands open"}

    state: Literal["open", "shut"] = "open"
    """Whether it stands open or shut."""
    locked: bool = False
    """Whether it is locked or sealed in its state."""

    def drawn_as(self) -> str:
        """Open or shut."""
        return "shut_valve" if self.state == "shut" else self.symbol

    def passages(self) -> Iterator[Passage]:
        """Both ways while open."""
        yield Shut(IN, OUT) if self.state == "shut" else Free(IN, OUT)

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """A hand may turn it, unless it is locked."""
        yield from super().events(extremes)
        if not self.locked:
            turned = Event("shut", "close", sort=Sort.TURNED), Event("opened", "open", sort=Sort.TURNED)
            yield turned[self.state != "open"]

    def instead(self) -> Iterator[Alternative]:
        """Whoever has the key turns a locked one, and may lock one that is not."""
        yield from super().instead()
        if not self.locked:
            yield Alternative("locked", "set", {"locked": True}, Sort.OTHER_DEVICE)
        elif self.state == "open":
            yield Alternative("shut", "close", sort=Sort.TURNED)
        else:
            yield Alternative("opened", "open", sort=Sort.TURNED)

    def is_valve(self) -> bool:
        """An open valve that is not locked can be shut by hand."""
        return self.state == "open" and not self.locked

    def can_be_shut(self) -> bool:
        """Whoever has the key shuts a locked one too."""
        return True


@kind("pressure_reducer")
class PressureReducer(Part):
    """A pressure reducing valve (ASSE 1003): holds its outlet at the set pressure or below.

    Without a bypass water cannot pass back. With an integral bypass it can, once the building stands above
    the main. A reducer that stands wide open because the main is below its set is not counted on as a way
    back: nothing guarantees that it passes water in reverse.

    One that creeps has grit or wear at its seat, the commonest failure (common practice): while nobody draws, what lies
    behind it comes slowly up to all that stands before it, whatever its set.
    """

    symbol: ClassVar[str] = "pressure_reducer"
    failures: ClassVar = {"bypass_stuck_shut": {"bypass": False}, "creeping": {"state": "creeping"}}
    fails_as: ClassVar[str] = "bypass_stuck_shut"
    chosen: ClassVar[tuple[str, ...]] = ("set_pa",)
    assumed: ClassVar = {"bypass": "has no bypass"}

    set_pa: Annotated[float, set_pressure(200e3, 600e3)]
    """Outlet pressure it is set to."""
    bypass: bool = False
    """Whether an integral bypass lets water back once the building stands above the main."""
    state: Literal["sound", "creeping"] = "sound"
    """Whether its seat is tight, or leaks slowly."""

    def drawn_as(self) -> str:
        """With its bypass."""
        return "pressure_reducer_with_bypass" if self.bypass else self.symbol

    def instead(self) -> Iterator[Alternative]:
        """One with or without a bypass may take its place."""
        yield from super().instead()
        words = f"exchanged for one {'without' if self.bypass else 'with'} a bypass"
        yield Alternative(words, "set", {"bypass": not self.bypass}, Sort.OTHER_DEVICE)

    def creeps_past_pa(self) -> float | None:
        """Its set, once its seat leaks."""
        return None if self.state == "sound" else self.set_pa

    def strays(self) -> Iterator[Stray]:
        """Its set, a screw that is turned, while it holds it."""
        if self.state == "sound":
            yield Stray("set_pa")

    def passages(self) -> Iterator[Passage]:
        """Forward below its set, or at any pressure where it creeps; back only through a bypass."""
        if self.state == "sound":
            yield Reducing(IN, OUT, self.set_pa, self.bypass)
        else:
            yield Free(IN, OUT) if self.bypass else OneWay(IN, OUT)


@kind("softener")
class Softener(Checkable):
    """A water softener; its control valve usually lets water pass both ways (from memory)."""

    symbol: ClassVar[str] = "softener"
    assumed: ClassVar = {"check": "has no check valve"}

    volume_m3: Annotated[float, water_inside(0.001, 0.02)] = 0.0
    """Water it holds."""

    def contents(self) -> Iterator[tuple[str, float]]:
        """The water in its tank."""
        yield (OUT, self.volume_m3)


@kind("filter")
class Filter(Checkable):
    """A filter or strainer; water passes both ways unless a check is built in."""

    symbol: ClassVar[str] = "filter"
    assumed: ClassVar = {"check": "has no check valve"}

    volume_m3: Annotated[float, water_inside(0.001, 0.02)] = 0.0
    """Water it holds."""

    def contents(self) -> Iterator[tuple[str, float]]:
        """The water in its bowl."""
        yield (OUT, self.volume_m3)


@kind("heat_trap")
class HeatTrap(Part):
    """A heat-trap nipple or loop: slows warm water from rising; not a check, it leaks back under pressure.

    Taken as free for pressure (from memory; some makes hold better than others).
    """

    symbol: ClassVar[str] = "heat_trap"


@kind("storage_tank")
class StorageTank(Store):
    """A closed tank full of hot or cold water, heated from elsewhere; `return` and `relief` are tappings."""

    symbol: ClassVar[str] = "storage_tank"
    ports: ClassVar[tuple[str, ...]] = (IN, OUT, RETURN, RELIEF)
    is_vessel: ClassVar[bool] = True
    chosen: ClassVar[tuple[str, ...]] = ("volume_m3",)

    volume_m3: Annotated[float, vessel_volume(0.1, 0.3)]
    """Water it holds."""

    def passages(self) -> Iterator[Passage]:
        """All tappings open into the one tank."""
        for port in (OUT, RETURN, RELIEF):
            yield Free(IN, port)

    def strays(self) -> Iterator[Stray]:
        """The water in it."""
        yield Stray("volume_m3", together=True)

    def contents(self) -> Iterator[tuple[str, float]]:
        """The water in the tank."""
        yield (IN, self.volume_m3)
