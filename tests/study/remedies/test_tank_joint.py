"""Where a tank is joined: at a fitting that is there, or at a new tee."""

import pytest
from conftest import PSI
from curing import RELIEVED, heater, house, psi, scene

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.system import System
from plumbnet.layout.units.units import PASCAL_PER_METRE
from plumbnet.study.remedies.tank_joint import TankJoint, tank_joints


def joint(layout: System) -> TankJoint:
    return next(tank_joints(scene(layout), heater(layout)))


def test_tee_that_is_there_is_used() -> None:
    found = joint(house())
    assert (found.at, found.makes) == ("tee", ())
    assert found.charge == "60 psi"


def test_new_tee_is_set_into_the_cold_pipe_where_none_is() -> None:
    layout = house("street -> cv -> heater -> tap.hot")
    found = joint(layout)
    assert found.at == "heater-tee"
    assert found.where.endswith("in the pipe from cv to heater")
    assert "heater-tee" in with_changes(layout, found.makes).parts


def test_charge_and_tee_stand_at_the_height_of_the_heater() -> None:
    layout = house("street -> cv -> heater -> tap.hot", heater=f"elevation: 10 m, {RELIEVED}")
    found = joint(layout)
    assert psi(found.static_pa) == psi(60 * PSI - 10 * PASCAL_PER_METRE)
    assert found.charge == "45.8 psi"
    assert with_changes(layout, found.makes).parts["heater-tee"].elevation_m == pytest.approx(10.0)


def test_pipe_is_named_by_its_ports_where_two_join_the_same_parts() -> None:
    layout = house(
        """street -> cv -> heater.cold
           heater.hot -> store
           store.return -> pump -> heater.return
           store.out -> tap.hot""",
        heater=RELIEVED,
    )
    assert "heater-tee" in with_changes(layout, joint(layout).makes).parts


def test_heater_that_no_water_reaches_has_no_joint() -> None:
    layout = house("street -> tap.cold\n cv -> tee -> heater -> tap.hot")
    assert list(tank_joints(scene(layout), heater(layout))) == []


def test_line_that_stands_higher_than_any_tank_is_charged_has_no_joint() -> None:
    layout = house(street="pressure: 99 bar, elevation: 0 m")
    assert joint(layout).charge == "1435.9 psi"
    layout = house(street="pressure: 99 bar, elevation: 30 m")
    assert list(tank_joints(scene(layout), heater(layout))) == []
