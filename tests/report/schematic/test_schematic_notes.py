from drawing_board import sketch


def test_outlets_say_at_what_pressure_they_open() -> None:
    house = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tank\nheater.relief -> relief\ntee -> spill")
    lines = {name: item.lines for name, item in house.diagram.items.items()}
    assert lines["street"] == ("street", "60 psi")
    assert lines["relief"] == ("relief", "opens at 150 psi")
    assert lines["spill"] == ("spill", "opens at 100 psi")
    assert lines["tank"] == ("tank", "4.5 gal", "from 60 psi")
    assert lines["cv"] == ("cv",)


def test_pressures_stand_at_the_part_itself() -> None:
    house = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="elevation: 40 ft")
    assert house.diagram.items["tank"].lines[-1] == "from 60 psi"
    low = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", tank="elevation: -40 ft")
    assert low.diagram.items["tank"].lines[-1] == "from 77.3 psi"


def test_settings_stand_beside_what_is_set() -> None:
    house = sketch("street -> prv -> booster -> heater -> tee -> tap.hot\ntee -> vent")
    assert house.diagram.items["prv"].lines == ("prv", "set 50 psi")
    assert house.diagram.items["booster"].lines == ("booster", "adds 40 psi")
    assert house.diagram.items["vent"].lines == ("vent", "open to the air")


def test_filling_loop_says_to_what_it_fills() -> None:
    house = sketch("street -> loop -> tee -> boiler -> emitter -> tee")
    assert house.diagram.items["loop"].lines == ("loop", "fills to 12 psi")


def test_verdict_stands_below_its_heater() -> None:
    house = sketch("street -> cv -> heater -> tap.hot\nheater.relief -> relief")
    assert house.diagram.items["heater"].lines == ("heater", "TRAPPED")
