"""Columns are the fields of kinds, of pipes, of a layout."""

from plumbnet.layout.tables.columns import field_and_unit, is_quantity_column, is_text_column, part_columns


def test_fields_inside_others_have_columns_of_their_own_and_lists_have_one() -> None:
    assert part_columns()[:3] == ("name", "kind", "elevation")
    assert {"relief.pressure", "relief.temperature", "passages", "ports"} <= set(part_columns())
    assert not {"relief.", "passages.free"} & set(part_columns())


def test_column_is_of_words_or_of_quantities() -> None:
    assert [is_text_column(one) for one in ("name", "sizing", "pipe", "volume", "relief.pressure")] == [
        True, True, True, False, False,
    ]  # fmt: skip
    assert [is_quantity_column(one) for one in ("length", "relief.pressure", "rating", "check", "name")] == [
        True, True, True, False, False,
    ]  # fmt: skip


def test_head_may_name_the_unit() -> None:
    assert [field_and_unit(one) for one in ("volume [L]", "set(bar)", "kind", "# mine")] == [
        ("volume", "L"), ("set", "bar"), ("kind", ""), ("# mine", ""),
    ]  # fmt: skip
