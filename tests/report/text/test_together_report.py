"""Remedies made together, in sentences."""

from dataclasses import replace

from curing import RELIEVED, house

import plumbnet
from plumbnet.report.text.together_report import chosen_in_words, outcomes_in_words
from plumbnet.study.dossier.whole_cure import CuredWhole, cured_whole
from plumbnet.study.remedies.remedy_search import remedies

APART = "street -> cv -> tee -> heater -> tap.hot\nstreet -> cv2 -> tee2 -> heater2 -> tap2.hot"


def whole() -> CuredWhole:
    report = plumbnet.check(house(APART, heater2=RELIEVED))
    found = cured_whole(report, remedies(report))
    assert found is not None
    return found


def test_what_is_done_and_what_becomes_of_each_heater_is_told() -> None:
    assert [title.split(",")[0] for title in chosen_in_words(whole())] == ["Fit an expansion tank of 5 gal"] * 2
    then, swept = outcomes_in_words(whole())
    assert then.startswith(
        "Then heater is controlled at 75.1 psi when all is hot, and heater-tank opens first, at 60 psi; "
    )
    assert "heater2 is controlled at 75.1 psi" in then
    assert swept.startswith("Of ")
    assert " single events " in swept


def test_who_is_left_in_trouble_is_told() -> None:
    left = replace(whole(), together=replace(whole().together, left=("heater2",)), swept=None)
    assert list(outcomes_in_words(left))[1:] == ["It leaves heater2 in trouble."]
