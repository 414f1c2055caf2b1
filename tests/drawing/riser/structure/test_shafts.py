from tall_buildings import tall, tower

from plumbnet.drawing.palette import Service


def test_chains_one_above_the_other_are_one_riser() -> None:
    risers = tall(tower(storeys=6, shafts=2)).structure.risers
    assert sorted((riser.service.value, len(riser.chains)) for riser in risers) == [
        ("cold", 6), ("cold", 6), ("hot", 6), ("hot", 6), ("return", 1), ("return", 1),
    ]  # fmt: skip
    hot = next(riser for riser in risers if riser.service is Service.HOT)
    assert [chain.high.part for chain in hot.chains] == [f"h{storey}a" for storey in range(1, 7)]


def test_risers_that_share_flats_are_a_shaft_with_these_from_the_lowest() -> None:
    structure = tall(tower(storeys=6, shafts=2)).structure
    assert [len(shaft.risers) for shaft in structure.shafts] == [3, 3]
    for shaft in structure.shafts:
        assert [structure.components[number].level for number in shaft.branches] == [1, 2, 3, 4, 5, 6]
