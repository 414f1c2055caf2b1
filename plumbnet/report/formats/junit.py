"""Reports to JUnit XML, the form in which build servers read test results: a suite to a file, a case to a heater.

There is no standard; elements and attributes are those that readers of it agree on (common practice).
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from plumbnet.analysis import Report
from plumbnet.layout.yaml import visible
from plumbnet.report.output import FilePiece, Listing, Noted, Unread, program_version
from plumbnet.report.prose import accepted_in_words, claim_in_words, silenced_in_words
from plumbnet.report.text import clause_in_words
from plumbnet.rules import Accepted, Acceptor, Claimed, Finding, Severity, rules_in_words
from plumbnet.study.remedies import Checked

OTHER = "everything else"
"""Name of the case for findings that no heater leads."""
_COUNTED = (
    ("tests", "testcase"),
    ("failures", "testcase/failure"),
    ("errors", "testcase/error"),
    ("skipped", "testcase/skipped"),
)
LAYOUT = "layout"
"""Name of the case of a file that could not be understood."""
SCENARIOS = "scenarios"
"""Name of the case of scenarios that could not be."""


@dataclass(frozen=True, slots=True)
class JunitWriter:
    """A suite to a file; a case fails where a finding of one of the `failing` severities stands."""

    failing: frozenset[Severity] = frozenset({Severity.ERROR})
    is_for_people: bool = False
    shows_remedies: bool = False

    def answered(self, checked: Checked) -> FilePiece:
        """A suite with a case for every heater, and one for what no heater leads."""
        report, suite = checked.report, _suite(checked.file)
        properties = SubElement(suite, "properties")
        for name, value in _properties(report):
            SubElement(properties, "property", name=name, value=visible(value))
        heaters = {heater.name: f"{heater.name}: {heater.verdict.value}" for heater in report.heaters}
        for name, verdict in heaters.items():
            self._case(suite, report, name, {name}, [verdict])
        told = (*report.findings, *(one.finding for one in report.accepted))
        self._case(suite, report, OTHER, {one.parts[0] for one in told} - heaters.keys(), [])
        return FilePiece(answers=(_text(suite),))

    def refused(self, unread: Unread) -> FilePiece:
        """A suite with a single case that could not be run."""
        suite = _suite(unread.file)
        case = SubElement(
            suite, "testcase", classname=visible(unread.file), name=SCENARIOS if unread.is_of_scenarios else LAYOUT
        )
        error = SubElement(case, "error", type="not-understood", message=visible(unread.faults[0].sentence))
        error.text = "\n".join(map(visible, unread.words.split("\n")))
        return FilePiece(answers=(_text(suite),))

    def noted(self, noted: Noted) -> FilePiece:
        """A suite with a single case, which is skipped."""
        suite = _suite(noted.file)
        case = SubElement(suite, "testcase", classname=visible(noted.file), name=noted.sort)
        SubElement(case, "skipped", message=visible(noted.faults[0].sentence)).text = "\n".join(noted.lines)
        return FilePiece(answers=(_text(suite),))

    def document(self) -> Listing:
        """All suites; ends with a line break."""
        head = f'<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="plumbnet {program_version()}">\n'
        return Listing(head, "</testsuites>\n")

    def _case(self, suite: Element, report: Report, name: str, leading: set[str], notes: Sequence[str]) -> None:
        """A case for the findings that some parts lead: failed, or skipped where what would fail it is accepted."""
        case = SubElement(suite, "testcase", classname=suite.attrib["name"], name=visible(name))
        findings = [one for one in report.findings if one.parts[0] in leading]
        accepted = [one for one in report.accepted if one.finding.parts[0] in leading]
        claims = {one.finding: one for one in report.claimed}
        failing = [one for one in findings if one.severity in self.failing]
        silenced = [one for one in accepted if one.finding.severity in self.failing]
        if failing:
            failure = SubElement(case, "failure", type=failing[0].name, message=visible(failing[0].text))
            failure.text = "\n".join(_lines(failing, claims))
        elif silenced:
            SubElement(case, "skipped", message=visible(silenced_in_words(silenced)))
        told = [*notes, *map(_accepted, accepted), *_lines([one for one in findings if one not in failing], claims)]
        if told:
            SubElement(case, "system-out").text = "\n".join(map(visible, told))


def _suite(file: str) -> Element:
    return Element("testsuite", name=visible(file))


def _text(suite: Element) -> str:
    """The suite, its cases counted, as plain ASCII, which is right whatever the encoding."""
    for attribute, path in _COUNTED:
        suite.set(attribute, str(len(suite.findall(path))))
    indent(suite, " ", level=1)
    plain: bytes = tostring(suite, encoding="us-ascii", xml_declaration=False)
    return f" {plain.decode('ascii')}\n"


def _properties(report: Report) -> Iterator[tuple[str, str]]:
    """The record: what was read, with what, under which rules, and what was taken where the file says nothing."""
    yield "plumbnet", program_version()
    yield "title", report.system.title
    yield "sha256", report.system.record.sha256
    yield "rules", rules_in_words(report.rules.named)
    yield "rules_sha256", rules_in_words(report.rules.sha256)
    yield "rules_from", rules_in_words(report.rules.named_by)
    if report.own_acceptances is not None:
        yield "own_acceptances", report.own_acceptances.file or "none"
        yield "own_acceptances_sha256", report.own_acceptances.sha256
    for by in Acceptor:
        if any(one.by is by for one in report.accepted):
            yield f"accepted_by_{by.value}", silenced_in_words(one for one in report.accepted if one.by is by)
    for text, parts in report.facts.assumed.items():
        yield "assumed", f"{text}: {', '.join(parts)}"


def _lines(findings: Iterable[Finding], claims: Mapping[Finding, Claimed]) -> Iterator[str]:
    for one in findings:
        place = f", line {one.line}" if one.line else ""
        yield visible(f"{one.severity.value}: {one.name}{place}: {one.text} {one.advice} {clause_in_words(one)}")
        if one in claims:
            yield visible(claim_in_words(claims[one]))


def _accepted(one: Accepted) -> str:
    return f"{accepted_in_words(one)}: {one.finding.name}: {one.finding.text} Reason: {one.reason}"
