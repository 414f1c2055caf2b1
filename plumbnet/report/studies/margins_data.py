"""Margins as JSON: SI units, each number with its own."""

from collections.abc import Sequence

from plumbnet.layout.units import LENGTH, PRESSURE, TEMPERATURE, VOLUME
from plumbnet.report.formats import Json, in_order
from plumbnet.study.margins import Margin, Margins, Turning

_UNITS = {PRESSURE: "Pa", TEMPERATURE: "K", VOLUME: "m3", LENGTH: "m"}


def margins_json(found: Margins) -> str:
    """One JSON document; ends with a line break."""
    system = found.report.system
    document: dict[str, object] = {
        "file": system.record.file,
        "sha256": system.record.sha256,
        "title": system.title,
        "scenario": found.report.scenario,
        "rules": found.report.rules.named,
        "heater": found.heater,
        **margins_fields(found),
    }
    return in_order(document) + "\n"


def margins_fields(found: Margins) -> Json:
    """The margins, the number of layouts analysed for them, and how far cures hold."""
    return {
        "checks": found.checks,
        "numbers": _numbers(found.numbers),
        "cures": [{"heater": one.heater, "title": one.title, "numbers": _numbers(one.numbers)} for one in found.cures],
    }


def _numbers(margins: Sequence[Margin]) -> list[Json]:
    return [_number(one) for one in margins]


def _number(margin: Margin) -> Json:
    number = margin.number
    return {
        "part": number.part,
        "field": number.field,
        "unit": _UNITS[number.dimension],
        "told": number.told,
        "tried_from": number.lowest,
        "tried_to": number.highest,
        "below": _turning(margin.below),
        "above": _turning(margin.above),
        "accuracy": number.accuracy,
        "within_accuracy": margin.is_within_accuracy,
    }


def _turning(turning: Turning | None) -> Json | None:
    if turning is None:
        return None
    one = turning.outcome
    return {
        "holds_to": turning.holds_to,
        "turns_at": turning.turns_at,
        "heaters": [
            {"name": turn.heater, "before": turn.before.value, "after": turn.after.value} for turn in one.turns
        ],
        "new_errors": [{"name": error.name, "part": error.part} for error in one.errors],
        "gone_errors": [{"name": error.name, "part": error.part} for error in turning.gone],
        "refused": one.refused or None,
        "turns_back": turning.turns_back,
    }
