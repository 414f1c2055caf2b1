from conftest import Drawn, drawn

from plumbnet.network.pressure.supply_order import circling, held_shut, ranks_of

BACK = "street -> tee1 -> booster -> tee2 -> tap.hot\ntee2 -> prv -> tee1"
"""A booster, and a reducer from behind it back to its inlet."""


def rank(d: Drawn, end: str) -> int:
    return ranks_of(d.network.zoning)[d.zone(end)]


def boosters(d: Drawn) -> list[str]:
    return [gate.part for gate in circling(d.network.zoning, ranks_of(d.network.zoning))]


def held(d: Drawn) -> set[str]:
    zoning = d.network.zoning
    gates = held_shut(
        zoning,
        ranks_of(zoning),
        d.network.standing.static_pa,
        [d.zone(name) for name in d.system.parts if name.startswith("street")],
    )
    return {gate.part for gate in gates}


def test_zones_behind_a_booster_rank_after_those_before_it() -> None:
    d = drawn("street -> cv -> booster -> tee1 -> tap.hot")
    assert rank(d, "street") < rank(d, "cv.out") < rank(d, "tee1")
    assert boosters(d) == []


def test_zones_need_no_order_where_nothing_lifts() -> None:
    assert ranks_of(drawn("street -> cv -> tee1 -> prv -> tap.hot").network.zoning) == [0, 0, 0, 0]


def test_zones_of_one_circle_rank_alike_unless_a_gate_of_it_is_held() -> None:
    d = drawn(BACK)
    assert rank(d, "tee1") == rank(d, "tee2")
    (gate,) = (gate for gate in d.network.piping.gates if gate.part == "prv")
    ranks = ranks_of(d.network.zoning, {gate})
    assert ranks[d.zone("tee1")] < ranks[d.zone("tee2")]


def test_booster_past_which_a_pipe_leads_feeds_its_own_inlet() -> None:
    assert boosters(drawn("street -> tee1 -> booster -> tee2 -> tap.hot\ntee2 -> tee1")) == ["booster"]


def test_reducer_that_what_stands_behind_it_holds_shut_is_found() -> None:
    assert held(drawn(BACK)) == {"prv"}  # 60 psi before the booster, set 50
    assert held(drawn(BACK, prv="set: 61 psi")) == set()


def test_reducer_in_no_circle_is_none_of_those() -> None:
    assert held(drawn("street -> booster -> tee1 -> prv -> tee2 -> tap.hot")) == set()


def test_reducer_with_its_very_set_behind_it_is_held_where_no_other_water_comes_to_it() -> None:
    # what stands behind it may be its own doing where street2 feeds it; more than its set may not
    assert held(drawn(BACK, prv="set: 60 psi")) == {"prv"}
    assert held(drawn(BACK + "\nstreet2 -> cv2 -> tee2", prv="set: 60 psi")) == set()
    assert held(drawn(BACK + "\nstreet2 -> cv2 -> tee2", prv="set: 59 psi")) == {"prv"}
