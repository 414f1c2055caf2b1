"""Where people draw water."""

from collections.abc import Iterator
from typing import ClassVar

from plumbnet.layout.model.event import Alternative, Sort
from plumbnet.layout.model.part import COLD, HOT, Free, Outlet, Part, Passage, Role, Stray, kind


@kind("fixture")
class Fixture(Part):
    """A tap, shower or appliance, with a `hot` and a `cold` connection of which one may stay unused.

    `crossover` says that hot and cold stand joined while nothing is drawn: a single-lever mixer behind a
    shut spray head, a crossover valve, a worn cartridge. `drawing` says that it runs, `outdoor` that it is a hose bibb
    (sill cock) or a yard hydrant, which some codes let stand at the pressure of the street.
    """

    symbol: ClassVar[str] = "fixture"
    ports: ClassVar[tuple[str, ...]] = (HOT, COLD)
    inlet: ClassVar[str | None] = None
    outlet: ClassVar[str | None] = None
    through: ClassVar[tuple[tuple[str, str], ...]] = ()
    failures: ClassVar = {"crossover": {"crossover": True}}
    assumed: ClassVar = {"crossover": "does not join hot and cold"}

    crossover: bool = False
    """Whether hot and cold stand joined while nothing is drawn."""
    drawing: bool = False
    """Whether water is being drawn."""
    outdoor: bool = False
    """Whether it is a hose bibb or a hydrant, outside the building."""

    def drawn_as(self) -> str:
        """Running, with hot and cold joined, or for a hose."""
        if self.drawing:
            return "running_fixture"
        if self.crossover:
            return "fixture_with_crossover"
        return "hose_bibb" if self.outdoor else self.symbol

    def stands(self) -> str:
        """Whether it runs."""
        return "running" if self.drawing else "shut"

    def instead(self) -> Iterator[Alternative]:
        """Its tap may be opened or shut."""
        yield from super().instead()
        if self.drawing:
            yield Alternative("shut", "set", {"drawing": False}, Sort.TURNED)
        else:
            yield Alternative("running", "draw", sort=Sort.TURNED)

    def passages(self) -> Iterator[Passage]:
        """None, unless hot and cold stand joined."""
        if self.crossover:
            yield Free(HOT, COLD)

    def outlets(self) -> Iterator[Outlet]:
        """While it runs, water leaves into the open air."""
        if self.drawing:
            for port in self.ports:
                yield Outlet(port, Role.AIR, 0.0)

    def strays(self) -> Iterator[Stray]:
        """Its height."""
        yield Stray("elevation_m", together=True)

    def draws_at(self) -> tuple[str, ...]:
        """Both connections."""
        return self.ports

    def draws_outdoors(self) -> bool:
        """A hose bibb does."""
        return self.outdoor

    def is_accidental(self) -> bool:
        """A crossover joins hot and cold by accident."""
        return self.crossover
