from sketching import recipe, sketch

from plumbnet.study.exercise.blocks.feed_pipe import feed


def test_cold_pipe_has_the_check_first_and_the_tank_behind_it() -> None:
    line = feed(sketch(), recipe(own_check=1.0, heater_valve=1.0), circulated=True)
    assert line == ["heater-check", "tank-tee", "heater-stop", "return-tee"]


def test_where_no_tank_is_thought_of_there_is_no_tee_for_one() -> None:
    assert feed(sketch(), recipe(tank_tee=0.0), circulated=False) == []


def test_some_tanks_hang_on_the_wrong_side_of_the_check() -> None:
    sides: set[bool] = set()
    for seed in range(30):
        drawn = sketch(seed)
        feed(drawn, recipe(own_check=1.0, tank=1.0), circulated=False)
        sides.add("split -> tank" in drawn.runs)
        assert ("split -> tank" in drawn.runs) != ("tank-tee -> tank" in drawn.runs)
    assert sides == {True, False}
