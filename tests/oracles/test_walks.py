"""The walk of the water and the ladder: two searches that come to the same outlets, by ways that hold together."""

import math

from conftest import times
from hypothesis import given
from hypothesis import strategies as st

from oracles.joined_layouts import joined_layouts
from oracles.random_closed import closed_layouts
from oracles.random_layouts import Layout, layouts
from oracles.test_sweep import checked
from plumbnet.analysis.report import Report
from plumbnet.analysis.water_walk.walk_search import water_walk
from plumbnet.analysis.water_walk.walk_steps import Gated, GateMet, Taking, WaterWalk
from plumbnet.layout.model.system import End
from plumbnet.network.outlets.ladder import MOST_RUNGS
from plumbnet.network.piping.zones import Zone
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.limit_facts import ROUNDING_PA


@times(0.5)
@given(st.one_of(joined_layouts(), closed_layouts(), layouts()))
def test_walk_meets_the_outlets_of_the_ladder_and_no_others(layout: Layout) -> None:
    for walk in walks(checked(layout, "general")):
        taking = {step.part: step.met for step in walk.steps if isinstance(step.met, Taking)}
        found = {outlet: (met.role, met.opens_pa) for outlet, met in taking.items()}
        assert found == {rung.outlet: (rung.role, rung.opens_pa) for rung in walk.heater.ladder}, walk.heater.name


@times(0.5)
@given(st.one_of(joined_layouts(), closed_layouts(), layouts()))
def test_walk_passes_all_that_lies_on_the_ways_of_the_ladder(layout: Layout) -> None:
    for walk in walks(checked(layout, "general")):
        for rung in walk.heater.ladder:
            between = {part for part in rung.way if part not in {walk.heater.name, rung.outlet}}
            assert between <= passed(walk), (walk.heater.name, rung.way)


@times(0.5)
@given(st.one_of(joined_layouts(), closed_layouts(), layouts()))
def test_walk_meets_every_part_of_the_zones_that_the_water_pushes_into_and_no_others(layout: Layout) -> None:
    report = checked(layout, "general")
    for walk in walks(report):
        met = {step.part for step in walk.steps} - {walk.heater.name}
        assert met == piped(report, reached(report, walk.heater)) - {walk.heater.name}, walk.heater.name


@times(0.5)
@given(st.one_of(joined_layouts(), closed_layouts(), layouts()))
def test_walk_comes_by_a_pipe_from_the_part_before(layout: Layout) -> None:
    report = checked(layout, "general")
    pipes = [(pipe.start, pipe.end) for pipe in report.system.pipes]
    into = {(near.part, far) for start, end in pipes for near, far in ((start, end), (end, start))}
    for walk in walks(report):
        for number, step in enumerate(walk.steps):
            before = walk.heater.name if step.came_from is None else walk.steps[step.came_from].part
            assert (before, End(step.part, step.port)) in into
            assert step.came_from is None or step.came_from < number


def walks(report: Report) -> list[WaterWalk]:
    """The walks of all heaters whose ladder lists every outlet."""
    return [water_walk(report, heater) for heater in report.heaters if len(heater.ladder) < MOST_RUNGS]


def reached(report: Report, heater: HeaterFacts) -> set[Zone]:
    """Zones that a heater's water pushes into before a way out takes any amount of it, or as it stands; by zones."""
    network = report.network
    inlet = next(heated.inlet for heated in network.heated if heated.name == heater.name)
    head_pa = network.piping.heads_pa[next(network.piping.nodes_of(heater.name))]
    way_out = heater.way_out
    held_pa = math.inf if way_out is None else max(way_out.opens_pa, heater.static_pa or 0.0)  # it stands there cold
    bound_pa = held_pa + head_pa + ROUNDING_PA
    return set(network.reach((network.zoning.zone_of[inlet],), bound_pa))


def piped(report: Report, zones: set[Zone]) -> set[str]:
    """Parts to which a pipe leads that holds water of some zones."""
    piping, zone_of = report.network.piping, report.network.zoning.zone_of
    ends = (end for pipe in report.system.pipes for end in (pipe.start, pipe.end))
    return {end.part for end in ends if zone_of[piping.node_of[end]] in zones}


def passed(walk: WaterWalk) -> set[str]:
    """Parts that let the water on, from one side at least."""
    return {step.part for step in walk.steps if not isinstance(step.met, Gated) or any(map(lets_on, step.met.gates))}


def lets_on(gate: GateMet) -> bool:
    return gate.answer.passes
