import pytest

from plumbnet.drawing.symbols import ends
from plumbnet.drawing.symbols.symbol import SYMBOLS, Stroke
from plumbnet.layout.model.part import KINDS

OF_ENDS = {name: symbol for name, symbol in SYMBOLS.items() if hasattr(ends, name)}


@pytest.mark.parametrize(
    "kind",
    [
        "main",
        "well",
        "open_tank",
        "air_gap",
        "filling_loop",
        "vent",
        "fixture",
        "expansion_tank",
        "relief_valve",
        "expansion_relief",
    ],
)
def test_symbol_has_a_socket_for_every_port(kind: str) -> None:
    assert set(OF_ENDS[KINDS[kind].symbol].sockets) == set(KINDS[kind].ports)


def test_relief_valves_and_vents_rise_and_a_tank_may_hang() -> None:
    assert {name: symbol.hangs for name, symbol in OF_ENDS.items() if symbol.hangs} == {
        "vent": "up",
        "relief_valve": "up",
        "pressure_relief": "up",
        "expansion_relief": "up",
        "plugged_relief": "up",
        "expansion_tank": "both",
        "waterlogged_tank": "both",
    }


def test_trouble_is_drawn_differently() -> None:
    assert OF_ENDS["waterlogged_tank"].marks != OF_ENDS["expansion_tank"].marks
    assert OF_ENDS["plugged_relief"].marks != OF_ENDS["relief_valve"].marks
    assert OF_ENDS["fixture_with_crossover"].marks != OF_ENDS["fixture"].marks


def test_hose_bibb_is_a_fixture_with_a_thread_for_the_hose() -> None:
    tap, hose = OF_ENDS["fixture"], OF_ENDS["hose_bibb"]
    assert hose.marks[: len(tap.marks)] == tap.marks
    assert len(hose.marks) > len(tap.marks)
    assert hose.sockets == tap.sockets


def test_stops_of_a_filling_loop_are_filled_where_they_are_shut() -> None:
    def fills(name: str) -> set[str]:
        tips = [mark for mark in SYMBOLS[name].marks if isinstance(mark, Stroke) and len(mark.points) == 4]
        return {mark.fill for mark in tips if mark.is_closed}

    assert (fills("filling_loop"), fills("open_filling_loop")) == ({"ink"}, {"ground"})
