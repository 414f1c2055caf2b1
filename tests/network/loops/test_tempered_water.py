"""Water behind a mixing valve comes to what the valve is set to; what a heater's own water reaches unmixed does not."""

from conftest import drawn

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.change import Change
from plumbnet.network.loops.heated_volume import HeatedVolume
from plumbnet.network.network import network_of

GALLON_M3 = 0.003785411784
C60, C50, C45 = 333.15, 323.15, 318.15
HEATER = "kind: storage_heater, volume: 100 gal, setpoint: 60 degC"

# A hotel:  street -- back -- cold ------------- mixer.cold
#                               `-- heater ------ mixer.hot     mixed -- buffer -- rooms -- pump -- back
HOTEL = """street -> back -> cold -> heater -> hot -> mixer.hot
           cold -> mixer.cold
           mixer.mixed -> buffer -> rooms -> pump -> back
           rooms -> tap.hot"""
MIXER = "kind: mixing_valve, outlet: 50 degC"
TEES = dict.fromkeys(("back", "cold", "hot", "rooms", "far"), "kind: tee")
BUFFER = "kind: storage_tank, volume: 30 gal"


def heated(runs: str, **parts: str) -> HeatedVolume:
    found = drawn(runs, **{**TEES, "heater": HEATER, "buffer": BUFFER, "mixer": MIXER, **parts})
    return next(each for each in found.network.heated if each.name == "heater")


def gallons(of: HeatedVolume) -> dict[float, float]:
    return {hot_k: round(volume_m3 / GALLON_M3, 6) for hot_k, volume_m3 in of.volumes_m3.items()}


def test_loop_behind_a_master_mixing_valve_comes_to_the_valves_outlet_and_the_store_to_its_setpoint() -> None:
    assert gallons(heated(HOTEL)) == {C60: 100, C50: 30}


def test_valve_that_does_not_say_its_outlet_tempers_nothing() -> None:
    assert gallons(heated(HOTEL, mixer="kind: mixing_valve")) == {C60: 130}


def test_valve_set_above_the_heater_makes_nothing_hotter() -> None:
    assert gallons(heated(HOTEL, mixer="kind: mixing_valve, outlet: 65 degC")) == {C60: 130}


def test_valve_that_passes_hot_water_tempers_nothing() -> None:
    sound = drawn(HOTEL, **TEES, heater=HEATER, buffer=BUFFER, mixer=MIXER).system
    failed = sound.with_changes([Change.model_validate({"fail": {"part": "mixer", "how": "passing_hot"}})])
    (found,) = network_of(failed).heated
    assert gallons(found) == {C60: 130}


# A hospital: the store is charged through a buffer by a pump of its own, unmixed; the rooms behind the mixer are not.
def test_buffer_between_heater_and_valve_is_as_hot_as_the_heater() -> None:
    runs = """street -> back -> cold -> heater -> buffer -> mixer.hot
              cold -> mixer.cold
              mixer.mixed -> store -> pump -> back"""
    assert gallons(heated(runs, store="kind: storage_tank, volume: 20 gal")) == {C60: 130, C50: 20}


# A house: the loop stands at the heater's temperature, and the mixer serves a tap beside it.
def test_valve_at_a_tap_outside_the_loop_tempers_nothing_of_it() -> None:
    runs = """street -> cold -> heater -> buffer -> rooms -> pump -> cold
              rooms -> mixer.hot
              cold -> mixer.cold
              mixer.mixed -> tap.hot"""
    assert gallons(heated(runs)) == {C60: 130}


def test_of_two_valves_in_a_loop_the_warmer_counts() -> None:
    runs = """street -> back -> cold -> heater -> hot -> mixer.hot
              hot -> mixer2.hot
              cold -> mixer.cold
              cold -> mixer2.cold
              mixer.mixed -> buffer -> far
              mixer2.mixed -> far -> pump -> back"""
    assert gallons(heated(runs, mixer2="kind: mixing_valve, outlet: 45 degC")) == {C60: 100, C50: 30}


def test_second_heater_in_the_loop_keeps_its_own_store_and_what_leaves_it_hot() -> None:
    runs = HOTEL.replace("rooms -> pump", "rooms -> heater2 -> far -> pump")
    found = heated(runs, heater2="kind: storage_heater, volume: 10 gal, setpoint: 60 degC", far=BUFFER)
    assert gallons(found) == {C60: 140, C50: 30}


def test_pipes_behind_the_valve_are_tempered_and_those_before_it_are_not() -> None:
    text = """plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cold: tee
  heater: {kind: storage_heater, volume: 100 gal, setpoint: 60 degC}
  mixer: {kind: mixing_valve, outlet: 50 degC}
  pump: circulator
runs:
  - {path: street -> cold, volume: 1 gal}
  - {path: cold -> heater, volume: 2 gal}
  - {path: heater -> mixer.hot, volume: 4 gal}
  - {path: cold -> mixer.cold, volume: 8 gal}
  - {path: mixer.mixed -> pump, volume: 16 gal}
  - {path: pump -> cold, volume: 32 gal}
"""
    (found,) = network_of(read_system(text.encode(), file="hotel.yaml")).heated
    assert gallons(found) == {C60: 104, C50: 2 + 8 + 16 + 32}
