"""Where values of a text begin and end."""

import pytest

from plumbnet.layout.rewriting.text_places import Unwritable, break_of, end_of_node, line_end, line_start, node_at

TEXT = "top:\n  a: one two   # said\n  b:\n    c: {d: 'é', e: [1, 2]}  # more\n\n# behind\nlast: x"


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        (("top", "a"), "one two"),
        (("top", "b", "c", "d"), "'é'"),
        (("top", "b", "c", "e", 1), "2"),
        (("top", "b"), "c: {d: 'é', e: [1, 2]}"),
        (("last",), "x"),
    ],
)
def test_value_ends_with_its_last_character(steps: tuple[str | int, ...], words: str) -> None:
    node = node_at(TEXT, steps)
    assert node is not None
    assert TEXT[node.start_mark.index : end_of_node(node)] == words


def test_nothing_stands_where_no_key_is() -> None:
    assert node_at(TEXT, ("top", "z")) is None
    assert node_at(TEXT, ("top", "a", "deeper")) is None


def test_reference_to_an_anchor_is_no_place_to_write() -> None:
    with pytest.raises(Unwritable, match="b refers to an anchor"):
        node_at("a: &one {x: 1}\nb: *one", ("b",))
    assert node_at("a: &one {x: 1}\nb: *one", ("a", "x")) is not None


@pytest.mark.parametrize("lines", ["\n", "\r\n", "\r"])
def test_line_is_found_round_a_character(lines: str) -> None:
    text = lines.join(["one", "two", "three"])
    at = text.index("wo")
    assert text[line_start(text, at) : line_end(text, at)] == "two"
    assert break_of(text) == lines


def test_break_just_passed_belongs_to_its_line() -> None:
    assert line_end("one\ntwo", 4) == 3
    assert line_end("one\r\ntwo", 5) == 3
