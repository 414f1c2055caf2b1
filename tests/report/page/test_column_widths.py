"""Widths of columns."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.report.page.column_widths import column_widths

CELLS = st.text("abc -W\n", max_size=200)


@given(st.integers(1, 6).flatmap(lambda columns: st.lists(st.tuples(*[CELLS] * columns), min_size=1, max_size=4)))
def test_columns_come_to_the_width_of_the_page(rows: list[tuple[str, ...]]) -> None:
    widths = column_widths(rows, 500.0)
    assert sum(widths) == pytest.approx(500.0)
    assert min(widths) > 0.0


def test_short_columns_keep_what_they_ask_for_and_long_ones_share_the_rest() -> None:
    first, second, third = column_widths([("a", "long " * 100, "longer " * 100)], 500.0)
    assert first < 20.0
    assert second == pytest.approx(third)
