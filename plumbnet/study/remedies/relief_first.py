"""What makes a sealed heater safe, before anything else is done to it: a relief valve that can open.

None of this is a remedy: the relief valve is the last safety device, and a control always comes with it.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.layout.edits import change_of
from plumbnet.layout.model import RELIEF, Change, End, Shut
from plumbnet.layout.units import PRESSURE, Customary, Units, customary, parse_measure
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.remedy_context import RemedyContext

USUAL_SETS: Mapping[Units, tuple[str, ...]] = {
    "us": ("100 psi", "125 psi", "150 psi"),
    "metric": ("700 kPa", "1000 kPa"),
    "metric-bar": ("7 bar", "10 bar"),
}
"""Sets of relief valves on water heaters. Source: common practice."""
HEATING_SETS: Mapping[Units, tuple[str, ...]] = {
    "us": ("30 psi", "50 psi", "75 psi"),
    "metric": ("300 kPa", "400 kPa", "600 kPa"),
    "metric-bar": ("3 bar", "4 bar", "6 bar"),
}
"""Sets of relief valves in heating circuits, where nobody draws water. Source: common practice."""
OPENS_AT: Mapping[Customary, str] = {"us": "210 degF", "metric": "95 degC"}
"""Temperature at which combined relief valves open. Source: 77 Ill. Adm. Code 890.1230; BS EN 1490 (from memory)."""


@dataclass(frozen=True, slots=True)
class Safeguard:
    """Changes that give a heater a relief valve that can open, and what they are in words; none for one that has it."""

    title: str
    changes: tuple[Change, ...]


def safeguards(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Safeguard]:
    """What makes a sealed heater safe: the way to its relief valve opened, a plugged one exchanged, one fitted."""
    behind = _relief_part(scene, heater)
    if behind is None:
        yield from _fitted(scene, heater)
        return
    yield from _opened(scene, heater)
    part = scene.system.parts[behind]
    if getattr(part, "state", None) == "plugged" and behind in scene.system.written:
        change = change_of("set", {"part": behind, "state": "sound"})
        yield Safeguard(f"exchange the plugged relief valve {behind} for a sound one", (change,))


def _relief_part(scene: RemedyContext, heater: HeaterFacts) -> str | None:
    """The part at the heater's relief tapping; None where it is free."""
    pipe = scene.network.pipe_at.get(End(heater.name, RELIEF))
    if pipe is None:
        return None
    return pipe.end.part if pipe.start.part == heater.name else pipe.start.part


def _opened(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Safeguard]:
    """A shut valve between the heater and a relief valve."""
    network, parts = scene.network, scene.system.parts
    for zone in network.reach(scene.zones_of(heater.name), math.inf):
        for crossing in network.zoning.out.get(zone, ()):
            beyond = network.zoning.sites.get(crossing.far, ())
            has_relief = any(site.outlet.is_safety for site in beyond)
            shut = any(isinstance(passage, Shut) for passage in parts[crossing.part].passages())
            if has_relief and shut and parts[crossing.part].can_be_shut():
                why = "nothing that can shut belongs before a relief valve"
                title = f"open {crossing.part}, and have it taken out, for {why}"
                yield Safeguard(title, (change_of("open", crossing.part),))


def _fitted(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Safeguard]:
    """A relief valve on the heater's own tapping, of the lowest usual set that suits.

    Its margin lies above the static pressure and, where people draw, above the limit that holds without it; the set is
    not above the heater's rating.
    """
    part, units = scene.system.parts[heater.name], scene.system.units
    if RELIEF not in part.port_names():
        return
    is_drawn = _is_drawn(scene, heater)
    sets = USUAL_SETS if is_drawn else HEATING_SETS
    least_pa = max(heater.static_pa or 0.0, heater.limit_pa if is_drawn else 0.0)
    rules = scene.report.profile_of(heater.name)
    for setting in sets[units]:
        set_pa = parse_measure(setting, PRESSURE, units)
        if rules.highest_below_relief_pa(set_pa) > least_pa and set_pa <= (part.rating_pa or set_pa):
            opens = {"temperature": OPENS_AT[customary(units)]} if is_drawn else {}
            fields: dict[str, object] = {"pressure": setting, **opens}
            yield _fitted_at(scene, heater.name, fields, scene.report.facts.pressure(set_pa))
            return


def _fitted_at(scene: RemedyContext, heater: str, fields: dict[str, object], shown: str) -> Safeguard:
    """A new relief valve, rated for the heater's input where that is known."""
    sort = "temperature and pressure relief valve" if "temperature" in fields else "pressure relief valve"
    rated = "its set not above the heater's rating"
    if "input" in scene.system.written[heater]:
        fields["capacity"] = scene.system.written[heater]["input"]
        rated = f"{rated}, its capacity not below the heater's input"
    return Safeguard(
        f"fit a {sort} of {shown} to the tapping of {heater} (nothing between, {rated})",
        (change_of("set", {"part": heater, "relief": fields}),),
    )


def _is_drawn(scene: RemedyContext, heater: HeaterFacts) -> bool:
    """Whether people draw the water that the heater warms."""
    network = scene.network
    reached = network.reach(scene.zones_of(heater.name), math.inf)
    ends = (End(name, port) for name, part in scene.system.parts.items() for port in part.draws_at())
    return any(network.zoning.zone_of[network.piping.node_of[end]] in reached for end in ends)
