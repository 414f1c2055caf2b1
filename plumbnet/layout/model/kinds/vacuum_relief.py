"""A vacuum relief valve: it lets air in before a tank is siphoned empty or sucked flat."""

from typing import ClassVar

from plumbnet.layout.model.kinds.control import Ending
from plumbnet.layout.model.part import kind


@kind("vacuum_relief_valve")
class VacuumReliefValve(Ending):
    """A vacuum relief valve (ANSI Z21.22, CSA 4.4): lets air in as soon as the water would draw a vacuum.

    It belongs on the cold pipe of a tank above its top, or on a tapping of its own, with no valve and no check between.
    Water never leaves by it: it is no relief valve and no way out for expanding water.
    """

    admits_air: ClassVar[bool] = True
