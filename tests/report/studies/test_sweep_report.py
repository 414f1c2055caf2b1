"""A sweep as text: what is shown and what is counted; golden/sweep.out holds the words."""

from conftest import layout
from hotel import hotel

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.prose.name_ranges import MOST_NAMED
from plumbnet.report.studies.sweep_report import sweep_text
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.contingency.alike_events import SweptEvent
from plumbnet.study.contingency.event_pairs import Pairs
from plumbnet.study.contingency.event_sweep import Sweep, sweep
from plumbnet.study.contingency.outcome import Outcome, Turn

RUNS = """street -> meter -> valve -> tee -> heater -> tap.hot
          tee -> tank"""


def report(title: str = "A house") -> Report:
    text = f"title: {title}\n" + layout(RUNS, heater="relief: {pressure: 150 psi}", meter="check: true")
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file="house.yaml"))


def test_events_stand_worst_first_and_the_rest_is_counted() -> None:
    text = sweep_text(sweep(report()))
    worst = ("\ntank: waterlogged", "\nheater/relief: plugged", "\nmeter: check stuck open", "\n9 events tried")
    places = [text.index(words) for words in worst]
    assert places == sorted(places)
    assert "7 would change a verdict" in text
    assert "2 would change nothing" in text


def test_only_the_worst_are_shown_where_so_asked() -> None:
    text = sweep_text(sweep(report()), top=1)
    assert "tank: waterlogged" in text
    assert "tank: charge lost" not in text
    assert "(1 shown), 2 would change nothing" in " ".join(text.split())


def test_pairs_have_a_table_of_their_own() -> None:
    text = " ".join(sweep_text(sweep(report(), pairs=True), top=2).split())
    assert "Pairs of events" in text
    assert "plugged, and tank: charge lost heater:" in text
    assert "controlled to sealed sealed-heater" in text
    assert " pairs tried: " in text
    assert "(2 shown)" in text


def test_search_that_ended_early_says_so() -> None:
    found = sweep(report())
    text = sweep_text(Sweep(found.report, found.events, Pairs((), 10, 35)))
    assert (
        "10 of 35 pairs tried: 0 change something together; the search ended there, for the rest would take too long."
        in (" ".join(text.split()))
    )


def test_what_cannot_be_computed_and_what_is_too_much_to_name_is_told() -> None:
    found = sweep(report())
    event = found.events[0].event
    turns = tuple(Turn(chr(97 + number), Verdict.OPEN, Verdict.TRAPPED) for number in range(MOST_NAMED + 2))
    swept = (SweptEvent(event, Outcome(turns)), SweptEvent(event, Outcome(refused="heater: too high")))
    text = " ".join(sweep_text(Sweep(found.report, swept)).split())
    assert "a, b, c, d, e, f and 2 more: open to trapped" in text
    assert "cannot be computed: heater: too high" in text
    assert "2 events tried, one at a time: 2" in text
    assert "1 event tried, one at a time" in sweep_text(Sweep(found.report, swept[:1]))


def test_what_changes_nothing_is_told_by_kind_unless_only_the_worst_are_wanted() -> None:
    found = sweep(report())
    assert "What changes nothing" in sweep_text(found)
    assert "What changes nothing" not in sweep_text(found, top=3)
    assert sum(len(row.parts) for row in found.alike_idle) == found.idle_count


def test_rooms_alike_are_one_row() -> None:
    text = " ".join(sweep_text(sweep(plumbnet.read_bytes(hotel(20).encode(), file="hotel.yaml"))).split())
    assert "r0-cold to r19-cold, r0-hot to r19-hot and south-valve-1 and 2 (44)" in text
    assert "relief-missing (north-heater-1 and 2 and" in text
    assert "south-heater-1 and 2); each its own" in text


def test_title_cannot_reach_the_terminal_as_it_is() -> None:
    assert "\x1b" not in sweep_text(sweep(report('"a\\e[31m"')))
