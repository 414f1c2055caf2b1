from usual import usual

from plumbnet.api import check, read_bytes
from plumbnet.layout.model.part import KINDS

# street --|>-- split with the valve -- heater
HOUSE = b"""
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  check: check_valve
  split: tee
  breaker: {kind: vacuum_relief_valve, elevation: 15 ft}
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF}
  tap: fixture
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> breaker
"""


def test_air_comes_in_by_it_and_no_water_leaves() -> None:
    valve = usual("vacuum_relief_valve")
    assert valve.admits_air
    assert list(valve.outlets()) == []
    assert [name for name, declared in KINDS.items() if declared.admits_air] == ["vacuum_relief_valve"]


def test_closed_heater_stays_sealed_beside_it() -> None:
    (heater,) = check(read_bytes(HOUSE, file="house.yaml")).heaters
    assert heater.verdict == "sealed"
    assert heater.relieved_by == ()
