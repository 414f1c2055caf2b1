"""A reducer's screw turned down, alone or with the charge of the tanks to match: the sets that hold, as a range."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from plumbnet.layout.edits import HIGHEST_WRITTEN_PA, change_of, pressure_text
from plumbnet.layout.model import Change, End, Reducing, System
from plumbnet.layout.units import PRESSURE, Units, parse_measure
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import Tank
from plumbnet.rules import listed
from plumbnet.rules.facts import TROUBLED, HeaterFacts, TankFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.pressure_inlets import pressure_feed
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.tank_cures import cushion_of, is_charged_wrong, reached_tanks
from plumbnet.study.remedies.trial import Trial, tried
from plumbnet.study.remedies.trial_sizes import uptake_m3

STEP: Mapping[Units, str] = {"us": "5 psi", "metric": "25 kPa", "metric-bar": "0.25 bar"}
"""A reducer is set to whole steps of this."""
LEAST_AT_FIXTURE_PA = parse_measure("20 psi", PRESSURE, None)
"""Standing pressure that a fixture must keep when the building's is lowered. Source: common practice."""
_SAME_PA = 1.0
_SAME = 1e-3
"""Share by which what grows may differ under another pressure."""


def step_pa(system: System) -> float:
    """The step to which a reducer is set, in the units of the file."""
    return parse_measure(STEP[system.units], PRESSURE, None)


def set_reducer(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Set the reducers that feed a heater lower: the highest set that holds, and from where to where any holds.

    Alone if that is enough, else with the tanks charged to match. Only where a tank is there that gains room by it,
    and no pipe feeds the heater past the reducers.
    """
    fed = pressure_feed(scene, heater) if heater.verdict in TROUBLED else None
    tanks = tuple(tank for tank in reached_tanks(scene, heater) if not tank.is_waterlogged)
    if fed is None or not fed.is_by_reducers or not tanks or heater.static_pa is None:
        return
    static_pa = heater.static_pa + scene.head_pa(heater.name)
    beside = tuple(_as_low(scene, static_pa, {tank.name for tank in tanks}))
    for is_charged in (False, True):
        screws = _Screws(scene, heater.name, fed.reducers, tanks, beside, is_charged, static_pa)
        highest = screws.highest
        if highest is not None:
            yield Candidate(Effort.SET_REDUCER, "set", screws.title(highest), screws.changes(highest))
            return


def _as_low(scene: RemedyContext, static_pa: float, but: set[str]) -> Iterator[TankFacts]:
    """Sound tanks, less some, at which the same pressure stands, gauge at datum, and which are charged to it."""
    for tank in scene.report.facts.tanks:
        if tank.name in but or tank.is_waterlogged or tank.static_pa is None or is_charged_wrong(scene, tank):
            continue
        if abs(tank.static_pa + scene.head_pa(tank.name) - static_pa) <= _SAME_PA:
            yield tank


@dataclass(frozen=True)
class _Screws:
    """Reducers turned down together, step by step of that which stands highest; the tanks `hanging` charged to match.

    `is_charged` says that they are, and tanks `beside` with them, which the reducers feed too; else they stay as they
    are. `static_pa` is what stands now, gauge at datum.
    """

    scene: RemedyContext
    heater: str
    reducers: tuple[str, ...]
    hanging: tuple[TankFacts, ...]
    beside: tuple[TankFacts, ...]
    is_charged: bool
    static_pa: float

    @cached_property
    def highest(self) -> int | None:
        """The highest number of steps at which the heater is held and nothing worse; None where there is none.

        A lower set leaves a tank more room. It is looked for from where Boyle's law finds room for all that grows, and
        not at all where that finds none.
        """
        steps = self._with_room
        while steps > 0 and not self._holds(steps):
            steps -= 1
        while steps and steps < self._top and self._holds(steps + 1):
            steps += 1
        return steps if steps and not self._harms(steps) else None

    @cached_property
    def _with_room(self) -> int:
        """The highest number of steps at which the tanks have room for what grows, as far as the limit lets them."""
        heater = self.scene.heaters[self.heater]
        for steps in range(self._top, 0, -1):
            if self._room_m3(steps) >= heater.shared_expansion_m3 * (1.0 - _SAME):
                return steps
        return 0

    def _room_m3(self, steps: int) -> float:
        """What the tanks take up to the limit with the reducers set so."""
        return math.fsum(self._takes_m3(tank, steps) for tank in self.hanging)

    def _takes_m3(self, tank: TankFacts, steps: int) -> float:
        cushion, start_pa = cushion_of(self.scene, tank.name), self._line_pa(tank, steps)
        charge_pa = start_pa if self.is_charged else cushion.precharge_pa
        limit_pa = self.scene.limit_at_pa(self.scene.heaters[self.heater], self.scene.node_of(tank.name))
        held = Tank(cushion.volume_m3, charge_pa + ATMOSPHERE_PA, start_pa + ATMOSPHERE_PA, cushion.acceptance_m3)
        return uptake_m3(held, limit_pa) if limit_pa > start_pa else 0.0

    def _lowest(self, highest: int) -> int:
        """The lowest number of steps at which every tap keeps what it must; first guessed from what stands there."""
        steps = min(highest, self._least_steps)
        while steps < highest and (self._harms(steps) or not self._holds(steps)):
            steps += 1
        return steps

    @property
    def _least_steps(self) -> int:
        """The fewest steps that leave the highest tap its standing pressure."""
        heads_pa = [self.scene.head_pa(name) for name, part in self.scene.system.parts.items() if part.draws_at()]
        least_pa = max(heads_pa, default=0.0) + LEAST_AT_FIXTURE_PA - self.scene.head_pa(self._first)
        return max(1, math.ceil((least_pa - _SAME_PA) / self._step_pa))

    def title(self, highest: int) -> str:
        """What is done, with the range of sets."""
        lowest = self._lowest(highest)
        shown = self.scene.report.facts.pressure
        sets = [f"{name} to {shown(set_pa)}" for name, set_pa in self._sets(highest)]
        first_pa = self._sets(lowest)[0][1], self._sets(highest)[0][1]
        held = f" (any set from {shown(first_pa[0])} to {shown(first_pa[1])} holds)" if lowest < highest else ""
        if not self.is_charged:
            return f"set {listed(sets)}{held}"
        tanks = (*self.hanging, *self.beside)
        names = listed([tank.name for tank in tanks])
        charges = ", ".join(dict.fromkeys(shown(self._line_pa(tank, highest)) for tank in tanks))
        if held:
            held = f"{held[:-1]}, with the charge to match)"
        return f"set {listed(sets)}{held}, and charge {names} to {charges}, shut off from the line and empty of water"

    def changes(self, steps: int) -> tuple[Change, ...]:
        """The screws turned that far."""
        system = self.scene.system
        sets = [{"part": name, "set": pressure_text(system, set_pa)} for name, set_pa in self._sets(steps)]
        charges = [
            {"part": tank.name, "precharge": pressure_text(system, self._line_pa(tank, steps))}
            for tank in (*self.hanging, *self.beside)
            if self.is_charged
        ]
        return tuple(change_of("set", fields) for fields in [*sets, *charges])

    @cached_property
    def _levels_pa(self) -> dict[str, float]:
        """What each reducer is set to, gauge at datum."""
        found: dict[str, float] = {}
        for name in self.reducers:
            passages = self.scene.system.parts[name].passages()
            sets = [one.set_pa for one in passages if isinstance(one, Reducing)]
            found[name] = max(sets) + self.scene.head_pa(name)
        return found

    @cached_property
    def _first(self) -> str:
        return max(self.reducers, key=lambda name: self._levels_pa[name])

    @property
    def _step_pa(self) -> float:
        return step_pa(self.scene.system)

    @property
    def _top(self) -> int:
        """The highest whole step below what stands at the first reducer and can be written."""
        below_pa = min(self.static_pa, self._levels_pa[self._first]) - self.scene.head_pa(self._first) - _SAME_PA
        return max(0, int(min(below_pa, HIGHEST_WRITTEN_PA) // self._step_pa))

    def _sets(self, steps: int) -> list[tuple[str, float]]:
        """The reducers that are set lower, the first before others, each to what is level with it."""
        datum_pa = steps * self._step_pa + self.scene.head_pa(self._first)
        lower = [name for name in self.reducers if self._levels_pa[name] > datum_pa + _SAME_PA]
        in_order = sorted(lower, key=lambda name: name != self._first)
        return [(name, max(datum_pa - self.scene.head_pa(name), 0.0)) for name in in_order]

    def _line_pa(self, tank: TankFacts, steps: int) -> float:
        """The line pressure at a tank with the reducers set so, gauge at the tank."""
        datum_pa = steps * self._step_pa + self.scene.head_pa(self._first)
        return max(datum_pa - self.scene.head_pa(tank.name), 0.0)

    def _holds(self, steps: int) -> bool:
        trial = self._trial(steps)
        return trial is not None and trial.is_cured(self.heater)

    def _harms(self, steps: int) -> bool:
        trial = self._trial(steps)
        return trial is None or not trial.is_harmless or starves(trial)

    def _trial(self, steps: int) -> Trial | None:
        return tried(self.scene, self.changes(steps))


def starves(trial: Trial) -> bool:
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
