from drawing_board import sketch
from tall_buildings import tall, tower

from plumbnet.drawing.riser.structure.riser_chains import chains_of
from plumbnet.report.schematic.building_plan import building_facts


def test_devices_in_line_are_passed_and_equipment_ends_a_chain() -> None:
    house = sketch("street -> meter -> valve -> tee -> heater -> tap.hot\ntee -> cv -> tap.cold")
    chains = chains_of(house.diagram, building_facts(house.report), dict.fromkeys(house.diagram.items, 0.0))
    found = {(chain.low.part, chain.devices, chain.high.part) for chain in chains}
    assert found == {
        ("street", ("meter", "valve"), "tee"),
        ("tee", (), "heater"),
        ("tee", ("cv",), "tap"),
        ("heater", (), "tap"),
    }


def test_a_chain_runs_from_its_lower_end_to_its_higher_one() -> None:
    building = tall(tower())
    chains = [chain for riser in building.structure.risers for chain in riser.chains]
    assert all(building.structure.height[c.low.part] <= building.structure.height[c.high.part] for c in chains)
    (back,) = (chain for chain in chains if chain.devices == ("swing-a", "balance-a"))
    assert (back.low.part, back.high.part) == ("back", "h6a")
    assert not back.begins_at(back.low)
    assert back.turned.low == back.high
    assert back.turned.devices == ("balance-a", "swing-a")
