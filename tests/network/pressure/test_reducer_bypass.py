from conftest import Drawn, drawn

from plumbnet.network.pressure.reducer_bypass import way_past


def past(d: Drawn, name: str = "prv") -> tuple[str, ...]:
    (gate,) = (gate for gate in d.network.piping.gates if gate.part == name)
    return way_past(d.network.piping, gate)


def test_water_comes_past_a_reducer_by_an_open_valve() -> None:
    assert past(drawn("street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> valve -> tee2")) == ("valve",)


def test_no_water_comes_past_a_reducer_by_a_shut_valve_or_against_a_check() -> None:
    runs = "street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> valve -> tee2\ntee2 -> cv -> tee1"
    assert past(drawn(runs, valve="state: shut")) == ()


def test_water_comes_past_a_reducer_with_a_check() -> None:
    assert past(drawn("street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> cv -> tee2")) == ("cv",)


def test_another_reducer_is_no_way_past_and_neither_is_its_bypass() -> None:
    assert past(drawn("street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> prv2 -> tee2")) == ()
    assert past(drawn("street -> tee1 -> prv -> tee2\ntee2 -> prv2 -> tee1", prv2="bypass: true")) == ()


def test_water_comes_past_a_reducer_back_through_a_pump_without_a_check() -> None:
    runs = "street -> tee1 -> prv -> tee2 -> tap.hot\ntee2 -> booster -> tee1"
    assert past(drawn(runs, booster="check: false")) == ("booster",)
    assert past(drawn(runs)) == ()


def test_tees_are_named_where_there_is_nothing_else() -> None:
    assert past(drawn("street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> tee2")) == ("tee1", "tee2")


def test_of_ways_of_one_length_names_choose() -> None:
    runs = "street -> tee1 -> prv -> tee2 -> tap.hot\ntee1 -> valve2 -> tee2\ntee1 -> valve1 -> tee2"
    assert past(drawn(runs)) == ("valve1",)
