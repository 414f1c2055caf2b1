from graphlib import TopologicalSorter

from drawing_board import Sketch, sketch

from plumbnet.drawing.columns.arcs import MIDDLE

LOOP = "street -> tee1 -> heater -> tee2 -> tap.hot\ntee2 -> pump -> tee1"


def arcs(house: Sketch) -> list[tuple[str, str]]:
    def name(station: int) -> str:
        item = house.graph.stations[station].item
        return "bend" if item is None else item.name

    return [(name(arc.tail), name(arc.head)) for arc in house.graph.arcs]


def test_arcs_never_lead_in_a_circle() -> None:
    for runs in (LOOP, "street -> tee1 -> valve1 -> tee2 -> valve2 -> tee1\ntee2 -> heater -> tap.hot"):
        house = sketch(runs)
        before: dict[int, list[int]] = {}
        for arc in house.graph.arcs:
            before.setdefault(arc.head, []).append(arc.tail)
        assert list(TopologicalSorter(before).static_order())


def test_returns_are_turned_round_so_that_their_pump_drives_to_the_left() -> None:
    house = sketch(LOOP)
    assert ("tee1", "pump") in arcs(house)
    assert ("pump", "tee2") in arcs(house)
    assert all(arc.is_turned == (arc.service.value == "return") for arc in house.graph.arcs)


def test_tee_that_feeds_several_taps_is_drawn_out_into_a_run() -> None:
    house = sketch("street -> heater -> tee -> tap1.hot\ntee -> tap2.hot\ntee -> tap3.hot")
    assert len(house.graph.pieces["tee"]) == 2
    assert [arc.is_run for arc in house.graph.arcs].count(True) == 1
    leaves = {arc.head: arc.tail for arc in house.graph.arcs if arc.link is not None and arc.tail_port == MIDDLE}
    taps = [leaves[house.graph.pieces[name][0]] for name in ("tap1", "tap2", "tap3")]
    first, last = house.graph.pieces["tee"]
    assert taps == [first, last, last]


def test_hot_and_cold_run_past_the_taps_in_one_order() -> None:
    house = sketch(
        "street -> tee1 -> heater -> tee2\n"
        + "\n".join(f"tee2 -> tap{n}.hot" for n in (3, 1, 2))
        + "\n"
        + "\n".join(f"tee1 -> tap{n}.cold" for n in (1, 2, 3))
    )

    def order(tee: str) -> list[str]:
        pieces = {station: at for at, station in enumerate(house.graph.pieces[tee])}
        ends = [
            (pieces[arc.tail], arc.least, arc.head) for arc in house.graph.arcs if arc.tail in pieces and not arc.is_run
        ]
        heads = [house.graph.stations[head].item for _, _, head in sorted(ends)]
        return [item.name for item in heads if item is not None and item.name.startswith("tap")]

    assert order("tee1") == order("tee2")


def test_pipe_from_a_part_to_itself_goes_round_a_bend() -> None:
    house = sketch("street -> heater -> tap.hot\nheater.relief -> heater.return")
    assert arcs(house).count(("heater", "bend")) == 2


def test_pipes_side_by_side_between_two_tees_get_rows_of_their_own() -> None:
    house = sketch("street -> tee1 -> tee2 -> heater -> tap.hot\ntee1 -> tee2")
    assert [
        arc.least for arc in house.graph.arcs if arc.link is not None and arc.tail_port == arc.head_port == MIDDLE
    ] == [1, 2]
