"""Reports to JSON, schema 1, in one module: SI units, gauge pressures at each heater's height; keys are a promise."""

import json
import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass, field

from plumbnet.analysis import Report
from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Circuit
from plumbnet.layout.yaml import Fault
from plumbnet.physics.vessels import Bracket
from plumbnet.report.formats.acceptance_fields import accepted_fields, idle_fields, own_fields
from plumbnet.report.formats.part_lists import Json, PartLists
from plumbnet.report.output import (
    Array,
    FileOutcome,
    FilePiece,
    Noted,
    Unread,
    array,
    closed_json,
    fragment,
    member,
    opened,
    program_version,
)
from plumbnet.rules import Acceptor
from plumbnet.rules.facts import HeaterFacts, LockedFacts, Need, PlaceFacts, RungFacts
from plumbnet.study.remedies import Checked, Found, Remedy, RemedyList, left_out, remedy_lists

_SCHEMA = 1
_DEPTH = 2  # of a report in the document


def in_order(fields: Mapping[str, object]) -> str:
    """One JSON document, plain ASCII, with the program and the schema before its own fields. No line break."""
    return json.dumps({**_head(), **fields}, indent=1, ensure_ascii=True, allow_nan=False)


@dataclass(frozen=True, slots=True)
class JsonWriter:
    """Reports as one JSON document, the errors of files that could not be read at its end."""

    is_for_people: bool = False
    shows_remedies: bool = True

    def answered(self, checked: Checked) -> FilePiece:
        """The report, with its remedies."""
        return FilePiece(answers=(fragment(report_fields(checked.report, checked.remedies), _DEPTH),))

    def refused(self, unread: Unread) -> FilePiece:
        """A row for every mistake."""
        return FilePiece(errors=tuple(fragment(row, _DEPTH) for row in error_rows(unread)))

    def noted(self, noted: Noted) -> FilePiece:
        """A row for every sentence."""
        return FilePiece(notes=tuple(fragment(row, _DEPTH) for row in note_rows(noted)))

    def document(self) -> "Reports":
        """The same bytes as `in_order` makes of the whole, and a line break."""
        return Reports()


@dataclass(slots=True)
class Reports:
    """The document; errors and notes are kept for its end."""

    reports: Array = field(default_factory=lambda: Array(_DEPTH))
    errors: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def opening(self) -> str:
        """The program, the schema, and where the reports begin."""
        return opened(_head()) + member("reports", 1)

    def add(self, outcome: FileOutcome) -> str:
        """The report on a file."""
        self.errors += outcome.piece.errors
        self.notes += outcome.piece.notes
        return self.reports.add(outcome.piece.answers)

    def closing(self) -> str:
        """The errors, and notes on files that are no layouts."""
        errors = member("errors", 1) + array(self.errors, _DEPTH)
        return self.reports.end() + errors + member("notes", 1) + array(self.notes, _DEPTH) + closed_json() + "\n"


def _head() -> Json:
    return {"plumbnet": program_version(), "schema": _SCHEMA}


def note_rows(noted: Noted) -> list[Json]:
    """What a file that is no layout adds to a document: a row for everything that is noted of it."""
    return [{**_fault(noted.file, fault), "sort": noted.sort} for fault in noted.faults]


def error_rows(unread: Unread) -> list[Json]:
    """What a file that could not be understood adds to a document: a row for every mistake."""
    return [_fault(unread.file, fault) for fault in unread.faults]


def _fault(file: str, fault: Fault) -> Json:
    return {"file": file, "line": fault.line, "column": fault.column, "text": fault.sentence}


def report_fields(report: Report, found: Found | None = None) -> Json:
    """A report as it stands in the document; `found` None where remedies were not looked for."""
    record, lists = report.system.record, PartLists()
    fields = {
        "file": record.file,
        "sha256": record.sha256,
        "title": report.system.title,
        "rules": report.rules.named,
        "rules_sha256": report.rules.sha256,
        "rules_from": report.rules.named_by,
        **_circuits(report),
        "scenario": report.scenario,
        "supplies": list(_supplies(report)),
        "heaters": [
            lists.in_short(_heater(heater, [] if found is None else found.get(heater.name, ())))
            for heater in report.heaters
        ],
        "remedies_searched": found is not None,
        "remedies_left_out": list(left_out(found)),
        "remedy_lists": [lists.in_short(_remedy_list(one)) for one in remedy_lists(report.heaters, found or {})],
        "findings": [lists.in_short(asdict(finding)) for finding in report.findings],
        "accepted": [accepted_fields(one) for one in report.accepted],
        "accepted_in_vain": [{**accepted_fields(one), "why": one.why} for one in report.claimed],
        "accepted_but_not_found": [idle_fields(one) for one in report.idle],
        "accepted_by": {by.value: sum(one.by is by for one in report.accepted) for by in Acceptor},
        "own_acceptances": own_fields(report.own_acceptances),
        "assumed": [{"text": text, "parts": list(parts)} for text, parts in report.facts.assumed.items()],
    }
    return fields | lists.fields


def _circuits(report: Report) -> Json:
    """The parts of each circuit, where each has rules of its own."""
    if report.rules.is_one:
        return {}
    of = {name: report.facts.circuit_of(name) for name in report.system.parts}
    return {"circuits": {each.value: [name for name in of if of[name] is each] for each in Circuit}}


def _supplies(report: Report) -> Iterator[Json]:
    """What each supply gives, gauge at its own height: the highest, which is judged by, and what it is besides."""
    for name, part in report.system.parts.items():
        source = part.source()
        if source is not None:
            usual_pa, least_pa = source.usual_pa, source.least_pa
            yield {
                "name": name,
                "pressure_pa": source.pressure_pa,
                "usual_pa": source.pressure_pa if usual_pa is None else usual_pa,
                "least_pa": source.cut_in_pa if least_pa is None else least_pa,
                "cold_k": source.temperature_k,
            }


def _heater(heater: HeaterFacts, remedies: Iterable[Remedy]) -> Json:
    return {
        "name": heater.name,
        "kind": heater.kind,
        "line": heater.line,
        "verdict": heater.verdict.value,
        "static_pa": heater.static_pa,
        "usual_pa": heater.usual_pa,
        "limit_pa": heater.limit_pa,
        "limit_by": heater.limit_by,
        "limit_at": heater.limit_at or None,
        "limit_way": list(heater.limit_way),
        "cold_k": heater.cold_k,
        "hot_k": heater.hot_k,
        "heated_volume_m3": heater.heated_volume_m3,
        "expansion_m3": heater.expansion_m3,
        "shared_expansion_m3": heater.shared_expansion_m3,
        "shares_with": list(heater.shares_with),
        "ladder": [_rung(rung) for rung in heater.ladder],
        "stopped_by": [list(names) for names in heater.stopped_by.sets],
        "stopped_by_more": heater.stopped_by.more,
        "closes_if_shut": [list(names) for names in heater.closes_if_shut.sets],
        "closes_if_shut_complete": heater.closes_if_shut.complete,
        "loops": [list(parts) for parts in heater.loops],
        "settled_pa": heater.settled_pa,
        "settled_least_pa": heater.settled_least_pa,
        "history": [list(names) for names in heater.history],
        "broken": [_place(place) for place in heater.broken],
        "broken_left_out": heater.broken_left_out,
        "short_m3": heater.short_m3,
        "need": None if heater.need is None else _need(heater.need),
        "locked": None if heater.locked is None else _locked(heater.locked),
        "remedies": [_remedy(remedy) for remedy in remedies],
    }


def _locked(locked: LockedFacts) -> Json:
    """Each pair from rigid walls to typical ones."""
    return {
        "outlet": locked.outlet,
        "opens_pa": locked.opens_pa,
        "rise_k": _pair(locked.rise_k),
        "firing_s": _pair(locked.firing_s),
        "discharged_m3": _pair(locked.discharged_m3),
    }


def _pair(bracket: Bracket | None) -> list[float | None] | None:
    if bracket is None:
        return None
    return [_finite(end) for end in (bracket.rigid, bracket.walls)]


def _remedy(remedy: Remedy) -> Json:
    return {
        "change": [change_fields(change) for change in remedy.changes],
        "verdict": remedy.verdict.value,
        "title": remedy.title,
        "effort": remedy.effort.name.lower().replace("_", "-"),
        "settled_pa": remedy.settled_pa,
        "cures": list(remedy.cures),
        "why": remedy.why or None,
    }


def _remedy_list(each: RemedyList) -> Json:
    """The remedies of heaters that share their water."""
    return {"heaters": list(each.heaters), "remedies": [_remedy(remedy) for remedy in each.remedies]}


def _place(place: PlaceFacts) -> Json:
    """A place above its limit, gauge at its own height; null where nothing holds it."""
    return {
        "part": place.part,
        "limit_pa": place.limit_pa,
        "highest_pa": _finite(place.highest_pa),
        "reached_pa": _finite(place.reached_pa),
        "way": list(place.way),
        "history": [list(names) for names in place.history],
    }


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _rung(rung: RungFacts) -> Json:
    return {"outlet": rung.outlet, "kind": rung.kind, "opens_pa": rung.opens_pa, "way": list(rung.way)}


def _need(need: Need) -> Json:
    return {
        "tank_m3": need.tank_m3,
        "nominal_m3": need.nominal_m3,
        "precharge_pa": need.precharge_pa,
        "at": need.at,
        "why": need.why or None,
        "serves": list(need.serves),
        "asked_m3": need.asked_m3,
        "beside": list(need.beside),
        "recharge": [{"tank": one.tank, "precharge_pa": one.right_pa} for one in need.recharge],
        "is_tight": need.is_tight,
        "is_left_out": need.is_left_out,
    }
