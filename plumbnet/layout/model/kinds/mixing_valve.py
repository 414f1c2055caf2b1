"""A mixing valve: hot and cold water in, mixed water out."""

from collections.abc import Iterator
from typing import Annotated, ClassVar

from plumbnet.layout.model.part import COLD, HOT, MIXED, Free, OneWay, Part, Passage, Stray, kind
from plumbnet.layout.units import FREEZES_K, TEMPERATURE, Quantity

MixedTo = Annotated[float, Quantity(TEMPERATURE, above=FREEZES_K, at_most=373.15, usual=(311.15, 333.15))]


@kind("mixing_valve")
class MixingValve(Part):
    """A thermostatic mixing valve (ASSE 1017, 1070; EN 1111): hot and cold in, mixed water out.

    Checks in both inlets keep hot and cold apart. Without them the valve joins the two systems. Water that a pump
    drives round behind it comes to the temperature of its `outlet`, and not to that of the heater; where the file does
    not say, that of the heater is counted.
    """

    symbol: ClassVar[str] = "mixing_valve"
    ports: ClassVar[tuple[str, ...]] = (HOT, COLD, MIXED)
    inlet: ClassVar[str | None] = None
    outlet: ClassVar[str | None] = MIXED
    through: ClassVar[tuple[tuple[str, str], ...]] = ((HOT, MIXED), (COLD, MIXED))
    failures: ClassVar = {"checks_stuck_open": {"checks": False}, "passing_hot": {"outlet_k": None}}
    fails_as: ClassVar[str] = "checks_stuck_open"
    chosen: ClassVar[tuple[str, ...]] = ("outlet_k",)
    assumed: ClassVar = {"checks": "has checks in both inlets"}

    checks: bool = True
    """Whether both inlets have checks."""
    outlet_k: MixedTo | None = None
    """Temperature of the mixed water, to which it is set; as hot as the heater's when left out."""

    def mate(self, port: str) -> str | None:
        """Either inlet leads to the mixed outlet; which inlet a reversed run means must be named."""
        return None if port == MIXED else MIXED

    def passages(self) -> Iterator[Passage]:
        """From each inlet to the outlet; both ways where checks are missing."""
        for inlet in (HOT, COLD):
            yield OneWay(inlet, MIXED) if self.checks else Free(inlet, MIXED)

    def tempers_k(self) -> float | None:
        """Its outlet's temperature."""
        return self.outlet_k

    def strays(self) -> Iterator[Stray]:
        """Its thermostat."""
        if self.outlet_k is not None:
            yield Stray("outlet_k", together=True)

    def is_accidental(self) -> bool:
        """Unchecked, it joins hot and cold by accident."""
        return not self.checks
