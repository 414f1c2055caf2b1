"""Phrases that findings and reports share, in one place: names in a row, verbs that agree, what stops the water.

What tank to fit, and why none is named, stands here too.
"""

from collections.abc import Sequence

from plumbnet.network.pressure import Giver
from plumbnet.rules.facts import Facts, HeaterFacts, LowFacts, Need, PlaceFacts, TankFacts, Verdict

MOST_LISTED = 100
"""Names in a row in a sentence: with more, what is said of very many heaters would grow with their square."""
TANK_LEFT_OUT = (
    "a control; how large a tank would do was not worked out, since too many heaters push into each other's water for "
    "every order of heating to be tried: size it by hand, or look at fewer at a time"
)
NO_TANK = "no tank can do this: the static pressure leaves no room below the limit; lower the static pressure first"
SAME_VOLUME = 1e-6
"""Share by which two sums of the same volumes may differ."""
NO_WAY = "no way leads to a main or to open air"


def listed(names: Sequence[str], last: str = "and", *, most: int = MOST_LISTED) -> str:
    """Names as a person lists them; beyond `most` only how many more there are.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    if not names:
        return "nothing"
    if len(names) > most:
        return f"{', '.join(names[:most])} {last} {len(names) - most} more"
    *first, end = names
    return f"{', '.join(first)} {last} {end}" if first else end


def agreeing(names: Sequence[str], verb: str) -> str:
    """Names with a verb in the third person, which loses its s where there are several.

    >>> agreeing(["check"], "stands"), agreeing(["check", "meter"], "stands")
    ('check stands', 'check and meter stand')
    """
    return f"{listed(names)} {verb if len(names) == 1 else verb.removesuffix('s')}"


def stops_in_words(sets: Sequence[Sequence[str]]) -> str:
    """Sets of devices, any one of which would have to let the water pass.

    >>> stops_in_words([["check"], ["mixer"]]), stops_in_words([["a", "meter"], ["b", "meter"]])
    ('check or mixer', 'either a and meter, or b and meter')
    """
    if all(len(names) == 1 for names in sets):
        return listed([names[0] for names in sets], "or")
    ways = [listed(names) for names in sets]
    return ways[0] if len(ways) == 1 else f"either {', or '.join(ways)}"


def place(at: str) -> str:
    """Where a tank is connected: at a part, or in a pipe that is named by its ends.

    >>> place("split"), place("check -> heater")
    ('at split', 'in the pipe from check to heater')
    """
    start, arrow, end = at.partition(" -> ")
    return f"in the pipe from {start} to {end}" if arrow else f"at {at}"


def tank_wanted(facts: Facts, heater: HeaterFacts) -> str | None:
    """The tank a heater needs, as the object of a sentence; None where no tank can do it."""
    need = heater.need
    if need is None or need.tank_m3 is None:
        return None
    served = need.serves if heater.name in need.serves else sorted({heater.name, *need.serves})
    shared = f", for {listed(served)} together" if len(served) > 1 else ""
    beside = f", beside {listed(need.beside)}" if need.beside else ""
    charge = facts.pressure(need.precharge_pa)
    return f"{_size(facts, need, need.tank_m3)} charged to {charge}, connected {place(need.at)}{beside}{shared}"


def _size(facts: Facts, need: Need, tank_m3: float) -> str:
    """How large a tank: the next size, the least that holds, and what a sizing method asks for beyond that."""
    least = f"at least {facts.volume(tank_m3)}"
    if need.asked_m3 is not None:
        least = f"{least} hold, and the method {need.method} asks for {facts.volume(need.asked_m3)}"
    if need.nominal_m3 is None:
        return f"several expansion tanks, together {least},"
    return f"an expansion tank of {facts.volume(need.nominal_m3)} ({least}),"


def charged_right(facts: Facts, heater: HeaterFacts) -> str | None:
    """The tanks at hand that would do if they were charged right, and to what; None where there are none."""
    need = heater.need
    if need is None or not need.recharge:
        return None
    each = (
        f"{one.tank} charged to {facts.pressure(one.right_pa)} (it is charged to {facts.pressure(one.wrong_pa)})"
        for one in need.recharge
    )
    return listed(list(each))


def history_in_words(history: Sequence[Sequence[str]]) -> str:
    """In which order heaters warm; nothing where one is alone or all warm together.

    >>> history_in_words([["solar"], ["a", "b"]]), history_in_words([["solar"]])
    ('when solar warms first, then a and b together', '')
    """
    if len(history) <= 1:
        return ""
    first, *then = (f"{listed(stage)}{' together' if len(stage) > 1 else ''}" for stage in history)
    return f"when {first} {'warms' if len(history[0]) == 1 else 'warm'} first, then {', then '.join(then)}"


def behind(text: str, more: str) -> str:
    """A phrase with another behind it, if there is one.

    >>> behind("590 kPa", "when all is hot"), behind("590 kPa", "")
    ('590 kPa when all is hot', '590 kPa')
    """
    return f"{text} {more}" if more else text


def comes_to(facts: Facts, highest_pa: float, reached_pa: float | None) -> str:
    """A pressure that no history passes; where none is known to come so high, both ends."""
    most = facts.pressure(highest_pa)
    least = most if reached_pa is None else facts.pressure(reached_pa)
    return most if least == most else f"at least {least}, at most {most}"


def not_held(facts: Facts, heater: HeaterFacts) -> str:
    """What a trapped heater's growth brings above its limit: all its water, or one place beyond a one-way device."""
    beyond = next((place for place in heater.broken if place.way), None)
    if beyond is None or any(not place.way for place in heater.broken):
        return "nothing holds the pressure at or below the limit"
    return place_in_words(facts, beyond)


def place_in_words(facts: Facts, place: PlaceFacts) -> str:
    """A place above its limit: what it comes to, by which way and in which history."""
    through = f", reached through {listed(place.way)}," if place.way else ""
    if place.highest_pa == float("inf"):
        return f"nothing holds {place.part}{through} at or below {facts.pressure(place.limit_pa)}"
    comes = comes_to(facts, place.highest_pa, place.reached_pa)
    text = f"{place.part}{through} comes to {comes}, above its {facts.pressure(place.limit_pa)}"
    return behind(text, history_in_words(place.history))


def needed(facts: Facts, heater: HeaterFacts) -> str:
    """What a closed heater needs: the tank, and before it, where it has none, the relief valve."""
    tank = charged_right(facts, heater) or tank_wanted(facts, heater) or no_tank(heater.need)
    if heater.verdict is not Verdict.SEALED:
        return tank
    return f"first a relief valve on its own tapping, and no heat until it is there; then {tank}"


def fit_a_tank(facts: Facts, heater: HeaterFacts) -> str:
    """Advice: the tank to charge or to fit, or what comes before any tank."""
    right = charged_right(facts, heater)
    if right is not None:
        return f"Have {right}; then it holds."
    wanted = tank_wanted(facts, heater)
    if wanted is None and heater.need is not None and heater.need.is_left_out:
        return f"Fit {TANK_LEFT_OUT}."
    return f"Fit {wanted}." if wanted is not None else capitalised(NO_TANK)


def no_tank(need: Need | None) -> str:
    """Why no tank is named: none can do it, or which one was not worked out."""
    return TANK_LEFT_OUT if need is not None and need.is_left_out else NO_TANK


def right_charge(facts: Facts, tank: TankFacts) -> str:
    """What a tank belongs charged to: the pressure of its line; on a well just under that at which the pump starts."""
    if tank.serves_a_pump:
        return f"just under the {facts.pressure(tank.cut_in_pa or 0.0)} at which the pump starts"
    if tank.method_charge_pa is not None:
        return facts.pressure(tank.method_charge_pa)
    return facts.pressure(tank.static_pa or 0.0)


def renewed_first(facts: Facts) -> str:
    """What comes before anything is set or charged, in a sentence; nothing where no reducer creeps."""
    worn = [name for name, part in facts.system.parts.items() if part.creeps_past_pa() is not None]
    return f"Where its water comes through {listed(worn, 'or')}, renew that seat first: it creeps. " if worn else ""


def capitalised(words: str) -> str:
    """Words as a sentence of their own.

    >>> capitalised("no tank can do this")
    'No tank can do this.'
    """
    return f"{words[:1].upper()}{words[1:]}."


def closed(facts: Facts, heater: HeaterFacts) -> str:
    """What closes a heater, by how much the water grows, and the limit that nothing keeps."""
    grows, held = facts.volume(heater.shared_expansion_m3), not_held(facts, heater)
    if not any(place.way for place in heater.broken):
        held = f"nothing holds the pressure at or below {facts.pressure(heater.limit_pa)}"
    return f"{heater.name} is closed ({why_closed(heater)}); {_whose_water(heater)} grows by {grows}, and {held}."


def why_closed(heater: HeaterFacts) -> str:
    """What stops a closed heater's water, or that no way is there at all."""
    stops = heater.stopped_by.sets
    return f"stopped by {stops_in_words(stops)}" if stops else NO_WAY


def is_same_water(heater: HeaterFacts) -> bool:
    """Whether the heaters that share in its growth warm the very water that it warms."""
    return bool(heater.shares_with) and heater.shared_expansion_m3 <= heater.expansion_m3 * (1.0 + SAME_VOLUME)


def _whose_water(heater: HeaterFacts) -> str:
    if not heater.shares_with:
        return "its water"
    if is_same_water(heater):
        return f"its water, which {agreeing(heater.shares_with, 'warms')} too,"
    return f"its water, with that of {listed(heater.shares_with)},"


IS_OPEN = "it is open: its growth has a way out"
"""Why a requirement on closed heaters does not bear on one."""
FIRES_ON_FLOW = "it fires only while water is drawn"
"""Why a requirement on what keeps water hot does not bear on a heater."""
NO_PLAIN_WATER = "no plain water stands there that could boil"
"""Why a boiling point does not bear on a heater."""


def controls(heater: HeaterFacts) -> tuple[str, ...]:
    """What takes its growth day by day: sound tanks and expansion relief valves that its own water can push into."""
    return tuple(dict.fromkeys(rung.outlet for rung in heater.ladder if rung.role.is_control))


def first_stops(heater: HeaterFacts) -> tuple[str, ...]:
    """The first of the smallest sets of devices that stop a heater's water; none where there is no way at all."""
    return heater.stopped_by.sets[0] if heater.stopped_by.sets else ()


def when(low: LowFacts) -> str:
    """When the least pressure of a place stands there: nothing where it always does."""
    return ", the supply at its lowest" if low.at_lowest else ""


def worst_pa(lows: Sequence[LowFacts], like: LowFacts) -> float:
    """The least pressure among places that have their water from where one of them has it: one cure serves them all."""
    return min(low.least_pa for low in lows if _giver(low) == _giver(like))


def _giver(low: LowFacts) -> str:
    return "" if low.feed is None else low.feed.name


def more_pressure(facts: Facts, low: LowFacts, short_pa: float) -> str:
    """Advice: how a place comes to more pressure, by so much."""
    feed = low.feed
    if feed is None or feed.spare_pa < short_pa:
        return f"Fit a booster pump that adds at least {facts.pressure(short_pa)}, or feed it from where more stands."
    wanted = facts.pressure(feed.own_pa + short_pa)
    what = f"Raise the set of {feed.name}" if feed.giver is Giver.REDUCER else f"Fill at {feed.name}, cold,"
    return f"{what} to at least {wanted}, as far as all that hangs on it may stand that."
