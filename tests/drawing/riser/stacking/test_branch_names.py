from tall_buildings import tall, tower

from plumbnet.drawing.riser.stacking.branch_names import branch_called, caption_lines, shafts_called


def test_branches_are_called_by_their_fixtures_and_shafts_by_all_of_them() -> None:
    building = tall(tower(storeys=6, shafts=3))
    (shaft,) = building.folding.shafts
    assert branch_called(building.structure, building.component("flat4b").number) == "flat4b"
    assert shafts_called(building.structure, shaft) == "flat1a ... flat6c"
    assert caption_lines(building.structure, shaft) == ("flat1a ... flat6c",)
