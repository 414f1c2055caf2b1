"""A report and a layout as they show themselves."""

import html
from dataclasses import replace

from conftest import system

import plumbnet
from plumbnet.library.report_answers import full_text, layout_html, report_dict

HOUSE = plumbnet.check(system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))


def test_remedies_are_told_in_text_and_fields_of_a_small_layout() -> None:
    assert report_dict(HOUSE)["remedies_searched"]
    assert not report_dict(HOUSE, remedies=False)["remedies_searched"]
    assert "1. Fit an expansion tank" in full_text(HOUSE)


def test_layout_without_an_answer_is_shown_with_the_reason() -> None:
    assert "<svg" in layout_html(HOUSE.system)
    assert 'no rule profile is called "gneral"' in html.unescape(layout_html(replace(HOUSE.system, rules="gneral")))
