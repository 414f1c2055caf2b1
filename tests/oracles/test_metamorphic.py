"""Laws between two layouts of which one comes from the other, through the public door and the format's own changes."""

from dataclasses import replace
from itertools import combinations

import pytest
from conftest import times
from hypothesis import assume, given, note
from hypothesis import strategies as st

import plumbnet
from oracles.random_buildings import ANY, changed, houses
from oracles.random_layouts import Layout, Values, layouts
from oracles.test_laws import ONE_PRESSURE
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import End, Pipe, System
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.facts.heater_answer import HeaterFacts

EXAMPLES = times(0.4)
CLOSE = 1e-9
CLOSE_PA = 1e-3
WHOLE_PA = 1.0
MOSTLY = 10
"""Heaters, at the least, that a law with conditions has been held against."""
CHOICE = st.integers(0, 9999)
LIFTS = ("main", "well", "open_tank", "booster_pump", "pressure_reducer")


def checked(system: System) -> Report:
    """The report; layouts of which nothing can be computed are passed over."""
    try:
        return plumbnet.check(system)
    except LayoutError:
        assume(condition=False)
        raise


def with_change(system: System, *changes: Values) -> System:
    """The system changed; changes that it refuses are passed over."""
    try:
        return with_changes(system, [Change.model_validate(change) for change in changes])
    except ChangeError:
        assume(condition=False)
        raise


def by_name(report: Report) -> dict[str, HeaterFacts]:
    return {facts.name: facts for facts in report.heaters}


def chosen_pipe(system: System, choice: int) -> Pipe:
    """A pipe that somebody wrote, and not the tapping of a relief valve inside a heater."""
    pipes = [pipe for pipe in system.pipes if "/" not in pipe.start.part + pipe.end.part]
    assume(pipes)
    return pipes[choice % len(pipes)]


def inserted(name: str, kind: str, start: str, end: End, elevation_m: float) -> Values:
    place = {"between": [start, f"{end.part}.{end.port}"], "elevation": f"{elevation_m} m"}
    return {"insert": {"part": name, "kind": kind, **place}}


def splits(system: System, pipe: Pipe, *names: str) -> list[Values]:
    """Changes that set tees into a pipe, one after another, at the height where it starts."""
    height_m = system.parts[pipe.start.part].elevation_m
    starts = [f"{pipe.start.part}.{pipe.start.port}", *names]
    return [inserted(name, "tee", start, pipe.end, height_m) for name, start in zip(names, starts, strict=False)]


def assert_same(before: Report, after: Report) -> None:
    """All that is said of every heater is the same but for the names of tees on its ways."""
    now = by_name(after)
    for one in before.heaters:
        other = now[one.name]
        assert (one.verdict, one.shares_with, one.tanks) == (other.verdict, other.shares_with, other.tanks)
        assert (one.stopped_by, one.closes_if_shut) == (other.stopped_by, other.closes_if_shut)
        assert len(one.loops) == len(other.loops)
        assert [rung.outlet for rung in one.ladder] == [rung.outlet for rung in other.ladder]
        assert numbers(one) == pytest.approx(numbers(other), rel=CLOSE, abs=CLOSE_PA)


def numbers(one: HeaterFacts) -> list[float]:
    """Pressures in pascal and volumes in hundredths of a cubic millimetre; -1 for none."""
    volumes_m3 = [one.heated_volume_m3, one.expansion_m3, one.shared_expansion_m3, one.short_m3]
    pressures = [one.static_pa, one.limit_pa, one.settled_pa, *(rung.opens_pa for rung in one.ladder)]
    tank_m3 = None if one.need is None else one.need.tank_m3
    return [-1.0 if each is None else each for each in (*pressures, *(each * 1e11 for each in volumes_m3), tank_m3)]


@EXAMPLES
@given(ANY | changed(), CHOICE)
def test_splitting_a_pipe_by_a_tee_changes_nothing(layout: Layout, choice: int) -> None:
    before = checked(layout.system)
    pipe = chosen_pipe(before.system, choice)
    assert_same(
        but_for_place(before), but_for_place(checked(with_change(before.system, *splits(before.system, pipe, "split"))))
    )


def but_for_place(report: Report) -> Report:
    """The report without the tanks needed: a new tee may be the better place, at another height."""
    return replace(
        report, facts=replace(report.facts, heaters=tuple(replace(one, need=None) for one in report.heaters))
    )


@times(0.4)
@given(ANY, CHOICE)
def test_pipe_laid_beside_another_closes_nothing_and_changes_no_pressure(layout: Layout, choice: int) -> None:
    before = checked(layout.system)
    pipe = chosen_pipe(before.system, choice)
    height_m = before.system.parts[pipe.start.part].elevation_m
    beside: Values = {"part": "beside", "kind": "tee", "run": "one -> beside -> other", "elevation": f"{height_m} m"}
    changes: list[Values] = [*splits(before.system, pipe, "one", "other"), {"add": beside}]
    assert_same(but_for_place(before), but_for_place(checked(with_change(before.system, *changes))))


def at_one_pressure(layout: Layout) -> Layout:
    """The layout at one height, under one street, with nothing that lifts, reduces or takes a pressure to open."""
    parts = {}
    for name, values in layout.parts.items():
        level = {key: value for key, value in values.items() if key != "opens"} | {"elevation": 0}
        if values["kind"] in {"pressure_reducer", "booster_pump"}:
            level = {"kind": "meter"}
        elif values["kind"] in LIFTS:
            level = {"kind": "main", "pressure": 300}
        elif values["kind"] == "device":
            level = {"kind": "check_valve"}
        parts[name] = level
    return replace(layout, parts=parts)


ONE_STREET = (layouts(kinds=ONE_PRESSURE) | houses()).map(at_one_pressure)
"""Where two pressures meet, a check or a pipe may keep off or let in the one that holds another way shut."""


def way_out_pa(one: HeaterFacts) -> float:
    """Pressure at the heater at which its first way out opens; infinite where it has none."""
    return float("inf") if one.way_out is None else one.way_out.opens_pa


def bound_pa(one: HeaterFacts) -> float:
    """The limit, or the static pressure where that is higher, to the pascal."""
    return max(one.limit_pa, one.limit_pa if one.static_pa is None else one.static_pa) + WHOLE_PA


def test_pipe_between_any_two_places_of_one_pressure_closes_no_way_below_the_limit() -> None:
    # The limit is that of before, and no new loop warms other water: both may be worse beyond the pipe.
    held: list[str] = []

    @EXAMPLES
    @given(ONE_STREET, CHOICE)
    def holds(layout: Layout, choice: int) -> None:
        before = checked(layout.system)
        tees = sorted(name for name, part in before.system.parts.items() if part.kind == "tee")
        pairs = list(combinations(tees, 2))
        assume(pairs)
        one, other = pairs[choice % len(pairs)]
        joined: Values = {"part": "joint", "kind": "tee", "run": f"{one} -> joint -> {other}"}
        after = by_name(checked(with_change(before.system, {"add": joined})))
        for facts in before.heaters:
            if way_out_pa(facts) <= bound_pa(facts) and not after[facts.name].loops:
                assert way_out_pa(after[facts.name]) <= bound_pa(facts)
                held.append(facts.name)

    holds()
    assert len(held) >= MOSTLY


def test_check_valve_set_into_a_pipe_of_one_pressure_opens_no_way_below_the_limit() -> None:
    # The limit is that of before, and no loop is broken that warmed other water: both may be better without.
    held: list[str] = []

    @EXAMPLES
    @given(ONE_STREET, CHOICE, st.booleans())
    def holds(layout: Layout, choice: int, turned: bool) -> None:  # noqa: FBT001  hypothesis gives it by place
        before = checked(layout.system)
        pipe = chosen_pipe(before.system, choice)
        start, end = pipe.ends[::-1] if turned else pipe.ends
        check = inserted("check", "check_valve", f"{start.part}.{start.port}", end, 0.0)
        after = by_name(checked(with_change(before.system, check)))
        for facts in before.heaters:
            if way_out_pa(facts) > bound_pa(facts) and not facts.loops:
                assert way_out_pa(after[facts.name]) > bound_pa(facts)
                held.append(facts.name)

    holds()
    assert len(held) >= MOSTLY


@EXAMPLES
@given(ANY, CHOICE, st.integers(1, 40))
def test_higher_setpoint_lowers_no_expansion(layout: Layout, choice: int, rise_k: int) -> None:
    before = checked(layout.system)
    facts = before.heaters[choice % len(before.heaters)]
    hotter_c = min(facts.hot_k - 273.15 + rise_k, 98.0)
    assume(hotter_c > facts.hot_k - 273.15)
    after = checked(with_change(before.system, {"set": {"part": facts.name, "setpoint": f"{hotter_c} degC"}}))
    now = by_name(after)
    assert now[facts.name].expansion_m3 > facts.expansion_m3
    for one in before.heaters:
        assert now[one.name].expansion_m3 >= one.expansion_m3
        if one.shares_with == now[one.name].shares_with and one.verdict is now[one.name].verdict:
            assert now[one.name].shared_expansion_m3 >= one.shared_expansion_m3 * (1.0 - CLOSE)


@EXAMPLES
@given(ANY, st.sampled_from([-150, -30, 7, 120, 1500]))
def test_moving_everything_up_with_its_datum_changes_nothing(layout: Layout, height_m: int) -> None:
    heights = {name: float(str(values.get("elevation", 0))) + height_m for name, values in layout.parts.items()}
    raised = {name: values | {"elevation": heights[name]} for name, values in layout.parts.items()}
    note(replace(layout, parts=raised).text)
    assert_same(checked(layout.system), checked(replace(layout, parts=raised).system))
