"""A layout and its revision: what is told of it; golden/compare.out holds the words."""

import re
from dataclasses import replace

from conftest import layout
from forms import CONTROL

import plumbnet
from plumbnet.report.comparison.comparison_report import MATCHED, comparison_text
from plumbnet.study.compare.whole_comparison import Comparison, comparison

HEATER = "volume: 50 gal, relief: {pressure: 150 psi, temperature: 210 degF}"
PLAIN = layout("street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold", heater=HEATER)
CHECKED = layout("street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold", heater=HEATER, meter="check: true")
TANKED = layout(
    "street -> meter -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tank", heater=HEATER, meter="check: true"
)


def compared(before: str, after: str) -> Comparison:
    was, now = (
        plumbnet.check(plumbnet.read_bytes(text.encode(), file=file))
        for text, file in ((before, "old.yaml"), (after, "new.yaml"))
    )
    return comparison(was, now)


def told(before: str, after: str) -> str:
    return comparison_text(compared(before, after))


def test_check_in_the_meter_is_told_with_what_comes_of_it() -> None:
    text = told(PLAIN, CHECKED)
    worse, finding = (
        text.index(piece) for piece in ("- heater is worse: open before", "- new error trapped-expansion")
    )
    assert worse < finding < text.index("!  verdict ")
    assert re.search(r"stopped by +nothing +meter\b", text)
    assert "- part altered: meter: check: false" in text


def test_record_names_both_files_with_their_sums() -> None:
    one = compared(PLAIN, CHECKED)
    text = comparison_text(one)
    for report in (one.before, one.after):
        assert f"SHA-256 {report.system.record.sha256}" in text
    assert text.count(f"general, SHA-256 {one.after.profile.sha256}") == 2
    assert text.endswith("never plug, cap or remove one.\n")


def test_tank_fitted_is_told_as_better_and_added() -> None:
    text = told(CHECKED, TANKED)
    assert "- heater is better: trapped before" in text
    assert "- gone: error trapped-expansion" in text
    assert "- part added: tank " in text
    assert "- pipe added: tee -> tank\n" in text
    assert MATCHED not in text


def test_same_file_twice_says_that_nothing_differs() -> None:
    text = told(CHECKED, CHECKED)
    assert "- nothing: " in text
    assert "as before: trapped" in text
    assert "\nNothing: parts" in text
    assert "is otherwise different" not in text


def test_part_of_another_name_is_explained() -> None:
    text = told(CHECKED, CHECKED.replace("heater:", "boiler-room:").replace("-> heater", "-> boiler-room"))
    assert "- part renamed: heater -> boiler-room (storage_heater)\n" in text
    assert "\nboiler-room (heater before)\n" in text
    assert "- nothing: verdicts, figures and findings are as before.\n" in text
    assert "all is told by the names\nof now" in text


def test_what_is_gone_and_new_is_explained() -> None:
    other = CHECKED.replace("meter:", "valve:").replace("kind: meter", "kind: valve").replace("-> meter", "-> valve")
    text = told(CHECKED, other.replace("    check: true\n", ""))
    assert "- part added: valve (valve)\n" in text
    assert MATCHED in text


def test_part_in_the_place_of_another_is_told() -> None:
    other = TANKED.replace("tank:", "vessel:").replace("-> tank", "-> vessel").replace("precharge: 60", "precharge: 40")
    assert "- part renamed: tank -> vessel (expansion_tank)\n- part altered: vessel: precharge" in told(TANKED, other)
    text = told(TANKED, other.replace("4.5 gal", "9 gal"))
    assert "- part removed: tank (expansion_tank)\n" in text
    assert "\nvessel stands where tank stood, with other values.\n" in text


def test_finding_that_stands_in_other_words_is_shown_both_ways() -> None:
    text = told(CHECKED, CHECKED.replace("50 gal", "60 gal"))
    assert "was: error trapped-expansion (heater" in text
    assert "now: error trapped-expansion (heater" in text
    assert "heater: volume: 50 gal -> 60 gal" in text


def test_title_and_names_of_files_are_made_visible() -> None:
    one = compared(PLAIN, CHECKED)
    record = replace(one.after.system.record, file="\x1b[2J\u202e")
    after = replace(one.after, system=replace(one.after.system, record=record, title="\x07\x9b\u202e"))
    text = comparison_text(comparison(one.before, after))
    assert not any(sign in text for sign in CONTROL)
    assert r"title: not given -> \x07\x9b\u202e" in text
