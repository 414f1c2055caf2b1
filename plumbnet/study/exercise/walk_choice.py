"""An exercise to the walks of the water that explain its answer."""

from plumbnet.analysis.water_walk import WaterWalk, water_walk
from plumbnet.study.exercise.exercise import Exercise


def answer_walks(exercise: Exercise) -> tuple[WaterWalk, ...]:
    """The walk from the heater that is asked about, or from each where all are."""
    report, asked = exercise.report, exercise.asked
    return tuple(water_walk(report, heater) for heater in report.heaters if asked.heater in {None, heater.name})
