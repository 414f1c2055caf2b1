"""Pumps: those that raise the pressure, and those that drive water round a loop."""

from collections.abc import Iterator
from typing import Annotated, ClassVar

from plumbnet.layout.model.event import Alternative, Event, Extremes, Sort
from plumbnet.layout.model.kinds.inline import Checkable
from plumbnet.layout.model.part import IN, OUT, Boosting, Part, Passage, Stray, kind
from plumbnet.layout.units import HEAD, LEAST_HEAD_PA, MOST_STANDING_PA, Quantity, standing_pressure

Lift = Annotated[float, Quantity(HEAD, at_least=LEAST_HEAD_PA, at_most=MOST_STANDING_PA, usual=(20e3, 250e3))]


@kind("booster_pump")
class BoosterPump(Part):
    """A pump that raises the pressure of what lies behind it; its check holds that pressure."""

    symbol: ClassVar[str] = "booster_pump"
    assumed: ClassVar = {"check": "has a check in its outlet"}
    chosen: ClassVar[tuple[str, ...]] = ("rise_pa",)

    rise_pa: Annotated[float, standing_pressure(100e3, 250e3)]
    """Pressure it adds at no flow."""
    check: bool = True
    """Whether a check keeps water from passing back."""

    def drawn_as(self) -> str:
        """With the check that is built in."""
        return f"checked_{self.symbol}" if self.check else self.symbol

    def stands(self) -> str:
        """Whether it has its check."""
        return "with a check" if self.check else "without a check"

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """Its check may stick open."""
        yield from super().events(extremes)
        if self.check:
            yield Event("check stuck open", "set", {"check": False})

    def instead(self) -> Iterator[Alternative]:
        """One with or without a check may take its place."""
        yield from super().instead()
        words = f"exchanged for one {'without' if self.check else 'with'} a check"
        yield Alternative(words, "set", {"check": not self.check}, Sort.OTHER_DEVICE)

    def strays(self) -> Iterator[Stray]:
        """Its rise."""
        yield Stray("rise_pa")

    def passages(self) -> Iterator[Passage]:
        """Forward with a rise in pressure."""
        yield Boosting(IN, OUT, self.rise_pa, self.check)

    def driven(self) -> tuple[str, str]:
        """From inlet to outlet."""
        return (IN, OUT)

    def driving_pa(self) -> float:
        """Its rise."""
        return self.rise_pa


@kind("circulator")
class Circulator(Checkable):
    """A circulating pump: moves water round a loop and adds nothing to its standing pressure.

    Where a reducer stands in the loop, the pump must lift water from the set of the reducer to the pressure at which it
    comes back; a head left out is taken as less than that.
    """

    symbol: ClassVar[str] = "pump"
    assumed: ClassVar = {"check": "has no check valve"}
    chosen: ClassVar[tuple[str, ...]] = ("head_pa",)

    running: bool = True
    """Whether it runs, or is let run by its clock or thermostat."""
    head_pa: Lift | None = None
    """What it adds at no flow, as a pressure or as a height of water; asked for where a reducer stands in its loop."""

    def events(self, extremes: Extremes) -> Iterator[Event]:
        """It may stop or be started."""
        yield from super().events(extremes)
        yield Event("off" if self.running else "on", "set", {"running": not self.running}, Sort.TURNED)

    def stands(self) -> str:
        """Whether it runs."""
        return "running" if self.running else "off"

    def driven(self) -> tuple[str, str] | None:
        """From inlet to outlet while it runs."""
        return (IN, OUT) if self.running else None

    def driving_pa(self) -> float | None:
        """Its head."""
        return self.head_pa
