"""Cells are read as whoever typed them meant them, or not at all."""

import pytest

from plumbnet.layout.tables.cell_values import (
    CellError,
    Decimals,
    cell_of,
    is_bare_number,
    nested_value,
    plain_cell,
    value_of,
    with_comma,
    with_point,
)


@pytest.mark.parametrize(
    ("text", "decimals", "read"),
    [
        ("4,5 bar", "comma", "4.5 bar"),
        ("4.5 bar", "comma", "4.5 bar"),
        ("1.250,5 l", "comma", "1250.5 l"),
        ("12 500 W", "comma", "12500 W"),
        ("1,250 m", "comma", "1.250 m"),
        ("0,125", "comma", "0.125"),
        ("-3,5 m", "comma", "-3.5 m"),
        ("60,5 °C", "comma", "60.5 °C"),
        ("1 1/2 in", "comma", "1 1/2 in"),
        ("copper-B 22 mm", "comma", "copper-B 22 mm"),
        ("1,250 gal", "point", "1,250 gal"),
        ("4,5 bar", "point", "4,5 bar"),
        ("0.125 gal", "unsure", "0.125 gal"),
        ("1,250.5 gal", "unsure", "1,250.5 gal"),
    ],
)
def test_number_is_read_as_its_table_writes_numbers(text: str, decimals: Decimals, read: str) -> None:
    assert with_point(text, decimals) == read


@pytest.mark.parametrize(
    ("text", "decimals", "said"),
    [
        ("1.250 m", "comma", '"1.250 m" may be 1250 or 1.250; write 1250 m or 1,250 m'),
        ("1,250 m", "unsure", '"1,250 m" may be 1250 or 1.250; write 1250 m or 1.2500 m'),
    ],
)
def test_number_that_may_be_two_is_refused(text: str, decimals: Decimals, said: str) -> None:
    with pytest.raises(CellError) as refused:
        with_point(text, decimals)
    assert str(refused.value) == said


@pytest.mark.parametrize("text", ["1,250.5 gal", "-12.5 m", "62", "3/4 in", "62 psi", "street"])
def test_comma_and_back_is_the_same_quantity(text: str) -> None:
    assert with_point(with_comma(text), "comma") == text.replace(",", "")


def test_cell_says_words_numbers_ticks_and_lists() -> None:
    assert [value_of(text, is_text=False) for text in ("62", "4.5", "WAHR", "no", "62 psi", "[in, out]")] == [
        62, 4.5, True, False, "62 psi", ["in", "out"],
    ]  # fmt: skip
    assert [value_of(text, is_text=True) for text in ("007", "yes", "[4]")] == ["007", "yes", "[4]"]
    assert is_bare_number("4.5")
    assert not is_bare_number("4.5 bar")


def test_list_that_is_none_is_refused() -> None:
    with pytest.raises(CellError, match=r'^"\[in, out" is no list or mapping as a layout\'s file has it; '):
        nested_value("[in, out")


def test_formula_is_kept_from_being_one_and_comes_back() -> None:
    assert [cell_of(text) for text in ("=A1", "@x", "-5 ft", "+3")] == ["'=A1", "'@x", "-5 ft", "+3"]
    assert [plain_cell(cell) for cell in ("'=A1", "'@x", "-5 ft", "'tis")] == ["=A1", "@x", "-5 ft", "'tis"]
