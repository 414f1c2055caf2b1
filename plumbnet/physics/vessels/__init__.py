"""What holds heated water: tanks, walls, water locked in, relief valves, the pipe that takes growth back."""

from plumbnet.physics.vessels.defaults import (
    BREAKS_PA,
    HEAT_SOAK_FROM_M3,
    HEAT_SOAK_K,
    TEMPERATURE_ELEMENT_K,
    USUAL_BLOWDOWN,
    USUAL_DIFFERENTIAL_K,
    USUAL_EFFICIENCY,
    USUAL_ROOM_K,
)
from plumbnet.physics.vessels.locked_volume import Bracket, Climb, LockedVolume, discharged_m3, locked_rise_k
from plumbnet.physics.vessels.relief_flow import thermal_expansion_m3_s
from plumbnet.physics.vessels.supply_pipe import leaving_k, mixed_k
from plumbnet.physics.vessels.tank import NoTank, Tank, nominal_size_m3, nominal_sizes, settled_abs_pa, tank_volume_m3
from plumbnet.physics.vessels.walls import Shell, UnknownWall, heater_shell, joined_shells, material, tube_shell

__all__ = [
    "BREAKS_PA",
    "HEAT_SOAK_FROM_M3",
    "HEAT_SOAK_K",
    "TEMPERATURE_ELEMENT_K",
    "USUAL_BLOWDOWN",
    "USUAL_DIFFERENTIAL_K",
    "USUAL_EFFICIENCY",
    "USUAL_ROOM_K",
    "Bracket",
    "Climb",
    "LockedVolume",
    "NoTank",
    "Shell",
    "Tank",
    "UnknownWall",
    "discharged_m3",
    "heater_shell",
    "joined_shells",
    "leaving_k",
    "locked_rise_k",
    "material",
    "mixed_k",
    "nominal_size_m3",
    "nominal_sizes",
    "settled_abs_pa",
    "tank_volume_m3",
    "thermal_expansion_m3_s",
    "tube_shell",
]
