"""Heaters that another circuit heats through a wall."""

import pytest
from usual import usual

from plumbnet.layout.model.part import Free


@pytest.mark.parametrize(
    ("kind", "ends", "litres"),
    [("indirect_heater", ("coil_in", "coil_out"), 5), ("heat_exchanger", ("primary_in", "primary_out"), 1)],
)
def test_two_sides_exchange_heat_but_no_water(kind: str, ends: tuple[str, str], litres: float) -> None:
    heater = usual(kind)
    joined = [{passage.a, passage.b} for passage in heater.passages() if isinstance(passage, Free)]
    assert set(ends) in joined
    assert all(pair == set(ends) or not pair & set(ends) for pair in joined)
    assert list(heater.contents())[1] == (ends[0], litres / 1000)
    assert (heater.mate(ends[0]), heater.mate(ends[1])) == (ends[1], ends[0])
