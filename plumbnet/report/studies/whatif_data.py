"""What-ifs as JSON: the report as it is, and each what-if with its own report and what differs."""

from collections.abc import Iterable, Sequence

from plumbnet.layout.edits import change_fields
from plumbnet.report.formats import in_order, report_fields
from plumbnet.rules import Finding
from plumbnet.study.whatif import WhatIf


def whatifs_json(found: Sequence[WhatIf]) -> str:
    """One JSON document; the reports in it are those of the JSON report, SI and gauge at each heater. No line break."""
    document = {"before": report_fields(found[0].before), "whatifs": [_whatif(one) for one in found]}
    return in_order(document)


def _whatif(one: WhatIf) -> dict[str, object]:
    heaters = one.difference.heaters
    return {
        "scenario": one.scenario,
        "note": one.note,
        "change": [change_fields(change) for change in one.changes],
        "is_worse": one.difference.is_worse,
        "is_better": one.difference.is_better,
        "worse": [heater.name for heater in heaters if heater.is_worse],
        "better": [heater.name for heater in heaters if heater.is_better],
        "different": [heater.name for heater in heaters if heater.differs],
        "new_findings": _named(one.difference.new),
        "gone_findings": _named(one.difference.gone),
        "after": report_fields(one.after),
    }


def _named(found: Iterable[Finding]) -> list[dict[str, object]]:
    return [{"name": one.name, "severity": one.severity.value, "parts": list(one.parts)} for one in found]
