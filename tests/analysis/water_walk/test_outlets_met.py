"""What an outlet takes of the water that comes to it, as the walk meets it; pressures in psi at the heater."""

import pytest
from conftest import PSI, system
from usual import usual

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.water_walk.outlets_met import lost
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import Conduct, Meeting, Refusing, Taking
from plumbnet.layout.model.part import Role
from plumbnet.network.outlets.ladder import MOST_RUNGS

CLOSED = "street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief"


def met(outlet: str, report: Report) -> Meeting:
    (found,) = [step.met for step in water_walk(report, report.heaters[0]).steps if step.part == outlet]
    return found


def taken(outlet: str, runs: str, **parts: str) -> Taking:
    found = met(outlet, plumbnet.check(system(runs, **parts)))
    assert isinstance(found, Taking)
    return found


@pytest.mark.parametrize(
    ("outlet", "runs", "role", "opens"),
    [
        ("street", "street -> heater -> tap.hot", Role.STREET, 60.0),
        ("tank", f"{CLOSED}\ntee -> tank", Role.TANK, 60.0),
        ("relief", CLOSED, Role.SAFETY_RELIEF, 150.0),
        ("spill", f"{CLOSED}\ntee -> spill", Role.EXPANSION_RELIEF, 100.0),
        ("vent", "street -> cv -> heater -> tap.hot\nheater.relief -> vent", Role.AIR, 17.3),
    ],
)
def test_outlet_takes_water_from_its_pressure_on(outlet: str, runs: str, role: Role, opens: float) -> None:
    found = taken(outlet, runs)
    assert found.role is role
    assert found.opens_pa / PSI == pytest.approx(opens, abs=0.05)
    assert (found.running, found.wrong_charge) == (None, None)


@pytest.mark.parametrize(("spill", "is_past"), [(80, False), (81, True)])
def test_outlet_at_the_limit_is_not_past_it(spill: int, *, is_past: bool) -> None:
    assert taken("spill", f"{CLOSED}\ntee -> spill", spill=f"pressure: {spill} psi").is_past_limit is is_past


def test_outlet_at_the_static_pressure_is_not_past_a_limit_below_it() -> None:
    assert not taken("street", "street -> heater -> tap.hot", street="pressure: 95 psi").is_past_limit


def test_way_out_takes_any_amount_before_what_lies_behind_a_reducer_opens() -> None:
    report = plumbnet.check(system("street -> tee -> heater -> tap.hot\ntee -> prv -> relief", prv="set: 100 psi"))
    assert met("relief", report) == Refusing("street")


def test_reducer_on_the_way_shuts_before_an_outlet_that_opens_above_its_set() -> None:
    report = plumbnet.check(system(f"{CLOSED}\ntee -> prv -> spill", prv="set: 70 psi"))
    assert met("spill", report) == Refusing(None)


def test_outlets_that_the_ladder_has_no_room_for_take_water_at_their_own_pressure() -> None:
    many = range(1, MOST_RUNGS + 3)
    runs = "\n".join(f"tee -> spill{n}" for n in many)
    sets = {f"spill{n}": f"pressure: {85 + n} psi, elevation: 10 ft" for n in many}
    report = plumbnet.check(
        system(f"street -> cv -> tee -> heater -> tap.hot\n{runs}", heater="elevation: 10 ft", **sets)
    )
    listed = {rung.outlet for rung in report.heaters[0].ladder}
    for n in many:
        found = met(f"spill{n}", report)
        assert isinstance(found, Taking)
        assert found.opens_pa == pytest.approx((85 + n) * PSI)
    assert len(listed) == MOST_RUNGS < len(many)


def test_tank_that_the_ladder_has_no_room_for_takes_water_from_the_static_pressure_on() -> None:
    """It is charged to less, and part full: it stands in balance with the line."""
    many = range(1, MOST_RUNGS + 3)
    runs = "\n".join(f"tee -> tank{n}" for n in many)
    charged = {f"tank{n}": "precharge: 40 psi" for n in many}
    report = plumbnet.check(system(f"street -> cv -> tee -> heater -> tap.hot\n{runs}", **charged))
    found = [met(f"tank{n}", report) for n in many]
    assert [one.opens_pa for one in found if isinstance(one, Taking)] == [pytest.approx(60 * PSI)] * len(many)


def test_tank_is_charged_wrong_beyond_the_tolerance_of_the_rules() -> None:
    found = taken("tank", f"{CLOSED}\ntee -> tank", tank="precharge: 50 psi")
    assert found.wrong_charge is not None
    assert found.wrong_charge.name == "tank"
    assert taken("tank", f"{CLOSED}\ntee -> tank", tank="precharge: 59 psi").wrong_charge is None


def test_only_a_relief_valve_below_its_supply_runs() -> None:
    parts = {"street": "pressure: 120 psi", "spill": "pressure: 100 psi", "relief": "pressure: 130 psi"}
    runs = "street -> tee -> heater -> tap.hot\ntee -> spill\ntee -> relief"
    running = taken("spill", runs, **parts).running
    assert running is not None
    assert running.name == "spill"
    assert taken("relief", runs, **parts).running is None


def test_what_takes_nothing_any_more_is_lost() -> None:
    assert lost(usual("expansion_tank", state="waterlogged")) is Conduct.IS_FULL
    assert lost(usual("relief_valve", state="plugged")) is Conduct.IS_PLUGGED
    for kind in ("expansion_tank", "relief_valve", "valve", "storage_heater"):
        assert lost(usual(kind)) is None
