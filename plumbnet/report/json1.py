"""Reports to JSON, schema 1: SI units, gauge pressures at each heater's own height; its keys are a promise."""

import json
from collections.abc import Iterable
from importlib.metadata import version

from plumbnet.analysis.report import Report
from plumbnet.layout.fault import LayoutError
from plumbnet.rules.facts import HeaterFacts, Need, RungFacts
from plumbnet.rules.finding import Finding

SCHEMA = 1

Json = dict[str, object]


def to_json(reports: Iterable[Report], errors: Iterable[Json] = ()) -> str:
    """Reports and the errors of files that could not be read, as one JSON document."""
    document = {
        "plumbnet": version("plumbnet"),
        "schema": SCHEMA,
        "reports": [_report(report) for report in reports],
        "errors": list(errors),
    }
    return json.dumps(document, indent=1, ensure_ascii=True, allow_nan=False)


def layout_errors(error: LayoutError) -> list[Json]:
    """Every fault of a file as JSON."""
    return [
        {"file": error.file, "line": fault.line, "column": fault.column, "text": fault.sentence}
        for fault in error.faults
    ]


def file_error(file: str, text: str) -> Json:
    """A file that could not be opened, as JSON."""
    return {"file": file, "line": 0, "column": 0, "text": text}


def _report(report: Report) -> Json:
    record = report.system.record
    return {
        "file": record.file,
        "sha256": record.sha256,
        "title": report.system.title,
        "rules": report.profile.profile,
        "scenario": report.scenario,
        "heaters": [_heater(heater) for heater in report.heaters],
        "findings": [_finding(finding) for finding in report.findings],
        "assumed": [{"text": text, "parts": list(parts)} for text, parts in report.facts.assumed.items()],
    }


def _heater(heater: HeaterFacts) -> Json:
    return {
        "name": heater.name,
        "kind": heater.kind,
        "line": heater.line,
        "verdict": heater.verdict.value,
        "static_pa": heater.static_pa,
        "limit_pa": heater.limit_pa,
        "limit_by": heater.limit_by,
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
        "short_m3": heater.short_m3,
        "need": None if heater.need is None else _need(heater.need),
        "remedies": [],
    }


def _rung(rung: RungFacts) -> Json:
    return {"outlet": rung.outlet, "kind": rung.kind, "opens_pa": rung.opens_pa, "way": list(rung.way)}


def _need(need: Need) -> Json:
    return {
        "tank_m3": need.tank_m3,
        "nominal_m3": need.nominal_m3,
        "precharge_pa": need.precharge_pa,
        "at": need.at,
    }


def _finding(finding: Finding) -> Json:
    return {
        "name": finding.name,
        "severity": finding.severity.value,
        "parts": list(finding.parts),
        "line": finding.line,
        "clause": finding.clause,
        "verified": finding.verified,
        "text": finding.text,
        "advice": finding.advice,
    }
