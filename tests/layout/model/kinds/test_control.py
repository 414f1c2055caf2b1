"""Parts that take up or let off expanding water."""

import pytest
from usual import usual

from plumbnet.layout.model.part import Cushion, Outlet, Role


def test_sound_tank_takes_water_above_its_charge() -> None:
    tank = usual("expansion_tank", volume="20 L", precharge="4 bar", acceptance="11 L")
    assert list(tank.outlets()) == [Outlet("in", Role.TANK, 400_000)]
    assert tank.cushion() == Cushion(0.02, 400_000, 0.011, is_sound=True)


def test_waterlogged_tank_takes_nothing() -> None:
    tank = usual("expansion_tank", state="waterlogged")
    assert list(tank.outlets()) == []
    cushion = tank.cushion()
    assert cushion is not None
    assert not cushion.is_sound


def test_tank_without_a_known_acceptance_is_not_bounded_by_one() -> None:
    cushion = usual("expansion_tank").cushion()
    assert cushion is not None
    assert cushion.acceptance_m3 is None


def test_tank_cannot_accept_more_than_it_holds() -> None:
    assert usual("expansion_tank", volume="3 gal", acceptance="3 gal")
    with pytest.raises(ValueError, match="the acceptance cannot be more than the volume"):
        usual("expansion_tank", volume="3 gal", acceptance="3.1 gal")


@pytest.mark.parametrize(
    ("kind", "role"), [("relief_valve", Role.SAFETY_RELIEF), ("expansion_relief", Role.EXPANSION_RELIEF)]
)
def test_relief_opens_at_its_set_unless_it_is_plugged(kind: str, role: Role) -> None:
    (outlet,) = usual(kind, pressure="7 bar").outlets()
    assert (outlet.port, outlet.role, outlet.opens_pa) == ("in", role, 700_000)
    assert list(usual(kind, state="plugged").outlets()) == []
    assert usual(kind).failures == {"plugged": {"state": "plugged"}}


@pytest.mark.parametrize("kind", ["expansion_tank", "relief_valve", "expansion_relief"])
def test_run_ends_at_a_part_with_a_single_connection(kind: str) -> None:
    part = usual(kind)
    assert (part.port_names(), part.enters_at(), part.leaves_at(), part.mate("in")) == (("in",), "in", None, None)
    assert list(part.passages()) == []


def test_relief_valve_has_its_set_plugged_or_not_and_no_other_part_has_one() -> None:
    for state in ("sound", "plugged"):
        assert list(usual("relief_valve", pressure="7 bar", state=state).safety_sets()) == [("in", 700_000.0)]
        assert list(usual("expansion_relief", state=state).safety_sets()) == []
