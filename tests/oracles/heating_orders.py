"""Every order in which heaters may warm, played push by push; pressures absolute at datum, volumes in cubic metres.

Written from the definition. A heated zone that grows pushes through every row of one-way gates that leads out of it:
each gate takes what it needs to open, and a reducer lifts nothing beyond it above its set. The zone climbs until tanks
in reach have taken the growth, or an outlet in reach lets go. Levels are sought by halving, over all rows.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import inf

NOTHING_HOLDS_ABS_PA = 1e13
"""A zone that could climb so high is held by nothing."""
_CLOSE = 1e-13
_CLOSE_PA = 1e-3

State = dict[int, float]


@dataclass(frozen=True)
class Gas:
    """A tank: its shell, the charge of its gas, the most water it lets in, and the head of its height."""

    shell_m3: float
    charge_abs_pa: float
    most_m3: float = inf
    head_pa: float = 0.0

    def water_m3(self, abs_pa: float) -> float:
        """Water in it by Boyle's law."""
        at_tank = max(abs_pa - self.head_pa, self.charge_abs_pa)
        return min(self.most_m3, self.shell_m3 - self.shell_m3 * self.charge_abs_pa / at_tank)


@dataclass(frozen=True)
class Vessel:
    """A zone: where it starts, what it grows by, its tanks, and where it lets out all that comes."""

    start_abs_pa: float
    growth_m3: float = 0.0
    tanks: tuple[Gas, ...] = ()
    outlet_abs_pa: float = inf

    @property
    def lets_go_abs_pa(self) -> float:
        """Where it lets out all that comes; never below where it starts."""
        return max(self.outlet_abs_pa, self.start_abs_pa)

    def takes_m3(self, low_abs_pa: float, high_abs_pa: float) -> float:
        """What its tanks take between two pressures."""
        if high_abs_pa <= low_abs_pa:
            return 0.0
        return sum(tank.water_m3(high_abs_pa) - tank.water_m3(low_abs_pa) for tank in self.tanks)


@dataclass(frozen=True)
class OneWay:
    """Water passes from `near` to `far` above `opens_pa` of difference, and while `far` stands below `below_abs_pa`."""

    near: int
    far: int
    opens_pa: float = 0.0
    below_abs_pa: float = inf


@dataclass(frozen=True)
class Row:
    """Gates in a row: what all need to open, and the highest that the last zone comes to by it."""

    opens_pa: float
    most_abs_pa: float

    def lifts_to(self, abs_pa: float) -> float:
        """What the last zone stands at, at the least, while the first stands at a pressure."""
        return min(abs_pa - self.opens_pa, self.most_abs_pa)

    def needs(self, far_abs_pa: float) -> float:
        """What the first zone must come to before the last rises above a pressure; infinite where it never does."""
        return far_abs_pa + self.opens_pa if far_abs_pa < self.most_abs_pa else inf


@dataclass(frozen=True)
class Company:
    """Zones and gates between them."""

    vessels: Mapping[int, Vessel]
    gates: Sequence[OneWay]

    _rows: dict[int, dict[int, set[Row]]] = field(default_factory=dict, compare=False, repr=False)

    def rows(self, zone: int) -> dict[int, set[Row]]:
        """From a zone to every other in its reach all rows of gates that meet no zone twice."""
        if zone not in self._rows:
            found: dict[int, set[Row]] = defaultdict(set)
            for far, row in _walk(self._out, zone, Row(0.0, inf), {zone}):
                found[far].add(row)
            self._rows[zone] = found
        return self._rows[zone]

    @cached_property
    def _out(self) -> dict[int, list[OneWay]]:
        out: dict[int, list[OneWay]] = defaultdict(list)
        for gate in self.gates:
            out[gate.near].append(gate)
        return out

    def lets_go_abs_pa(self, zone: int) -> float:
        """Where an outlet in its reach lets out all that a zone brings."""
        lowest = inf
        for far, rows in self.rows(zone).items():
            if self.vessels[far].outlet_abs_pa < inf:
                lowest = min(lowest, *(row.needs(self.vessels[far].lets_go_abs_pa) for row in rows))
        return lowest

    @cached_property
    def cold(self) -> State:
        """Nothing is warm."""
        return {zone: vessel.start_abs_pa for zone, vessel in self.vessels.items()}

    @cached_property
    def heated(self) -> dict[int, float]:
        """Growth of the zones that grow."""
        return {zone: vessel.growth_m3 for zone, vessel in self.vessels.items() if vessel.growth_m3 > 0.0}

    def lifts(self, zone: int, abs_pa: float) -> State:
        """What all zones in its reach stand at, at the least, while a zone stands at a pressure."""
        return {far: max(row.lifts_to(abs_pa) for row in rows) for far, rows in self.rows(zone).items()}

    def after(self, state: State, zone: int, growth_m3: float) -> State:
        """The state once a zone has grown by so much more."""
        low = state[zone]
        if low == inf or self._is_too_high(state, zone, low, growth_m3):
            return state
        step = max(1.0, abs(low)) * 0.05
        while not self._is_too_high(state, zone, low + step, growth_m3):
            low, step = low + step, step * 4.0
            if low > NOTHING_HOLDS_ABS_PA:
                return _higher(state, self.lifts(zone, inf))
        high = low + step
        while high - low > _CLOSE_PA + _CLOSE * high:
            middle = (low + high) / 2.0
            low, high = (low, middle) if self._is_too_high(state, zone, middle, growth_m3) else (middle, high)
        return _higher(state, self.lifts(zone, low))

    def _is_too_high(self, state: State, zone: int, abs_pa: float, growth_m3: float) -> bool:
        taken_m3 = 0.0
        for far, level in self.lifts(zone, abs_pa).items():
            vessel = self.vessels[far]
            if level > vessel.lets_go_abs_pa:
                return True
            taken_m3 += vessel.takes_m3(state[far], level)
        return taken_m3 >= growth_m3

    def played(self, history: Sequence[Sequence[int]], portions: int = 1) -> State:
        """The state after stages of zones that warm; those in one stage by turns, in so many portions."""
        state = self.cold
        for stage in history:
            count = portions if len(stage) > 1 else 1
            for _ in range(count):
                for zone in stage:
                    state = self.after(state, zone, self.vessels[zone].growth_m3 / count)
        return state

    def worst(self, portions: int = 1) -> State:
        """The highest of every zone over all orders of every heated zone's growth, each in so many equal portions."""
        best, met = dict(self.cold), dict(self.cold)

        def play(state: State, left: dict[int, int]) -> None:
            if not left:
                best.update(_higher(best, state))
            for zone, count in left.items():
                rest = {**left, zone: count - 1} if count > 1 else {o: n for o, n in left.items() if o != zone}
                play(self.after(state, zone, self.heated[zone] / portions), rest)

        play(met, dict.fromkeys(self.heated, portions))
        return best


def _walk(out: Mapping[int, list[OneWay]], zone: int, row: Row, met: set[int]) -> Iterator[tuple[int, Row]]:
    yield zone, row
    for gate in out.get(zone, ()):
        if gate.far not in met:
            most = min(row.most_abs_pa - gate.opens_pa, gate.below_abs_pa)
            yield from _walk(out, gate.far, Row(row.opens_pa + gate.opens_pa, most), met | {gate.far})


def _higher(one: State, other: State) -> State:
    return one | {zone: max(one[zone], level) for zone, level in other.items()}
