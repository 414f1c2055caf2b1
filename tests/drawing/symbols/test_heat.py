import pytest

from plumbnet.drawing.symbols import heat
from plumbnet.drawing.symbols.symbol import SYMBOLS
from plumbnet.layout.model.part import KINDS

HEATERS = ["storage_heater", "tankless_heater", "indirect_heater", "heat_exchanger", "boiler", "solar_collector"]


@pytest.mark.parametrize("kind", [*HEATERS, "storage_tank", "emitter"])
def test_symbol_has_a_socket_for_every_port(kind: str) -> None:
    assert hasattr(heat, KINDS[kind].symbol)
    assert set(SYMBOLS[KINDS[kind].symbol].sockets) == set(KINDS[kind].ports)


@pytest.mark.parametrize("kind", [*HEATERS, "storage_tank"])
def test_relief_valve_rises_from_the_crown(kind: str) -> None:
    assert SYMBOLS[kind].tops == ("relief",)


@pytest.mark.parametrize("kind", HEATERS)
def test_hot_water_leaves_above_where_cold_water_enters(kind: str) -> None:
    inlet, outlet = KINDS[kind].through[0]
    assert SYMBOLS[kind].sockets[outlet][1] < SYMBOLS[kind].sockets[inlet][1]


def test_tank_hangs_from_an_air_separator_on_the_side_where_water_leaves() -> None:
    sockets = SYMBOLS[KINDS["air_separator"].symbol].sockets
    assert sockets["in"][0] < 0 < sockets["out"][0] == sockets["tank"][0]
