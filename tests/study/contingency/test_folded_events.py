"""Events folded: what is told of one is what is told of each, wherever pipes differ in what they hold."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random

import pytest
from conftest import system, times
from hypothesis import given
from hypothesis import strategies as st
from oracles.test_sweep import graded
from study.contingency.test_levelled_pipes import holding

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.rules.rule_profile import profile
from plumbnet.study.contingency.contingencies import Contingency, happenings
from plumbnet.study.contingency.folded_events import FoldedEvents
from plumbnet.study.contingency.outcome import Outcome, outcome
from plumbnet.study.contingency.worlds import SingleEvent, Worlds


@dataclass(frozen=True)
class Building:
    """A closed building with a tank, and risers that differ in what their pipes hold alone.

    One wing or two, each with its heater and its risers, some with a return that a pump drives; all of it is invented.
    """

    random: Random

    def text(self, tank_m3: float) -> str:
        """The layout as a file, with a tank of this size."""
        closer = self.random.choice(["check_valve", "{kind: pressure_reducer, set: 60 psi}", "dual_check"])
        parts = ["street: {kind: main, pressure: 60 psi, temperature: 50 degF}", f"closer: {closer}", "trunk: tee"]
        parts.append(f"tank: {{kind: expansion_tank, volume: {tank_m3} m3, precharge: 60 psi}}")
        runs = ["street -> closer -> trunk", "trunk -> tank"]
        relief = self.random.choice(["150 psi", "{pressure: 150 psi, temperature: 210 degF}"])
        middle = self.random.choice(["mixing_valve", "mixing_valve", "valve", "check_valve"])
        apart = self.random.choice(["valve", "valve", "check_valve"])
        count, has_return = self.random.randint(2, 3), self.random.random() < 0.8
        for wing in ("east", "west")[: self.random.randint(1, 2)]:
            parts += [f"{wing}: {apart}", f"{wing}-cold: tee", f"{wing}-back: tee", f"{wing}-up: tee"]
            parts.append(
                f"{wing}-heater: {{kind: storage_heater, volume: 80 gal, setpoint: 140 degF, relief: {relief}}}"
            )
            runs.append(f"trunk -> {wing} -> {wing}-cold -> {wing}-back -> {wing}-heater -> {wing}-up")
            if has_return:
                parts += [f"{wing}-pump: circulator", f"{wing}-home: tee"]
                runs.append(f"{wing}-home -> {wing}-pump -> {wing}-back")
            for riser in range(1, count + 1):
                parts += self._parts(f"{wing}-{riser}", middle)
                runs += self._runs(wing, f"{wing}-{riser}", middle, has_return=has_return)
        head = ["plumbnet: 1", "units: us"]
        return "\n".join([*head, "parts:", *(f"  {one}" for one in parts), "runs:", *(f"  - {run}" for run in runs)])

    def _parts(self, riser: str, middle: str) -> Iterator[str]:
        height = self.random.choice([3, 3, 3, 13])
        yield from (
            f"{riser}-hot: tee",
            f"{riser}-cold: tee",
            f"{riser}-middle: {middle}",
            f"{riser}-swing: check_valve",
        )
        yield f"{riser}-tap: {{kind: fixture, elevation: {height} ft}}"

    def _runs(self, wing: str, riser: str, middle: str, *, has_return: bool) -> Iterator[str]:
        yield self._pipe(f"{wing}-up -> {riser}-hot")
        yield self._pipe(f"{wing}-cold -> {riser}-cold")
        if middle == "mixing_valve":
            yield f"{riser}-cold -> {riser}-middle.cold"
            yield f"{riser}-hot -> {riser}-middle.hot"
            yield f"{riser}-middle.mixed -> {riser}-tap.hot"
        else:
            yield f"{riser}-cold -> {riser}-tap.cold"
            yield f"{riser}-hot -> {riser}-middle -> {riser}-tap.hot"
        yield self._pipe(f"{riser}-hot -> {riser}-swing" + (f" -> {wing}-home" if has_return else ""))

    def _pipe(self, path: str) -> str:
        size, feet = self.random.choice(["3/4 in", "1 in", "2 in"]), self.random.choice([2, 20, 80])
        return f"{{path: {path}, pipe: copper-L {size}, length: {feet} ft}}"


def told_one_by_one(report: Report) -> dict[str, Outcome]:
    """What each event changes, each answered by itself."""
    worlds = Worlds(report)
    return {one.title: outcome(worlds.before, worlds.single(one).answer) for one in events(report)}


def told_folded(report: Report, worlds: Worlds) -> dict[str, Outcome]:
    folded = FoldedEvents(worlds)
    return {one.title: outcome(worlds.before, folded.single(one).answer) for one in events(report)}


def events(report: Report) -> tuple[Contingency, ...]:
    return happenings(report.system, report.rules, report.facts.circuit_of)


def report_of(seed: int) -> Report:
    """A building whose tank is as large as it must be, or a little larger; in the worst of events it may not do."""
    rules = graded("ipc-2021") if seed % 2 else profile("ipc-2021")

    def checked(tank_m3: float) -> Report:
        text = Building(Random(seed)).text(tank_m3)  # noqa: S311  # a building, not a secret
        return plumbnet.check(plumbnet.read_bytes(text.encode(), file="building"), rules=rules)

    needs = [heater.need.tank_m3 or 0.0 for heater in checked(0.001).heaters if heater.need is not None]
    return checked(max(needs, default=0.1) * Random(seed).choice([1.03, 1.1, 1.3, 1.6]) + 0.001)  # noqa: S311  as above


def assert_told_alike(seed: int) -> None:
    report = report_of(seed)
    assert told_folded(report, Worlds(report)) == told_one_by_one(report)


@pytest.mark.parametrize("seed", [0, 12, 33])
def test_where_more_water_would_turn_a_verdict_folded_events_are_told_as_each_by_itself(seed: int) -> None:
    assert_told_alike(seed)


@times(0.03)
@given(st.integers(0, 10**6))
def test_folded_events_are_told_as_each_by_itself(seed: int) -> None:
    assert_told_alike(seed)


RISERS = """
street -> cv -> tee1 -> heater -> tee2
tee1 -> tank
tee2 -> mixer1.hot
tee2 -> mixer2.hot
tee1 -> mixer1.cold
tee1 -> mixer2.cold
mixer1.mixed -> tap1.hot
mixer2.mixed -> tap2.hot
"""


@dataclass
class Counted(Worlds):
    """Worlds that keep the parts whose events they were asked for."""

    asked: Counter[str] = field(default_factory=Counter)

    def single(self, event: Contingency) -> SingleEvent:
        self.asked[event.part] += 1
        return super().single(event)


@pytest.mark.parametrize(("litres", "gallons", "folds"), [(1, 40, True), (30, 40, True), (30, 0.5, False)])
def test_riser_of_another_length_is_not_looked_at_where_tanks_hold_all(
    litres: float, gallons: float, *, folds: bool
) -> None:
    parts = {"tank": f"volume: {gallons} gal", "heater": "relief: {pressure: 150 psi, temperature: 210 degF}"}
    layout = holding(system(RISERS, **parts), {"mixer1": 1.0, "mixer2": litres})
    worlds = Counted(plumbnet.check(layout))
    told_folded(worlds.report, worlds)
    assert (worlds.asked["mixer2"] == 0) is folds
    assert worlds.asked["tank"] > 0
