"""A heater to the size its tank must have at any charge and highest pressure, as its sizing method counts water."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.analysis.required_tank import nominal_m3, sized
from plumbnet.analysis.verdict import Case, judge_of
from plumbnet.layout.units import customary
from plumbnet.physics.fluids import ATMOSPHERE_PA, OutsideWater
from plumbnet.physics.sizing import MissingInput, OutsideMethod, Sizing
from plumbnet.physics.vessels import NoTank, nominal_sizes, tank_volume_m3
from plumbnet.rules import NO_TANK, capitalised


class NoChart(ValueError):
    """A chart that cannot be drawn; the text says why, as a sentence."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """The tank of a heater: `water_m3` to be taken between `start_pa` and `end_pa`, charged to `charge_pa`.

    Pressures are gauge, at the tank. `least_m3` is the smallest that does it, `nominal_m3` the next size up (None:
    no size is so large), `series_m3` the sizes that can be had, ascending; `at` is where it connects.
    """

    water_m3: float
    charge_pa: float
    start_pa: float
    end_pa: float
    least_m3: float
    nominal_m3: float | None
    series_m3: tuple[float, ...]
    at: str

    def size_m3(self, *, charge_pa: float, end_pa: float) -> float:
        """The smallest tank with another charge and another highest pressure; infinite where none can do it.

        Source: `physics.vessels.tank_volume_m3`.
        """
        try:
            return tank_volume_m3(
                self.water_m3,
                charge_abs_pa=charge_pa + ATMOSPHERE_PA,
                start_abs_pa=self.start_pa + ATMOSPHERE_PA,
                end_abs_pa=end_pa + ATMOSPHERE_PA,
            )
        except NoTank:
            return math.inf


def sizes(report: Report, heater: str) -> Sizes:
    """The tank of a heater by its own sizing method or the profile's.

    Raises NoChart where the method has no answer or asks for an open tank, KeyError for an unknown heater.
    """
    return sizer(report)(heater)


def sizer(report: Report) -> Callable[[str], Sizes]:
    """What gives the tank of each heater, as `sizes` does, with the network searched once for all."""
    judge = judge_of(report.network, report.rules)
    heated = {each.name: each for each in report.network.heated}
    return lambda heater: _sizes(report, judge.case(heated[heater]))


def _sizes(report: Report, case: Case) -> Sizes:
    try:
        found = sized(case.tank.task, case.method)
    except NoTank as error:
        raise NoChart(capitalised(NO_TANK)) from error
    except (MissingInput, OutsideMethod, OutsideWater) as error:
        raise NoChart(capitalised(str(error))) from error
    return _of(found, report, case)


def _of(found: tuple[Sizing, ...], report: Report, case: Case) -> Sizes:
    first, least_m3 = found[0], math.fsum(one.tank_m3 for one in found)
    if first.charge_abs_pa is None or first.start_abs_pa is None or first.end_abs_pa is None:
        raise NoChart("An open tank has no charge, and its size does not depend on the pressure.")
    water_m3 = math.fsum(one.expansion_m3 + one.reserve_m3 for one in found)
    wanted_m3 = _wanted_m3(case)
    if wanted_m3 is not None:
        water_m3, least_m3 = water_m3 * wanted_m3 / least_m3, wanted_m3
    if water_m3 <= 0.0:
        raise NoChart("The water does not grow, so that there is nothing for a tank to take.")
    return Sizes(
        water_m3=water_m3,
        charge_pa=first.charge_abs_pa - ATMOSPHERE_PA,
        start_pa=first.start_abs_pa - ATMOSPHERE_PA,
        end_pa=first.end_abs_pa - ATMOSPHERE_PA,
        least_m3=least_m3,
        nominal_m3=nominal_m3(least_m3, report.system),
        series_m3=report.system.tank_sizes_m3 or nominal_sizes(customary(report.system.units)),
        at=case.tank.task.place.name,
    )


def _wanted_m3(case: Case) -> float | None:
    """The tank that the report asks for, if it does: it takes less beside others, and more in a bad order."""
    if not case.is_closed or case.tank.need.tank_m3 is None:
        return None
    return case.tank.need.asked_m3 or case.tank.need.tank_m3
