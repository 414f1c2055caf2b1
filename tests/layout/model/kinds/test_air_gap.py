from usual import usual

from plumbnet.api import check, read_bytes
from plumbnet.layout.model.backflow_protection import BackflowProtection
from plumbnet.layout.model.part import Outlet, Role

#  street -> gap ~ surface -> pump -> boiler
FILLED = b"""
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 300 kPa}
  gap: {kind: air_gap, elevation: 2 m}
  boiler: {kind: boiler, volume: 30 L, setpoint: 70 degC, relief: {pressure: 300 kPa}}
  rad: {kind: emitter, volume: 10 L}
  back: tee
runs:
  - street -> gap -> back -> boiler -> rad -> back
"""


def test_no_pressure_passes_an_air_gap_either_way() -> None:
    gap = usual("air_gap")
    assert list(gap.passages()) == []
    assert list(gap.outlets()) == [Outlet("out", Role.AIR, 0.0)]
    assert gap.protects is BackflowProtection.AIR_GAP


def test_what_lies_behind_an_air_gap_stands_at_its_surface_and_is_open_to_it() -> None:
    (heater,) = check(read_bytes(FILLED, file="filled.yaml")).heaters
    assert heater.verdict == "open"
    assert [rung.outlet for rung in heater.ladder][:1] == ["gap"]
    assert heater.static_pa is not None
    assert round(heater.static_pa / 1000) == 20


def test_street_side_of_an_air_gap_finds_no_way_out_there() -> None:
    text = FILLED.replace(b"street -> gap", b"street -> check -> heater -> gap").replace(
        b"parts:", b"parts:\n  check: check_valve\n  heater: {kind: storage_heater, volume: 100 L, setpoint: 60 degC}"
    )
    report = check(read_bytes(text, file="filled.yaml"))
    assert next(one for one in report.heaters if one.name == "heater").verdict == "sealed"
