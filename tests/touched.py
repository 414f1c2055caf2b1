"""Boards for tests: what may be touched of a layout, by names of parts and words of what they may be instead."""

from collections.abc import Sequence
from functools import cache

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import System
from plumbnet.study.touching.touch_code import Touch
from plumbnet.study.touching.touch_states import TouchStates

EVERY_KIND = """
plumbnet: 1
title: "A works with a bit of everything (invented), Quarry Hill"
parts:
  street: {kind: main, pressure: 70 psi}
  curb-stop: valve
  meter: {kind: meter, check: true}
  dual: dual_check
  assembly: double_check
  strainer: filter
  softener: softener
  reducer: {kind: pressure_reducer, set: 60 psi}
  booster: {kind: booster_pump, rise: 10 psi, check: false}
  tank-tee: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}
  split: tee
  breaker: vacuum_breaker
  hose: {kind: fixture, outdoor: true}
  check: check_valve
  bleed: {kind: expansion_relief, pressure: 100 psi}
  bleed-tee: tee
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  hot-tee: tee
  pump: circulator
  balance: balancing_valve
  mixer: {kind: mixing_valve, outlet: 120 degF}
  bath: fixture
  sink: fixture
  instant: {kind: tankless_heater, setpoint: 130 degF}
  basin: fixture
  rpz: reduced_pressure_assembly
  loop: {kind: filling_loop, fill: 12 psi}
  boiler-tee: tee
  vented: vented_dual_check
  boiler: {kind: boiler, volume: 5 gal, setpoint: 180 degF, relief: {pressure: 30 psi}}
  scoop: air_separator
  driver: circulator
  radiator: {kind: emitter, volume: 1 gal}
  buffer: {kind: storage_tank, volume: 20 gal}
  spring: {kind: well, cut_in: 30 psi, cut_out: 50 psi}
  shed: fixture
  cistern: {kind: open_tank, elevation: 20 ft}
  pipe-end: {kind: vent, elevation: 30 ft}
  roof-tee: tee
  trough: fixture
runs:
  - street -> curb-stop -> meter -> dual -> assembly -> strainer -> softener -> reducer -> booster -> tank-tee -> split
  - tank-tee -> tank
  - split -> check -> bleed-tee -> heater -> hot-tee -> mixer.hot
  - bleed-tee -> bleed
  - hot-tee -> pump -> balance -> heater.return
  - split -> mixer.cold
  - mixer -> bath.hot
  - hot-tee -> sink.hot
  - split -> sink.cold
  - split -> breaker -> hose.cold
  - split -> instant -> basin.hot
  - split -> rpz -> loop -> vented -> boiler-tee -> boiler -> scoop -> driver -> radiator -> buffer -> boiler-tee
  - spring -> shed.cold
  - cistern -> roof-tee -> trough.cold
  - roof-tee -> pipe-end
"""
"""One layout with a part of nearly every kind that can be touched, invented for the tests."""
HOUSE = """
plumbnet: 1
title: "A house on Mill Lane (invented)"
parts:
  street: {kind: main, pressure: 62 psi}
  stop: valve
  meter: {kind: meter, check: true}
  split: tee
  tank-stop: valve
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 62 psi}
  heater:
    {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 40000 Btu/h,
     relief: {pressure: 150 psi, temperature: 210 degF}}
  sink: fixture
runs:
  - street -> stop -> meter -> split -> heater -> sink.hot
  - split -> tank-stop -> tank
  - split -> sink.cold
"""
"""A house with a check in its meter, and a tank that a valve can cut off."""


def states_of(layout: str | System) -> TouchStates:
    """The states of a layout; of one in text they are made once, and keep what is asked of them."""
    return _of_text(layout) if isinstance(layout, str) else TouchStates(plumbnet.check(layout))


@cache
def _of_text(layout: str) -> TouchStates:
    return TouchStates(plumbnet.check(layout.encode()))


def touch(states: TouchStates, name: str, words: str) -> Touch:
    """The touch that makes the part of a name what the words say; of a number `words` are as in "pressure=80"."""
    at = [one.name for one in states.touchables].index(name)
    one = states.touchables[at]
    field, equals, value = words.partition("=")
    if equals:
        return Touch(at, None, [number.words for number in one.numbers].index(field), float(value))
    return Touch(at, [option.words for option in one.options].index(words))


def reported(states: TouchStates, *touched: tuple[str, str]) -> Report:
    return states.report_in(touches(states, touched))


def touches(states: TouchStates, touched: Sequence[tuple[str, str]]) -> tuple[Touch, ...]:
    return tuple(touch(states, name, words) for name, words in touched)
