"""A report to the words that stand beside each part: its name, its settings, the pressure at which it opens."""

import math
from collections.abc import Iterator, Mapping

from plumbnet.analysis import Report
from plumbnet.drawing import name_lines
from plumbnet.layout.model import Boosting, Part, Reducing, Role
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.layout.units import VOLUME, show
from plumbnet.rules import comes_to
from plumbnet.rules.facts import Facts, OutletFacts


def notes(report: Report) -> Mapping[str, tuple[str, ...]]:
    """The lines beside each part, its name first; pressures are gauge, at the part itself."""
    outlets, limits = {one.name: one for one in report.facts.outlets}, _limits_in_words(report.facts)
    found: dict[str, tuple[str, ...]] = {}
    for name, part in report.system.parts.items():
        lines = [*name_lines(name), *_settings(part, report.facts)]
        if name in outlets:
            lines.append(_outlet_in_words(outlets[name], report.facts))
        lines += limits.get(name, ())
        found[name] = tuple(lines)
    return found


def _limits_in_words(facts: Facts) -> Mapping[str, tuple[str, ...]]:
    """The limit beside the part that sets that of a heater in trouble, and what comes above it there."""
    found: dict[str, tuple[str, ...]] = {}
    for heater in facts.heaters:
        if heater.limit_own_pa is not None and heater.broken:
            found[heater.limit_at] = (f"limit {facts.pressure(heater.limit_own_pa)}",)
    for place in (place for heater in facts.heaters for place in heater.broken if place.highest_pa < math.inf):
        comes = comes_to(facts, place.highest_pa, place.reached_pa)
        found[place.part] = (f"limit {facts.pressure(place.limit_pa)}, comes to {comes}",)
    return found


def _outlet_in_words(outlet: OutletFacts, facts: Facts) -> str:
    if outlet.role is Role.STREET:
        return facts.pressure(outlet.opens_pa)
    if outlet.role is Role.AIR:
        return "open to the air"
    return f"{'from' if outlet.role is Role.TANK else 'opens at'} {facts.pressure(outlet.opens_pa)}"


def _settings(part: Part, facts: Facts) -> Iterator[str]:
    for passage in part.passages():
        if isinstance(passage, Reducing):
            yield f"set {facts.pressure(passage.set_pa)}"
        elif isinstance(passage, Boosting):
            yield f"adds {facts.pressure(passage.rise_pa)}"
    if isinstance(part, FillingLoop):
        yield f"fills to {facts.pressure(part.fill_pa)}"
    if part.is_out_of_service():
        yield "out of service"
    cushion = part.cushion()
    if cushion is not None:
        yield show(cushion.volume_m3, VOLUME, facts.units)
