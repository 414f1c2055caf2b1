import pytest
from conftest import PSI, drawn

from plumbnet.analysis.observations.relief_facts import reliefs, relieved_by
from plumbnet.layout.model.part import Role
from plumbnet.rules.facts.device_facts import ReliefFacts

METRE_PSI = 9806.65 / PSI


def relief(runs: str, role: Role = Role.SAFETY_RELIEF, **parts: str) -> ReliefFacts:
    (found,) = reliefs(drawn(runs, **parts).network, role)
    return found


def relieving(runs: str, **parts: str) -> tuple[str, ...]:
    """The relief valves of the one heater."""
    network = drawn(runs, **parts).network
    (inlet,) = (one.inlet for one in network.heated)
    return relieved_by(network).get(inlet, ())


HOUSE = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def test_relief_valve_touches_the_heater_it_is_piped_to() -> None:
    found = relief(HOUSE)
    assert found.touches == ("heater",)
    assert found.touches_vessel
    assert found.set_pa == pytest.approx(150 * PSI)
    assert found.safety_pa == pytest.approx(150 * PSI)
    assert found.static_pa == pytest.approx(60 * PSI)


def test_shorthand_relief_valve_is_the_heaters_own() -> None:
    found = relief("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 125 psi}")
    assert (found.name, found.touches) == ("heater/relief", ("heater",))
    assert relieving("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 125 psi}") == ("heater/relief",)


def test_tee_joins_a_relief_valve_to_the_heater_and_a_valve_does_not() -> None:
    assert relieving("street -> tee -> heater -> tap.hot\ntee -> relief") == ("relief",)
    assert relieving("street -> tee -> valve -> heater -> tap.hot\ntee -> relief") == ()
    assert relieving("street -> tee -> heater -> tap.hot\nheater.relief -> valve -> relief") == ()


def test_check_between_them_parts_them_whichever_way_it_faces() -> None:
    assert relieving("street -> heater -> tap.hot\nheater.relief -> cv -> relief") == ()
    assert relieving("street -> heater -> tap.hot\nrelief.in -> cv -> heater.relief") == ()


def test_expansion_relief_is_no_safety_relief() -> None:
    assert relieving("street -> tee -> heater -> tap.hot\ntee -> spill") == ()
    assert relief("street -> tee -> heater -> tap.hot\ntee -> spill", Role.EXPANSION_RELIEF).safety_pa is None


def test_input_of_all_heaters_it_touches_is_added_up() -> None:
    runs = "street -> cv -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot\ntee -> relief"
    found = relief(runs, heater1="input: 10 kW", heater2="input: 15 kW, setpoint: 160 degF")
    assert {"heater1", "heater2"} <= set(found.touches)
    assert found.serves_w == pytest.approx(25e3)
    assert found.serves_k == pytest.approx(344.26, abs=0.01)  # the hotter of the two


def test_input_that_is_not_given_is_not_taken_as_nothing() -> None:
    found = relief(HOUSE, heater="kind: storage_heater, volume: 50 gal, setpoint: 140 degF")
    assert found.serves_w is None


def test_lowest_rating_of_what_it_touches_is_read_at_its_own_height() -> None:
    # heater 10 m below the valve: its 150 psi are reached when the valve has that much less
    found = relief(HOUSE, relief="elevation: 10 m", heater="rating: 150 psi")
    assert found.rated == "heater"
    assert found.rating_pa == pytest.approx((150 - 10 * METRE_PSI) * PSI)
    assert found.static_pa == pytest.approx((60 - 10 * METRE_PSI) * PSI)


def test_part_without_a_rating_gives_none() -> None:
    found = relief(HOUSE)
    assert (found.rated, found.rating_pa) == (None, None)


def test_safety_set_is_the_lowest_in_the_zone_read_at_the_valve() -> None:
    runs = HOUSE + "\ntee -> spill\ntee -> relief2"
    found = relief(runs, Role.EXPANSION_RELIEF, relief2="pressure: 125 psi, elevation: 10 m", spill="elevation: -5 m")
    assert found.safety_pa == pytest.approx((125 + 15 * METRE_PSI) * PSI)


def test_relief_valve_no_water_reaches_has_no_static_pressure() -> None:
    found = relief("street -> tap.cold\nheater -> tee\nheater.relief -> relief")
    assert found.static_pa is None
    assert found.touches_vessel


def test_relief_valve_in_a_pipe_touches_no_vessel() -> None:
    assert not relief("street -> tee -> valve -> heater -> tap.hot\ntee -> relief").touches_vessel


def test_relief_valves_come_in_the_order_of_the_file() -> None:
    network = drawn("street -> tee -> heater -> tap.hot\ntee -> relief2\nheater.relief -> relief1").network
    assert [one.name for one in reliefs(network, Role.SAFETY_RELIEF)] == ["relief2", "relief1"]


def test_relief_valve_of_the_boiler_that_heats_a_coil_does_not_relieve_the_store_around_it() -> None:
    network = drawn(
        """street -> cv -> tee -> indirect -> tap.hot
        boiler -> tee3 -> indirect.coil_in
        indirect.coil_out -> tee2 -> pump -> boiler
        tee3 -> relief"""
    ).network
    own = {network.piping.ports[node].part: names for node, names in relieved_by(network).items()}
    assert own["indirect"] == ()
