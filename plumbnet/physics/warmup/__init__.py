"""A plant filled cold, every fixture shut, its burners lit; its temperatures and pressures in time."""

from plumbnet.physics.warmup.coupled_pressures import HIGHEST_COUPLED_PA, Basin, CoupledOutlet
from plumbnet.physics.warmup.heated_bodies import Body, Burner
from plumbnet.physics.warmup.simulation import simulate, slowest_s
from plumbnet.physics.warmup.warmup_result import Moment, WarmUp, WarmupEvent, WarmupHappening
from plumbnet.physics.warmup.warmup_step import Plant

__all__ = [
    "HIGHEST_COUPLED_PA",
    "Basin",
    "Body",
    "Burner",
    "CoupledOutlet",
    "Moment",
    "Plant",
    "WarmUp",
    "WarmupEvent",
    "WarmupHappening",
    "simulate",
    "slowest_s",
]
