import pytest
from tall_buildings import altered, tall, tower

from plumbnet.drawing.riser.likeness.level_breaks import broken, device_levels, hidden_levels


def test_of_many_levels_alike_the_middle_ones_are_left_out() -> None:
    building = tall(tower(storeys=20, shafts=2, step_ft=6.5))
    folding, (gap,) = broken(building.structure, building.folding)
    assert (gap.first, gap.behind) == (4, 19)  # the first is drawn out, two are kept below and above
    assert len(hidden_levels([gap])) == 15
    left = {building.structure.components[n].level for shaft in folding.shafts for n in shaft.branches}
    assert left == {1, 2, 3, 19, 20}
    hot = next(riser for riser in folding.shafts[0].risers if riser.service.value == "hot")
    assert [(chain.low.part, chain.high.part) for chain in hot.chains][2:4] == [("h2a", "h3a"), ("h3a", "h19a")]


@pytest.mark.parametrize("storeys", [6, 12])
def test_few_levels_are_all_drawn(storeys: int) -> None:
    building = tall(tower(storeys=storeys))
    assert broken(building.structure, building.folding) == (building.folding, ())


def test_a_device_stands_where_its_height_is_written_else_at_the_foot() -> None:
    text = altered(tower(), ("balance-a: valve", "balance-a: {kind: valve, elevation: 41 ft}"))
    structure = tall(text).structure
    chains = {c.devices: c for riser in structure.risers for c in riser.chains if c.devices}
    assert device_levels(structure, chains["swing-a", "balance-a"]) == [0, 4]
    assert device_levels(structure, chains["swing-b", "balance-b"]) == [0, 0]
