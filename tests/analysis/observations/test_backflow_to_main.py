"""Growth that goes back to the main: by which pipes, how much they hold, whose growth it is."""

import pytest

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.growth_facts import ReturnFacts

SERVICE = "street -> stop"
TAIL = "heater -> tap.hot"


def with_pipe(path: str, litres: float) -> str:
    return f"{{path: {path}, volume: {litres} L}}"


PARTS = "plumbnet: 1\nparts:\n"


def layout(*runs: str, second: bool = False, check: bool = False, kind: str = "storage_heater, volume: 120 L") -> str:
    parts = [
        "street: {kind: main, pressure: 3 bar}",
        "stop: valve",
        f"heater: {{kind: {kind}, setpoint: 60 degC}}",
        "tap: fixture",
    ]
    if second:
        parts += ["split: tee", "second: {kind: storage_heater, volume: 200 L, setpoint: 60 degC}", "tap2: fixture"]
    if check:
        parts += ["check: check_valve"]
    return PARTS + "".join(f"  {part}\n" for part in parts) + "runs:\n" + "".join(f"  - {run}\n" for run in runs)


def facts(text: str, rules: str = "uk-2010") -> tuple[ReturnFacts, ...]:
    return plumbnet.check(read_system(text.encode(), file="drawn.yaml"), rules=rules).facts.returns


def test_pipe_at_the_main_is_the_suppliers_and_holds_nothing_of_the_buildings() -> None:
    (one,) = facts(layout(with_pipe("street -> stop", 9), with_pipe("stop -> heater", 5), TAIL))
    assert one.held_m3 == pytest.approx(0.005)
    assert (one.main, one.heaters) == ("street", ("heater",))
    assert one.expansion_m3 == pytest.approx(0.00201, abs=1e-5)  # 1.68 per cent of 120 L
    assert one.mixed_k == pytest.approx(283.15 + 31.0 * 2.01 / 5.0, abs=0.3)


def test_pipe_that_holds_too_little_has_no_temperature() -> None:
    (one,) = facts(layout(SERVICE, with_pipe("stop -> heater", 2), TAIL))
    assert one.held_m3 == pytest.approx(0.002)
    assert one.mixed_k is None


def test_two_heaters_on_one_pipe_are_told_alone_and_together() -> None:
    runs = (
        SERVICE,
        with_pipe("stop -> split", 3),
        with_pipe("split -> heater", 1),
        TAIL,
        with_pipe("split -> second", 2),
        "second -> tap2.hot",
    )
    first, second, both = facts(layout(*runs, second=True))
    assert (first.heaters, second.heaters, both.heaters) == (("heater",), ("second",), ("heater", "second"))
    assert (first.held_m3, second.held_m3, both.held_m3) == pytest.approx((0.004, 0.005, 0.006))
    assert both.expansion_m3 == pytest.approx(first.expansion_m3 + second.expansion_m3)
    assert both.store_m3 == pytest.approx(0.32)


def two_on_one_pipe(*wanted: tuple[str, str]) -> str:
    """Two stores on one supply pipe, each with a branch of its own, text exchanged as asked."""
    text = layout(
        SERVICE,
        with_pipe("stop -> split", 6),
        with_pipe("split -> heater", 3),
        TAIL,
        with_pipe("split -> second", 2),
        "second -> tap2.hot",
        second=True,
    )
    for old, new in wanted:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return text


@pytest.mark.parametrize("cold_c", [10.0, 5.0])
def test_pipe_that_two_share_takes_the_heat_of_both(cold_c: float) -> None:
    """Balance of heat: what each alone brings into its own pipes, both bring into all of them."""
    hotter = ("200 L, setpoint: 60 degC", "200 L, setpoint: 75 degC")
    colder = ("pressure: 3 bar", f"pressure: 3 bar, temperature: {cold_c} degC")
    first, second, both = facts(two_on_one_pipe(hotter, colder))
    cold_k = 273.15 + cold_c
    assert first.mixed_k is not None
    assert second.mixed_k is not None
    assert both.mixed_k is not None
    brought = (first.mixed_k - cold_k) * first.held_m3 + (second.mixed_k - cold_k) * second.held_m3
    assert (both.mixed_k - cold_k) * both.held_m3 == pytest.approx(brought, rel=1e-9)
    mean_k = (first.mixed_k - cold_k) * first.held_m3 / first.expansion_m3
    assert 25.0 < mean_k < 60.0 - cold_c  # the store gives off water between cold and hot, past half way


def test_water_that_two_warm_goes_back_as_the_hotter_warms_it() -> None:
    """
    street - stop - split - heater - tee - pump - second -+
                      +------------------------------------+
    """
    loop = (SERVICE, with_pipe("stop -> split", 20), "split -> heater", "heater -> tee -> tap.hot")
    parts = "  tee: tee\n  pump: circulator\n"
    text = layout(*loop, "tee -> pump -> second -> split", second=True).replace("  tap2: fixture\n", parts)
    hotter = text.replace("200 L, setpoint: 60 degC", "200 L, setpoint: 75 degC")
    other = text.replace("120 L, setpoint: 60 degC", "120 L, setpoint: 75 degC")
    both_hot = hotter.replace("120 L, setpoint: 60 degC", "120 L, setpoint: 75 degC")
    plain, one, two, each = (facts(drawn)[-1] for drawn in (text, hotter, other, both_hot))
    assert one.heaters == ("heater", "second")
    assert one.store_m3 == pytest.approx(0.32)
    assert (one.expansion_m3, one.mixed_k) == pytest.approx((each.expansion_m3, each.mixed_k))
    assert (two.expansion_m3, two.mixed_k) == pytest.approx((each.expansion_m3, each.mixed_k))
    assert plain.mixed_k is not None
    assert each.mixed_k is not None
    assert plain.mixed_k < each.mixed_k - 2.0


def test_heaters_with_pipes_of_their_own_are_not_told_together() -> None:
    runs = (SERVICE, "stop -> heater", TAIL, "street -> split", with_pipe("split -> second", 2), "second -> tap2.hot")
    assert [one.heaters for one in facts(layout(*runs, second=True))] == [("heater",), ("second",)]


def test_closed_heater_and_one_that_fires_on_flow_give_nothing_back() -> None:
    closed = layout("street -> stop -> check -> heater -> tap.hot", check=True)
    assert facts(closed) == ()
    assert facts(layout(SERVICE, "stop -> heater", TAIL, kind="tankless_heater")) == ()


def test_heater_whose_growth_goes_to_the_main_only_past_its_limit_gives_nothing_back() -> None:
    reducer = "stop: {kind: pressure_reducer, set: 3 bar, bypass: true}"
    runs = (SERVICE, with_pipe("stop -> heater", 2), TAIL)
    for bar, count in ((5, 1), (15, 0)):
        text = layout(*runs).replace("stop: valve", reducer).replace("pressure: 3 bar", f"pressure: {bar} bar")
        assert len(facts(text)) == count


def test_nothing_is_reckoned_where_the_rules_let_growth_into_the_main() -> None:
    assert facts(layout(SERVICE, with_pipe("stop -> heater", 2), TAIL), rules="general") == ()


def test_store_with_antifreeze_at_a_pressure_at_which_water_is_not_known_is_refused_in_words() -> None:
    pytest.importorskip("CoolProp")
    store = "storage_heater, volume: 120 L, antifreeze: {glycol: propylene, share: 30 %}"
    text = layout(with_pipe("street -> stop", 9), with_pipe("stop -> heater", 5), TAIL, kind=store)
    with pytest.raises(LayoutError, match=r"heater: its water would stand at 21,379 psi, and is known from"):
        facts(
            text.replace("storage_heater", "storage_heater, elevation: -5000 m").replace(
                "3 bar", "3 bar, elevation: 10000 m"
            )
        )
