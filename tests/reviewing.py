"""Reviews as `plumbnet review --format json` writes them: of a report, or with requirements written for a test."""

import json
from typing import Any

from plumbnet.analysis.report import Report
from plumbnet.report.review.review_data import review_fields
from plumbnet.study.review.review_sheet import review_of


def requirement(name: str, *parts: str, number: int | None = None, answer: str = "broken", **more: object) -> Any:  # noqa: ANN401  # JSON
    """One requirement of a review."""
    return {
        "name": name, "number": number, "clause": "common practice", "clause_state": "common practice", "asks": "",
        "parts": list(parts), "line": 1, "answer": answer, "value": None, "bound": None, "unit": None,
        "text": "it is so.", "advice": "Mend it.", "severity": "error", **more,
    }  # fmt: skip


def review(report: Report, *requirements: object, **more: object) -> Any:  # noqa: ANN401  # JSON
    """A review of the file of a report: of what stands in it, or of what is given."""
    return {
        "plumbnet": "0.1.0",
        "schema": 1,
        "reviews": [
            {
                "file": report.system.record.file,
                "sha256": report.system.record.sha256,
                "title": report.system.title,
                "rules": report.rules.named,
                "job": None,
                "reviewer": "A. Plan-Checker",
                "date": "12 May 2031",
                "requirements": list(requirements) or review_fields(review_of(report))["requirements"],
                "site": [],
                **more,
            }
        ],
        "errors": [],
    }


def written(review: object) -> bytes:
    """The document as a file holds it."""
    return json.dumps(review, indent=1).encode()
