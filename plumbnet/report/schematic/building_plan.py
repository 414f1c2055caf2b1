"""A report to what a riser diagram is read from: heights as written, equipment, and all that is told of a part."""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from plumbnet.analysis import Report
from plumbnet.drawing.items import BuildingFacts, PartFacts
from plumbnet.layout.model import MIXED, Boosting, Part, Reducing
from plumbnet.layout.units import PASCAL_PER_METRE
from plumbnet.report.schematic.schematic_remarks import shadings, stop_remarks, ways

_DIGITS = -2
"""Pressures at datum are told apart to the hundred pascal."""


def building_facts(report: Report, *, is_wanted: bool | None = None) -> BuildingFacts:
    """The facts of every part and pipe of a report.

    `is_wanted`: a riser diagram is asked for, or none; None where the building decides.
    """
    told = _told(report)
    limits = {heater.limit_at for heater in report.heaters}
    parts = {
        name: PartFacts(
            repr((part.kind, _fields(part), part.drawn_as(), told.get(name, ()))),
            part.elevation_m if "elevation" in report.system.written.get(name, {}) else None,
            is_equipment=_is_equipment(part),
            is_use=bool(part.draws_at()),
            is_source=part.source() is not None,
            is_head=part.source() is not None or part.heat() is not None,
            is_divided=bool(part.draws_at()) or MIXED in part.port_names(),
            is_limit=name in limits,
        )
        for name, part in report.system.parts.items()
    }
    return BuildingFacts(parts, tuple(str(pipe.tube) for pipe in report.system.pipes), report.facts.units, is_wanted)


def _fields(part: Part) -> list[tuple[str, object]]:
    return sorted(part.model_dump(exclude={"elevation_m", "ref"}).items())


def _is_equipment(part: Part) -> bool:
    """Whether it supplies, heats, stores, drives, reduces or takes up water."""
    works = part.source() or part.heat() or part.cushion() or part.driven() or part.is_vessel
    return bool(works) or any(isinstance(passage, Boosting | Reducing) for passage in part.passages())


def _told(report: Report) -> Mapping[str, list[str]]:
    """All that the report tells of each part, beyond its fields, so that no two of other fate are drawn as one."""
    found: dict[str, list[str]] = defaultdict(list)
    for name, words in _findings(report):
        found[name].append(words)
    for name in sorted(stop_remarks(report)):
        found[name].append("stops")
    for way in ways(report):
        for name in dict.fromkeys(way):
            found[name].append("way out")
    return found


def _findings(report: Report) -> Iterator[tuple[str, str]]:
    for number, shading in enumerate(shadings(report)):
        for end in sorted(shading.ports):
            yield end.part, f"{end.port} in zone {number}"
    for finding in report.findings:
        for name in dict.fromkeys(finding.parts):
            yield name, finding.name
    for accepted in report.accepted:
        for name in dict.fromkeys(accepted.finding.parts):
            yield name, f"accepted {accepted.finding.name}"
    for heater in report.heaters:
        yield heater.name, heater.verdict.value
    for tap in report.facts.taps:
        if tap.static_pa is not None:
            at_datum_pa = tap.static_pa + PASCAL_PER_METRE * report.system.parts[tap.name].elevation_m
            yield tap.name, f"stands at {round(at_datum_pa, _DIGITS)} Pa"
