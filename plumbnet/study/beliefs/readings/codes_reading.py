"""What stands behind a code under which a layout was thought to pass, or not."""

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.rules import Severity
from plumbnet.study.beliefs.hint import BlankHints, Hint, told
from plumbnet.study.beliefs.reading import option_hints, reading
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
    return told("finding-overlooked", words)
