"""JSON written piece by piece is byte for byte the JSON written at once."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.report.output.streamed_json import Array, array, closed_json, fragment, member, opened

JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=20,
)


@given(
    st.dictionaries(st.text(), JSON, min_size=1, max_size=4).filter(lambda head: not head.keys() & {"first", "second"}),
    st.lists(JSON, max_size=4),
    st.lists(JSON, max_size=4),
)
def test_pieces_make_the_same_bytes_as_the_whole(
    head: dict[str, object], first: list[object], second: list[object]
) -> None:
    pieces = [
        opened(head),
        member("first", 1),
        array([fragment(one, 2) for one in first], 2),
        member("second", 1),
        array([fragment(one, 2) for one in second], 2),
        closed_json(),
    ]
    assert "".join(pieces) == json.dumps({**head, "first": first, "second": second}, indent=1)


def test_list_that_comes_a_few_at_a_time_is_the_whole_list() -> None:
    some = Array(1)
    assert some.add(["0"]) == "[\n 0"
    assert some.add([]) == ""
    assert some.add(["1", "2"]) + some.end() == ",\n 1,\n 2\n]"
    assert Array(1).end() == array([], 1) == "[]"


@pytest.mark.parametrize("number", [math.nan, math.inf])
def test_number_that_json_does_not_have_is_refused(number: float) -> None:
    with pytest.raises(ValueError, match="not JSON compliant"):
        fragment([number], 1)


def test_everything_is_plain_ascii() -> None:
    assert fragment({"title": "Café \u202e \x1b"}, 0).isascii()
