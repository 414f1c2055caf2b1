"""Numbers to their margins: tried together where that tells enough, and each by itself where it does not."""

from collections.abc import Iterator, Sequence

from plumbnet.study.margins.joint_trial import that_may_turn
from plumbnet.study.margins.margin import Margin, UncertainNumber
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.pressure_events import PressureEvents
from plumbnet.study.margins.turning_search import TurningSearch


def number_margins(trials: MarginTrials, numbers: Sequence[UncertainNumber]) -> Iterator[Margin]:
    """The margin of each number, in their order."""
    events = PressureEvents(trials.report)
    searches = {one: TurningSearch(trials, one, events.at(one.part) if one.is_pressure else ()) for one in numbers}
    alike = [one for one in numbers if one.together]
    lower = that_may_turn(trials, alike, lambda one: searches[one].end(one.lowest))
    higher = that_may_turn(trials, alike, lambda one: searches[one].end(one.highest))
    for number, search in searches.items():
        below = None if number.together and number not in lower else search.below()
        above = None if number.together and number not in higher else search.above()
        yield Margin(number, below, above)
