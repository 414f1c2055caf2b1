"""What-ifs as JSON: the report as it is, and each what-if with its own report and what differs."""

import json
from collections.abc import Iterable, Sequence

from plumbnet.analysis.report import Report
from plumbnet.report import json1
from plumbnet.report.record import program_version
from plumbnet.rules.finding import Finding
from plumbnet.study.whatif import WhatIf
from plumbnet.study.written import change_fields


def whatifs_json(found: Sequence[WhatIf]) -> str:
    """One JSON document; the reports in it are those of the JSON report, SI and gauge at each heater. No line break."""
    reports = _reports([found[0].before, *(one.after for one in found)])
    document = {
        "plumbnet": program_version(),
        "schema": json1.SCHEMA,
        "before": reports[0],
        "whatifs": [_whatif(one, after) for one, after in zip(found, reports[1:], strict=True)],
    }
    return json.dumps(document, indent=1, ensure_ascii=True, allow_nan=False)


def _reports(reports: Sequence[Report]) -> list[object]:
    """Reports as the JSON report has them, read back, so that the two never differ."""
    return list(json.loads(json1.to_json(reports))["reports"])


def _whatif(one: WhatIf, after: object) -> dict[str, object]:
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
        "after": after,
    }


def _named(found: Iterable[Finding]) -> list[dict[str, object]]:
    return [{"name": one.name, "severity": one.severity.value, "parts": list(one.parts)} for one in found]
