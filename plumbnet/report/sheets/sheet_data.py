"""Calculation sheets to JSON, schema 1: SI units; pressures gauge or absolute as each key or dimension says."""

from collections.abc import Iterable
from dataclasses import asdict

from plumbnet.analysis.sizing_sheet import Content, Section, Sheet, SheetItem, SheetResult
from plumbnet.layout.units import Units
from plumbnet.physics.sizing import Step
from plumbnet.report.formats import Json, in_order
from plumbnet.report.studies import margins_fields
from plumbnet.report.text import CAUTION
from plumbnet.study.margins import Margins


def sheets_json(sheets: Iterable[Sheet], units: Units, margins: Margins | None = None) -> str:
    """The sheets as one JSON document; numbers are SI, sentences in `units`. `margins` are how far it all holds."""
    document = {
        "units": units,
        "sheets": [_sheet(sheet) for sheet in sheets],
        "margins": None if margins is None else margins_fields(margins),
    }
    return in_order(document) + "\n"


def _sheet(sheet: Sheet) -> Json:
    heater = sheet.heater
    return {
        "file": sheet.file,
        "sha256": sheet.sha256,
        "title": sheet.title,
        "scenario": sheet.scenario,
        "rules": sheet.rules,
        "rules_sha256": sheet.rules_sha256,
        "heater": heater.name,
        "kind": heater.kind,
        "line": heater.line,
        "verdict": sheet.verdict.value,
        "method": asdict(sheet.method),
        "inputs": [_item(item) for item in sheet.inputs],
        "heated": [_content(content) for content in sheet.contents],
        "sections": [_section(section) for section in sheet.sections],
        "tank": _outcome(sheet.outcome),
        "at_hand": None if sheet.at_hand is None else asdict(sheet.at_hand),
        "assumptions": list(sheet.assumptions),
        "cautions": [*sheet.cautions, CAUTION],
    }


def _item(item: SheetItem) -> Json:
    return {
        "symbol": item.symbol,
        "name": item.name,
        "value": item.value,
        "dimension": item.dimension,
        "from": item.origin,
    }


def _content(content: Content) -> Json:
    return {
        "name": content.name,
        "volume_m3": content.volume_m3,
        "warmed_by": content.heater,
        "counted_with": content.water,
        "from": content.origin,
    }


def _section(section: Section) -> Json:
    return {
        "title": section.title,
        "items": [_item(item) for item in section.items],
        "steps": [_step(step) for step in section.steps],
    }


def _step(step: Step) -> Json:
    return {
        "symbol": step.symbol,
        "name": step.name,
        "formula": step.formula,
        "numbers": {symbol: asdict(number) for symbol, number in step.numbers.items()},
        "value": step.value,
        "dimension": step.dimension,
        "source": step.source,
    }


def _outcome(outcome: SheetResult) -> Json:
    return {
        "tank_m3": outcome.tank_m3,
        "nominal_m3": outcome.nominal_m3,
        "charge_pa": outcome.charge_pa,
        "at": outcome.at,
        "settled_pa": outcome.settled_pa,
        "refusal": outcome.refusal or None,
        "method_m3": outcome.method_m3,
        "holds_m3": outcome.holds_m3,
        "beside": list(outcome.beside),
    }
