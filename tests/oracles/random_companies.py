"""Random zones that push into each other: tanks as they are charged, outlets, checks, reducers, circles."""

from dataclasses import dataclass

from hypothesis import strategies as st

from oracles.heating_orders import Company, Gas, OneWay, Vessel
from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.vessels.tank import Tank

STARTS = st.sampled_from([501_325.0] * 4 + [401_325.0, 551_325.0])
SHELLS = st.sampled_from([0.004, 0.008, 0.018, 0.018, 0.035, 0.08])
CHARGES = st.sampled_from([None, None, None, 301_325.0, 451_325.0, 601_325.0])
SHARES = st.sampled_from([None, None, None, 0.1, 0.35, 0.6])
HEADS = st.sampled_from([0.0, 0.0, 0.0, -40e3, 90e3])
GROWTHS = st.integers(1, 120).map(lambda tenths: tenths * 1.013e-4)
"""No sum of them fills a tank to the last drop, where the pressure may be anything."""
OPENS = st.sampled_from([0.0, 0.0, 0.0, 5e3, 40e3])
SETS = st.sampled_from([None, None, None, None, 520e3, 600e3, 751_325.0])
ABOVE = st.sampled_from([None, None, None, None, 0.0, 100e3, 300e3, 1.5e6])


@dataclass(frozen=True)
class Drawn:
    """A company as the simulator takes it and as the program does."""

    company: Company

    @property
    def loads(self) -> dict[int, ZoneLoad]:
        """Zones for the program."""
        return {zone: _load(vessel) for zone, vessel in self.company.vessels.items()}

    @property
    def gates(self) -> list[OneWayGate[int]]:
        """Gates for the program."""
        return [OneWayGate(gate.near, gate.far, gate.below_abs_pa, gate.opens_pa) for gate in self.company.gates]


def _load(vessel: Vessel) -> ZoneLoad:
    start = vessel.start_abs_pa
    tanks = (
        Tank(gas.shell_m3, gas.charge_abs_pa, start, None if gas.most_m3 == float("inf") else gas.most_m3, gas.head_pa)
        for gas in vessel.tanks
    )
    return ZoneLoad({"heater": vessel.growth_m3}, start, tuple(tanks), vessel.outlet_abs_pa)


@st.composite
def companies(draw: st.DrawFn, most: int = 6, most_heated: int = 5, *, plain: bool = False) -> Drawn:
    """Up to `most` zones, one to `most_heated` of them heated; plain: no opening pressures and no reducers."""
    count = draw(st.integers(2, most) | st.integers(3, most))
    fewest = draw(st.sampled_from([1, 2, 3, 3]))
    numbers = st.permutations(range(count))
    heated = draw(numbers)[: draw(st.integers(min(fewest, count, most_heated), min(count, most_heated)))]
    pairs = st.tuples(st.integers(0, count - 1), st.integers(0, count - 1)).filter(lambda pair: pair[0] != pair[1])
    joined = draw(st.lists(pairs, min_size=count - 1, max_size=2 * count))
    gates = [_gate(draw, near, far, plain=plain) for near, far in joined]
    starts = at_rest({zone: draw(STARTS) for zone in range(count)}, gates)
    vessels = {zone: _vessel(draw, starts[zone], draw(GROWTHS) if zone in heated else 0.0) for zone in range(count)}
    return Drawn(Company(vessels, gates))


def _gate(draw: st.DrawFn, near: int, far: int, *, plain: bool) -> OneWay:
    if plain:
        return OneWay(near, far)
    below = draw(SETS)
    return OneWay(near, far, draw(OPENS), float("inf") if below is None else below)


def _vessel(draw: st.DrawFn, start: float, growth: float) -> Vessel:
    tanks = tuple(_gas(draw, start) for _ in range(draw(st.sampled_from([0, 1, 1, 1, 2]))))
    above = draw(ABOVE)
    return Vessel(start, growth, tanks, float("inf") if above is None else start + above)


def _gas(draw: st.DrawFn, start: float) -> Gas:
    shell, charge, share = draw(SHELLS), draw(CHARGES), draw(SHARES)
    most = float("inf") if share is None else share * shell
    return Gas(shell, start if charge is None else charge, most, draw(HEADS))


def at_rest(starts: dict[int, float], gates: list[OneWay]) -> dict[int, float]:
    """Pressures once every gate has let through what presses on it."""
    found = dict(starts)
    for _ in found:
        for gate in gates:
            found[gate.far] = max(found[gate.far], min(found[gate.near] - gate.opens_pa, gate.below_abs_pa))
    return found
