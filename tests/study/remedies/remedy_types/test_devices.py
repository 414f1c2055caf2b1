"""Reducers exchanged and checks taken out; and what protects the main left alone."""

from dataclasses import replace

import pytest
from curing import RELIEVED, cure, cured, cures, efforts, heater, house

from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort

REDUCED = "street -> prv -> tee -> heater -> tap.hot"
SHARED = """street -> {device} -> tee -> cv2 -> heater -> tap.hot
            tee -> tank"""
LARGE = "volume: 15 gal"


def test_reducer_is_exchanged_for_one_with_a_bypass_where_the_main_stands_below_the_limit() -> None:
    layout = house(REDUCED)
    remedy = cure(layout, Effort.EXCHANGE_DEVICE)
    assert cured(layout, remedy).verdict is Verdict.OPEN
    assert "bypass" in remedy.title


def test_reducer_that_creeps_is_renewed_before_anything_else_is_done() -> None:
    runs = REDUCED.replace("heater -> tap.hot", "tee2 -> heater -> tap.hot\ntee2 -> tank")
    parts = {"street": "pressure: 100 psi", "tank": "volume: 5 gal, precharge: 50 psi"}
    layout = house(runs, **parts, prv="set: 50 psi, state: creeping")
    first = cures(layout)[0]
    assert (first.effort, first.title) == (
        Effort.RENEW_REDUCER,
        "Renew the seat of prv, or the whole reducer: it creeps.",
    )
    sound = house(runs, **parts, prv="set: 50 psi")
    assert replace(cured(layout, first), line=0) == replace(heater(sound), line=0)
    assert Effort.RENEW_REDUCER not in efforts(sound)


def test_bypass_cures_nothing_where_the_main_stands_above_the_limit() -> None:
    assert Effort.EXCHANGE_DEVICE not in efforts(house(REDUCED, street="pressure: 90 psi"))


@pytest.mark.parametrize("device", ["cv", "meter", "dual"])
def test_bypass_cures_nothing_where_a_check_stops_the_water_too(device: str) -> None:
    layout = house(
        f"street -> {device} -> prv -> tee -> heater -> tap.hot", meter="check: true", dual="kind: dual_check"
    )
    assert Effort.EXCHANGE_DEVICE not in efforts(layout)


@pytest.mark.parametrize("device", ["cv", "meter", "dual"])
def test_check_between_heater_and_tank_is_taken_out_where_another_protects_the_main(device: str) -> None:
    layout = house(SHARED.format(device=device), meter="check: true", dual="kind: dual_check", tank=LARGE)
    remedy = cure(layout, Effort.REMOVE_CHECK)
    assert remedy.title.startswith("Take out cv2")
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED


def test_last_check_before_the_main_is_never_taken_out() -> None:
    layout = house(SHARED.format(device="valve"), tank=LARGE)
    assert Effort.REMOVE_CHECK not in efforts(layout)


def test_reducer_does_not_stand_in_for_the_check_that_protects_the_main() -> None:
    layout = house(SHARED.format(device="prv"), tank=f"{LARGE}, precharge: 50 psi")
    assert Effort.REMOVE_CHECK not in efforts(layout)


@pytest.mark.parametrize("kind", ["dual_check", "double_check", "reduced_pressure_assembly", "vacuum_breaker"])
def test_backflow_preventer_between_heater_and_tank_is_never_taken_out(kind: str) -> None:
    layout = house(SHARED.format(device="cv"), cv2=f"kind: {kind}", tank=LARGE)
    assert Effort.REMOVE_CHECK not in efforts(layout)
    for remedy_effort in efforts(layout):
        assert remedy_effort in {Effort.MOVE, Effort.ADD}


def test_check_with_no_tank_behind_it_is_left_alone() -> None:
    assert Effort.REMOVE_CHECK not in efforts(house("street -> cv -> tee -> cv2 -> heater -> tap.hot", heater=RELIEVED))


def test_check_whose_going_would_flood_a_small_tank_is_left_alone() -> None:
    assert Effort.REMOVE_CHECK not in efforts(house(SHARED.format(device="cv"), tank="volume: 2 gal"))


def test_check_in_a_hot_pipe_is_taken_out_where_the_tank_hangs_behind_it() -> None:
    """The second heater's water comes to the hot header, and cv3 keeps it from the first heater and its tank."""
    runs = """street -> cv -> tee -> heater -> cv3 -> tee2 -> tap.hot
              tee -> tank
              street -> cv2 -> heater2 -> tee2"""
    layout = house(runs, heater2=RELIEVED, tank=LARGE)
    remedy = cure(layout, Effort.REMOVE_CHECK, "heater2")
    assert remedy.title.startswith("Take out cv3")
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED
    small = house(runs, heater2=RELIEVED, tank="volume: 5 gal")
    assert Effort.REMOVE_CHECK not in efforts(small, "heater2")
