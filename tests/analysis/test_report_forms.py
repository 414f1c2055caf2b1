"""The forms in which a report shows itself."""

from conftest import system

import plumbnet
from plumbnet.library.data_frame import heaters_frame
from plumbnet.library.report_answers import full_text, report_dict

HOUSE = plumbnet.check(system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))


def test_report_is_shown_by_those_who_write_reports() -> None:
    assert HOUSE.to_dict() == report_dict(HOUSE)
    assert HOUSE.to_text() == full_text(HOUSE)
    assert HOUSE.to_frame().equals(heaters_frame(HOUSE))
    assert "<svg" in (HOUSE._repr_html_() or "")


def test_remedies_are_left_out_where_they_are_not_wanted() -> None:
    assert HOUSE.to_dict(remedies=False) == report_dict(HOUSE, remedies=False) != HOUSE.to_dict()
