"""What is said of a layout that was written with a remedy made in it."""

from conftest import layout
from curing import RELIEVED

import plumbnet
from plumbnet.layout.rewriting.rewritten_layout import rewritten
from plumbnet.report.text.applied_report import applied_text
from plumbnet.study.remedies.remedy_search import remedies

SCENARIOS = "scenarios: {cut: {change: [{remove: cv}]}, more: {change: [{remove: tee}]}}\n"


def told(text: str) -> str:
    before = plumbnet.check(plumbnet.read_bytes(text.encode(), file="old.yaml"))
    chosen = next(one for one in remedies(before)["heater"] if any(change.add for change in one.changes))
    after = plumbnet.check(plumbnet.read_bytes(rewritten(before.system, chosen.changes).encode(), file="new.yaml"))
    return applied_text(before, after, chosen, "new.yaml")


def test_remedy_its_outcome_and_the_next_step_are_told() -> None:
    said = told(layout("street -> cv -> tee -> heater -> tap.hot", heater=RELIEVED))
    first, second, *_ = said.splitlines()
    assert first == "new.yaml: old.yaml with this made in it:"
    assert second.startswith("  Fit an expansion tank of ")
    assert "  Then heater is controlled at " in said
    assert "What differs: plumbnet compare old.yaml new.yaml" in said.splitlines()
    assert "No longer to be made" not in said


def test_scenarios_that_are_lost_are_named() -> None:
    text = layout("street -> cv -> tee -> heater -> tap.hot", heater=RELIEVED)
    said = told(f"{text}\n{SCENARIOS}")
    assert '  No longer to be made: the scenario "more"; plumbnet check says why.' in said.splitlines()
