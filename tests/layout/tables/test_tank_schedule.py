"""The schedule has every tank, its charge, and where it hangs."""

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.tables.tank_schedule import tank_rows

TEXT = """\
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 400}
  split: tee
  tank: {kind: expansion_tank, volume: 18 L, precharge: 400 kPa, acceptance: 9 L, elevation: 2 m}
runs: [street -> split -> tank]
"""


def test_row_has_what_one_orders_and_charges_a_tank_by() -> None:
    assert list(tank_rows(read_system(TEXT.encode(), file="f"))) == [
        ("tank", "18 L", "400 kPa", "9 L", "", "2 m", "split")
    ]
