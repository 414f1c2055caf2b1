"""A closed heater to the tank it needs: where, for whom, how large, tried in every history."""

from plumbnet.analysis.required_tank.charge import usual_charge_pa
from plumbnet.analysis.required_tank.place import TankPlace, place_named
from plumbnet.analysis.required_tank.tank_choice import Gathered, TankChoice
from plumbnet.analysis.required_tank.tank_location import TankPlaces, tank_place
from plumbnet.analysis.required_tank.tank_task import ALWAYS, Task, WarmedWater, charge_pa, nominal_m3, sized

__all__ = [
    "ALWAYS",
    "Gathered",
    "TankChoice",
    "TankPlace",
    "TankPlaces",
    "Task",
    "WarmedWater",
    "charge_pa",
    "nominal_m3",
    "place_named",
    "sized",
    "tank_place",
    "usual_charge_pa",
]
