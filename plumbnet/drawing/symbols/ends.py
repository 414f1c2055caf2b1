"""Symbols of where piping begins and ends: mains, wells, tanks, filling loops, vents, fixtures, relief valves."""

from plumbnet.drawing.symbols.symbol import (
    Disc,
    Fill,
    Letter,
    Symbol,
    arrow,
    bow_tie,
    box,
    curve,
    in_line,
    shape,
    shifted,
    straight,
    symbol,
    vessel,
)


@symbol("main")
def main(name: str) -> Symbol:
    """A wide arrow out of the street."""
    body = shape((-18.0, -10.0), (9.0, -10.0), (18.0, 0.0), (9.0, 10.0), (-18.0, 10.0))
    return Symbol(name, 36.0, 20.0, (body,), {"out": (18.0, 0.0)}, is_two_sided=True)


@symbol("well")
def well(name: str) -> Symbol:
    """A pump over a shaft that reaches down to water."""
    shaft = straight((-7.0, 8.0), (-7.0, 20.0)), straight((7.0, 8.0), (7.0, 20.0))
    water = curve((-7.0, 16.0), (-3.0, 12.0), (3.0, 20.0), (7.0, 16.0), width=1.2)
    driven = shape((-4.5, -13.6), (-4.5, 1.6), (9.5, -6.0), fill="ink")
    sockets = {"out": (10.0, -6.0)}
    return Symbol(name, 20.0, 40.0, (*shaft, water, Disc(0.0, -6.0, 10.0), driven), sockets)


@symbol("open_tank")
def open_tank(name: str) -> Symbol:
    """A tank without a lid, its water surface marked, filled from above through a float valve."""
    walls = straight((-20.0, -14.0), (-20.0, 16.0), (20.0, 16.0), (20.0, -14.0), width=1.4)
    surface = straight((-20.0, -4.0), (20.0, -4.0), width=0.9)
    mark = shape((3.0, -9.0), (11.0, -9.0), (7.0, -4.0), fill="none", width=0.8)
    ripples = straight((3.0, -1.5), (11.0, -1.5), width=0.7), straight((5.0, 1.0), (9.0, 1.0), width=0.7)
    float_valve = straight((-20.0, -11.0), (-13.0, -11.0), (-13.0, -8.5), width=1.2), Disc(-8.0, -4.5, 2.6)
    ground = shape((-20.0, -14.0), (20.0, -14.0), (20.0, 16.0), (-20.0, 16.0), width=0.0)
    sockets = {"in": (-20.0, -11.0), "out": (20.0, 11.0)}
    return Symbol(name, 40.0, 32.0, (ground, walls, surface, mark, *ripples, *float_valve), sockets, is_two_sided=True)


@symbol("air_gap")
def air_gap(name: str) -> Symbol:
    """A pipe that ends in the air above an open vessel, its water surface marked."""
    walls = straight((-10.0, 4.0), (-10.0, 16.0), (14.0, 16.0), (14.0, 4.0), width=1.4)
    surface = straight((-10.0, 8.0), (14.0, 8.0), width=0.9)
    spout = straight((-14.0, -14.0), (-2.0, -14.0), (-2.0, -6.0), width=1.4)
    drops = straight((-2.0, -3.0), (-2.0, 0.0), width=0.9), straight((-2.0, 3.0), (-2.0, 6.0), width=0.9)
    return Symbol(name, 28.0, 32.0, (walls, surface, spout, *drops), {"in": (-14.0, -14.0), "out": (14.0, 12.0)})


def _hose(name: str, fill: Fill) -> Symbol:
    """A hose between two stops."""
    half = 9.0
    stops = tuple(shifted(bow_tie(half, half, fill=fill), x) for x in (-18.5, 18.5))
    hose = curve(
        (-14.0, 0.0), (-9.0, 0.0), (-9.0, -14.0), (0.0, -14.0), (9.0, -14.0), (9.0, 0.0), (14.0, 0.0), width=1.6
    )
    return in_line(name, 46.0, 28.0, hose, *stops, *arrow(0.0, -4.0, 12.0))


@symbol("filling_loop")
def filling_loop(name: str) -> Symbol:
    """A hose between two stops that are shut."""
    return _hose(name, "ink")


@symbol("open_filling_loop")
def open_filling_loop(name: str) -> Symbol:
    """A hose between two stops that stand open."""
    return _hose(name, "ground")


@symbol("vent")
def vent(name: str) -> Symbol:
    """A pipe that bends over and ends in the open air."""
    pipe = curve((0.0, 12.0), (0.0, 4.0), (0.0, 0.0), (0.0, -4.0), (0.0, -14.0), (12.0, -14.0), (12.0, -4.0), width=1.8)
    drops = (
        straight((12.0, -0.5), (12.0, 2.0), width=0.9),
        straight((9.0, 1.0), (8.0, 3.5), width=0.9),
        straight((15.0, 1.0), (16.0, 3.5), width=0.9),
    )
    return Symbol(name, 30.0, 24.0, (pipe, *drops), {"in": (0.0, 12.0)}, hangs="up", stem=40.0)


@symbol("fixture")
def fixture(name: str) -> Symbol:
    """A tap in a box."""
    tap = (
        curve((-6.0, -1.0), (-2.0, -1.0), (-1.0, -1.0), (1.0, -1.0), (6.0, -1.0), (6.0, 3.0), (6.0, 7.0), width=1.4),
        straight((-1.0, -1.0), (-1.0, -6.5)),
        straight((-4.5, -6.5), (2.5, -6.5)),
    )
    sockets = {"hot": (-12.0, -8.0), "cold": (-12.0, 8.0)}
    return Symbol(name, 24.0, 28.0, (box(24.0, 28.0), *tap), sockets, is_two_sided=True, turns="sockets")


@symbol("fixture_with_crossover")
def fixture_with_crossover(name: str) -> Symbol:
    """A tap in a box whose hot and cold stand joined."""
    joined = straight((-12.0, -8.0), (-9.0, -8.0), (-9.0, 8.0), (-12.0, 8.0), width=1.6)
    bare = fixture(name)
    return Symbol(name, 24.0, 28.0, (*bare.marks, joined), bare.sockets, is_two_sided=False, turns="sockets")


@symbol("running_fixture")
def running_fixture(name: str) -> Symbol:
    """A tap in a box, running."""
    bare = fixture(name)
    drops = straight((6.0, 8.5), (6.0, 10.0), width=1.4), straight((6.0, 11.0), (6.0, 12.5), width=1.4)
    return Symbol(name, 24.0, 28.0, (*bare.marks, *drops), bare.sockets, is_two_sided=True, turns="sockets")


@symbol("hose_bibb")
def hose_bibb(name: str) -> Symbol:
    """A tap in a box with the thread for a hose at its mouth."""
    bare = fixture(name)
    thread = straight((3.0, 8.0), (9.0, 8.0), width=1.2), straight((3.0, 10.5), (9.0, 10.5), width=1.2)
    return Symbol(name, 24.0, 28.0, (*bare.marks, *thread), bare.sockets, is_two_sided=True, turns="sockets")


@symbol("expansion_tank")
def expansion_tank(name: str) -> Symbol:
    """A small closed tank with a membrane across it."""
    membrane = curve((-12.0, 0.0), (-4.0, -8.0), (4.0, 8.0), (12.0, 0.0), width=1.2)
    return Symbol(name, 24.0, 36.0, (vessel(24.0, 36.0), membrane), {"in": (0.0, 18.0)}, hangs="both")


@symbol("waterlogged_tank")
def waterlogged_tank(name: str) -> Symbol:
    """A small closed tank, crossed out: full of water, it takes none."""
    cross = straight((-8.0, -10.0), (8.0, 10.0), width=1.4), straight((8.0, -10.0), (-8.0, 10.0), width=1.4)
    return Symbol(name, 24.0, 36.0, (vessel(24.0, 36.0), *cross), {"in": (0.0, 18.0)}, hangs="both")


_ANGLE = (shape((-7.0, 13.0), (7.0, 13.0), (0.0, 2.0)), shape((11.0, -4.5), (11.0, 8.5), (0.0, 2.0)))
_SPRING = straight((0.0, 2.0), (0.0, -1.5), (-4.0, -3.2), (4.0, -5.6), (-4.0, -8.0), (4.0, -10.4), (0.0, -12.0))


@symbol("relief_valve")
def relief_valve(name: str) -> Symbol:
    """An angle valve under a spring, with a T for the temperature that opens it too."""
    return Symbol(name, 24.0, 26.0, (*_ANGLE, _SPRING, Letter(-8.0, -7.0, "T", 6.5)), {"in": (0.0, 13.0)}, hangs="up")


@symbol("pressure_relief")
def pressure_relief(name: str) -> Symbol:
    """An angle valve under a spring: no temperature opens it."""
    return Symbol(name, 24.0, 26.0, (*_ANGLE, _SPRING), {"in": (0.0, 13.0)}, hangs="up")


@symbol("expansion_relief")
def expansion_relief(name: str) -> Symbol:
    """An angle valve under a spring, letting drops fall."""
    drops = straight((15.0, 4.0), (15.0, 7.0), width=1.2), straight((15.0, 9.0), (15.0, 12.0), width=1.2)
    return Symbol(name, 32.0, 26.0, (*_ANGLE, _SPRING, *drops), {"in": (0.0, 13.0)}, hangs="up")


@symbol("plugged_relief")
def plugged_relief(name: str) -> Symbol:
    """An angle valve under a spring with its outlet closed off: a danger."""
    plug = straight((13.0, -5.0), (13.0, 9.0), width=2.6), straight((-10.0, 10.0), (10.0, -12.0), width=1.4)
    return Symbol(name, 28.0, 26.0, (*_ANGLE, _SPRING, *plug), {"in": (0.0, 13.0)}, hangs="up")


@symbol("quiet_branch")
def quiet_branch(name: str) -> Symbol:
    """A stack of cards: a quiet branch folded together."""
    cards = tuple(
        shape((-15.0 + d, -12.0 + d), (11.0 + d, -12.0 + d), (11.0 + d, 8.0 + d), (-15.0 + d, 8.0 + d))
        for d in (4.0, 2.0, 0.0)
    )
    return Symbol(name, 30.0, 24.0, cards, is_two_sided=True)
