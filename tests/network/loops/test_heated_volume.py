import pytest
from conftest import Drawn, drawn

from plumbnet.layout.file.loader import read_system
from plumbnet.network.loops.heated_volume import HeatedVolume

GALLON_M3 = 0.003785411784


def heated(d: Drawn, name: str) -> HeatedVolume:
    return next(each for each in d.network.heated if each.name == name)


def gallons(d: Drawn, name: str) -> float:
    return round(heated(d, name).volume_m3 / GALLON_M3, 6)


def test_storage_heater_warms_its_own_store() -> None:
    d = drawn("street -> heater -> tap.hot")
    assert gallons(d, "heater") == 50
    assert not heated(d, "heater").is_idle


def test_pipe_that_no_pump_drives_is_not_heated() -> None:
    # the pipe to the tap holds water, but it stands
    d = drawn("street -> heater -> store -> tap.hot")
    assert gallons(d, "heater") == 50


def test_everything_in_a_driven_loop_is_heated() -> None:
    # 50 in the heater, 80 in the store: the pump carries the heat over
    d = drawn("street -> heater -> store -> pump -> heater.return")
    assert gallons(d, "heater") == 130


def test_flow_through_heater_is_idle_until_a_pump_drives_water_through_it() -> None:
    assert heated(drawn("street -> tankless -> tap.hot"), "tankless").is_idle
    d = drawn("street -> tee1 -> tankless -> store -> pump -> tee1")
    assert not heated(d, "tankless").is_idle
    assert gallons(d, "tankless") == pytest.approx(80 + 0.264, abs=1e-3)


def test_flow_through_heater_beside_a_pump_on_a_dead_end_stays_idle() -> None:
    d = drawn("street -> tankless -> tee1 -> tap.hot\ntee1 -> pump -> store")
    assert heated(d, "tankless").is_idle


def test_coil_belongs_to_the_boiler_and_the_tank_to_itself() -> None:
    # 10 in the boiler and 5 L (1.3 gal) in the coil; 50 in the tank
    d = drawn("street -> indirect -> tap.hot\nboiler -> pump -> indirect.coil_in\nindirect.coil_out -> boiler")
    assert gallons(d, "boiler") == pytest.approx(11.32, abs=0.01)
    assert gallons(d, "indirect") == 50


def test_water_of_two_loops_on_one_heater_is_counted_once_each() -> None:
    d = drawn(
        """heater -> store1 -> pump1 -> heater.return
        heater.cold -> store2 -> pump2 -> heater.relief"""
    )
    assert gallons(d, "heater") == 50 + 80 + 80


def test_two_pumps_side_by_side_do_not_heat_the_same_water_twice() -> None:
    d = drawn("boiler -> tee1 -> pump1 -> tee2 -> emitter -> boiler\ntee1 -> pump2 -> tee2")
    assert gallons(d, "boiler") == 10 + 5


def test_pipes_of_a_driven_loop_are_heated_and_what_holds_no_water_is_no_piece() -> None:
    text = """
        plumbnet: 1
        units: us
        parts:
          heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF}
          split: tee
          screen: filter
          pump: circulator
        runs:
          - {path: heater -> split, volume: 2 gal}
          - split -> screen -> pump -> heater.return
    """
    (one,) = Drawn(read_system(text.encode(), file="drawn.yaml")).network.heated
    assert {piece.name: round(piece.volume_m3 / GALLON_M3, 6) for piece in one.pieces} == {
        "heater.cold": 50,
        "pipe 0": 2,
    }
