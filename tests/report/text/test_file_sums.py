"""Sums over many files: what is counted, and in which order it is told."""

from collections.abc import Iterable
from dataclasses import replace

from forms import accepting, fine, missing, note, outcomes, refusal, trapped, warned

from plumbnet.analysis.report import Report
from plumbnet.report.output.writer import Fate, FileOutcome, Unread
from plumbnet.report.prose.word_colours import plain
from plumbnet.report.text.file_sums import FileSums
from plumbnet.report.text.text_writers import TextWriter


def told(answers: Iterable[Report | Unread], *more: FileOutcome) -> list[str]:
    sums = FileSums()
    for outcome in [*outcomes(TextWriter(), answers), *more]:
        sums.add(outcome)
    return list(sums.lines(plain))


def test_files_are_told_by_the_most_severe_of_what_was_found() -> None:
    noted = replace(fine(), findings=(note(),))
    files, _, rest = told([trapped(), trapped(), warned(), noted, fine(), refusal(), missing()])[0].partition(": ")
    assert files == "7 files"
    assert rest.split(", ") == [
        "2 with an error",
        "1 with a warning at most",
        "1 with notes only",
        "1 without a finding",
        "2 not understood",
    ]


def test_file_with_an_error_and_a_warning_counts_once() -> None:
    both = replace(trapped(), findings=(*warned().findings, *trapped().findings))
    assert told([both])[0] == "1 file: 1 with an error"


def test_heaters_are_told_by_verdict() -> None:
    heaters, _, rest = told([trapped(), fine(), fine(), warned()])[1].partition(": ")
    assert heaters == "4 heaters"
    assert rest.split(", ") == ["2 open", "1 controlled", "1 trapped"]


def test_findings_are_told_from_the_most_severe_and_frequent_down_with_the_files_they_stand_in() -> None:
    twice = replace(warned(), findings=warned().findings * 2)
    assert told([twice, trapped(), trapped()])[2:] == [
        "     2 error: trapped-expansion",
        "     2 warning: tank-charge-differs in 1 file",
    ]


def test_other_yaml_files_are_told_and_counted_among_no_layouts() -> None:
    other = FileOutcome("compose.yaml", Fate.NO_LAYOUT)
    files, others, heaters = told([fine()], other, other)
    assert files.startswith("1 file: ")
    assert others == "2 other YAML files not looked at, as they have no key plumbnet"
    assert heaters == "1 heater: 1 open"


def test_nothing_understood_says_nothing_of_heaters() -> None:
    assert told([missing()]) == ["1 file: 1 not understood", "  error: none.yaml: not understood"]


def test_layout_without_heaters_says_so() -> None:
    bare = replace(fine(), facts=replace(fine().facts, heaters=()))
    assert told([bare])[1] == "0 heaters: none"


def test_accepted_findings_are_counted_last() -> None:
    assert told([accepting(trapped(), "So be it."), fine()]) == [
        "2 files: 1 with accepted findings only, 1 without a finding",
        "2 heaters: 1 open, 1 trapped",
        "     1 accepted by the applicant, each with its reason: trapped-expansion",
    ]


def test_one_file_is_not_many() -> None:
    sums = FileSums()
    (one,) = outcomes(TextWriter(), [fine()])
    sums.add(one)
    assert not sums.is_of_many
    sums.add(one)
    assert sums.is_of_many


def test_folder_without_a_layout_has_no_files_and_nothing_behind_their_number() -> None:
    first, second = told([], FileOutcome("compose.yaml", Fate.NO_LAYOUT), FileOutcome("k8s.yaml", Fate.NO_LAYOUT))
    assert first == "0 files"
    assert second.startswith("2 other YAML files")
