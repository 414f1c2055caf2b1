"""A plant as it warms; what can happen to it next, each as a number that climbs above zero when it does."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from plumbnet.physics.fluids import ATMOSPHERE_PA, saturation_abs_pa
from plumbnet.physics.vessels import BREAKS_PA
from plumbnet.physics.warmup.coupled_pressures import Basin
from plumbnet.physics.warmup.heated_bodies import Warm
from plumbnet.physics.warmup.warmup_result import WarmupHappening
from plumbnet.physics.warmup.warmup_step import Plant, PlantState

_ROUNDING_PA = 1e-3
"""An outlet opens so far above its set, lest one that has just closed at it should open again."""


@dataclass(frozen=True, slots=True)
class EventWatch:
    """What is waited for, to what, in which zone, and to which body of water; `excess` climbs above zero then."""

    what: WarmupHappening
    name: str
    zone: int
    excess: Callable[[PlantState], float]
    body: int | None = None

    @property
    def is_told_once(self) -> bool:
        """Whether only the first time is worth telling."""
        return self.what not in {WarmupHappening.BURNER_ON, WarmupHappening.BURNER_OFF, WarmupHappening.OUTLET_OPENS}


def watches(plant: Plant, now: PlantState) -> Iterator[EventWatch]:
    """All that can happen to a plant in a state."""
    for index, warm in enumerate(now.warm):
        yield from _of_body(index, warm, now)
    for zone, basin in plant.basins.items():
        yield from _of_zone(zone, basin, now)


def _of_body(index: int, warm: Warm, now: PlantState) -> Iterator[EventWatch]:
    body, zone = warm.body, warm.body.home
    if body.mixed_from is not None:
        if body.name not in now.mixed:
            yield EventWatch(WarmupHappening.MIXED_REACHED, body.name, zone, _hotter(index, body.mixed_k), index)
        return
    for burner in body.burners:
        if burner.name in now.firing:
            yield EventWatch(WarmupHappening.BURNER_OFF, burner.name, zone, _hotter(index, burner.hot_k), index)
        else:
            yield EventWatch(WarmupHappening.BURNER_ON, burner.name, zone, _colder(index, burner.relights_k), index)
    yield EventWatch(WarmupHappening.ELEMENT_OPENS, body.name, zone, _hotter(index, body.element_k), index)
    yield EventWatch(WarmupHappening.LIMIT_PASSED, body.name, zone, _above(zone, body.limit_abs_pa), index)
    breaks = ATMOSPHERE_PA + BREAKS_PA + body.head_pa
    yield EventWatch(WarmupHappening.BREAKS, body.name, zone, _above(zone, breaks), index)

    def superheat(then: PlantState) -> float:
        own = then.pressures_abs_pa[zone] - body.head_pa
        return saturation_abs_pa(then.warm[index].temperature_k) - own

    yield EventWatch(WarmupHappening.BOILS, body.name, zone, superheat, index)


def _of_zone(zone: int, basin: Basin, now: PlantState) -> Iterator[EventWatch]:
    for name, tank in basin.tanks.items():
        yield EventWatch(WarmupHappening.TANK_OPENS, name, zone, _above(zone, tank.opens_abs_pa))
        yield EventWatch(WarmupHappening.TANK_FULL, name, zone, _above(zone, tank.full_abs_pa))
    outlet = basin.outlet
    if outlet is not None and not outlet.gives_back and zone not in now.open:
        yield EventWatch(
            WarmupHappening.OUTLET_OPENS, outlet.name, zone, _above(zone, basin.opens_abs_pa + _ROUNDING_PA)
        )


def _hotter(body: int, temperature_k: float) -> Callable[[PlantState], float]:
    return lambda now: now.warm[body].temperature_k - temperature_k


def _colder(body: int, temperature_k: float) -> Callable[[PlantState], float]:
    return lambda now: temperature_k - now.warm[body].temperature_k


def _above(zone: int, pressure_abs_pa: float) -> Callable[[PlantState], float]:
    return lambda now: now.pressures_abs_pa[zone] - pressure_abs_pa
