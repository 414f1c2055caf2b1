"""The static pressure lowered first, where it leaves a tank no room: a reducer set lower, a new one, a lower fill."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from plumbnet.layout.edits import HIGHEST_WRITTEN_PA, change_of, height_text, new_name, pressure_text
from plumbnet.layout.model import Change, End, System
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.rules.facts import TROUBLED, HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.pressure_inlets import PressureInlet, gap_behind, pressure_feed
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.reducer_screw import starves, step_pa
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank, move
from plumbnet.study.remedies.remedy_types.tank_cures import enlarge, exchange, reached_tanks, recharge
from plumbnet.study.remedies.tank_joint import between
from plumbnet.study.remedies.trial import tried

SHARE_OF_LIMIT = 0.75
"""Share of the limit to which the pressure is lowered: 60 psi under the usual 80. Source: common practice."""
SMALLER = 0.5
"""Share of a tank's size that a turn of the reducer's screw has to save, to be worth it."""


@dataclass(frozen=True, slots=True)
class _Step:
    """One change that lowers the static pressure, and what it is in words."""

    title: str
    change: Change


@dataclass(frozen=True, slots=True)
class _Lowered:
    """The layout with the static pressure lowered: what is done for it, and what comes of it."""

    title: str
    changes: tuple[Change, ...]
    after: RemedyContext


def lower(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Lower the pressure where it comes in, then set the tanks right or add one.

    Only where no tank that can be had would do as it is, and where every fixture keeps enough.
    """
    if heater.need is None or heater.need.nominal_m3 is not None:
        return
    fed = pressure_feed(scene, heater)
    lowered = None if fed is None else _lowered(scene, heater, fed)
    if fed is None or lowered is None:
        return
    now = lowered.after.heaters[heater.name]
    has_screws = fed.is_by_reducers and any(reached_tanks(scene, heater))
    if now.verdict not in TROUBLED:
        if not has_screws:
            yield Candidate(Effort.LOWER_PRESSURE, "lower", lowered.title, lowered.changes)
        return
    for sort in (*([] if has_screws else [recharge]), exchange, enlarge, move, add_tank):
        for one in sort(lowered.after, now):
            then = one.behind(lowered.title, lowered.changes)
            yield Candidate(Effort.LOWER_PRESSURE, "lower", then.title, then.changes)


def set_and_fit(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Set the reducers lower and fit, or exchange, a tank of half the size or less that it takes as they are set."""
    fed = pressure_feed(scene, heater) if heater.verdict in TROUBLED and _is_high(heater) else None
    lowered = _lowered(scene, heater, fed) if fed is not None and fed.is_by_reducers else None
    if lowered is None or lowered.after.heaters[heater.name].verdict not in TROUBLED:
        return
    sort = enlarge if any(reached_tanks(scene, heater)) else add_tank
    as_it_is = min((one.size_m3 for one in sort(scene, heater)), default=math.inf)
    for then in sort(lowered.after, lowered.after.heaters[heater.name]):
        if then.size_m3 <= as_it_is * SMALLER:
            yield replace(then.behind(lowered.title, lowered.changes), key=f"set, then {then.key}")


def _lowered(scene: RemedyContext, heater: HeaterFacts, fed: PressureInlet) -> _Lowered | None:
    """The pressure lowered where it comes in; None where that cannot be, or leaves a fixture too little."""
    steps = _steps(scene, heater, fed)
    changes = tuple(step.change for step in steps)
    trial = tried(scene, changes) if changes else None
    if trial is None or starves(trial):
        return None
    return _Lowered(" and ".join(step.title for step in steps), changes, trial.after)


def _is_high(heater: HeaterFacts) -> bool:
    """Whether it stands above the share of its limit that leaves a tank room."""
    return heater.static_pa is not None and heater.static_pa > SHARE_OF_LIMIT * heater.limit_pa


def _steps(scene: RemedyContext, heater: HeaterFacts, fed: PressureInlet) -> tuple[_Step, ...]:
    """Set lower the reducers that feed the heater, fill to less, and fit new reducers where there is neither.

    None where that cannot be.
    """
    limit_pa = heater.limit_pa + scene.head_pa(heater.name)
    steps: list[_Step | None] = [_set_lower(scene, name, limit_pa) for name in fed.reducers]
    taken: tuple[str, ...] = ()
    for entry in fed.entries:
        if isinstance(scene.system.parts[entry.part], FillingLoop):
            steps.append(_filled_to(scene, entry.part, limit_pa))
            continue
        gap = gap_behind(scene.system, entry)
        beside = () if gap is None else (gap.near.part, gap.far.part)
        name = new_name(scene.system, entry.part, "reducer", taken=taken, beside=beside)
        taken = (*taken, name)
        steps.append(_fitted(scene, entry, name, limit_pa))
    made = tuple(step for step in steps if step is not None)
    return made if len(made) == len(steps) else ()


def _set_lower(scene: RemedyContext, name: str, limit_pa: float) -> _Step | None:
    setting = _setting(scene.system, limit_pa - scene.head_pa(name))
    if setting is None:
        return None
    return _Step(f"set {name} to {_shown(scene, setting)}", change_of("set", {"part": name, "set": setting}))


def _filled_to(scene: RemedyContext, name: str, limit_pa: float) -> _Step | None:
    """A circuit filled by hand to less."""
    setting = _setting(scene.system, limit_pa - scene.head_pa(name))
    if setting is None:
        return None
    title = f"let the circuit behind {name} down to {_shown(scene, setting)}, and fill it no higher"
    return _Step(title, change_of("set", {"part": name, "fill": setting}))


def _fitted(scene: RemedyContext, entry: End, name: str, limit_pa: float) -> _Step | None:
    """A new reducer behind an entry, at the height of the part before it."""
    gap = gap_behind(scene.system, entry)
    setting = None if gap is None else _setting(scene.system, limit_pa - scene.head_pa(gap.near.part))
    if gap is None or setting is None:
        return None
    fields = {
        "part": name,
        "kind": "pressure_reducer",
        "set": setting,
        **height_text(scene.system, scene.system.parts[gap.near.part].elevation_m, name),
        "between": between(scene.system, gap.near, gap.far),
    }
    where = f"in the pipe from {gap.near.part} to {gap.far.part}"
    title = f"fit a pressure reducer {where}, set to {_shown(scene, setting)}"
    return _Step(title, change_of("insert", fields))


def _setting(system: System, limit_pa: float) -> str | None:
    """A reducer's set as written: a share of the limit at its height, in whole steps; None where nothing is left."""
    step = step_pa(system)
    steps = math.floor(min(SHARE_OF_LIMIT * limit_pa, HIGHEST_WRITTEN_PA) / step)
    return pressure_text(system, steps * step) if steps > 0 else None


def _shown(scene: RemedyContext, setting: str) -> str:
    return scene.report.facts.pressure(parse_measure(setting, PRESSURE, scene.system.units))
