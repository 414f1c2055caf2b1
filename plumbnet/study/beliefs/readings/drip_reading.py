"""What stands behind a valve that was taken for the first to drip, and behind the minutes after which it does."""

from collections.abc import Iterator

from plumbnet.analysis.warmup import HeaterWarmup, NoWarmUp, warm_up
from plumbnet.layout.units import MINUTE
from plumbnet.physics.warmup import WarmupHappening
from plumbnet.rules.facts import Verdict
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief
from plumbnet.study.beliefs.hint import BlankHints, Cause, Hint, MeasureHints
from plumbnet.study.beliefs.outlet_beliefs import taken_for_first
from plumbnet.study.beliefs.reading import heater_asked, option_hints, reading
from plumbnet.study.beliefs.verdict_beliefs import likely_verdict, verdict_belief
from plumbnet.study.exercise import Exercise, Measure

_NEAR = 0.1
"""Share of the right time by which a time may lie off that of something else; a minute at the least."""


@reading("first-drip")
def first_drip_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """An option is a valve, or that nothing drips; the time is that of the first drop."""
    asked = heater_asked(exercise)

    def read(option: str) -> Hint:
        return taken_for_first(asked, option) if option in asked.parts else _dry(asked)

    minutes = exercise.asked.blanks[1]
    if not isinstance(minutes, Measure) or minutes.right is None:
        return (option_hints(exercise, read),)
    apart = tuple(one for one in _causes(asked, minutes.right) if abs(one[0] - minutes.right) > minutes.tolerance)
    less, more = asked.says("drips-later"), _late(asked)
    return (
        option_hints(exercise, read),
        MeasureHints(minutes.right, max(MINUTE, _NEAR * minutes.right), apart, less, more),
    )


def _late(asked: AskedHeater) -> Hint:
    """Of who had the first drop fall too late: by a tank that takes nothing of it, where there is one."""
    lost = None if asked.lost_tank is None else lost_tank_belief(asked, asked.lost_tank)
    return lost or asked.says("drips-sooner")


def _dry(asked: AskedHeater) -> Hint:
    """Of who had nothing drip where something does."""
    if asked.heater.verdict is Verdict.TRAPPED:
        return verdict_belief(asked, likely_verdict(asked))
    rung = next((rung for rung in asked.heater.ladder if rung.role.is_relief), asked.heater.ladder[0])
    return asked.says_of("drip-overlooked", rung)


def _causes(asked: AskedHeater, right_s: float) -> Iterator[Cause]:
    """What happens at other times in the same heat-up, and the right time in seconds."""
    yield from _happenings(asked)
    yield right_s * MINUTE, asked.says("other-unit-of-time")


def _happenings(asked: AskedHeater) -> Iterator[Cause]:
    try:
        warming = warm_up(asked.report, asked.heater.name)
    except NoWarmUp:
        return
    for run in warming.bracket:
        yield from _of_run(asked, run)


def _of_run(asked: AskedHeater, warming: HeaterWarmup) -> Iterator[Cause]:
    run, name = warming.run, asked.heater.name
    hot, past = run.first(WarmupHappening.SETPOINT_REACHED, name), run.first(WarmupHappening.LIMIT_PASSED, None)
    if hot is not None:
        yield hot.time_s, asked.says("hot-for-drip")
    if past is not None:
        yield past.time_s, asked.says("limit-for-drip")
