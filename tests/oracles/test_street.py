"""The street at its highest, as usual and at its lowest, and what comes to each place, by their definitions."""

from dataclasses import replace

import pytest
from conftest import times
from hypothesis import assume, event, given
from hypothesis import strategies as st

import plumbnet
from oracles.random_closed import closed_layouts
from oracles.random_layouts import ALL, Layout, Values, layouts
from oracles.standing_water import DRY
from oracles.warm_water import WarmWater
from plumbnet.analysis.observations.least_pressure import lows
from plumbnet.analysis.report import Report
from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.part import Role, Source
from plumbnet.layout.model.system import End
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.network.network import network_of
from plumbnet.network.pressure.pressure_source import Giver
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.low_facts import Use

EXAMPLES = times(0.4)
CLOSE_PA = 1e-3
SUPPLYING = (
    *(kind for kind in ALL if kind != "device"),
    *("main", "filling_loop", "fixture", "fixture", "pressure_reducer", "pressure_reducer", "emitter"),
)
ANYTHING = st.one_of(layouts(kinds=(*ALL, "main", "fixture", "circulator", "emitter")), closed_layouts())


def checked(layout: Layout) -> Report:
    try:
        return plumbnet.check(layout.system)
    except LayoutError:
        assume(condition=False)
        raise


def mains(layout: Layout, *, at: str) -> Layout:
    """The layout with every main steady, at its `highest` or `lowest`."""

    def steady(values: Values) -> Values:
        if values["kind"] != "main":
            return values
        kept = {key: value for key, value in values.items() if key not in {"highest", "lowest"}}
        return kept | {"pressure": values.get(at, values["pressure"])}

    return replace(layout, parts={name: steady(values) for name, values in layout.parts.items()})


def without_usual(heater: HeaterFacts) -> HeaterFacts:
    return replace(heater, usual_pa=None)


@EXAMPLES
@given(ANYTHING)
def test_what_must_hold_is_that_of_a_street_always_at_its_highest(layout: Layout) -> None:
    report, night = checked(layout), checked(mains(layout, at="highest"))
    assert [without_usual(one) for one in report.heaters] == [without_usual(one) for one in night.heaters]
    for name in ("tanks", "reliefs", "expansion_reliefs", "reducers", "taps"):
        assert getattr(report.facts, name) == getattr(night.facts, name)


@EXAMPLES
@given(ANYTHING)
def test_what_comes_to_each_place_is_that_of_a_street_always_at_its_lowest(layout: Layout) -> None:
    report, morning = checked(layout), checked(mains(layout, at="lowest"))
    assert [low.name for low in report.facts.lows] == [low.name for low in morning.facts.lows]
    for low, other in zip(report.facts.lows, morning.facts.lows, strict=True):
        assert low.least_pa == pytest.approx(other.least_pa, abs=CLOSE_PA)
        assert low.feed is None or other.feed is None or low.feed.giver is other.feed.giver
        event(f"{low.use} {'at its lowest' if low.at_lowest else 'steady'} {'dry' if low.is_dry else 'wet'}")


@EXAMPLES
@given(ANYTHING)
def test_least_pressure_of_each_place_is_the_best_of_all_ways_at_its_worst_port(layout: Layout) -> None:
    report = checked(layout)
    water = WarmWater(layout.system)
    own_pa = water.own_pa(_least_pa)
    airy = {site.end for site in water.sites if site.outlet.role is Role.AIR}
    airy = {end for end in airy if not water.system.parts[end.part].draws_at()}
    expected = {}
    for name, part in water.system.parts.items():
        ends = _ends(water, name)
        known = [own_pa[end] for end in ends if end in own_pa and end not in airy and own_pa[end] > DRY]
        if known and (part.heat() or part.draws_at() or part.cools):
            expected[name] = pytest.approx(min(known), abs=CLOSE_PA)
    assert {low.name: low.least_pa for low in report.facts.lows} == expected
    for low in report.facts.lows:
        assert (low.use is Use.TAP) == bool(water.system.parts[low.name].draws_at())


def _least_pa(source: Source) -> float:
    return source.cut_in_pa if source.least_pa is None else source.least_pa


def _ends(water: WarmWater, name: str) -> list[End]:
    """Ports at which a tap draws, all of an emitter, those of a heater's store and of every loop through it."""
    part = water.system.parts[name]
    source = part.heat()
    if source is not None:
        loops = [end for one in water.loops(name) for end in one.ends]
        return [End(name, source.inlet), End(name, source.outlet), *loops]
    return [End(name, port) for port in (part.draws_at() or part.port_names())]


@times(1.0)
@given(layouts(kinds=SUPPLYING), st.sampled_from([1.0, 0.5, 0.1]))
def test_what_gives_a_place_its_pressure_brings_as_much_more_as_it_is_raised(layout: Layout, share: float) -> None:
    report = checked(layout)
    for low in report.facts.lows:
        feed = low.feed
        if feed is None or feed.spare_pa == 0.0:
            continue
        raised_pa = share * min(feed.spare_pa, 100e3)
        field = "set" if feed.giver is Giver.REDUCER else "fill"
        values = {"part": feed.name, field: f"{(feed.own_pa + raised_pa) / 1000!r} kPa"}
        system = with_changes(report.system, [Change.model_validate({"set": values})])
        after = {one.name: one for one in lows(network_of(system))}
        assert after[low.name].least_pa >= low.least_pa + raised_pa - CLOSE_PA
        event(f"{feed.giver} raised")
