from sketching import recipe, sketch, system

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.rules.facts import Verdict
from plumbnet.study.exercise.blocks.solar_plant import solar
from plumbnet.study.exercise.sketch import Sketch
from plumbnet.study.exercise.usual_sizes import USUAL


def house(units: str) -> Sketch:
    drawn = sketch(2, USUAL["metric" if units == "metric" else "us"])
    hot = solar(drawn, recipe(), [])
    drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
    return drawn


def verdicts(drawn: Sketch, *changes: dict[str, object]) -> dict[str, Verdict]:
    made = with_changes(system(drawn), [Change.model_validate(one) for one in changes])
    return {one.name: one.verdict for one in plumbnet.check(made).heaters}


def test_collector_pushes_past_its_check_to_its_tank_and_the_cylinder_back_to_the_street() -> None:
    for units in USUAL:
        assert verdicts(house(units)) == {"indirect": Verdict.OPEN, "collector": Verdict.CONTROLLED}


def test_tank_without_air_leaves_the_collector_to_its_relief_valve() -> None:
    assert verdicts(house("us"), {"fail": "solar-tank"})["collector"] is Verdict.TRAPPED


def test_stop_left_shut_leaves_the_way_forward_to_the_tank() -> None:
    """The stop is before the collector; its water goes on through the coil, whatever stands behind it."""
    assert verdicts(house("us"), {"close": "solar-stop"})["collector"] is Verdict.CONTROLLED
