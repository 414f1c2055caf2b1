from posing import RELIEF, posed, said

RUNS = "street -> meter -> valve -> cv -> heater -> tap.hot"


def test_nothing_and_another_device_are_told_apart() -> None:
    one = posed("stopper", RUNS, heater=RELIEF)
    assert said(one, "nothing").name == "check-passed-over"
    assert said(one, "meter").name == "stops-elsewhere"


def test_device_that_lets_the_water_through_is_told_where_nothing_stops_it() -> None:
    assert said(posed("stopper", RUNS.replace("cv -> ", ""), heater=RELIEF), "meter").name == "open-device-stops"
