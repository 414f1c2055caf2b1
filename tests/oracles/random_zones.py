"""Random zones with heated water, tanks and outlets, joined by one-way gates; absolute pressures at datum."""

from dataclasses import dataclass

from hypothesis import strategies as st

from plumbnet.physics.equilibrium.equilibrium import OneWayGate, ZoneLoad
from plumbnet.physics.vessels.tank import Tank

Gate = OneWayGate[str]

STATIC = st.sampled_from([200e3, 300e3, 350e3, 500e3])
HEAD = st.sampled_from([0.0, 0.0, 0.0, -40e3, 90e3])
CHARGE = st.sampled_from([150e3, 200e3, 300e3, 420e3, 600e3])
VOLUME = st.integers(4, 60).map(lambda tenths: tenths * 1e-3)
GROWTH = st.one_of(st.just(0.0), st.integers(1, 97).map(lambda parts: parts * 1.7e-4))
ACCEPTANCE = st.sampled_from([None, None, 0.1, 0.35, 0.6])
ABOVE_STATIC = st.sampled_from([None, None, None, 0.0, 60e3, 240e3, 700e3])


@dataclass(frozen=True)
class Zones:
    """Zones by name and the gates between them; no zone stands cold above one that its gates lead to."""

    loads: dict[str, ZoneLoad]
    gates: tuple[Gate, ...]


@st.composite
def zones(draw: st.DrawFn, most: int = 6) -> Zones:
    """Up to `most` zones, with gates in any direction and circles of them."""
    names = "ABCDEF"[: draw(st.integers(1, most))]
    pairs = st.tuples(st.sampled_from(names), st.sampled_from(names)).filter(lambda pair: pair[0] != pair[1])
    joined = draw(st.lists(pairs, max_size=2 * len(names), unique=True)) if len(names) > 1 else []
    gates = tuple(OneWayGate(near, far) for near, far in joined)
    static = at_rest({name: draw(STATIC) for name in names}, gates)
    return Zones({name: _load(draw, name, static[name]) for name in names}, gates)


def at_rest(supplied: dict[str, float], gates: tuple[Gate, ...]) -> dict[str, float]:
    """Static pressures once every gate has let through what presses on it."""
    static = dict(supplied)
    for _ in static:
        for gate in gates:
            static[gate.far] = max(static[gate.far], static[gate.near])
    return static


def _load(draw: st.DrawFn, name: str, static: float) -> ZoneLoad:
    above = draw(ABOVE_STATIC)
    return ZoneLoad(
        {f"heater in {name}": draw(GROWTH)},
        static,
        tuple(_tank(draw, static) for _ in range(draw(st.sampled_from([0, 0, 1, 1, 2])))),
        float("inf") if above is None else static + above,
    )


def _tank(draw: st.DrawFn, static: float) -> Tank:
    volume, share = draw(VOLUME), draw(ACCEPTANCE)
    return Tank(volume, draw(CHARGE), static, None if share is None else share * volume, draw(HEAD))
