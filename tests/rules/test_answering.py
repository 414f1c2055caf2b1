"""What is asked of a layout, and what check tells of it."""

import pytest
from registering import DRAWN, emptied, facts, on

from plumbnet.rules.answering import findings_of
from plumbnet.rules.finding import Severity
from plumbnet.rules.requirement import Requirement, requirement
from plumbnet.rules.rule_profile import profile


@pytest.fixture
def alone(monkeypatch: pytest.MonkeyPatch) -> dict[str, Requirement]:
    """An empty register in place of the real one."""
    return emptied(monkeypatch)


def test_engine_stamps_name_severity_line_and_clause(alone: dict[str, Requirement]) -> None:
    requirement("tank-cut-off", Severity.ERROR, bad="", good="")(on("heater"))
    (found,) = findings_of(facts(), profile("general"))
    ruling = profile("general").findings["tank-cut-off"]
    assert alone
    assert (found.name, found.severity, found.parts) == ("tank-cut-off", Severity.ERROR, ("heater",))
    assert (found.clause, found.verified) == (ruling.clause, ruling.verified)
    assert found.line == DRAWN.line_of("heater") > 0
    assert (found.text, found.advice) == ("It is so.", "Put it right.")


def test_errors_come_first_then_by_line_then_by_name(alone: dict[str, Requirement]) -> None:
    requirement("unreached-part", Severity.NOTE, bad="", good="")(on("street"))
    requirement("tank-waterlogged", Severity.WARNING, bad="", good="")(on("tee", "cv"))
    requirement("tank-cut-off", Severity.ERROR, bad="", good="")(on("heater", "cv"))
    requirement("relief-missing", Severity.ERROR, bad="", good="")(on("heater"))
    assert len(alone) == 4
    assert [(one.name, one.parts[0]) for one in findings_of(facts(), profile("general"))] == [
        ("tank-cut-off", "cv"),
        ("relief-missing", "heater"),
        ("tank-cut-off", "heater"),
        ("tank-waterlogged", "cv"),
        ("tank-waterlogged", "tee"),
        ("unreached-part", "street"),
    ]
