from sketching import chance, recipe

from plumbnet.study.exercise.blocks.service_pipe import ASSEMBLIES, service
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.stock.stretch import Spot, part_of
from plumbnet.study.exercise.usual_sizes import USUAL


def served(seed: int = 3, **shares: float) -> Sketch:
    drawn = Sketch(chance(seed), USUAL["us"])
    service(drawn, recipe(**shares))
    return drawn


def kinds(seed: int = 3, *, place: Spot = Spot.SERVICE, **shares: float) -> list[str]:
    drawn = served(seed, **shares)
    (stretch,) = [one for one in drawn.stretches if one.place is place]
    return [str(drawn.parts[part_of(stop)]["kind"]) for stop in stretch.stops]


def test_water_comes_by_main_meter_and_stop_to_the_first_tee() -> None:
    assert kinds() == ["main", "meter", "valve", "tee", "tee"]


def test_devices_stand_behind_the_stop_in_the_order_of_practice() -> None:
    found = kinds(reducer=1.0, backflow=1.0, assembly=1.0, treatment=1.0)
    assert found[:5] == ["main", "meter", "valve", "tee", "pressure_reducer"]
    assert found[5] in {kind for _, kind in ASSEMBLIES}
    assert found[6] in {"softener", "filter"}


def test_backflow_preventer_may_be_a_plain_check_valve() -> None:
    found = {tuple(kinds(seed, backflow=1.0, assembly=0.0)) for seed in range(5)}
    assert found == {("main", "meter", "valve", "tee", "check_valve", "tee")}


def test_high_main_is_reduced_unless_it_was_forgotten() -> None:
    assert "pressure_reducer" in kinds(high_main=1.0)
    assert "pressure_reducer" not in kinds(high_main=1.0, unreduced=1.0)


def test_building_stands_at_what_the_reducer_lets_through() -> None:
    drawn = served(high_main=1.0)
    assert drawn.parts["reducer"]["set"] == f"{drawn.line} psi"


def test_tap_in_the_yard_has_what_may_stand_in_the_building_as_well() -> None:
    found = kinds(place=Spot.YARD, second_meter=1.0, second_reducer=1.0, yard_check=1.0)
    assert found == ["tee", "meter", "pressure_reducer", "check_valve", "fixture"]


def test_pump_that_raises_the_pressure_stands_before_the_backflow_preventer() -> None:
    found = kinds(booster=1.0, backflow=1.0, assembly=0.0)
    assert found[4:6] == ["booster_pump", "check_valve"]
    assert kinds(place=Spot.YARD, vacuum_breaker=1.0) == ["tee", "vacuum_breaker", "fixture"]


def test_one_of_two_meters_has_a_check() -> None:
    drawn = served(second_meter=1.0)
    assert [drawn.parts[name].get("check", False) for name in ("meter", "meter-2")] == [True, False]


def test_two_reducers_are_set_apart() -> None:
    for seed in range(5):
        drawn = served(seed, reducer=1.0, second_reducer=1.0)
        assert drawn.parts["reducer"]["set"] != drawn.parts["reducer-2"]["set"]
