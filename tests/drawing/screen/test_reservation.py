"""Room kept for every state that a picture may come to be shown in."""

from drawing_board import sketch

from plumbnet.drawing.routing.arrangement import arrangement_of
from plumbnet.drawing.screen.reservation import Reservation, reserved, two_lines
from plumbnet.drawing.symbols.symbol import symbol_named

HOUSE = "street -> meter -> valve -> tee -> heater -> tap.hot"


def places(checked: str, ringed: str) -> dict[str, tuple[float, float]]:
    """Where everything stands in a house whose meter may have a check, and whose parts may be ringed."""
    symbols = {"meter": (symbol_named("meter"), symbol_named("checked_meter"))}
    keep = Reservation(symbols, ringed={"meter", "valve"}, named={"meter", "valve", "heater"}, last_word="CONTROLLED")
    diagram = sketch(HOUSE, meter=f"check: {checked}", valve=f"state: {ringed}").diagram
    return {each.item.name: (each.x, each.y) for each in arrangement_of(reserved(diagram, keep)).placements}


def test_nothing_moves_whatever_the_state() -> None:
    assert places("true", "open") == places("false", "open") == places("false", "shut") == places("true", "shut")


def test_item_is_as_wide_as_it_may_become_with_room_for_a_ring_that_is_not_drawn() -> None:
    keep = Reservation({"meter": (symbol_named("checked_meter"),)}, ringed={"meter"}, named={"heater"}, last_word="X")
    kept = reserved(sketch(HOUSE).diagram, keep)
    meter, heater, valve = (kept.items[name] for name in ("meter", "heater", "valve"))
    assert meter.symbol.name == "checked_meter"
    assert (meter.is_ringed, meter.keeps_ring_room, valve.keeps_ring_room) == (False, True, False)
    assert heater.lines == ("heater", "X")
    assert (meter.lines, valve.lines) == (("meter",), ("valve",))
    assert heater.letter_size == 16.0


def test_symbol_as_drawn_comes_first_and_once() -> None:
    item = sketch(HOUSE).diagram.items["meter"]
    keep = Reservation({"meter": (symbol_named("checked_meter"), symbol_named("meter"))})
    assert [symbol.name for symbol in keep.variants(item)] == ["meter", "checked_meter"]


def test_name_is_never_broken_within_a_word() -> None:
    assert two_lines("strainerhousing", 9) == ("strainerhousing",)
    assert two_lines("hose-breaker", 9) == ("hose-", "breaker")
    assert two_lines("second floor tap", 9) == ("second", "floor tap")
    assert two_lines("a-very-long-one", 9) == ("a-very-", "long-one")
