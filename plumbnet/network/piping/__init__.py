"""A system as ports joined by free passages; contracted to zones, and the gates that are left between them."""

from plumbnet.network.piping.circuits import Circuits
from plumbnet.network.piping.heater_sides import HeaterSides, joined_parts, touching
from plumbnet.network.piping.piping import Gate, Node, Piping, Site, Way, piping_of
from plumbnet.network.piping.potentials import POTENTIAL_ROUNDING_PA, Potentials, PotentialStep, fitted
from plumbnet.network.piping.zones import Cell, Crossing, Zone, Zoning, zoning_of

__all__ = [
    "POTENTIAL_ROUNDING_PA",
    "Cell",
    "Circuits",
    "Crossing",
    "Gate",
    "HeaterSides",
    "Node",
    "Piping",
    "PotentialStep",
    "Potentials",
    "Site",
    "Way",
    "Zone",
    "Zoning",
    "fitted",
    "joined_parts",
    "piping_of",
    "touching",
    "zoning_of",
]
