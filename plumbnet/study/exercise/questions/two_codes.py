"""Under which of two codes a layout passes."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.layout.units import Customary, customary
from plumbnet.rules import Finding, Severity
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, question

CODES: Mapping[Customary, tuple[str, ...]] = MappingProxyType(
    {"us": ("ipc-2021", "irc-2021", "npc-2020", "upc-2018", "upc-2024"), "metric": ("as-nzs-3500", "en-806", "uk-2010")}
)
"""Profiles for hot water in buildings of North America, and elsewhere, by the units of the layouts."""
BOTH, ONE, NEITHER = "both", "one", "neither"
_ERRORS = 3
"""Errors told of one code."""
_CLEAN = {"bare": 0.0, "boiler": 0.0, "spill": 0.3}
LEANS = {
    BOTH: _CLEAN | {"tank": 0.7},
    ONE: _CLEAN | {"tank": 0.1, "tankless": 0.6, "circulation": 0.0, "reducer": 0.6, "bypass": 0.9, "meter_check": 0.2},
    NEITHER: {},
}


@question("two-codes", {5: (BOTH, ONE, NEITHER)}, leans=LEANS)
def two_codes(world: World) -> Iterator[Asked]:
    """Under which of two codes does the layout pass?"""
    system = world.report.system
    first, second = (check(system, rules=code) for code in world.chance.sample(CODES[customary(system.units)], 2))
    options = (BOTH, *(f"only the {one.profile.title}" for one in (first, second)), NEITHER)
    right = options[2 * (not first.is_fine) + (not second.is_fine)]
    outcome = right if right in {BOTH, NEITHER} else ONE
    prompt = (
        f"One inspector goes by the {first.profile.title}, another by the {second.profile.title}. Who passes the "
        "layout, with no finding that is an error?"
    )
    because = tuple(told for report in (first, second) for told in _told(report))
    codes = (first.profile.profile, second.profile.profile)
    yield Asked(prompt, (Choice("It passes under", options, right),), outcome, because, profiles=codes)


def _told(report: Report) -> Iterator[str]:
    """What stands against the layout under one code."""
    errors = [one for one in report.findings if one.severity is Severity.ERROR]
    if not errors:
        yield f"Under the {report.profile.title} nothing stands against it."
    for one in errors[:_ERRORS]:
        yield f"Under the {report.profile.title}: {one.text} [{_clause(one)}]"
    if len(errors) > _ERRORS:
        yield f"Under the {report.profile.title} {len(errors) - _ERRORS} more errors stand against it."


def _clause(finding: Finding) -> str:
    return finding.clause if finding.is_certain else f"{finding.clause}; from memory"
