"""Faults as people see them: the sentence, the line, the caret; nothing of the file unescaped."""

import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.yaml.fault import MOST_SHOWN, Fault, LayoutError, nearest, quoted, split_lines, visible

BAKERY = "parts:\n  cv: {kind: chek_valve}\n"


def shown(line: str, column: int, width: int = 1) -> list[str]:
    return str(LayoutError("f", [Fault(1, column, "wrong", "", width)], line)).split("\n")[1:]


def caret_column(line: str, column: int, width: int = 1) -> int:
    return shown(line, column, width)[1].index("^") - len("  1 | ")


def test_fault_shows_its_line_and_a_caret() -> None:
    fault = Fault(2, 14, 'unknown kind "chek_valve"', 'did you mean "check_valve"?', 10)
    assert str(LayoutError("bakery.yaml", [fault], BAKERY)) == (
        'bakery.yaml:2:14: unknown kind "chek_valve": did you mean "check_valve"?\n'
        "  2 |   cv: {kind: chek_valve}\n"
        "    |              ^~~~~~~~~~"
    )


def test_advice_follows_a_semicolon_and_a_question_a_colon() -> None:
    assert Fault(1, 1, "a tab", "indent with spaces").sentence == "a tab; indent with spaces"
    assert Fault(1, 1, "a tab", "a space?").sentence == "a tab: a space?"
    assert Fault(1, 1, "a tab").sentence == "a tab"


def test_fault_of_the_whole_file_shows_no_line() -> None:
    assert str(LayoutError("f.yaml", [Fault(0, 0, "too large")], BAKERY)) == "f.yaml: too large"


def test_fault_in_a_file_that_is_no_text_shows_no_line() -> None:
    assert str(LayoutError("f.yaml", [Fault(1, 3, "not UTF-8")])) == "f.yaml:1:3: not UTF-8"


def test_faults_stand_in_the_order_of_the_file_and_once() -> None:
    late, early, whole = Fault(2, 1, "late"), Fault(1, 5, "early"), Fault(0, 0, "whole")
    error = LayoutError("f", [late, early, late, whole], BAKERY)
    assert error.faults == (whole, early, late)
    assert error.file == "f"
    assert error.lines == ("parts:", "  cv: {kind: chek_valve}", "")


def test_faults_beyond_the_fiftieth_are_counted() -> None:
    lines = str(LayoutError("f", [Fault(n, 1, "wrong") for n in range(1, MOST_SHOWN + 4)])).split("\n")
    assert lines[-2:] == ["f:50:1: wrong", "and 3 more"]
    assert len(lines) == MOST_SHOWN + 1


def test_fifty_faults_are_all_shown() -> None:
    text = str(LayoutError("f", [Fault(n, 1, "wrong") for n in range(1, MOST_SHOWN + 1)]))
    assert "more" not in text


def test_error_survives_the_way_to_another_process() -> None:
    error = LayoutError("f", [Fault(2, 14, "wrong", "right", 3)], BAKERY)
    copy = pickle.loads(pickle.dumps(error))  # noqa: S301 - our own bytes
    assert (copy.file, copy.faults, copy.lines) == (error.file, error.faults, error.lines)
    assert str(copy) == str(error)


def test_tab_is_shown_and_does_not_displace_the_caret() -> None:
    assert shown("\ta:\tb", 5) == ["  1 | \\ta:\\tb", "    |       ^"]


def test_wide_characters_take_two_columns() -> None:
    assert caret_column("湯: x", 4) == 4


def test_combining_characters_take_no_column() -> None:
    assert caret_column("e\u0301: x", 5) == 3


def test_caret_is_as_wide_as_the_word_on_the_screen() -> None:
    assert shown("a: 湯沸", 4, 2)[1] == "    |    ^~~~"


def test_caret_behind_the_end_of_the_line_stands_at_the_end() -> None:
    assert shown("abc", 99, 7) == ["  1 | abc", "    |    ^"]


def test_column_nought_is_the_first() -> None:
    assert caret_column("abc", 0) == 0


@pytest.mark.parametrize("column", [1, 40, 60, 101, 200, 349, 350])
def test_long_line_is_cut_round_the_caret(column: int) -> None:
    line = "".join(chr(ord("!") + n % 90) for n in range(350))
    excerpt, caret = shown(line, column)
    assert excerpt[caret.index("^")] == line[column - 1]
    assert len(excerpt) <= len("  1 | ") + 100 + 2 * len("...")


def test_line_of_a_hundred_columns_is_shown_whole() -> None:
    assert shown("x" * 100, 100)[0] == "  1 | " + "x" * 100


def test_underline_stops_where_the_line_is_cut() -> None:
    excerpt, caret = shown("x" * 500, 1, 500)
    assert excerpt == "  1 | " + "x" * 100 + "..."
    assert caret == "    | ^" + "~" * 99


def test_line_of_ten_megabytes_is_no_burden() -> None:
    assert len(str(LayoutError("f", [Fault(1, 5_000_000, "x" * 10)], "y" * 10 * 2**20))) < 300


def test_what_the_file_holds_is_escaped_everywhere() -> None:
    error = LayoutError("\x1b[2J.yaml", [Fault(1, 1, "kind \u202e", "\x07?")], "a: \x1b[31m\u202e")
    assert str(error) == ("\\x1b[2J.yaml:1:1: kind \\u202e: \\x07?\n  1 | a: \\x1b[31m\\u202e\n    | ^")


@pytest.mark.parametrize("mark", "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
def test_marks_that_turn_the_reading_direction_are_escaped(mark: str) -> None:
    assert visible(f"a{mark}b") == f"a\\u{ord(mark):04x}b"


def test_escapes_are_as_long_as_the_character_needs() -> None:
    assert visible("\x00\n\x9b\u2028\U000e0041\udc80") == "\\x00\\n\\x9b\\u2028\\U000e0041\\udc80"


@given(st.text())
def test_visible_text_prints_and_printing_text_stays(text: str) -> None:
    assert visible(text).isprintable()
    assert visible(visible(text)) == visible(text)


@given(st.text(), st.integers(0, 50), st.integers(0, 300), st.integers(-2, 300), st.text())
def test_any_fault_in_any_text_can_be_shown(source: str, line: int, column: int, width: int, said: str) -> None:
    text = str(LayoutError("f", [Fault(line, column, said, "", width)], source))
    assert all(row.isprintable() for row in text.split("\n"))
    assert len(text.split("\n")) in {1, 3}


def test_lines_are_those_of_yaml() -> None:
    assert split_lines("a\r\nb\rc\nd\x85e\u2028f\u2029g\x0ch") == ("a", "b", "c", "d", "e", "f", "g\x0ch")


def test_long_words_are_quoted_in_part() -> None:
    assert quoted("x" * 60) == '"' + "x" * 60 + '"'
    assert quoted("x" * 61) == '"' + "x" * 57 + '..."'


def test_nearest_name_is_offered() -> None:
    assert nearest("chek_valve", ["tee", "check_valve", "valve"]) == 'did you mean "check_valve"?'
    assert nearest("spaceship", ["tee", "check_valve"]) == ""
    assert nearest("", ["tee"]) == ""
    assert nearest("tee", []) == ""


VALVES = ["mixing_valve", "relief_valve", "check_valve", "pressure_reducer", "valve"]


@pytest.mark.parametrize("other", ["balancing_valve", "throttling_valve", "butterfly_valve"])
def test_name_that_shares_but_a_common_word_is_not_offered(other: str) -> None:
    assert nearest(other, VALVES) == ""


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("mixer_valve", "mixing_valve"),
        ("tempering_valve", "mixing_valve"),
        ("releif_valve", "relief_valve"),
        ("thermostatic_mixing_valve", "mixing_valve"),
        ("pressure_reducing_valve", "pressure_reducer"),
        ("gate_valve", "valve"),
    ],
)
def test_name_is_offered_where_its_own_words_are_alike(written: str, meant: str) -> None:
    assert nearest(written, VALVES) == f'did you mean "{meant}"?'


def test_nearest_name_passes_over_case() -> None:
    assert nearest("HEATER", ["heater"]) == 'did you mean "heater"?'


def test_nearest_name_does_not_depend_on_the_order() -> None:
    names = ["cold1", "cold2", "Cold1", "cold3"]
    assert {nearest("cold", order) for order in (names, names[::-1], sorted(names))} == {'did you mean "cold3"?'}


def test_very_long_word_is_like_nothing() -> None:
    assert nearest("x" * 100_000, ["x" * 100_000, "x"]) == ""


@pytest.mark.parametrize("slip", ["heater777", "heter7777", "haeter7777", "heater77770", "Heatar7777"])
def test_one_slip_is_found_among_very_many_names(slip: str) -> None:
    names = [f"heater{n}" for n in range(7777, 50_000, 7777)] + [f"tank{n}" for n in range(100_000)]
    assert nearest(slip, names) == 'did you mean "heater7777"?'


def test_two_slips_are_not_looked_for_among_very_many_names() -> None:
    names = [f"heater{n}" for n in range(100_000)]
    assert nearest("haeter-7", names) == ""


def test_file_on_which_another_rests_is_shown_below_it_and_travels_with_it() -> None:
    base = LayoutError("base.yaml", [Fault(1, 1, "it is wrong")], "x: 1\n")
    error = LayoutError("own.yaml", [Fault(1, 4, "what it rests on has faults")], "x: base.yaml\n", base)
    assert str(error) == (
        "own.yaml:1:4: what it rests on has faults\n  1 | x: base.yaml\n    |    ^\n"
        "base.yaml:1:1: it is wrong\n  1 | x: 1\n    | ^"
    )
    assert str(pickle.loads(pickle.dumps(error))) == str(error)  # noqa: S301  what we wrote ourselves
