"""An air separator: takes air out of the water of a circuit, and has a tapping for the expansion tank."""

from collections.abc import Iterator
from typing import Annotated, ClassVar

from plumbnet.layout.model.part import IN, OUT, Free, Part, Passage, kind
from plumbnet.layout.units import water_inside

TANK = "tank"


@kind("air_separator")
class AirSeparator(Part):
    """An air separator or air scoop, usual behind a boiler: water slows down in it and its air rises to a vent.

    Water passes both ways. The port `tank` is the tapping from which an expansion tank hangs, where there is one. Its
    automatic vent lets out air and no water, so that it is no way out for expanding water.
    """

    symbol: ClassVar[str] = "air_separator"
    ports: ClassVar[tuple[str, ...]] = (IN, OUT, TANK)

    volume_m3: Annotated[float, water_inside(0.0005, 0.01)] = 0.0
    """Water it holds."""

    def passages(self) -> Iterator[Passage]:
        """Free from end to end, and to the tapping."""
        yield Free(IN, OUT)
        yield Free(IN, TANK)

    def contents(self) -> Iterator[tuple[str, float]]:
        """Its water."""
        yield (IN, self.volume_m3)
