"""Where a wrong pressure comes from: what it would be right for, or the slip that makes it of the right one."""

from collections.abc import Iterable, Iterator

from plumbnet.layout.units import BAR, KILO, PSI
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.hint import Cause, MeasureHints
from plumbnet.study.exercise import Exercise, Measure

_UNITS = (PSI, KILO, BAR)
"""Units in which somebody may give a pressure, in pascal."""


def pressure_hints(asked: AskedHeater, exercise: Exercise, causes: Iterable[Cause]) -> Iterator[MeasureHints]:
    """Hints for each pressure that is asked for: these causes first, then slips of unit and gauge."""
    own = tuple(causes)
    for blank in exercise.asked.blanks:
        if isinstance(blank, Measure) and blank.right is not None:
            known = (*own, *_slips(asked, blank.right))
            apart = tuple(cause for cause in known if abs(cause[0] - blank.right) > blank.tolerance)
            less, more = asked.says("less-than-stands"), asked.says("more-than-stands")
            yield MeasureHints(blank.right, blank.tolerance, apart, less, more)


def _slips(asked: AskedHeater, right_pa: float) -> Iterator[Cause]:
    """The right pressure with the open air counted in, and its number in another unit."""
    yield right_pa + ATMOSPHERE_PA, asked.says("absolute-for-gauge")
    for meant in _UNITS:
        for taken in _UNITS:
            if meant != taken:
                yield right_pa / meant * taken, asked.says("other-unit-of-pressure")
