"""What stands behind a code under which a layout was thought to pass, or not."""

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.rules import Finding, Severity
from plumbnet.study.beliefs.asked_heater import AskedHeater
from plumbnet.study.beliefs.device_beliefs import lost_tank_belief
from plumbnet.study.beliefs.hint import BlankHints, Hint, told
from plumbnet.study.beliefs.reading import option_hints, reading
from plumbnet.study.beliefs.verdict_beliefs import likely_verdict, verdict_belief
from plumbnet.study.exercise import Choice, Exercise


@reading("two-codes")
def two_codes_hints(exercise: Exercise) -> tuple[BlankHints, ...]:
    """Options are that it passes both codes, the first alone, the second alone, or neither, in this order."""
    reports = [check(exercise.report.system, rules=profile) for profile in exercise.asked.profiles]
    blank = exercise.asked.blanks[0]
    options = blank.options if isinstance(blank, Choice) else ()
    passed = dict(zip(options, _PASSES, strict=True))
    return (option_hints(exercise, lambda option: _mistaken(reports, passed[option])),)


_PASSES = ((True, True), (True, False), (False, True), (False, False))


def _mistaken(reports: list[Report], passed: tuple[bool, bool]) -> Hint:
    """Of the first code that says otherwise."""
    report, held = next((one, held) for one, held in zip(reports, passed, strict=True) if one.is_fine is not held)
    if not held:
        return told("code-too-strict", {"code": report.profile.title})
    error = next(one for one in report.findings if one.severity is Severity.ERROR)
    words = {"code": report.profile.title, "finding": error.name, "part": error.parts[0]}
    believed = _believed(report, error)
    return believed if believed is not None and believed.is_belief else told("finding-overlooked", words)


def _believed(report: Report, error: Finding) -> Hint | None:
    """What was thought of the heater, the tank or the bypass of which an error was overlooked."""
    named = [AskedHeater(report, heater) for heater in report.heaters if heater.name in error.parts]
    if error.name == "trapped-expansion" and named:
        return verdict_belief(named[0], likely_verdict(named[0]))
    asked = AskedHeater(report, report.heaters[0])
    tank = next((tank for tank in asked.facts.tanks if tank.name in error.parts), None)
    if error.name == "tank-too-small":
        return asked.says("few-degrees-do-not-matter")
    return lost_tank_belief(asked, tank) if error.name == "tank-cut-off" and tank is not None else None
