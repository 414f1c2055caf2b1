"""The kind "air_separator"."""

from usual import usual

from plumbnet.api import check, read_bytes
from plumbnet.layout.model.part import Free

# street -- fill -- back -- boiler -- scoop -- rad -- back
#                                       `-- tank
HEATING = b"""
plumbnet: 1
units: metric
rules: en-12828
parts:
  street: {kind: main, pressure: 300 kPa}
  fill: {kind: filling_loop, fill: 150 kPa}
  back: tee
  boiler: {kind: boiler, volume: 10 L, setpoint: 70 degC, relief: {pressure: 300 kPa}}
  scoop: {kind: air_separator, volume: 2 L}
  tank: {kind: expansion_tank, volume: 12 L, precharge: 140 kPa}
  pump: circulator
  rad: {kind: emitter, volume: 40 L}
runs:
  - street -> fill -> back -> boiler -> scoop -> pump -> rad -> back
  - scoop.tank -> tank
"""


def test_water_passes_an_air_separator_both_ways_and_to_its_tapping() -> None:
    scoop = usual("air_separator", volume="2 L")
    assert list(scoop.passages()) == [Free("in", "out"), Free("in", "tank")]
    assert list(scoop.contents()) == [("in", 0.002)]
    assert not list(scoop.outlets())


def test_tank_on_an_air_separator_serves_the_boiler_and_its_water_is_heated_with_the_rest() -> None:
    (boiler,) = check(read_bytes(HEATING, file="heating.yaml")).heaters
    assert boiler.verdict == "controlled"
    assert boiler.ladder[0].outlet == "tank"
    assert round(boiler.heated_volume_m3 * 1000) == 52
