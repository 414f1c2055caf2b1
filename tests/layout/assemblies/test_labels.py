"""`times` to labels, and the words behind a `/`."""

import pytest

from plumbnet.layout.assemblies.labels import labels_of, say_which, selected, span
from plumbnet.layout.assemblies.wrong import Wrong
from plumbnet.layout.yaml.node import Plain


@pytest.mark.parametrize(
    ("times", "labels"),
    [
        (1, "1"),
        ("7-9", "7 8 9"),
        ("08-10", "08 09 10"),
        (["west", "east"], "west east"),
        (["101-102", "201-202"], "101 102 201 202"),
        (["bay-1", "bay-2"], "bay-1 bay-2"),
    ],
)
def test_times_gives_labels_in_the_order_written(times: Plain, labels: str) -> None:
    assert labels_of(times) == tuple(labels.split())


def test_a_name_that_reads_like_a_range_of_others_is_refused() -> None:
    with pytest.raises(Wrong, match="bay-1-bay-2 is an instance and a range of others"):
        labels_of(["bay-1", "bay-2", "bay-1-bay-2"])
    assert labels_of(["a", "a-b"]) == ("a", "a-b")


@pytest.mark.parametrize(
    ("word", "labels"),
    [("each", "w a c b"), ("first", "w"), ("last", "b"), ("a-c", "a c"), ("w-b", "w a c b"), ("c", "c")],
)
def test_a_range_counts_by_place_and_not_by_letter(word: str, labels: str) -> None:
    assert selected("rooms", word, ("w", "a", "c", "b")) == tuple(labels.split())


def test_a_range_between_labels_with_hyphens_is_found() -> None:
    assert selected("basins", "bay-1-bay-3", ("bay-1", "bay-2", "bay-3")) == ("bay-1", "bay-2", "bay-3")


def test_a_name_for_one_that_is_numbered_says_so() -> None:
    assert say_which("rooms", ("1",)) == "rooms is numbered; say which: rooms/1, rooms/first, or rooms/each"


def test_labels_that_stand_apart_have_no_word() -> None:
    assert span(("2", "3"), ("1", "2", "3")) == "2-3"
    assert span(("1", "2", "3"), ("1", "2", "3")) == "each"
    assert span(("1", "3"), ("1", "2", "3")) is None
