from drawing_board import sketch

from plumbnet.drawing.palette import Service

HOUSE = """
street -> tee1 -> heater -> tee2 -> tap1.hot
tee2 -> tap2.hot
tee1 -> tap1.cold
"""


def test_water_is_cold_up_to_the_heater_and_hot_behind_it() -> None:
    house = sketch(HOUSE)
    assert house.service("street -> tee1") is Service.COLD
    assert house.service("tee1 -> heater") is Service.COLD
    assert house.service("tee1 -> tap1") is Service.COLD
    assert house.service("heater -> tee2") is Service.HOT
    assert house.service("tee2 -> tap2") is Service.HOT


def test_pump_back_into_the_cold_feed_is_a_return_from_the_last_tap_on() -> None:
    house = sketch(
        "street -> tee1 -> tee3 -> heater -> tee2 -> tap1.hot\ntee2 -> pump -> cv -> tee3\ntee1 -> tap1.cold"
    )
    assert [house.service(pipe) for pipe in ("tee2 -> pump", "pump -> cv", "cv -> tee3")] == [Service.RETURN] * 3
    assert house.service("heater -> tee2") is Service.HOT
    assert house.service("tee3 -> heater") is Service.COLD


def test_pump_into_the_heater_is_a_return_too() -> None:
    house = sketch("street -> heater -> tee -> tap.hot\ntee -> pump -> heater.return")
    assert house.service("tee -> pump") is Service.RETURN
    assert house.service("pump -> heater") is Service.RETURN


def test_preheated_water_on_its_way_to_the_next_heater_is_hot_and_no_return() -> None:
    house = sketch("street -> heater1 -> heater2 -> tee -> tap.hot\ntee -> pump -> heater1.return")
    assert house.service("heater1 -> heater2") is Service.HOT
    assert house.service("pump -> heater1") is Service.RETURN


def test_water_behind_a_mixing_valve_is_mixed_and_comes_back_as_return() -> None:
    house = sketch(
        "street -> tee1 -> tee2 -> heater -> mixer.hot\ntee1 -> mixer.cold\n"
        "mixer -> tee3 -> tap.hot\ntee3 -> pump -> tee2"
    )
    assert house.service("heater -> mixer") is Service.HOT
    assert house.service("tee1 -> mixer") is Service.COLD
    assert house.service("mixer -> tee3") is Service.MIXED
    assert house.service("tee3 -> tap") is Service.MIXED
    assert house.service("tee3 -> pump") is Service.RETURN


def test_heating_circuit_gives_its_heat_away_and_returns_to_the_boiler() -> None:
    house = sketch("street -> cv -> tee1\nboiler -> tee1 -> pump -> emitter1 -> emitter2 -> boiler")
    assert house.service("cv -> tee1") is Service.COLD
    assert house.service("boiler -> tee1") is Service.HOT
    assert house.service("tee1 -> pump") is Service.HOT
    assert house.service("pump -> emitter1") is Service.HOT
    assert house.service("emitter2 -> boiler") is Service.RETURN


def test_coil_of_an_indirect_heater_gives_heat_away_like_an_emitter() -> None:
    house = sketch("street -> indirect -> tap.hot\nboiler -> indirect.coil_in\nindirect.coil_out -> boiler")
    assert house.service("boiler -> indirect") is Service.HOT
    assert house.service("indirect -> boiler") is Service.RETURN
    assert house.service("indirect -> tap") is Service.HOT


def test_relief_pipe_of_a_heater_is_hot() -> None:
    house = sketch("street -> heater -> tap.hot\nheater.relief -> relief")
    assert house.service("heater -> relief") is Service.HOT


BUFFER = """
street -> cv -> tee1 -> buffer -> tee2 -> tap.hot
tee1 -> tap.cold
heater -> buffer.return
"""


def test_tank_charged_from_its_own_outlet_is_left_by_hot_water_and_fed_by_hot_water() -> None:
    plant = sketch(BUFFER + "tee2 -> pump -> heater", buffer="kind: storage_tank, volume: 80 gal")
    assert plant.service("tee1 -> buffer") is Service.COLD
    assert plant.service("heater -> buffer") is Service.HOT
    assert plant.service("buffer -> tee2") is Service.HOT
    assert plant.service("tee2 -> tap") is Service.HOT
    assert [plant.service(pipe) for pipe in ("tee2 -> pump", "pump -> heater")] == [Service.RETURN] * 2
    assert plant.service("tee1 -> tap") is Service.COLD


def test_tank_charged_from_its_cold_feed_is_left_by_hot_water() -> None:
    plant = sketch(BUFFER + "tee1 -> pump -> heater", buffer="kind: storage_tank, volume: 80 gal")
    assert [plant.service(pipe) for pipe in ("tee1 -> pump", "pump -> heater")] == [Service.COLD] * 2
    assert plant.service("heater -> buffer") is Service.HOT
    assert plant.service("buffer -> tee2") is Service.HOT


def test_tank_before_a_heater_stays_cold_though_the_circulation_comes_back_into_it() -> None:
    house = sketch(
        "street -> cv -> buffer -> heater -> tee -> tap.hot\ntee -> pump -> buffer.return",
        buffer="kind: storage_tank, volume: 80 gal",
    )
    assert house.service("buffer -> heater") is Service.COLD
    assert house.service("heater -> tee") is Service.HOT
    assert [house.service(pipe) for pipe in ("tee -> pump", "pump -> buffer")] == [Service.RETURN] * 2
