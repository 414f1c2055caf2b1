"""One tank for heaters that a shut valve keeps apart: the valve opened and locked, and a tank that serves them all."""

from collections.abc import Iterator
from dataclasses import replace

from plumbnet.layout.edits import change_of
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank
from plumbnet.study.remedies.remedy_types.tank_cures import enlarge, exchange, recharge
from plumbnet.study.remedies.remedy_types.valve_cures import can_be_opened
from plumbnet.study.remedies.trial import tried

MOST_VALVES = 2
"""Valves between a heater and others in trouble that are tried."""


def join_and_fit(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Open a valve to other heaters in trouble and lock it, then set right a tank for all of them, or add one.

    A valve that stands locked is shut for a reason and stays so.
    """
    for _, valve in zip(range(MOST_VALVES), _valves(scene, heater), strict=False):
        changes = (change_of("set", {"part": valve, "state": "open", "locked": True}),)
        trial = tried(scene, changes)
        if trial is None:
            continue
        joined = trial.after.heaters[heater.name]
        others = tuple(name for name in joined.shares_with if scene.is_ailing(name) and name not in heater.shares_with)
        for sort in (recharge, exchange, enlarge, add_tank) if others else ():
            for then in sort(trial.after, joined):
                both = then.behind(f"open {valve} and lock it open", changes)
                yield replace(both, effort=Effort.PAIR, key="join", for_all=others)


def _valves(scene: RemedyContext, heater: HeaterFacts) -> Iterator[str]:
    """Shut valves with water of the heater on one side and that of another one in trouble on the other."""
    zoning, own = scene.network.zoning, _water(scene, heater.name)
    apart = (name for name in scene.heaters if name not in heater.shares_with and scene.is_ailing(name))
    theirs = {zone for name in apart for zone in _water(scene, name)} - own
    for name, part in scene.system.parts.items():
        if can_be_opened(part):
            sides = {zoning.zone_of[node] for node in scene.network.piping.nodes_of(name)}
            if sides & own and sides & theirs:
                yield name


def _water(scene: RemedyContext, heater: str) -> set[int]:
    return set(scene.zones_of(heater))
