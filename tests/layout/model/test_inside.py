from plumbnet.layout.model.inside import Inner, Inside


def test_part_inside_takes_what_the_whole_gives_and_stands_at_its_height() -> None:
    inner = Inner("relief_valve", takes={"pressure": "set"}, always={"lets_off_growth": True})
    assert inner.written({"kind": "safety_group", "set": "7 bar", "elevation": "2 m", "capacity": "10 kW"}) == {
        "kind": "relief_valve",
        "lets_off_growth": True,
        "elevation": "2 m",
        "pressure": "7 bar",
    }


def test_what_the_whole_leaves_out_is_left_out_inside() -> None:
    assert Inner("valve").written({"kind": "safety_group"}) == {"kind": "valve"}


def test_ports_are_written_as_in_a_run() -> None:
    assert Inside({"valve": Inner("valve")}, (), {"in": "valve.in"}).ports == {"in": "valve.in"}
