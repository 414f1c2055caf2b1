from posing import RELIEF, posed, said


def test_valve_before_a_tap_is_told_as_waiting_for_somebody_to_draw() -> None:
    runs = "street -> valve -> tee -> heater -> valve3 -> tap.hot\ntee -> valve2 -> tap2.cold"
    one = posed("locked-valve", runs, heater=RELIEF)
    assert one.asked.blanks[0].answer("us") == "valve"
    for other in ("valve2", "valve3"):
        assert said(one, other).name == "somebody-opens-a-tap"


def test_valve_before_something_else_is_told_by_the_outlet_to_which_it_leaves_a_way() -> None:
    runs = "street -> tee2 -> valve -> tee -> heater -> valve3 -> tap.hot\ntee2 -> valve2 -> tank"
    one = posed("locked-valve", runs, heater=RELIEF)
    assert said(one, "valve2").text.startswith("You shut valve2; the growth still comes to street.")


def test_valve_in_a_loop_is_told_by_its_pump() -> None:
    runs = "street -> valve -> tee -> heater -> tee2 -> valve3 -> tap.hot\ntee2 -> pump -> valve2 -> tee"
    one = posed("locked-valve", runs, heater=RELIEF)
    assert said(one, "valve2").name == "pump-raises-pressure"
    assert said(one, "valve3").name == "somebody-opens-a-tap"
