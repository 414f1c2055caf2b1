"""Parts that stand in a pipe."""

import pytest
from conftest import PSI, system
from usual import usual

from plumbnet.api import check
from plumbnet.layout.model.event import Extremes
from plumbnet.layout.model.part import Free, OneWay, Reducing, Shut

BOTH_WAYS, ONE_WAY = [Free("in", "out")], [OneWay("in", "out")]


def test_tee_is_one_joint_for_any_number_of_pipes() -> None:
    tee = usual("tee")
    assert tee.port_names() == ("joint",)
    assert (tee.shared, tee.mate("joint"), tee.is_fitting) == (frozenset({"joint"}), "joint", True)
    assert list(tee.passages()) == []


@pytest.mark.parametrize("kind", ["meter", "circulator", "softener", "filter"])
def test_device_has_no_check_unless_it_says_so(kind: str) -> None:
    assert list(usual(kind).passages()) == BOTH_WAYS
    assert list(usual(kind, check=True).passages()) == ONE_WAY
    assert usual(kind).assumed["check"] == "has no check valve"
    assert not usual(kind).is_check


def test_valve_stands_open_unless_it_says_otherwise() -> None:
    assert list(usual("valve").passages()) == BOTH_WAYS
    assert list(usual("valve", state="shut").passages()) == [Shut("in", "out")]


def test_only_an_open_valve_that_is_not_locked_can_be_shut_by_hand() -> None:
    assert usual("valve").is_valve()
    assert not usual("valve", locked=True).is_valve()
    assert not usual("valve", state="shut").is_valve()


@pytest.mark.parametrize("kind", ["meter", "tee", "check_valve", "fixture", "pressure_reducer"])
def test_nothing_else_is_a_valve_for_the_hand(kind: str) -> None:
    assert not usual(kind).is_valve()


def test_reducer_holds_its_set_and_has_no_bypass_unless_it_says_so() -> None:
    assert list(usual("pressure_reducer", set="3 bar").passages()) == [Reducing("in", "out", 300_000, bypass=False)]
    assert list(usual("pressure_reducer", set="3 bar", bypass=True).passages()) == [
        Reducing("in", "out", 300_000, bypass=True)
    ]
    assert usual("pressure_reducer").assumed == {"bypass": "has no bypass"}


def test_creeping_reducer_lets_all_that_stands_before_it_through_and_nothing_back() -> None:
    assert list(usual("pressure_reducer", state="creeping").passages()) == ONE_WAY
    assert list(usual("pressure_reducer", state="creeping", bypass=True).passages()) == BOTH_WAYS
    assert list(usual("pressure_reducer", state="creeping").strays()) == []


@pytest.mark.parametrize(("bypass", "can"), [(True, ["bypass_stuck_shut", "creeping"]), (False, ["creeping"])])
def test_reducer_may_creep_and_with_a_bypass_lose_it(can: list[str], *, bypass: bool) -> None:
    reducer = usual("pressure_reducer", bypass=bypass)
    assert [event.values["how"] for event in reducer.events(Extremes(5e5, 372.0))] == can
    assert reducer.fails_as == "bypass_stuck_shut"  # as files have meant it that name no failure


# street of 100 psi -- reducer, 50 psi -- tee with tank -- heater -- tap
def test_behind_a_reducer_that_creeps_stands_the_pressure_of_the_street() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief"
    parts = {"street": "pressure: 100 psi", "tank": "volume: 5 gal, precharge: 50 psi"}
    (sound,) = check(system(runs, **parts)).heaters
    (creeping,) = check(system(runs, **parts, prv="set: 50 psi, state: creeping")).heaters
    assert (sound.verdict, creeping.verdict) == ("controlled", "trapped")
    assert sound.static_pa == pytest.approx(50 * PSI)
    assert creeping.static_pa == pytest.approx(100 * PSI)


@pytest.mark.parametrize("kind", ["softener", "filter"])
def test_treatment_holds_the_water_it_is_said_to(kind: str) -> None:
    assert list(usual(kind).contents()) == [("out", 0.0)]
    assert list(usual(kind, volume="10 L").contents()) == [("out", 0.010)]


def test_heat_trap_is_no_check() -> None:
    assert list(usual("heat_trap").passages()) == BOTH_WAYS
    assert not usual("heat_trap").is_check


def test_storage_tank_opens_into_all_its_tappings() -> None:
    tank = usual("storage_tank", volume="300 L")
    assert list(tank.passages()) == [Free("in", "out"), Free("in", "return"), Free("in", "relief")]
    assert list(tank.contents()) == [("in", 0.3)]
    assert tank.is_vessel
