"""Zones, tanks and gates as they are drawn on paper: litres and kPa, cold at 200 absolute and charged to it."""

import math

from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.histories.neighbours import Neighbours
from plumbnet.physics.vessels.tank import Tank

COLD_KPA = 200.0
Gate = OneWayGate[str]


def tank(litres: float, *, charge: float = COLD_KPA, cold: float = COLD_KPA, most: float | None = None) -> Tank:
    """A tank; `most` litres pass its membrane."""
    return Tank(litres / 1e3, charge * 1e3, cold * 1e3, None if most is None else most / 1e3)


def load(grows: float = 0.0, *tanks: Tank | float, cold: float = COLD_KPA, lets_go: float = math.inf) -> ZoneLoad:
    """A zone that grows by litres, its tanks by their litres, and the pressure at which water leaves it."""
    made = tuple(one if isinstance(one, Tank) else tank(one, cold=cold, charge=cold) for one in tanks)
    return ZoneLoad({"h": grows / 1e3} if grows else {}, cold * 1e3, made, lets_go * 1e3)


def gate(arrow: str, opens: float = 0.0, *, shuts: float = math.inf) -> Gate:
    """A gate from one zone to another, `"near>far"`."""
    near, far = arrow.split(">")
    return OneWayGate(near, far, shuts * 1e3, opens * 1e3)


def zones(loads: dict[str, ZoneLoad], *gates: Gate | str) -> Neighbours[str]:
    """Zones and the gates between them; a plain check by its arrow alone."""
    return Neighbours(loads, [gate(one) if isinstance(one, str) else one for one in gates])


def pressed(share: float, *, cold: float = COLD_KPA) -> float:
    """The pressure, in kPa, at which a share of the gas is pressed away that a tank held cold. Boyle's law."""
    return cold / (1.0 - share)


def kpa(state: dict[str, float]) -> dict[str, float]:
    """A state in kPa, to a tenth of a pascal."""
    return {zone: round(abs_pa / 1e3, 4) for zone, abs_pa in state.items()}
