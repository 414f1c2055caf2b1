"""Layouts for tests, drawn in a line or a few."""

import os
import signal
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, settings

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.runs import run_stops
from plumbnet.layout.model.system import End, System
from plumbnet.layout.units.units import PASCAL_PER_METRE
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.network.network import Network, network_of
from plumbnet.network.piping.piping import Node
from plumbnet.rules.rule_profile import GENERAL, profile, profile_names

LATE = (HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large)
settings.register_profile("house", max_examples=100, deadline=None, derandomize=True, database=None)
settings.register_profile(
    "long", max_examples=10_000, deadline=None, derandomize=False, database=None, suppress_health_check=LATE
)
if settings.get_current_profile_name() not in {"house", "long"}:  # the command line may have chosen one already
    settings.load_profile("house")

TELLS_OF_PROFILES = str(Path(__file__).parent / "rules" / "test_every_profile.py")


@pytest.hookimpl(tryfirst=True)
def pytest_configure(config: pytest.Config) -> None:
    """No test of the long run is held to the time that one may take as a rule.

    A profile that is refused would make nearly every test fail, each with its own story: one is run alone, and tells.
    """
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # else each program that a test starts compiles everything anew
    if config.getoption("hypothesis_profile") == "long" and config.getoption("timeout") is None:
        config.option.timeout = 0
    if refused_profiles():
        config.args, config.option.keyword, config.option.markexpr = [TELLS_OF_PROFILES], "", ""


def refused_profiles() -> str:
    """What is wrong with the profiles that come with the program, or with that which all extend; nothing as a rule."""
    told = {}
    for name in profile_names():
        try:
            profile(name)
        except LayoutError as error:
            told[name] = str(error)
    return told.get(GENERAL) or "\n".join(told.values())


@pytest.fixture
def interruptible() -> Iterator[None]:
    """Programs that a test starts hear the key that interrupts, though whoever started the tests ignores it."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


def times(share: float) -> settings:
    """Settings of a test that takes this many times the examples of the profile in force: 100, or 10,000 if long."""
    profile = settings.get_profile(settings.get_current_profile_name())
    return settings(max_examples=max(1, round(share * profile.max_examples)))


PSI = 6894.757293168361
"""Pascal in a pound-force per square inch."""

USUAL = {
    "street": "kind: main, pressure: 60 psi",
    "well": "kind: well, cut_in: 30 psi, cut_out: 50 psi",
    "cistern": "kind: open_tank, elevation: 100 ft",
    "loop": "kind: filling_loop, fill: 12 psi",
    "vent": "kind: vent, elevation: 40 ft",
    "tee": "kind: tee",
    "valve": "kind: valve",
    "meter": "kind: meter",
    "cv": "kind: check_valve",
    "prv": "kind: pressure_reducer, set: 50 psi",
    "booster": "kind: booster_pump, rise: 40 psi",
    "pump": "kind: circulator",
    "mixer": "kind: mixing_valve",
    "store": "kind: storage_tank, volume: 80 gal",
    "heater": "kind: storage_heater, volume: 50 gal, setpoint: 140 degF, input: 40000 Btu/h",
    "tankless": "kind: tankless_heater, setpoint: 140 degF",
    "indirect": "kind: indirect_heater, volume: 50 gal, setpoint: 140 degF",
    "boiler": "kind: boiler, volume: 10 gal, setpoint: 180 degF",
    "emitter": "kind: emitter, volume: 5 gal",
    "tank": "kind: expansion_tank, volume: 4.5 gal, precharge: 60 psi",
    "relief": "kind: relief_valve, pressure: 150 psi, temperature: 210 degF",
    "spill": "kind: expansion_relief, pressure: 100 psi",
    "tap": "kind: fixture",
}
"""What a part is unless the test says otherwise, by its name without the number at its end."""


def layout(runs: str, **parts: str) -> str:
    """The text of a layout: a run to a line, with `parts` as in the file, where they differ from `USUAL`.

    A part that gives no kind keeps the usual fields beside its own: `street="pressure: 80 psi"`.
    """
    paths = [line.strip() for line in runs.strip().splitlines()]
    names = dict.fromkeys(stop.name for path in paths for stop in run_stops(path))
    declared = {name: _declared(name, parts.get(name, "")) for name in names}
    return yaml.safe_dump({"plumbnet": 1, "units": "us", "parts": declared, "runs": paths}, sort_keys=False)


def _declared(name: str, fields: str) -> dict[str, object]:
    given: dict[str, object] = yaml.safe_load(f"{{{fields}}}")
    if "kind" in given:
        return given
    usual: dict[str, object] = yaml.safe_load(f"{{{USUAL[name.rstrip('0123456789')]}}}")
    return usual | given


def system(runs: str, **parts: str) -> System:
    """The system that `layout` describes, by way of the real reader."""
    return read_system(layout(runs, **parts).encode(), file="drawn.yaml")


@dataclass(frozen=True)
class Drawn:
    """A system with its network, asked by the names of parts and in psi at datum; what pumps hold is no height here."""

    system: System

    @cached_property
    def network(self) -> Network:
        return network_of(self.system)

    def node(self, place: str) -> Node:
        """The node of `part.port`, or of the first port of `part`."""
        part, _, port = place.partition(".")
        return self.network.piping.node_of[End(part, port or self.system.parts[part].port_names()[0])]

    def zone(self, place: str) -> int:
        return self.network.zoning.zone_of[self.node(place)]

    def cell(self, place: str) -> int:
        return self.network.zoning.cell_of[self.node(place)]

    def lift_pa(self, place: str) -> float:
        """What pumps without a check, counted as height, add to the pressure at a part."""
        node = self.node(place)
        height_pa: float = PASCAL_PER_METRE * self.system.parts[self.network.piping.ports[node].part].elevation_m
        return self.network.piping.heads_pa[node] - height_pa

    def static(self, place: str) -> float | None:
        """Static pressure in psi at datum."""
        static_pa = self.network.standing.static_pa[self.zone(place)]
        return None if static_pa is None else (static_pa - self.lift_pa(place)) / PSI

    def ladder(self, place: str) -> list[tuple[str, float]]:
        """Outlets and the pressure in psi at which they open, to a tenth."""
        rungs, lift_pa = self.network.ladder(self.zone(place)), self.lift_pa(place)
        return [(rung.site.part, round((rung.opens_pa - lift_pa) / PSI, 1)) for rung in rungs]

    def stops(self, place: str, bound: float) -> tuple[tuple[str, ...], ...]:
        return self.network.stops(self.zone(place), bound * PSI + self.lift_pa(place)).sets

    def closings(self, place: str, bound: float) -> tuple[tuple[str, ...], ...]:
        return self.network.closings(self.node(place), bound * PSI + self.lift_pa(place)).sets


def drawn(runs: str, **parts: str) -> Drawn:
    """What the network says of a layout."""
    return Drawn(system(runs, **parts))
