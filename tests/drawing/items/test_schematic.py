from plumbnet.drawing.items.item import Diagram
from plumbnet.drawing.items.schematic import Schematic


def test_names_along_all_ways_are_gathered() -> None:
    schematic = Schematic("two ways", Diagram({}, ()), (), ways=(("heater1", "street"), ("heater2", "tee", "street")))
    assert schematic.on_ways == {"heater1", "heater2", "tee", "street"}
