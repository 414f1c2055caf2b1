from sketching import recipe, sketch

from plumbnet.study.exercise.blocks.feed_pipe import feed


def test_cold_pipe_has_the_check_first_and_the_tank_behind_it() -> None:
    drawn = sketch()
    line = feed(drawn, recipe(own_check=1.0, heater_valve=1.0, tank=1.0), circulated=True)
    assert line == ["check", "tee", "heater-stop", "return"]
    assert drawn.stretches[-1].stops == ("tee", "tank")


def test_where_no_tank_is_thought_of_there_is_no_tee_for_one() -> None:
    assert feed(sketch(), recipe(), circulated=False) == []
