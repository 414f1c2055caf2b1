"""One value of a text changed, and not a character beside it."""

import pytest

from plumbnet.layout.rewriting.text_edits import bare, with_fields, with_item, with_value, without_value
from plumbnet.layout.rewriting.text_places import Unwritable


@pytest.mark.parametrize(
    ("text", "steps", "value", "after"),
    [
        ("a: 1  # one\nb: 2", ("a",), 3, "a: 3  # one\nb: 2"),
        ("a: '1 psi'", ("a",), "2 psi", "a: '2 psi'"),
        ('a: "1 psi"', ("a",), 'say "no"', 'a: say "no"'),
        ("a: {b: 1,\n    c: 2}", ("a", "d"), "x", "a: {b: 1,\n    c: 2, d: x}"),
        ("a: {}", ("a", "d"), "x", "a: {d: x}"),
        ("a:\n  b: 1  # one\n\nc: 2", ("a", "d"), [1], "a:\n  b: 1  # one\n  d: [1]\n\nc: 2"),
        ("a:\n  b: |\n    words\nc: 2", ("a", "d"), 1, "a:\n  b: |\n    words\n  d: 1\nc: 2"),
        ("a:\nb: 1", ("a",), 2, "a: 2\nb: 1"),
        ("- a: 1\n- b: 2", (1, "c"), 3, "- a: 1\n- b: 2\n  c: 3"),
    ],
)
def test_value_is_written_at_its_place(text: str, steps: tuple[str | int, ...], value: object, after: str) -> None:
    assert with_value(text, steps, value) == after


@pytest.mark.parametrize(
    ("text", "steps", "after"),
    [
        ("{a: 1, b: 2, c: 3}", ("a",), "{b: 2, c: 3}"),
        ("{a: 1, b: 2, c: 3}", ("b",), "{a: 1, c: 3}"),
        ("{a: 1, b: 2, c: 3}", ("c",), "{a: 1, b: 2}"),
        ("x:\n  a: 1 # one\n  b:\n    c: 2 # two\n  d: 3", ("x", "b"), "x:\n  a: 1 # one\n  d: 3"),
        ("- a  # one\n- b\n- c", (0,), "- b\n- c"),
        ("[a, b]", (1,), "[a]"),
        ("- a: 1\n  b: 2", (0, "a"), "- b: 2"),
    ],
)
def test_value_is_taken_out_with_its_line(text: str, steps: tuple[str | int, ...], after: str) -> None:
    assert without_value(text, steps) == after


@pytest.mark.parametrize(
    ("text", "after"), [("r: [a, b]", "r: [a, x, b]"), ("r:\n- a # 1\n- b", "r:\n- a # 1\n- x\n- b")]
)
def test_item_is_put_behind_another(text: str, after: str) -> None:
    assert with_item(text, ("r",), 0, "x") == after


def test_last_one_is_not_taken_out() -> None:
    with pytest.raises(Unwritable, match="nothing would be left beside a"):
        without_value("{a: 1}", ("a",))


def test_only_fields_that_differ_are_written() -> None:
    text = "p: {kind: meter,  check: true, r: {a: 1,  b: 2}}"
    old = {"kind": "meter", "check": True, "r": {"a": 1, "b": 2}}
    assert with_fields(text, ("p",), old, old) == text
    assert with_fields(text, ("p",), old, {"kind": "meter", "r": {"a": 1, "b": 3}}) == (
        "p: {kind: meter, r: {a: 1,  b: 3}}"
    )
    assert with_fields("p: valve", ("p",), {"kind": "valve"}, {"kind": "valve", "state": "shut"}) == (
        "p: {kind: valve, state: shut}"
    )


def test_one_is_not_taken_for_yes() -> None:
    assert with_fields("p: {a: 1}", ("p",), {"a": 1}, {"a": True}) == "p: {a: true}"


def test_kind_alone_is_a_bare_word() -> None:
    assert bare({"kind": "tee"}) == "tee"
    assert list(dict(bare({"elevation": 1, "kind": "tee"}))) == ["kind", "elevation"]  # type: ignore[call-overload]  # a mapping
