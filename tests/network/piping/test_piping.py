import pytest
from conftest import PSI, drawn

from plumbnet.layout.model.system import End

FOOT_OF_WATER = (
    0.4328  # psi, at 39 degF and standard gravity: 62.43 lb/ft3 over 144 in2/ft2, less 0.2 % for colder units
)


def test_pipes_join_ports_both_ways() -> None:
    piping = drawn("street -> meter -> heater").network.piping
    assert piping.free.has_edge(piping.node_of[End("street", "out")], piping.node_of[End("meter", "in")])
    assert piping.free.has_edge(piping.node_of[End("meter", "out")], piping.node_of[End("heater", "cold")])


def test_coil_and_tank_of_an_indirect_heater_hold_two_waters() -> None:
    # street -> cold [ tank ] hot -> tap
    #                [ coil ] <- -> boiler
    d = drawn("street -> indirect -> tap.hot\nboiler -> indirect.coil_in\nindirect.coil_out -> boiler")
    assert d.zone("indirect.cold") == d.zone("indirect.return") == d.zone("tap.hot")
    assert d.zone("indirect.coil_in") == d.zone("indirect.coil_out") == d.zone("boiler")
    assert d.zone("indirect.cold") != d.zone("indirect.coil_in")


def test_check_valve_points_the_way_the_run_is_written() -> None:
    (gate,) = drawn("street -> cv -> heater").network.piping.gates
    piping = drawn("street -> cv -> heater").network.piping
    assert (piping.ports[gate.start].port, piping.ports[gate.end].port) == ("in", "out")
    assert gate.forward is not None
    assert gate.backward is None


def test_bypass_lets_water_back_through_a_reducer() -> None:
    (plain,) = drawn("street -> prv -> heater").network.piping.gates
    (bypassed,) = drawn("street -> prv -> heater", prv="bypass: true").network.piping.gates
    assert plain.backward is None
    assert bypassed.backward is not None


def test_set_pressure_counts_at_the_height_of_the_reducer() -> None:
    (gate,) = drawn("street -> prv -> heater", prv="set: 50 psi, elevation: 100 ft").network.piping.gates
    assert gate.forward is not None
    assert gate.forward.below_pa / PSI == pytest.approx(50 + 100 * FOOT_OF_WATER, rel=2e-3)


def test_shut_valve_is_a_gate_that_opens_neither_way() -> None:
    (gate,) = drawn("street -> valve -> heater", valve="state: shut").network.piping.gates
    assert gate.is_shut
    assert gate.forward is gate.backward is None


def test_only_a_hand_valve_that_is_open_and_not_locked_is_a_door() -> None:
    d = drawn("street -> valve1 -> valve2 -> valve3 -> heater", valve2="locked: true", valve3="state: shut")
    assert [(door.part, door.is_valve) for door in d.network.piping.doors] == [("valve1", True)]


def test_crossover_and_unchecked_mixing_valve_are_doors_nobody_counts_on() -> None:
    d = drawn(
        """street -> tee1 -> heater -> tee2 -> tap.hot
        tee1 -> tap.cold
        tee2 -> mixer.hot
        tee1 -> mixer.cold""",
        tap="crossover: true",
        mixer="checks: false",
    )
    assert [(door.part, door.is_valve) for door in d.network.piping.doors] == [
        ("tap", False),
        ("mixer", False),
        ("mixer", False),
    ]


def test_relief_valve_written_inside_a_heater_sits_on_its_tapping() -> None:
    d = drawn("street -> heater", heater="relief: {pressure: 150 psi}")
    assert d.cell("heater/relief") == d.cell("heater")
    assert [site.part for site in d.network.piping.sites()] == ["street", "heater/relief"]


def test_outlets_stand_at_their_own_height() -> None:
    # a vent with its rim 40 ft up opens under 40 ft of water
    d = drawn("street -> heater -> vent", vent="elevation: 40 ft")
    vent = next(site for site in d.network.piping.sites() if site.part == "vent")
    assert vent.opens_pa / PSI == pytest.approx(40 * FOOT_OF_WATER, rel=2e-3)


def test_waterlogged_tank_and_plugged_relief_are_no_outlets() -> None:
    d = drawn(
        "street -> tee1 -> heater\ntee1 -> tank\nheater.relief -> relief",
        tank="state: waterlogged",
        relief="state: plugged",
    )
    assert [site.part for site in d.network.piping.sites()] == ["street"]
