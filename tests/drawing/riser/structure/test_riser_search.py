from tall_buildings import altered, tall, tower


def test_every_pipe_to_another_storey_is_a_riser_and_none_to_a_fixture() -> None:
    structure = tall(tower(storeys=6, shafts=2)).structure
    ends = {(chain.low.part, chain.high.part) for riser in structure.risers for chain in riser.chains}
    assert ("h1a", "h2a") in ends
    assert ("back", "h6b") in ends
    assert not any("flat" in high for _, high in ends)
    assert len(ends) == 2 * (6 + 6 + 1)


def test_a_shower_head_above_its_tee_is_no_storey_but_a_flat_a_storey_up_is() -> None:
    shower = altered(
        tower(), ("flat2a: {kind: fixture, elevation: 23 ft}", "flat2a: {kind: fixture, elevation: 27 ft}")
    )
    loft = altered(tower(), ("flat6a: {kind: fixture, elevation: 63 ft}", "flat6a: {kind: fixture, elevation: 70 ft}"))
    assert tall(shower).component("flat2a") is not None
    assert "flat2a" in tall(shower).component("h2a").members
    assert "flat6a" not in tall(loft).component("h6a").members
