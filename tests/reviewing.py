"""Reviews as `plumbnet review --format json` writes them, made from a report."""

import json
from typing import Any

from plumbnet.analysis.report import Report
from plumbnet.rules.answer import AnswerWord
from plumbnet.rules.finding import answers_of

OPEN = (AnswerWord.BROKEN, AnswerWord.UNTOLD)


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
                "rules": report.profile.profile,
                "job": None,
                "reviewer": "A. Plan-Checker",
                "date": "12 May 2031",
                "requirements": list(requirements) or list(answered(report)),
                "site": [],
                **more,
            }
        ],
        "errors": [],
    }


def answered(report: Report) -> Any:  # noqa: ANN401  # JSON
    """All that the requirements answer, what is broken or cannot be told with a number."""
    number = 0
    for one in answers_of(report.facts, report.profile):
        number += one.word in OPEN
        yield requirement(
            one.rule.name, *one.parts, number=number if one.word in OPEN else None, answer=one.word.value, text=one.text
        )


def written(review: object) -> bytes:
    """The document as a file holds it."""
    return json.dumps(review, indent=1).encode()
