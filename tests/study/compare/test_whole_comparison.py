"""All that a comparison tells, brought together."""

import pytest
from conftest import layout
from reviewing import review, written

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances
from plumbnet.study.compare.comments_answered import CommentState
from plumbnet.study.compare.review_file import last_review
from plumbnet.study.compare.whole_comparison import comparison

RUNS = "street -> valve -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tank"
RELIEF = "rating: 150 psi, relief: {{pressure: 150 psi, temperature: 210 degF, capacity: {} Btu/h}}"
SMALL = "accept: [{finding: relief-below-input, part: heater/relief, reason: the owner is content}]\n"


def checked(runs: str = RUNS, more: str = "", **parts: str) -> Report:
    return plumbnet.check(plumbnet.read_bytes((layout(runs, **parts) + more).encode(), file="f.yaml"))


BEFORE = checked(heater=RELIEF.format(50_000), tank="volume: 1 gal")


def test_relief_valve_cut_below_the_input_and_accepted_by_the_file_itself_is_worse() -> None:
    after = checked(heater=RELIEF.format(30_000), more=SMALL)
    assert after.is_fine
    found = comparison(BEFORE, after)
    assert found.difference.is_better
    assert (found.is_worse, found.is_better) == (True, False)
    assert [(one.accepted.finding.name, one.is_new) for one in found.self_accepted] == [("relief-below-input", True)]


def test_what_the_file_accepts_leads_though_the_inspector_does_not_let_it_count() -> None:
    after = plumbnet.check(checked(heater=RELIEF.format(30_000), more=SMALL).system, acceptances=OwnAcceptances())
    found = comparison(BEFORE, after)
    assert [(one.accepted.finding.name, one.is_new) for one in found.self_accepted] == [("relief-below-input", True)]
    assert [one.name for one in found.difference.new] == ["relief-below-input"]


def test_renamed_heater_is_the_same_heater_in_all_that_is_told() -> None:
    parts = {"heater": RELIEF.format(50_000), "tank": "volume: 1 gal"}
    runs = RUNS.replace("heater", "heater2").replace("-> cv", "-> cv2")
    found = comparison(checked(**parts), checked(runs, heater2=parts["heater"], tank=parts["tank"]))
    assert not found.difference.differs
    assert [heater.name for heater in found.difference.heaters] == ["heater2"]
    assert (bool(found.revision.parts), bool(found.revision.pipes)) == (False, False)
    assert [(one.before, one.after) for one in found.revision.renamed] == [("cv", "cv2"), ("heater", "heater2")]
    assert found.before.system.parts.keys() != found.told_before.system.parts.keys()


def test_renamed_heater_that_became_worse_is_told_as_worse_and_not_as_new() -> None:
    open_house = checked("street -> tee -> heater -> tap.hot\ntee -> tap.cold", heater=RELIEF.format(50_000))
    closed = checked("street -> cv -> tee -> heater2 -> tap.hot\ntee -> tap.cold", heater2=RELIEF.format(50_000))
    (heater,) = comparison(open_house, closed).difference.heaters
    assert heater.before is not None
    assert heater.after is not None
    assert heater.is_worse


def test_comments_of_a_review_follow_a_renamed_part() -> None:
    runs = RUNS.replace("heater", "heater2")
    after = checked(runs, heater2=RELIEF.format(50_000), tank="volume: 1 gal, precharge: 40 psi")
    asked = last_review(written(review(BEFORE)), BEFORE, file="old.json")
    found = comparison(BEFORE, after, asked)
    assert [(one.number, one.name, one.parts[0], one.state) for one in found.comments] == [
        (1, "tank-too-small", "heater2", CommentState.OPEN),
        (2, "tank-charge-differs", "tank", CommentState.NEW),
    ]


def test_without_a_review_there_are_no_comments() -> None:
    found = comparison(BEFORE, BEFORE)
    assert (found.review, found.comments, found.is_worse) == (None, (), False)
    assert found.told_before is BEFORE


@pytest.mark.parametrize("rules", ["ipc-2021", "general"])
def test_other_rules_are_told(rules: str) -> None:
    after = plumbnet.check(BEFORE.system, rules=rules)
    assert [one.after.profile for one in comparison(BEFORE, after).rules] == ([] if rules == "general" else [rules])
