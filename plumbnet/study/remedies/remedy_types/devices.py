"""Devices: a worn reducer renewed, one exchanged for one with a bypass, a check taken out that stands in the way.

What protects the main is never touched: a backflow preventer, a dual check, the check of a meter.
"""

import math
from collections.abc import Iterator

from plumbnet.layout.edits import change_of
from plumbnet.network.piping import Crossing
from plumbnet.rules.facts import HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext


def bypass(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Exchange a reducer for one with a bypass, where reducers are all that stops the water.

    Whether the main then stands low enough to take it is left to the trial.
    """
    for devices in heater.stopped_by.sets:
        if all(_is_plain_reducer(scene, name) for name in devices):
            names = " and ".join(devices)
            yield Candidate(
                Effort.EXCHANGE_DEVICE,
                f"bypass {names}",
                f"exchange {names} for {'one' if len(devices) == 1 else 'ones'} with a bypass, where the code lets a "
                "bypass count as the way back",
                tuple(change_of("set", {"part": name, "bypass": True, **_sound(scene, name)}) for name in devices),
            )


def renew_reducer(scene: RemedyContext, _heater: HeaterFacts) -> Iterator[Candidate]:
    """Put a reducer right that creeps. Whether it was what troubles the heater is left to the trial."""
    for name in scene.system.parts:
        if _is_plain_reducer(scene, name) and _sound(scene, name):
            yield Candidate(
                Effort.RENEW_REDUCER,
                f"renew {name}",
                f"renew the seat of {name}, or the whole reducer: it creeps",
                (change_of("set", {"part": name, **_sound(scene, name)}),),
            )


def remove_check(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Take out a check valve on the hot side, or between the heater and a tank."""
    for name in _needless_checks(scene, heater):
        yield Candidate(
            Effort.REMOVE_CHECK,
            f"remove {name}",
            f"take out {name}, unless the design needs it; what protects the main stays",
            (change_of("remove", name),),
            keeps_check=True,
        )


def _is_plain_reducer(scene: RemedyContext, name: str) -> bool:
    return scene.system.parts[name].kind == "pressure_reducer"


def _sound(scene: RemedyContext, name: str) -> dict[str, object]:
    """What makes another of a device that was found worn: nothing where it was sound."""
    return {"state": None} if scene.system.written.get(name, {}).get("state") is not None else {}


def _needless_checks(scene: RemedyContext, heater: HeaterFacts) -> Iterator[str]:
    """Check valves against the heater's water, with hot pipe or a tank behind them.

    Those of a loop that a pump drives are needed there: they keep its water from turning back.
    """
    hot = set(scene.report.facts.hot_side_checks)
    driven = {name for one in scene.report.heaters for loop in one.loops for name in loop}
    for crossing in _against(scene, heater):
        is_plain = scene.system.parts[crossing.part].kind == "check_valve" and crossing.part not in driven
        if is_plain and (crossing.part in hot or crossing.far in scene.before_tanks):
            yield crossing.part


def _against(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Crossing]:
    """Crossings that water of the heater cannot make."""
    network = scene.network
    for zone in network.reach(scene.zones_of(heater.name), math.inf):
        for crossing in network.zoning.out.get(zone, ()):
            if crossing.way is None:
                yield crossing
