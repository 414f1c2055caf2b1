"""The limit of a heater in a sentence: what sets it, and why it reads otherwise at the heater than there."""

from collections.abc import Iterator

from plumbnet.analysis.water_walk import WaterWalk
from plumbnet.layout.units import LENGTH, show
from plumbnet.report.prose import reached_through
from plumbnet.rules import listed
from plumbnet.rules.facts import ROUNDING_PA, Basis, Facts

_SETS: dict[Basis, str] = {
    "fixture": "the code allows {own} at {part}",
    "rating": "{part} is made for {own}",
    "relief": "{own} leaves the margin below the set of {part}",
    "set": "{part} is set to {own}",
}
_SETS_HERE: dict[Basis, str] = {
    "fixture": "the code allows no more at {part}",
    "rating": "{part} is made for no more",
    "relief": "more would leave no margin below the set of {part}",
    "set": "{part} opens there",
}


def limit_sentence(facts: Facts, walk: WaterWalk) -> str:
    """Why the limit of a heater is what it is, as it reads at the heater; the height between, where there is one."""
    heater = walk.heater
    limit = facts.pressure(heater.limit_pa)
    if heater.limit_own_pa is None or heater.limit_basis not in _SETS:
        return f"The limit is {limit}: {heater.limit_by}."
    own = facts.pressure(heater.limit_own_pa)
    if limit == own:
        sets = _SETS_HERE[heater.limit_basis].format(part=heater.limit_at)
        return f"The limit is {limit}: {sets}{reached_through(heater)}."
    sets = _SETS[heater.limit_basis].format(own=own, part=heater.limit_at)
    why = "".join(f", and {reason}" for reason in _why(facts, walk))
    return f"The limit reads {limit} here: {sets}{reached_through(heater)}{why}."


def _why(facts: Facts, walk: WaterWalk) -> Iterator[str]:
    """What makes the limit read otherwise at the heater: its height, and what opens on the way."""
    heater = walk.heater
    lower_m, head_pa = walk.below_limit_m, walk.limit_head_pa
    if abs(head_pa) > ROUNDING_PA:
        where, reads = ("lower", "more") if lower_m > 0 else ("higher", "less")
        height, head = show(abs(lower_m), LENGTH, facts.units), facts.pressure(abs(head_pa))
        yield f"{heater.name} sits {height} {where}, where it reads {head} {reads}"
    rest_pa = heater.limit_pa - (heater.limit_own_pa or 0.0) - head_pa
    if abs(rest_pa) > ROUNDING_PA:
        between = listed(heater.limit_way) if heater.limit_way else "what stands between"
        yield f"{between} takes {facts.pressure(abs(rest_pa))}"
