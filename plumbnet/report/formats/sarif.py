"""Findings to SARIF 2.1.0, which code hosts and editors show at the line of the file.

Source: OASIS Standard, Static Analysis Results Interchange Format (SARIF) Version 2.1.0 Plus Errata 01 (2023).
"""

import hashlib
import inspect
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final

from plumbnet.analysis import Report
from plumbnet.layout.model import System
from plumbnet.layout.yaml import Fault, visible
from plumbnet.report.formats.part_lists import Json
from plumbnet.report.formats.sarif_places import BASE, location_of, place_of
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
from plumbnet.report.text import CAUTION, clause_in_words
from plumbnet.rules import REQUIREMENTS, Accepted, Acceptor, Claimed, Finding, Requirement, Severity
from plumbnet.study.remedies import Checked

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
NOT_UNDERSTOOD = "layout-not-understood"
"""Rule under which the mistakes of a file that is no layout are reported."""
FINGERPRINT = "finding/v1"
"""Name of the fingerprint by which a finding is known again after lines have moved."""
_DEPTH = 4  # of a result in the document
_LEVELS: Final = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "note"}


@dataclass(frozen=True)
class SarifWriter:
    """One run with every finding of every file; what is accepted is there too, suppressed with its reason."""

    is_for_people: bool = False
    shows_remedies: bool = False

    def answered(self, checked: Checked) -> FilePiece:
        """A result for every finding and a record of the file."""
        return FilePiece(
            answers=tuple(fragment(result, _DEPTH) for result in self._results(checked.report)),
            records=(fragment(_artifact(checked.report), _DEPTH),),
        )

    def refused(self, unread: Unread) -> FilePiece:
        """A result for every mistake that has a line, and one notification."""
        placed = [fault for fault in unread.faults if fault.line]
        return FilePiece(
            answers=tuple(fragment(self._mistake(unread.file, fault), _DEPTH) for fault in placed),
            errors=(fragment(_notification(unread), _DEPTH + 2),),
        )

    def noted(self, noted: Noted) -> FilePiece:
        """A notification for every sentence."""
        return FilePiece(notes=tuple(fragment(_note(noted, fault), _DEPTH + 2) for fault in noted.faults))

    def document(self) -> "SarifLog":
        """One log with one run, and a line break."""
        return SarifLog()

    @cached_property
    def _index(self) -> dict[str, int]:
        return {name: index for index, name in enumerate(_rule_names())}

    def _results(self, report: Report) -> Iterator[Json]:
        """What stands and what is accepted, each with its fingerprint; of two alike the second is known as such."""
        seen: dict[str, int] = {}
        claims = {one.finding: one for one in report.claimed}
        own = [(finding, claims.get(finding)) for finding in report.findings]
        for finding, word in [*own, *((one.finding, one) for one in report.accepted)]:
            trace = "\0".join((finding.name, *finding.parts))
            seen[trace] = seen.get(trace, 0) + 1
            digest = hashlib.sha256(f"{trace}\0{seen[trace]}".encode()).hexdigest()
            yield self._result(report, finding, word, digest)

    def _result(self, report: Report, finding: Finding, word: Accepted | Claimed | None, digest: str) -> Json:
        place = place_of(report.system.record.file, finding.line)
        names = [{"name": name, "kind": "element"} for name in finding.parts]
        return {
            "ruleId": finding.name,
            "ruleIndex": self._index[finding.name],
            "level": _LEVELS[finding.severity],
            "message": _message(f"{finding.text} {finding.advice} {clause_in_words(finding)}"),
            "locations": [{**place, "logicalLocations": names}],
            **_asked_for(report.system, finding.parts[0]),
            "partialFingerprints": {FINGERPRINT: digest},
            "suppressions": [] if word is None else [_suppression(report.system.record.file, word)],
            "properties": {
                "clause": finding.clause,
                "clauseVerified": finding.verified,
                "parts": list(finding.parts),
                "rules": report.profile_of(finding.parts[0]).profile,
            },
        }

    def _mistake(self, file: str, fault: Fault) -> Json:
        return {
            "ruleId": NOT_UNDERSTOOD,
            "ruleIndex": self._index[NOT_UNDERSTOOD],
            "level": "error",
            "message": _message(fault.sentence),
            "locations": [place_of(file, fault.line, fault.column, fault.width)],
            "suppressions": [],
        }


@dataclass(slots=True)
class SarifLog:
    """The document; records and errors are kept for its end."""

    results: Array = field(default_factory=lambda: Array(_DEPTH))
    records: dict[str, None] = field(default_factory=dict)
    """One file given twice is one record."""
    errors: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def opening(self) -> str:
        """The run, and where its results begin."""
        run = {"tool": {"driver": _driver()}, "columnKind": "unicodeCodePoints", "originalUriBaseIds": _BASES}
        log = opened({"$schema": SCHEMA, "version": "2.1.0"})
        return log + member("runs", 1) + "[\n  " + opened(run, 2) + member("results", 3)

    def add(self, outcome: FileOutcome) -> str:
        """The results of a file."""
        self.records |= dict.fromkeys(outcome.piece.records)
        self.errors += outcome.piece.errors
        self.notes += outcome.piece.notes
        return self.results.add(outcome.piece.answers)

    def closing(self) -> str:
        """The records and the errors."""
        return "".join(
            [
                self.results.end() + member("artifacts", 3) + array(self.records, _DEPTH),
                member("invocations", 3) + "[\n    " + opened({"executionSuccessful": not self.errors}, 4),
                member("toolExecutionNotifications", 5) + array([*self.errors, *self.notes], _DEPTH + 2),
                closed_json(4) + "\n   ]" + closed_json(2) + "\n ]" + closed_json() + "\n",
            ]
        )


_BASES: Final[Json] = {BASE: {"description": {"text": "The folder in which the program was run."}}}


def _driver() -> Json:
    number = program_version()
    return {"name": "plumbnet", "version": number, "semanticVersion": number, "rules": [_RULE, *map(_rule, _known())]}


def _known() -> list[Requirement]:
    return [REQUIREMENTS[name] for name in sorted(REQUIREMENTS)]


def _rule_names() -> list[str]:
    return [NOT_UNDERSTOOD, *(rule.name for rule in _known())]


_RULE: Final[Json] = {
    "id": NOT_UNDERSTOOD,
    "shortDescription": {"text": "The file is no layout that can be read."},
    "help": {"text": "Nothing in this file was checked. Put the mistake right and check it again."},
    "defaultConfiguration": {"level": "error"},
}


def _rule(rule: Requirement) -> Json:
    """A rule with its help: what is found, why it matters, what to do."""
    about = inspect.cleandoc(rule.about)
    first, _, rest = about.partition("\n\n")
    return {
        "id": rule.name,
        "shortDescription": _message(" ".join(first.split())),
        "fullDescription": _message(" ".join(about.split())),
        "help": _message(f"{' '.join((rest or first).split())} {CAUTION}"),
        "defaultConfiguration": {"level": _LEVELS[rule.severity]},
    }


def _artifact(report: Report) -> Json:
    """The record of a file: what was read, under which rules, and what was taken where it says nothing."""
    record = report.system.record
    return {
        "location": location_of(record.file),
        "roles": ["analysisTarget"],
        "hashes": {"sha-256": record.sha256},
        "properties": {
            "title": visible(report.system.title),
            "rules": report.rules.named,
            "rulesSha256": report.rules.sha256,
            "rulesFrom": report.rules.named_by,
            "assumed": [{"text": text, "parts": list(parts)} for text, parts in report.facts.assumed.items()],
        },
    }


def _notification(unread: Unread) -> Json:
    """That a file or scenarios of it were not checked; the first mistake says why, others stand among the results."""
    first, *others = unread.faults
    more = f" (and {len(others)} more)" if others else ""
    what = "has scenarios that were" if unread.is_of_scenarios else "was"
    return {
        "level": "error",
        "message": _message(f"{unread.file} {what} not checked: {first.sentence}{more}"),
        "locations": [place_of(unread.file, 0)],
        "associatedRule": {"id": NOT_UNDERSTOOD, "index": 0},
    }


def _note(noted: Noted, fault: Fault) -> Json:
    """What is to be known of a file that is no layout."""
    return {
        "level": "note",
        "message": _message(f"{noted.file}: {noted.sort}: {fault.sentence}"),
        "locations": [place_of(noted.file, fault.line, fault.column, fault.width)],
        "properties": {"sort": noted.sort},
    }


def _asked_for(system: System, part: str) -> Json:
    """Where the instance of an assembly was asked for that a part is in, as a related place; nothing outside any."""
    around = system.instance_around(part)
    if around is None:
        return {}
    place = place_of(system.record.file, system.assembled[around].line)
    return {"relatedLocations": [{**place, "message": _message(f"{around} is asked for here")}]}


def _suppression(file: str, word: Accepted | Claimed) -> Json:
    """Who accepts a result, and whether that suppresses it; one that does not is under review, or rejected (3.35.3)."""
    return {
        "kind": "inSource" if word.by is Acceptor.APPLICANT else "external",
        "status": _status_of(word),
        "justification": visible(word.reason),
        "location": place_of(word.file or file, word.line),
        "properties": {"by": word.by.value, **({"why": word.why} if isinstance(word, Claimed) else {})},
    }


def _status_of(word: Accepted | Claimed) -> str:
    if isinstance(word, Accepted):
        return "accepted"
    return "rejected" if word.is_refused else "underReview"


def _message(text: str) -> Json:
    """A plain text, with nothing in it that SARIF takes for a placeholder (3.11.5) or for a link (3.11.6)."""
    plain = visible(text).replace("{", "{{").replace("}", "}}").replace("](", "] (")
    return {"text": plain}
