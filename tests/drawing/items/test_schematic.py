from plumbnet.drawing.items.item import Diagram
from plumbnet.drawing.items.schematic import Letters, Schematic


def test_names_along_all_ways_are_gathered() -> None:
    schematic = Schematic("two ways", Diagram({}, ()), (), ways=(("heater1", "street"), ("heater2", "tee", "street")))
    assert schematic.on_ways == {"heater1", "heater2", "tee", "street"}


def test_what_is_on_a_way_or_bears_a_letter_is_kept() -> None:
    drawn = Schematic("x", Diagram({}, ()), (), ways=(("a", "b"),), letters=Letters({"b": "A", "c": "R"}, {3: "C"}))
    assert drawn.kept == {"a", "b", "c"}
