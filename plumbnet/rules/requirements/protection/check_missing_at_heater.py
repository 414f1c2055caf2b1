"""A heater with no check in its cold feed, where the rules ask for one."""

from collections.abc import Iterator

from plumbnet.layout.model import Circuit, Role
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, FeedFacts, HeaterFacts, Verdict
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, NOT_ASKED, Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import FIRES_ON_FLOW, listed

BAD = Example("""\
plumbnet: 1
rules: en-806
parts:
  street: {kind: main, pressure: 4 bar}
  meter: {kind: meter, check: true}
  split: tee
  sink: fixture
  tank: {kind: expansion_tank, volume: 18 L, precharge: 3.8 bar}
  heater:  # <- check-missing-at-heater
    {kind: storage_heater, volume: 150 L, setpoint: 60 degC, relief: {pressure: 7 bar, temperature: 95 degC}}
  tap: fixture
runs:
  - street -> meter -> split -> heater -> tap.hot
  - split -> sink.cold
  - split -> tank
""")

GOOD = BAD.altered("""
  sink: ...
  check: check_valve
  feed: tee
runs:
  - street -> meter -> split -> check -> feed -> heater -> tap.hot
  - split -> sink.cold
  - feed -> tank
""")


@requirement(
    "check-missing-at-heater",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="check_at_heater",
    asks="A check stands in the cold feed of each heater, before any cold tap and before the supply.",
    of="heaters",
)
def check_missing_at_heater(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """No check keeps heated water from coming back along the cold feed of a heater to a cold tap or to the supply.

    Such codes keep what has been heated out of the cold water and count on the control behind the check. A reducer is
    none, and a check at the meter shuts in the whole house, its cold taps with it. Where the rules let growth go back
    into the supply pipe, a heater that stands open is judged by that. Fit a check in the cold feed, and
    with it the control of expansion, since the check closes the system.
    """
    if not profile.check_at_heater.is_asked:
        yield NOT_ASKED
        return
    feeds = {feed.name: feed for feed in facts.feeds}
    for heater in facts.heaters:
        feed = feeds[heater.name]
        why_not = _why_not(facts, profile, heater) or _why_not_fed(feed)
        yield NotApplicable((heater.name,), why_not) if why_not else _judged(feed)


def _why_not(facts: Facts, profile: Profile, heater: HeaterFacts) -> str:
    """Why a heater is not asked for a check; nothing where it is."""
    asked, part, way = profile.check_at_heater, facts.system.parts[heater.name], heater.way_out
    source = part.heat()
    if source is not None and source.inlet in part.carries_heat_at() and _is_heating(facts, heater):
        return "people draw none of what it warms"
    if heater.on_flow and asked.heaters == "storage":
        return FIRES_ON_FLOW
    if source is not None and source.volume_m3 <= asked.exempt_volume_m3:
        return f"heaters up to {facts.volume(asked.exempt_volume_m3)} are exempt"
    if heater.verdict is not Verdict.OPEN or way is None:
        return ""
    if way.role is not Role.STREET:
        return f"its water leaves to the open air at {way.outlet}, and not to the main"
    return "what goes back is judged by the supply pipe" if profile.way_back.value == "supply-pipe" else ""


def _is_heating(facts: Facts, heater: HeaterFacts) -> bool:
    return facts.circuit_of(heater.name) is Circuit.HEATING


def _why_not_fed(feed: FeedFacts) -> str:
    """Why its feed tells nothing; nothing where it does."""
    if feed.comes_to is not None or feed.checks:
        return ""
    return f"it is fed through {listed(feed.fed_by)}" if feed.fed_by else NO_WATER


def _judged(feed: FeedFacts) -> Answer:
    if feed.comes_to is None:
        return Met((feed.name, *feed.checks), f"{listed(feed.checks)} in its cold feed")
    return Breach(
        (feed.name,),
        f"no check in the cold feed of {feed.name} keeps its water from coming back to {feed.comes_to}; the rules ask "
        "for one.",
        f"Fit a check in the cold feed of {feed.name} alone, and a control of expansion between the two.",
    )
