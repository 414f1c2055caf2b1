"""The static pressure lowered first, where it leaves a tank no room: a reducer set lower, a new one, a lower fill."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from plumbnet.layout.edits import HIGHEST_WRITTEN_PA, change_of, height_text, new_name, pressure_text
from plumbnet.layout.model import Change, End, System
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.rules.facts import TROUBLED, HeaterFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.pressure_inlets import gap_behind, pressure_feed
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.tank_connection import add_tank, move
from plumbnet.study.remedies.remedy_types.tank_cures import enlarge, exchange, recharge
from plumbnet.study.remedies.tank_joint import between
from plumbnet.study.remedies.trial import Trial, tried

SHARE_OF_LIMIT = 0.75
"""Share of the limit to which the pressure is lowered: 60 psi under the usual 80. Source: common practice."""
STEP = {"us": "5 psi", "metric": "25 kPa"}
"""A reducer is set to whole steps of this."""
LEAST_AT_FIXTURE_PA = parse_measure("20 psi", PRESSURE, None)
"""Standing pressure that a fixture must keep when the building's is lowered. Source: common practice."""


@dataclass(frozen=True, slots=True)
class _Step:
    """One change that lowers the static pressure, and what it is in words."""

    title: str
    change: Change


def lower(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Lower the pressure where it comes in, then set the tanks right or add one.

    Only where no tank that can be had would do as it is, and where every fixture keeps enough.
    """
    if heater.need is None or heater.need.nominal_m3 is not None:
        return
    steps = _steps(scene, heater)
    title, changes = " and ".join(step.title for step in steps), tuple(step.change for step in steps)
    trial = tried(scene, changes) if changes else None
    if trial is None or _starves(trial):
        return
    now = trial.after.heaters[heater.name]
    if now.verdict not in TROUBLED:
        yield Candidate(Effort.LOWER_PRESSURE, "lower", title, changes)
        return
    for sort in (recharge, exchange, enlarge, move, add_tank):
        for then in sort(trial.after, now):
            yield Candidate(Effort.LOWER_PRESSURE, "lower", f"{title}; then {then.title}", (*changes, *then.changes))


def _steps(scene: RemedyContext, heater: HeaterFacts) -> tuple[_Step, ...]:
    """Set lower the reducers that feed the heater, fill to less, and fit new reducers where there is neither.

    None where that cannot be.
    """
    fed = pressure_feed(scene, heater)
    if fed is None:
        return ()
    limit_pa = heater.limit_pa + scene.head_pa(heater.name)
    steps: list[_Step | None] = [_set_lower(scene, name, limit_pa) for name in fed.reducers]
    taken: tuple[str, ...] = ()
    for entry in fed.entries:
        if isinstance(scene.system.parts[entry.part], FillingLoop):
            steps.append(_filled_to(scene, entry.part, limit_pa))
            continue
        name = new_name(scene.system, entry.part, "reducer", taken=taken)
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
        **height_text(scene.system, scene.system.parts[gap.near.part].elevation_m),
        "between": between(scene.system, gap.near, gap.far),
    }
    where = f"in the pipe from {gap.near.part} to {gap.far.part}"
    title = f"fit a pressure reducer {where}, set to {_shown(scene, setting)}"
    return _Step(title, change_of("insert", fields))


def _setting(system: System, limit_pa: float) -> str | None:
    """A reducer's set as written: a share of the limit at its height, in whole steps; None where nothing is left."""
    step_pa = parse_measure(STEP[system.units], PRESSURE, None)
    steps = math.floor(min(SHARE_OF_LIMIT * limit_pa, HIGHEST_WRITTEN_PA) / step_pa)
    return pressure_text(system, steps * step_pa) if steps > 0 else None


def _shown(scene: RemedyContext, setting: str) -> str:
    return scene.report.facts.pressure(parse_measure(setting, PRESSURE, scene.system.units))


def _starves(trial: Trial) -> bool:
    """Whether a fixture stands lower than before and below what it must keep."""
    before, after = (dict(_at_fixtures(scene)) for scene in (trial.before, trial.after))
    return any(pressure_pa < min(LEAST_AT_FIXTURE_PA, before[end]) for end, pressure_pa in after.items())


def _at_fixtures(scene: RemedyContext) -> Iterator[tuple[End, float]]:
    """Static pressure at each port where water is drawn, gauge at the fixture."""
    network = scene.network
    for name, part in scene.system.parts.items():
        for port in part.draws_at():
            node = network.piping.node_of[End(name, port)]
            yield End(name, port), network.standing.at(network.zoning.zone_of[node]) - network.piping.heads_pa[node]
