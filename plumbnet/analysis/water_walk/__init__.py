"""What water meets on its way from a heater, part by part: what lets it pass, what takes it, what stops it."""

from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import (
    Conduct,
    Direction,
    GateAnswer,
    Gated,
    GateMet,
    Meeting,
    Refusing,
    Taking,
    Try,
    WalkStep,
    WaterWalk,
)

__all__ = [
    "Conduct",
    "Direction",
    "GateAnswer",
    "GateMet",
    "Gated",
    "Meeting",
    "Refusing",
    "Taking",
    "Try",
    "WalkStep",
    "WaterWalk",
    "water_walk",
]
