"""Reports for people: in full one behind the other, or a line to a file."""

import re
from dataclasses import replace

from forms import CONTROL, HOSTILE, accepting, fine, missing, refusal, renamed, trapped, warned, written

from plumbnet.report.text.heater_text import report_text
from plumbnet.report.text.remedies_report import remedies_section
from plumbnet.report.text.text_writers import LineWriter, TextWriter
from plumbnet.study.remedies.remedy_search import remedies


def test_one_report_stands_alone_as_the_library_writes_it() -> None:
    report = trapped()
    assert written(TextWriter(), report) == report_text(report, more=remedies_section(report.facts, remedies(report)))


def test_report_shows_the_same_text_itself() -> None:
    assert trapped().to_text() == written(TextWriter(), trapped())


def test_reports_are_parted_by_an_empty_line_and_summed_at_the_end() -> None:
    first, second = fine(), warned()
    text = written(TextWriter(), first, refusal(), second)
    told = [report_text(report, more=remedies_section(report.facts, remedies(report))) for report in (first, second)]
    assert text.startswith(f"{told[0]}\n{told[1]}\n3 files: ")
    assert text.endswith("1 warning: tank-charge-differs\n  error: faulty.yaml: not understood\n")


def test_file_that_was_not_understood_leaves_no_gap_between_reports() -> None:
    assert "\n\n\n" not in written(TextWriter(), refusal(), fine(), missing(), fine())
    assert written(TextWriter(), refusal(), missing()).startswith("2 files: ")


def test_line_to_a_file_names_verdicts_and_findings() -> None:
    lines = written(LineWriter(), trapped(), fine(), warned(), missing("gone.yaml")).split("\n")
    assert [re.split("[:;] ", line) for line in lines[:5]] == [
        ["drawn.yaml", "1 trapped", "error trapped-expansion"],
        ["drawn.yaml", "1 open"],
        ["drawn.yaml", "1 controlled", "warning tank-charge-differs"],
        ["gone.yaml", "not understood"],
        [""],
    ]


def test_finding_that_stands_several_times_is_told_once() -> None:
    twice = replace(warned(), findings=warned().findings * 2)
    assert re.split("[:;] ", written(LineWriter(), twice)) == [
        "drawn.yaml",
        "1 controlled",
        "warning tank-charge-differs (2 times)\n",
    ]


def test_accepted_findings_are_counted_on_the_line() -> None:
    assert written(LineWriter(), accepting(trapped(), "So be it.")) == (
        "drawn.yaml: 1 trapped; 1 accepted by the applicant: trapped-expansion (heater)\n"
    )


def test_layout_without_heaters_is_a_line_too() -> None:
    bare = replace(fine(), facts=replace(fine().facts, heaters=()))
    assert written(LineWriter(), bare) == "drawn.yaml: no heater\n"


def test_colours_stand_round_words_only() -> None:
    text = written(LineWriter(lambda words, meaning: f"<{meaning}|{words}>"), trapped(), missing())
    assert "1 <trapped|trapped>; " in text
    assert "; <error|error> trapped-" in text
    assert "none.yaml: <error|not understood>\n" in text


def test_no_name_of_a_file_reaches_the_terminal_as_it_is() -> None:
    for name in filter(None, HOSTILE):
        for writer in (TextWriter(), LineWriter()):
            text = written(writer, renamed(trapped(), file=name, title=name), refusal(name), missing(name))
            assert not any(sign in text for sign in CONTROL)
