"""The chosen remedies together, with the sweep of the layout then."""

from curing import RELIEVED, house

import plumbnet
from plumbnet.study.dossier.whole_cure import CuredWhole, cured_whole
from plumbnet.study.remedies.remedy_search import remedies

APART = "street -> cv -> tee -> heater -> tap.hot\nstreet -> cv2 -> tee2 -> heater2 -> tap2.hot"


def whole(runs: str) -> CuredWhole | None:
    report = plumbnet.check(house(runs, heater2=RELIEVED))
    return cured_whole(report, remedies(report))


def test_two_cures_are_made_together_and_swept() -> None:
    found = whole(APART)
    assert found is not None
    assert found.together.left == ()
    assert found.swept is not None
    assert found.swept.report is found.together.after


def test_one_cure_is_no_whole() -> None:
    assert whole("street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee -> heater2 -> tee2") is None
