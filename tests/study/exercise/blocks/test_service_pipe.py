from sketching import chance, recipe

from plumbnet.study.exercise.blocks.service_pipe import ASSEMBLIES, service
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual_sizes import USUAL


def kinds(seed: int = 3, **shares: float) -> list[str]:
    drawn = Sketch(chance(seed), USUAL["us"])
    names = service(drawn, recipe(**shares))
    fields = [drawn.parts[name] for name in names]
    return [str(one["kind"]) if isinstance(one, dict) else str(one) for one in fields]


def test_water_comes_by_main_meter_and_stop_to_the_first_tee() -> None:
    assert kinds() == ["main", "meter", "valve", "tee"]


def test_devices_stand_behind_the_stop_in_the_order_of_practice() -> None:
    found = kinds(reducer=1.0, backflow=1.0, assembly=1.0, treatment=1.0)
    assert found[:4] == ["main", "meter", "valve", "pressure_reducer"]
    assert found[4] in {kind for _, kind in ASSEMBLIES}
    assert found[5] in {"softener", "filter"}


def test_backflow_preventer_may_be_a_plain_check_valve() -> None:
    found = {tuple(kinds(seed, backflow=1.0, assembly=0.0)) for seed in range(5)}
    assert found == {("main", "meter", "valve", "check_valve", "tee")}


def test_high_main_is_reduced_unless_it_was_forgotten() -> None:
    assert "pressure_reducer" in kinds(high_main=1.0)
    assert "pressure_reducer" not in kinds(high_main=1.0, unreduced=1.0)


def test_building_stands_at_what_the_reducer_lets_through() -> None:
    drawn = Sketch(chance(3), USUAL["us"])
    service(drawn, recipe(high_main=1.0))
    reducer = drawn.parts["reducer"]
    assert isinstance(reducer, dict)
    assert reducer["set"] == f"{drawn.line} psi"
