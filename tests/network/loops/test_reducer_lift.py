"""Returns that must come back above the set of a reducer; pressures by hand, in psi."""

import pytest
from conftest import PSI, Drawn, drawn

from plumbnet.network.loops.loops import HinderedPump
from plumbnet.rules.facts.limit_facts import ROUNDING_PA

LOW_ZONE = """
street -> tee1 -> heater -> tee2 -> prv -> tee3 -> tap.hot
tee3 -> pump -> tee1
"""
"""Street 60, a zone behind a reducer of 50, and a pump that sends its water back to the heater above."""


def loops(d: Drawn) -> list[tuple[str, ...]]:
    return [loop.parts for loop in d.network.circulation.loops]


def hindered(d: Drawn) -> HinderedPump:
    (one,) = (one for one in d.network.circulation.hindered if one.pump == "pump")
    return one


def psi(value: float) -> object:
    return pytest.approx(value * PSI, abs=ROUNDING_PA)


@pytest.mark.parametrize("check", ["check: true", "check: false"])
def test_pump_of_unknown_head_does_not_lift_from_the_set_of_a_reducer(check: str) -> None:
    d = drawn(LOW_ZONE, pump=check)
    assert (loops(d), d.network.circulation.idle) == ([], ("pump",))
    why = hindered(d).why
    assert (why.reducer, why.set_pa, why.at) == ("prv", psi(50), ("pump", "out"))
    assert (why.comes_pa, why.stands_pa) == (psi(50), psi(60))
    assert hindered(d).head_helps


@pytest.mark.parametrize(
    ("head", "is_driven"), [("9.9 psi", False), ("10 psi", True), ("23.1 ft", True), ("23 ft", False)]
)
@pytest.mark.parametrize("check", ["true", "false"])
def test_head_that_lifts_from_the_set_to_what_stands_behind_the_pump_drives_the_loop(
    head: str, check: str, *, is_driven: bool
) -> None:
    # 10 psi are 23.067 ft of water
    d = drawn(LOW_ZONE, pump=f"head: {head}, check: {check}")
    assert bool(loops(d)) is is_driven
    assert bool(d.network.circulation.hindered) is not is_driven


def test_head_that_does_not_do_is_counted_in_what_comes() -> None:
    assert hindered(drawn(LOW_ZONE, pump="head: 4 psi, check: true")).why.comes_pa == psi(54)


@pytest.mark.parametrize(("street", "is_driven"), [("50 psi", True), ("50.1 psi", False), ("40 psi", True)])
def test_reducer_that_stands_wide_open_hinders_nobody(street: str, *, is_driven: bool) -> None:
    assert bool(loops(drawn(LOW_ZONE, street=f"pressure: {street}"))) is is_driven


def test_low_zone_keeps_its_set_and_its_water_is_not_heated() -> None:
    d = drawn(LOW_ZONE, pump="check: true")
    assert d.static("tee3") == pytest.approx(50)
    (heated,) = d.network.heated
    assert {d.network.piping.ports[piece.node].part for piece in heated.pieces} == {"heater"}


def test_low_zone_that_a_pump_drives_keeps_its_set_too_and_its_water_is_heated() -> None:
    d = drawn(LOW_ZONE.replace("-> tee3 ->", "-> store -> tee3 ->"), pump="check: true, head: 20 psi")
    assert d.static("tee3") == pytest.approx(50)
    assert d.zone("tee3") in d.network.zones_of(d.network.heated[0])


def test_low_zone_stands_at_the_pressure_above_where_its_return_has_no_check() -> None:
    assert drawn(LOW_ZONE).static("tee3") == pytest.approx(60)


def test_heights_count_on_the_way_round() -> None:
    # 50 psi at the reducer 40 ft up is 67.3 at datum, more than the 60 behind the pump; told at each part's own height
    assert loops(drawn(LOW_ZONE, prv="elevation: 40 ft", street="pressure: 60 psi"))
    why = hindered(drawn(LOW_ZONE, prv="elevation: -40 ft", pump="check: true, elevation: -20 ft")).why
    assert why.set_pa == psi(50)
    assert why.stands_pa == pytest.approx((60 + 8.67) * PSI, abs=0.01 * PSI)
    assert why.comes_pa == pytest.approx((50 - 8.67) * PSI, abs=0.01 * PSI)


def test_pump_in_the_supply_of_the_zone_helps_nothing_whatever_its_head() -> None:
    d = drawn("street -> tee1 -> heater -> pump -> prv -> tee3 -> tap.hot\ntee3 -> cv -> tee1", pump="head: 90 psi")
    assert loops(d) == []
    assert not hindered(d).head_helps
    assert hindered(d).why.at == ("cv", "out")


def test_two_pumps_in_a_row_lift_together() -> None:
    runs = "street -> tee1 -> heater -> prv -> tee3 -> tap.hot\ntee3 -> pump1 -> pump2 -> tee1"
    together = {"pump1": "check: true, head: 6 psi", "pump2": "check: true, head: 6 psi"}
    assert {"pump1", "pump2", "prv"} <= set(*loops(drawn(runs, **together)))
    assert loops(drawn(runs, **{**together, "pump2": "check: true"})) == []


TWO_ZONES = """
street -> tee1 -> heater -> tee2 -> prv1 -> tee3 -> cv1 -> tee5
tee2 -> prv2 -> tee4 -> cv2 -> tee5
tee5 -> pump -> tee1
tee3 -> tap1.hot
tee4 -> tap2.hot
"""


def test_pump_of_two_zones_drives_the_one_that_it_can_lift() -> None:
    d = drawn(TWO_ZONES, prv1="set: 40 psi", prv2="set: 55 psi", pump="head: 5 psi")
    assert [set(parts) for parts in loops(d)] == [{"pump", "tee1", "heater", "tee2", "prv2", "tee4", "cv2", "tee5"}]


def test_pump_of_two_zones_that_lifts_neither_is_told_of_the_higher() -> None:
    d = drawn(TWO_ZONES, prv1="set: 40 psi", prv2="set: 55 psi", pump="head: 4 psi")
    assert (hindered(d).why.reducer, hindered(d).why.comes_pa) == ("prv2", psi(59))


def test_zone_with_a_heater_of_its_own_has_a_loop_of_its_own() -> None:
    # what is right: the return ends behind the reducer
    d = drawn("street -> prv -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1", street="pressure: 90 psi")
    assert loops(d) == [("pump", "tee1", "heater", "tee2")]


UPPER_ZONE = """
street -> tee1 -> heater -> tee2 -> booster -> tee3 -> tap.hot
tee3 -> pump -> prv -> tee1
"""
"""Street 60, an upper zone 40 above it, whose water comes back to the heater below through a reducer."""


@pytest.mark.parametrize(("set_psi", "is_driven"), [(59, False), (61, True)])
def test_upper_zone_circulates_where_its_return_is_reduced_to_what_stands_below_or_more(
    set_psi: int, *, is_driven: bool
) -> None:
    d = drawn(UPPER_ZONE, prv=f"set: {set_psi} psi", pump="check: true")
    assert bool(loops(d)) is is_driven
    assert d.static("tee1") == pytest.approx(60)


def test_return_that_the_reducer_lets_out_too_low_is_told_behind_it_and_no_head_helps() -> None:
    one = hindered(drawn(UPPER_ZONE, prv="set: 55 psi", pump="check: true, head: 90 psi"))
    assert (one.why.at, one.why.comes_pa, one.why.stands_pa) == (("prv", "out"), psi(55), psi(60))
    assert not one.head_helps


def test_reducer_past_which_a_device_lets_water_freely_hinders_nobody() -> None:
    passages = "kind: device, ports: [a, b], passages: [{reducing: [a, b], set: 10 psi}, {free: [a, b]}]"
    d = drawn("street -> tee1 -> heater -> box.a\nbox.b -> pump -> tee1", box=passages)
    assert loops(d)
