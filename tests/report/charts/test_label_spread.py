"""Labels along a line never lie over one another."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.report.charts.label_spread import spread_labels

LABELS = st.lists(st.tuples(st.floats(0.0, 100.0), st.floats(0.1, 9.0)), max_size=10)


@given(LABELS)
def test_labels_never_lie_over_one_another_and_keep_their_order(labels: list[tuple[float, float]]) -> None:
    wanted, sizes = [each[0] for each in labels], [each[1] for each in labels]
    middles = spread_labels(wanted, sizes, low=0.0, high=100.0)
    order = sorted(range(len(labels)), key=lambda index: (wanted[index], index))
    for lower, upper in pairwise(order):
        assert middles[upper] - middles[lower] >= (sizes[upper] + sizes[lower]) / 2.0 - 1e-9


@given(LABELS)
def test_labels_stay_on_the_line(labels: list[tuple[float, float]]) -> None:
    sizes = [each[1] for each in labels]
    for middle, size in zip(
        spread_labels([each[0] for each in labels], sizes, low=0.0, high=100.0), sizes, strict=True
    ):
        assert middle - size / 2.0 >= -1e-9
        assert middle + size / 2.0 <= 100.0 + 1e-9


def test_labels_with_room_stand_where_they_are_wanted() -> None:
    assert spread_labels([50.0, 10.0, 90.0], [4.0, 4.0, 4.0], low=0.0, high=100.0) == pytest.approx([50.0, 10.0, 90.0])


def test_too_many_labels_pass_the_upper_end_and_not_one_another() -> None:
    assert spread_labels([5.0, 5.0, 5.0], [4.0, 4.0, 4.0], low=0.0, high=10.0) == pytest.approx([2.0, 6.0, 10.0])


def test_no_labels_need_no_room() -> None:
    assert spread_labels([], [], low=0.0, high=1.0) == []
