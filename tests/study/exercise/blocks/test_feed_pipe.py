from sketching import recipe, sketch

from plumbnet.study.exercise.blocks.feed_pipe import feed


def test_cold_pipe_has_the_check_first_and_the_tank_behind_it() -> None:
    drawn = sketch()
    line = feed(drawn, recipe(own_check=1.0, heater_valve=1.0, tank=1.0), circulated=True)
    assert line == ["check", "tee", "heater-stop", "return"]
    assert drawn.stretches[-1].stops == ("tee", "tank")


def test_vacuum_relief_valve_hangs_on_a_tee_of_its_own() -> None:
    drawn = sketch()
    tee, trap = feed(drawn, recipe(vacuum_relief=1.0, heat_trap=1.0), circulated=False)
    assert drawn.stretches[-1].stops == (tee, "vacuum")
    assert drawn.parts[trap] == {"kind": "heat_trap"}


def test_where_no_tank_is_thought_of_there_is_no_tee_for_one() -> None:
    assert feed(sketch(), recipe(), circulated=False) == []
