"""A plant filled cold, every fixture shut, its burners lit; its temperatures and pressures in time.

Quasi-static: at every moment the pressures are those at which the water, as warm as it is, has its room. Heat goes
into each body of water as its burners give it, and none is lost unless a loss is asked for; so times are the
shortest there can be. A step ends where something happens, so that what happens does not depend on the steps.
All pressures are absolute, at datum.
"""

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field

from plumbnet.physics.numerics import root
from plumbnet.physics.warmup.heated_bodies import Body
from plumbnet.physics.warmup.warmup_events import EventWatch, watches
from plumbnet.physics.warmup.warmup_result import Moment, WarmUp, WarmupEvent, WarmupHappening
from plumbnet.physics.warmup.warmup_step import Plant, PlantState, advanced, reseated

STEP_K = 0.5
"""Rise in temperature of the fastest body in one step where no step is given."""
_MOST_STEPS = 1000
"""No more steps than these for the slowest body where no step is given."""

_ROUND_STEPS = (1.0, 2.0, 5.0)
_SHARE_OF_STEP = 1e-9
"""An event is found to this share of a step."""
_DROP_M3 = 1e-9
"""What rounding may make of the sum of waters that have passed to and fro."""
_FAR_K = 50.0
"""Water is not looked at as it would be further above its setpoint than this; it might be no liquid."""
_SLIVER = 1e-3
"""No step is shorter than this share of one, lest what an outlet lets out in it be lost in rounding."""


def simulate(plant: Plant, *, until_s: float | None = None, step_s: float | None = None) -> WarmUp:
    """The warm-up of a plant, until its burners are off or for a time.

    It ends earlier where water boils, a relief valve's temperature element opens, or something must break. Moments
    stand a step apart, and at every event. Raises ValueError for a step that is none, OutsideWater for water that
    is no liquid between 273.15 K and 623.15 K.

    >>> from plumbnet.physics.warmup.heated_bodies import Burner
    >>> from plumbnet.physics.warmup.coupled_pressures import Basin
    >>> from plumbnet.physics.vessels.tank import Tank
    >>> from plumbnet.physics.vessels.walls import Shell
    >>> burner = Burner(name="heater", input_w=10_000.0, hot_k=333.15)
    >>> body = Body(name="heater", burners=(burner,), shells={0: Shell(0.2)}, cold_k=283.15, fill_abs_pa=5e5)
    >>> tank = Tank(0.02, charge_abs_pa=5e5, start_abs_pa=5e5)
    >>> run = simulate(Plant({0: Basin(static_abs_pa=5e5, cold_k=283.15, tanks={"tank": tank})}, (), (body,)))
    >>> round(run.times_s[-1] / 60)  # by head: 200 kg by 50 K at 4.18 kJ/kg K, from 8 kW
    87
    """
    step = usual_step_s(plant, until_s=until_s) if step_s is None else step_s
    if not 0.0 < step < math.inf:
        raise ValueError(f"a step of {step:g} s is none")
    run = _Run(plant, plant.start)
    while not run.is_over and (until_s is None or run.now.time_s < until_s):
        if until_s is None and not run.now.firing:
            break
        ahead_s = (math.floor(run.now.time_s / step + _SLIVER) + 1.0) * step
        ahead_s = ahead_s if until_s is None or ahead_s < until_s - _SLIVER * step else until_s
        run.step(min(ahead_s, run.now.time_s + _far_too_hot_s(run.now)))
    run.close_outlets()
    return run.told()


def usual_step_s(plant: Plant, *, until_s: float | None = None) -> float:
    """A round step: short for the fastest body, yet not too many for the slowest, or until the end."""
    rates = [_rate_k_s(body) for body in plant.bodies]
    if not any(rates):
        return 60.0
    wanted = max(STEP_K / max(rates), slowest_s(plant) / _MOST_STEPS, (until_s or 0.0) / _MOST_STEPS)
    decade = 10.0 ** math.floor(math.log10(wanted))
    return max(decade * share for share in _ROUND_STEPS if share * decade <= wanted * (1.0 + _SHARE_OF_STEP))


def slowest_s(plant: Plant) -> float:
    """Time that the slowest body takes to the highest of its setpoints, no heat being lost."""
    return max(_spans_s(plant), default=0.0)


def _spans_s(plant: Plant) -> list[float]:
    """That time of each body that is heated at all, with what is mixed from it."""
    beside_j = _beside(plant.bodies, lambda body: _capacity_j_k(body) * max(0.0, body.mixed_k - body.cold_k))
    return [
        max(burner.hot_k - body.cold_k for burner in body.burners) / rate
        + beside_j.get(body.name, 0.0) / (rate * _capacity_j_k(body))
        for body in plant.bodies
        if (rate := _rate_k_s(body)) > 0.0
    ]


def _beside(bodies: Iterable[Body], of: Callable[[Body], float]) -> dict[str, float]:
    """What some bodies that are mixed from another come to together, by the name of that."""
    found: dict[str, float] = {}
    for body in bodies:
        if body.mixed_from is not None:
            found[body.mixed_from] = found.get(body.mixed_from, 0.0) + of(body)
    return found


def _far_too_hot_s(now: PlantState) -> float:
    """Time after which some water would be far above its setpoint: a step may not be longer, whatever it is for."""
    beside_j_k = _beside((warm.body for warm in now.warm if warm.body.name not in now.mixed), _capacity_j_k)
    times = [
        (max(burner.hot_k for burner in warm.body.burners) + _FAR_K - warm.temperature_k)
        / _rate_k_s(warm.body, beside_j_k.get(warm.body.name, 0.0))
        for warm in now.warm
        if any(burner.name in now.firing for burner in warm.body.burners)
    ]
    return min((time_s for time_s in times if time_s > 0.0), default=math.inf)


def _rate_k_s(body: Body, beside_j_k: float = 0.0) -> float:
    """How fast all its burners warm a body, and as much heat capacity beside it."""
    return sum(burner.useful_w for burner in body.burners) / (_capacity_j_k(body) + beside_j_k)


def _capacity_j_k(body: Body) -> float:
    return 4186.0 * body.cold.mass_kg


@dataclass
class _Run:
    """A warm-up in the making."""

    plant: Plant
    now: PlantState
    moments: list[Moment] = field(default_factory=list)
    events: list[WarmupEvent] = field(default_factory=list)
    is_over: bool = False
    _told: set[tuple[WarmupHappening, str]] = field(default_factory=set)

    def __post_init__(self) -> None:
        stood = (watch for watch in watches(self.plant, self.now) if watch.excess(self.now) > 0.0)
        self._told |= {(watch.what, watch.name) for watch in stood if watch.is_told_once}
        self._light()
        self._tell_what_runs()
        self._record()

    def step(self, until_s: float) -> None:
        """Go on to a time, or to the first thing that happens before it."""
        ahead = advanced(self.plant, self.now, until_s - self.now.time_s)
        shut = self.now.open - ahead.spilling
        if shut:
            self._reseat(shut)
            return
        watch, ahead = self._first(ahead)
        self.now = ahead
        if watch is not None:
            self._happens(watch)
        self._record()

    def close_outlets(self) -> None:
        """Let every relief valve that stands open close, now that nothing grows any more."""
        if self.now.open and not self.now.firing:
            self._reseat(self.now.open)

    def told(self) -> WarmUp:
        """What has happened."""
        start, end = self.plant.start, self.now
        return WarmUp(
            moments=tuple(self.moments),
            events=tuple(self.events),
            books=end.books,
            start_kg=math.fsum(warm.mass_kg for warm in start.warm),
            end_kg=math.fsum(warm.mass_kg for warm in end.warm),
            start_j=math.fsum(warm.enthalpy_j for warm in start.warm),
            end_j=math.fsum(warm.enthalpy_j for warm in end.warm),
            returned_m3=returned if abs(returned := math.fsum(end.away_m3.values())) > _DROP_M3 else 0.0,
        )

    def _light(self) -> None:
        """Light the burners of all water that is colder than their setpoint."""
        for index, warm in enumerate(self.now.warm):
            for burner in warm.body.burners:
                if warm.temperature_k < burner.hot_k:
                    self.now = self.now.with_burner(burner.name, lit=True)
                    self._tell(WarmupHappening.BURNER_ON, burner.name, zone=warm.body.home, body=index)

    def _tell_what_runs(self) -> None:
        """Tell of the outlets that stand open from the start."""
        for zone, basin in self.plant.basins.items():
            if basin.runs and basin.outlet is not None:
                self._tell(WarmupHappening.OUTLET_RUNS, basin.outlet.name, zone=zone)

    def _first(self, ahead: PlantState) -> tuple[EventWatch | None, PlantState]:
        """The first thing that happens on the way ahead, and the state there."""
        first = None
        for watch in self._watches():
            if watch.excess(ahead) > 0.0:
                first, ahead = watch, self._until(watch, ahead)
        return first, ahead

    def _until(self, watch: EventWatch, ahead: PlantState) -> PlantState:
        span = ahead.time_s - self.now.time_s
        if span <= 0.0 or watch.excess(self.now) >= 0.0:
            return self.now
        seen = {0.0: self.now, span: ahead}

        def excess(time_s: float) -> float:
            if time_s not in seen:
                seen[time_s] = advanced(self.plant, self.now, time_s)
            return watch.excess(seen[time_s])

        return seen[root(excess, 0.0, span, xtol=_SHARE_OF_STEP * span, rtol=1e-14)]

    def _happens(self, watch: EventWatch) -> None:
        match watch.what:
            case WarmupHappening.BURNER_ON:
                self.now = self.now.with_burner(watch.name, lit=True)
            case WarmupHappening.BURNER_OFF:
                self.now = self.now.with_burner(watch.name, lit=False)
                if (WarmupHappening.SETPOINT_REACHED, watch.name) not in self._told:
                    self._tell(WarmupHappening.SETPOINT_REACHED, watch.name, zone=watch.zone, body=watch.body)
            case WarmupHappening.MIXED_REACHED:
                self.now = self.now.with_mixed(watch.name)
            case WarmupHappening.OUTLET_OPENS:
                self.now = self.now.with_open(watch.zone)
            case _:
                self.is_over = watch.what.is_the_end
        if watch.what is WarmupHappening.OUTLET_OPENS and self.plant.basins[watch.zone].runs:
            return
        self._tell(watch.what, watch.name, zone=watch.zone, body=watch.body)

    def _reseat(self, zones: frozenset[int]) -> None:
        self.now = reseated(self.plant, self.now, zones)
        for zone in sorted(zones):
            outlet = self.plant.basins[zone].outlet
            if outlet is not None and not self.plant.basins[zone].runs:
                self._tell(WarmupHappening.OUTLET_RESEATS, outlet.name, zone=zone)
        self._record()

    def _tell(self, what: WarmupHappening, name: str, *, zone: int, body: int | None = None) -> None:
        temperature = None if body is None else self.now.warm[body].temperature_k
        self.events.append(WarmupEvent(self.now.time_s, what, name, self.now.pressures_abs_pa[zone], temperature))
        self._told.add((what, name))

    def _record(self) -> None:
        self.moments.append(self.now.moment(self.plant))

    def _watches(self) -> Iterator[EventWatch]:
        """What can happen next, less what has been told, if once is enough, and what stood so from the start."""
        for watch in watches(self.plant, self.now):
            if not (watch.is_told_once and (watch.what, watch.name) in self._told):
                yield watch
