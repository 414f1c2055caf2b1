"""Under which of two codes a layout passes."""

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType

from plumbnet.analysis import Report
from plumbnet.api import check
from plumbnet.layout.units import Customary, customary
from plumbnet.rules import REQUIREMENTS, Finding, Profile, Severity, listed, ruling_of
from plumbnet.study.exercise.answer import Choice
from plumbnet.study.exercise.question import Asked, World, question, reducer_note

CODES: Mapping[Customary, tuple[tuple[str, ...], tuple[str, ...]]] = MappingProxyType(
    {
        "us": (("ipc-2021", "irc-2021"), ("npc-2020", "upc-2018", "upc-2024")),
        "metric": (("as-nzs-3500", "en-806"), ("uk-2010",)),
    }
)
"""Profiles for hot water in North America, and elsewhere, by the units of the layouts; one is taken of each side."""
BOTH, ONE, NEITHER = "both", "one", "neither"
_NO_LENGTH = "A pipe of which no length is given holds nothing."
_ERRORS = 3
"""Errors told of one code."""
LEANS = {
    5: {
        "bare": 0.0,
        "boiler": 0.0,
        "solar": 0.0,
        "mixing": 0.1,
        "circulation": 0.9,
        "high_main": 0.0,
        "spill": 0.0,
        "tank": 0.15,
        "tankless": 1.0,
        "annex": 0.15,
        "reducer": 0.9,
        "bypass": 0.9,
        "own_check": 1.0,
    }
}


def _always(_profile: Profile) -> bool:
    return True


ASKED: Mapping[str, Callable[[Profile], bool]] = MappingProxyType(
    {
        "trapped-expansion": _always,
        "static-above-limit": _always,
        "tank-cut-off": _always,
        "tank-too-small": _always,
        "reducer-bypassed": _always,
        "expansion-relief-above-safety": _always,
        "closed-without-control": lambda profile: profile.control_for.value == "every",
        "bypass-does-not-count": lambda profile: profile.bypass.value == "does-not-count",
        "expansion-relief-does-not-count": lambda profile: profile.expansion_relief.value != "counts",
        "valve-before-tank": lambda profile: profile.valve_before_tank.is_asked,
        "check-missing-at-heater": lambda profile: profile.check_at_heater.is_asked,
        "growth-leaves-supply-pipe": lambda profile: profile.way_back.value == "supply-pipe",
    }
)
"""What the lists of exercises may break so that a code has an error: by the finding, whether a profile asks it."""


@question("two-codes", {5: (BOTH, ONE, NEITHER)}, fewest={5: 3}, leans=LEANS, as_it_is=True, is_narrowed=False)
def two_codes(world: World) -> Iterator[Asked]:
    """Under which of two codes does the layout pass?"""
    system = world.report.system
    pair = [world.chance.choice(side) for side in CODES[customary(system.units)]]
    first, second = (check(system, rules=code) for code in world.chance.sample(pair, 2))
    if not _errors(first) | _errors(second) <= set(ASKED):
        return
    options = (BOTH, *(f"only the {one.profile.title}" for one in (first, second)), NEITHER)
    right = options[2 * (not first.is_fine) + (not second.is_fine)]
    outcome = right if right in {BOTH, NEITHER} else ONE
    prompt = (
        f"One inspector goes by the {first.profile.title}, another by the {second.profile.title}. "
        f"{_rules(first, second)} {_limits(first, second)} {_NO_LENGTH} Who passes the layout?{reducer_note(world)}"
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


def _rules(first: Report, second: Report) -> str:
    """The rules by which both judge, in sentences; the same for all layouts of one list."""
    reports = (first, second)
    asking = {name: tuple(one for one in reports if asks(one.profile)) for name, asks in ASKED.items()}
    both = " ".join(_asks(name) for name, who in asking.items() if len(who) == len(reports))
    alone = [_alone(one, [name for name, who in asking.items() if who == (one,)]) for one in reports]
    return " ".join([f"Both ask: {both}", *(words for words in alone if words)])


def _limits(first: Report, second: Report) -> str:
    """The highest pressures that the two allow where people draw water."""
    limits = [one.facts.pressure(one.profile.distribution_limit.value_pa) for one in (first, second)]
    if limits[0] == limits[1]:
        return f"The highest pressure at a tap is {limits[0]} by both."
    told = [f"{one} by the {report.profile.title}" for one, report in zip(limits, (first, second), strict=True)]
    return f"The highest pressure at a tap is {listed(told)}."


def _asks(name: str) -> str:
    return REQUIREMENTS[name].asks


def _alone(report: Report, names: list[str]) -> str:
    told = " ".join(f"{_asks(name)} [{ruling_of(REQUIREMENTS[name], report.profile).clause}]" for name in names)
    return f"The {report.profile.title} alone asks: {told}" if names else ""


def _errors(report: Report) -> set[str]:
    return {one.name for one in report.findings if one.severity is Severity.ERROR}
