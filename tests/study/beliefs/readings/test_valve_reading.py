from posing import RELIEF, posed, said


def test_valve_is_told_by_the_outlet_to_which_it_leaves_a_way() -> None:
    runs = "street -> valve -> tee -> heater -> valve3 -> tap.hot\ntee -> valve2 -> tap2.cold"
    one = posed("locked-valve", runs, heater=RELIEF)
    assert one.asked.blanks[0].answer("us") == "valve"
    for other in ("valve2", "valve3"):
        assert said(one, other).text.startswith(f"You shut {other}; the growth still comes to street.")
