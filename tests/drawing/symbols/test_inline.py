import pytest

from plumbnet.drawing.symbols import inline
from plumbnet.drawing.symbols.symbol import SYMBOLS, Stroke
from plumbnet.layout.model.part import KINDS

IN_LINE = [
    "meter", "valve", "balancing_valve", "check_valve", "dual_check", "double_check", "reduced_pressure_assembly",
    "vented_dual_check", "vacuum_breaker", "pressure_reducer", "booster_pump", "circulator", "softener", "filter",
    "heat_trap",
]  # fmt: skip


@pytest.mark.parametrize("kind", IN_LINE)
def test_water_enters_at_the_left_and_leaves_at_the_right(kind: str) -> None:
    symbol = SYMBOLS[KINDS[kind].symbol]
    assert symbol.is_in_line
    assert symbol.sockets["in"][0] < 0 < symbol.sockets["out"][0]
    assert symbol.name in {name for name in SYMBOLS if name == KINDS[kind].symbol}


@pytest.mark.parametrize(
    "name",
    ["check_valve", "dual_check", "double_check", "reduced_pressure_assembly", "vented_dual_check", "vacuum_breaker",
     "checked_meter", "checked_pump", "checked_softener", "checked_filter", "checked_booster_pump"],
)  # fmt: skip
def test_every_check_points_its_triangle_at_a_bar_downstream(name: str) -> None:
    strokes = [mark for mark in SYMBOLS[name].marks if isinstance(mark, Stroke)]
    bars = [mark.points[0][0] for mark in strokes if mark.width > 1.5 and len({x for x, _ in mark.points}) == 1]
    tips = [
        max(mark.points)[0] for mark in strokes if mark.is_closed and len(mark.points) == 3 and mark.fill == "ground"
    ]
    assert bars
    assert set(bars) <= set(tips)


@pytest.mark.parametrize("name", ["meter", "pump", "softener", "filter", "booster_pump"])
def test_without_a_check_no_bar_is_drawn(name: str) -> None:
    def bars(name: str) -> list[Stroke]:
        strokes = [mark for mark in SYMBOLS[name].marks if isinstance(mark, Stroke)]
        return [mark for mark in strokes if mark.width > 1.5 and len({x for x, _ in mark.points}) == 1]

    assert not bars(name)
    assert bars(f"checked_{name}")


def test_bypass_points_back() -> None:
    strokes = [mark for mark in SYMBOLS["pressure_reducer_with_bypass"].marks if isinstance(mark, Stroke)]
    bar = next(mark for mark in strokes if mark.width > 1.5 and len({x for x, _ in mark.points}) == 1)
    assert any(mark.is_closed and min(mark.points)[0] == bar.points[0][0] for mark in strokes)


def test_shut_valve_is_filled_and_an_open_one_is_not() -> None:
    fills = {name: SYMBOLS[name].marks[0].fill for name in ("valve", "shut_valve")}  # type: ignore[union-attr]  # strokes
    assert fills == {"valve": "ground", "shut_valve": "ink"}


def test_balancing_valve_is_a_valve_with_two_test_cocks() -> None:
    valve, balancing = SYMBOLS["valve"], SYMBOLS[KINDS["balancing_valve"].symbol]
    assert balancing.marks[-1:] == valve.marks[:1]
    assert balancing.sockets == valve.sockets


def test_mixing_valve_takes_hot_and_cold_on_one_side_and_gives_mixed_on_the_other() -> None:
    sockets = SYMBOLS[KINDS["mixing_valve"].symbol].sockets
    assert sockets["hot"][0] == sockets["cold"][0] < 0 < sockets["mixed"][0]
    assert inline.joint("joint").is_joint
