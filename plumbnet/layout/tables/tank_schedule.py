"""The expansion tanks of a layout as a schedule to order and charge them by."""

from collections.abc import Iterator

from plumbnet.layout.model import System
from plumbnet.layout.rewriting import Wholes
from plumbnet.layout.units import LENGTH, PRESSURE, VOLUME, Dimension, show


def tank_rows(system: System) -> Iterator[tuple[str, ...]]:
    """A row to each tank: name, volume, charge, most water it lets in, rating, height, the parts it hangs on."""
    whole = Wholes(system)
    for name, part in system.parts.items():
        cushion = part.cushion()
        if cushion is not None:
            yield (
                name,
                _shown(system, cushion.volume_m3, VOLUME),
                _shown(system, cushion.precharge_pa, PRESSURE),
                _shown(system, cushion.acceptance_m3, VOLUME),
                _shown(system, part.rating_pa, PRESSURE),
                _shown(system, part.elevation_m, LENGTH),
                "; ".join(_neighbours(whole, name)),
            )


def _shown(system: System, value: float | None, dimension: Dimension) -> str:
    return "" if value is None else show(value, dimension, system.units)


def _neighbours(whole: Wholes, name: str) -> Iterator[str]:
    """The parts that a tank is joined to, as a run names them."""
    for pipe in map(whole.outdoors, whole.system.pipes):
        names = [end.part for end in pipe.ends]
        if name in names:
            yield names[1 - names.index(name)]
