"""Whether a reducer wants an expansion tank behind it: asked by the finding that says so and by those beside it."""

from plumbnet.rules.facts import ReducerFacts
from plumbnet.rules.rule_profile import Profile


def wants_tank(reducer: ReducerFacts, profile: Profile) -> bool:
    """Whether the rules ask for a tank behind a reducer, and neither it nor a valve in its place is there."""
    is_asked = profile.tank_behind_reducer.asks_behind(reducer.upstream_pa)
    return is_asked and reducer.is_heated and not reducer.has_tank and not _is_relieved(reducer, profile)


def _is_relieved(reducer: ReducerFacts, profile: Profile) -> bool:
    """Whether an expansion relief valve stands in for the tank; what is to be said of it is another finding."""
    ruling = profile.expansion_relief
    is_low = reducer.relief_set_pa is not None and ruling.takes_set(reducer.relief_set_pa)
    return is_low and ruling.value != "does-not-count"
