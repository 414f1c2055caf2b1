"""Phrases that findings and reports share: names in a row, verbs that agree, what stops the water, what tank to fit."""

from collections.abc import Sequence

from plumbnet.rules.facts import Facts, HeaterFacts, TankFacts, Verdict

NO_TANK = "no tank can do this: the static pressure leaves no room below the limit; lower the static pressure first"
ROUNDING = 1e-6
"""Share by which two sums of the same volumes may differ."""
NO_WAY = "no way leads to a main or to open air"


def listed(names: Sequence[str], last: str = "and") -> str:
    """Names as a person lists them.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    if not names:
        return "nothing"
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
    least, charge = facts.volume(need.tank_m3), facts.pressure(need.precharge_pa)
    if need.nominal_m3 is None:
        size = f"several expansion tanks, together at least {least},"
    else:
        size = f"an expansion tank of {facts.volume(need.nominal_m3)} (at least {least}),"
    served = sorted({heater.name, *need.serves})
    shared = f", for {listed(served)} together" if len(served) > 1 else ""
    return f"{size} charged to {charge}, connected {place(need.at)}{shared}"


def needed(facts: Facts, heater: HeaterFacts) -> str:
    """What a closed heater needs: the tank, and before it, where it has none, the relief valve."""
    tank = tank_wanted(facts, heater) or NO_TANK
    if heater.verdict is not Verdict.SEALED:
        return tank
    return f"first a relief valve on its own tapping, and no heat until it is there; then {tank}"


def fit_a_tank(facts: Facts, heater: HeaterFacts) -> str:
    """Advice: the tank to fit, or what comes before any tank."""
    wanted = tank_wanted(facts, heater)
    return f"Fit {wanted}." if wanted is not None else capitalised(NO_TANK)


def right_charge(facts: Facts, tank: TankFacts) -> str:
    """What a tank belongs charged to: the pressure of its line; on a well just under that at which the pump starts."""
    if tank.serves_a_pump:
        return f"just under the {facts.pressure(tank.lowest_pa or 0.0)} at which the pump starts"
    return facts.pressure(tank.static_pa or 0.0)


def capitalised(words: str) -> str:
    """Words as a sentence of their own.

    >>> capitalised("no tank can do this")
    'No tank can do this.'
    """
    return f"{words[:1].upper()}{words[1:]}."


def closed(facts: Facts, heater: HeaterFacts) -> str:
    """What closes a heater, by how much the water grows, and the limit that nothing keeps."""
    stops = heater.stopped_by.sets
    why = f"stopped by {stops_in_words(stops)}" if stops else NO_WAY
    grows, limit = facts.volume(heater.shared_expansion_m3), facts.pressure(heater.limit_pa)
    return (
        f"{heater.name} is closed ({why}); {_whose_water(heater)} grows by {grows}, and nothing holds the pressure "
        f"at or below {limit}."
    )


def is_same_water(heater: HeaterFacts) -> bool:
    """Whether the heaters that share in its growth warm the very water that it warms."""
    return bool(heater.shares_with) and heater.shared_expansion_m3 <= heater.expansion_m3 * (1.0 + ROUNDING)


def _whose_water(heater: HeaterFacts) -> str:
    if not heater.shares_with:
        return "its water"
    if is_same_water(heater):
        return f"its water, which {agreeing(heater.shares_with, 'warms')} too,"
    return f"its water, with that of {listed(heater.shares_with)},"


def first_stops(heater: HeaterFacts) -> tuple[str, ...]:
    """The first of the smallest sets of devices that stop a heater's water; none where there is no way at all."""
    return heater.stopped_by.sets[0] if heater.stopped_by.sets else ()
