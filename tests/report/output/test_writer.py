"""What every form of output has in common: why a file was not understood, in words and as data."""

import pickle

import pytest
from forms import fine, missing, outcomes, refusal, trapped

from plumbnet.cli.commands.check import Format, Threshold, writer_of
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.report.output.writer import unread


def test_layout_with_mistakes_keeps_them_all_with_their_places() -> None:
    told = refusal("f.yaml", "one is wrong", "two is wrong")
    assert [(fault.line, fault.column, fault.text) for fault in told.faults] == [
        (2, 3, "one is wrong"),
        (3, 3, "two is wrong"),
    ]
    assert told.words.startswith("f.yaml:2:3: one is wrong\n  2 |   here\n")


def test_file_that_cannot_be_opened_is_told_in_a_calm_line() -> None:
    told = missing("none.yaml")
    assert told.words == "none.yaml: no such file or directory"
    assert [(fault.line, fault.text) for fault in told.faults] == [(0, "no such file or directory")]


def test_error_without_a_reason_of_the_system_says_its_own() -> None:
    assert unread("f", OSError("Permission denied")).words == "f: permission denied"


def test_name_of_a_file_is_made_visible_in_words() -> None:
    assert unread("\x1b[2J", OSError("gone")).words == r"\x1b[2J: gone"
    assert r"\u202e" in unread("a", LayoutError("\u202e", refusal().faults)).words


@pytest.mark.parametrize("form", list(Format))
def test_what_came_of_a_file_can_be_sent_between_processes(form: Format) -> None:
    writer = writer_of(form, Threshold.ERROR)
    pickle.loads(pickle.dumps(writer))  # noqa: S301  our own bytes
    for outcome in outcomes(writer, [trapped(), fine(), refusal(), missing()]):
        assert pickle.loads(pickle.dumps(outcome)) == outcome  # noqa: S301  our own bytes
