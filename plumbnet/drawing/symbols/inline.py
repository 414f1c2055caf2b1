"""Symbols of what sits in a pipe: valves, checks, meters, pumps, filters, mixing valves."""

from plumbnet.drawing.symbols.symbol import (
    HEAVY,
    Disc,
    Letter,
    Symbol,
    arrow,
    bow_tie,
    box,
    check_marks,
    curve,
    in_line,
    shape,
    shifted,
    straight,
    symbol,
)


def _checked(bare: Symbol) -> Symbol:
    """The symbol with a check in its outlet."""
    half = bare.width / 2 - 9.0
    return in_line(
        bare.name,
        bare.width + 18.0,
        bare.height,
        *(shifted(mark, -9.0) for mark in bare.marks),
        straight((half, 0.0), (half + 18.0, 0.0), width=1.2),
        *check_marks(half + 8.0, 10.0),
        *arrow(half + 9.0, -9.5, 14.0),
    )


@symbol("joint")
def joint(name: str) -> Symbol:
    """A dot where pipes meet."""
    return Symbol(name, 6.0, 6.0, (Disc(0.0, 0.0, 2.6, "ink", 0.0),), is_joint=True)


@symbol("meter")
def meter(name: str) -> Symbol:
    """A circle with an M."""
    return in_line(name, 22.0, 22.0, Disc(0.0, 0.0, 11.0), Letter(0.0, 0.0, "M", 9.0))


@symbol("valve")
def valve(name: str) -> Symbol:
    """Two triangles, tip to tip."""
    return in_line(name, 26.0, 15.0, bow_tie(26.0, 15.0))


@symbol("shut_valve")
def shut_valve(name: str) -> Symbol:
    """Two filled triangles, tip to tip, under a bar: shut."""
    return in_line(name, 26.0, 15.0, bow_tie(26.0, 15.0, fill="ink"), straight((0.0, -9.5), (0.0, 9.5), width=HEAVY))


@symbol("balancing_valve")
def balancing_valve(name: str) -> Symbol:
    """A valve with two test cocks on one side."""
    cocks = (straight((x, 0.0), (x, -9.0), width=0.9) for x in (-8.0, 8.0))
    caps = (straight((x - 2.5, -9.0), (x + 2.5, -9.0)) for x in (-8.0, 8.0))
    return in_line(name, 26.0, 18.0, *cocks, *caps, bow_tie(26.0, 15.0))


@symbol("check_valve")
def check_valve(name: str) -> Symbol:
    """A triangle that points at a bar, and an arrow above it."""
    return in_line(
        name,
        26.0,
        16.0,
        straight((-13.0, 0.0), (-8.0, 0.0), width=1.2),
        straight((8.0, 0.0), (13.0, 0.0), width=1.2),
        *check_marks(0.0, 16.0),
        *arrow(0.0, -13.0, 16.0),
    )


def _boxed_checks(name: str) -> Symbol:
    return in_line(
        name,
        46.0,
        22.0,
        box(46.0, 22.0),
        straight((-23.0, 0.0), (23.0, 0.0)),
        *check_marks(-10.5, 11.0),
        *check_marks(9.5, 11.0),
        *arrow(0.0, -15.5, 20.0),
    )


@symbol("dual_check")
def dual_check(name: str) -> Symbol:
    """Two checks in a row in one body."""
    return in_line(
        name,
        36.0,
        18.0,
        straight((-18.0, 0.0), (18.0, 0.0), width=1.2),
        *check_marks(-7.0, 12.0),
        *check_marks(9.0, 12.0),
        *arrow(0.0, -12.0, 20.0),
    )


@symbol("double_check")
def double_check(name: str) -> Symbol:
    """Two checks in a box."""
    return _boxed_checks(name)


@symbol("reduced_pressure_assembly")
def reduced_pressure_assembly(name: str) -> Symbol:
    """Two checks in a box with a relief port below, between them."""
    body = _boxed_checks(name)
    port = straight((-0.5, 11.0), (-0.5, 14.0)), shape((-4.5, 14.0), (3.5, 14.0), (-0.5, 19.0))
    return in_line(name, 46.0, 38.0, *body.marks, *port)


@symbol("vented_dual_check")
def vented_dual_check(name: str) -> Symbol:
    """Two checks in a row with an open vent below, between them."""
    vent = straight((1.0, 3.0), (1.0, 14.0), width=1.2), straight((-4.0, 14.0), (6.0, 14.0), width=1.2)
    return in_line(name, 36.0, 30.0, *dual_check(name).marks, *vent)


@symbol("vacuum_breaker")
def vacuum_breaker(name: str) -> Symbol:
    """A check under a bonnet that lets air in."""
    return in_line(
        name,
        28.0,
        18.0,
        straight((-14.0, 0.0), (14.0, 0.0), width=1.2),
        *check_marks(0.0, 14.0),
        straight((0.0, -7.0), (0.0, -12.0)),
        curve((-8.0, -12.0), (-8.0, -20.0), (8.0, -20.0), (8.0, -12.0), fill="ground"),
        straight((-8.0, -12.0), (8.0, -12.0)),
        *arrow(0.0, 12.5, 16.0),
    )


@symbol("pressure_reducer")
def pressure_reducer(name: str) -> Symbol:
    """A valve under a spring-loaded dome."""
    dome = curve((-7.5, -9.0), (-7.5, -19.0), (7.5, -19.0), (7.5, -9.0), fill="ground")
    return in_line(
        name,
        28.0,
        16.0,
        bow_tie(28.0, 16.0),
        straight((0.0, 0.0), (0.0, -9.0)),
        dome,
        straight((-7.5, -9.0), (7.5, -9.0)),
    )


@symbol("pressure_reducer_with_bypass")
def pressure_reducer_with_bypass(name: str) -> Symbol:
    """A pressure reducer with a check across it that lets water back."""
    back = (
        straight((-14.0, 0.0), (-14.0, 15.0), (14.0, 15.0), (14.0, 0.0), width=0.9),
        shape((4.0, 11.5), (4.0, 18.5), (-3.0, 15.0)),
        straight((-3.0, 11.0), (-3.0, 19.0), width=HEAVY),
    )
    return in_line(name, 28.0, 38.0, *back, *pressure_reducer(name).marks)


@symbol("pump")
def pump(name: str) -> Symbol:
    """A circle with a filled triangle in the direction it drives."""
    return in_line(name, 24.0, 24.0, Disc(0.0, 0.0, 12.0), shape((-5.5, -10.4), (-5.5, 10.4), (12.0, 0.0), fill="ink"))


@symbol("booster_pump")
def booster_pump(name: str) -> Symbol:
    """A pump in a box."""
    return in_line(name, 28.0, 32.0, box(28.0, 32.0), *pump(name).marks)


@symbol("softener")
def softener(name: str) -> Symbol:
    """A tall tank with a control head, filled with grain."""
    places = ((-6.0, 8.0), (0.0, 8.0), (6.0, 8.0), (-3.0, 12.0), (3.0, 12.0), (-6.0, 16.0), (0.0, 16.0), (6.0, 16.0))
    grains = tuple(Disc(x, y, 0.8, "ink", 0.0) for x, y in places)
    head = shape((-12.0, -5.0), (12.0, -5.0), (12.0, 5.0), (-12.0, 5.0))
    return in_line(name, 24.0, 40.0, shape((-10.0, -4.0), (10.0, -4.0), (10.0, 20.0), (-10.0, 20.0)), head, *grains)


@symbol("filter")
def strainer(name: str) -> Symbol:
    """A lozenge with a dashed screen."""
    body = shape((-13.0, 0.0), (0.0, -11.0), (13.0, 0.0), (0.0, 11.0))
    screen = tuple(straight((0.0, y), (0.0, y + 3.6)) for y in (-10.0, -4.0, 2.0, 7.0))
    return in_line(name, 26.0, 22.0, body, *screen)


@symbol("heat_trap")
def heat_trap(name: str) -> Symbol:
    """A loop in the pipe."""
    return in_line(
        name,
        28.0,
        20.0,
        curve((-14.0, 0.0), (-4.0, 0.0), (-4.0, 10.0), (0.0, 10.0), (4.0, 10.0), (4.0, 0.0), (14.0, 0.0), width=1.6),
        curve((-7.0, -4.0), (-5.0, -8.0), (-2.0, -2.0), (0.0, -6.0), (2.0, -10.0), (5.0, -4.0), (7.0, -8.0), width=0.9),
    )


@symbol("mixing_valve")
def mixing_valve(name: str) -> Symbol:
    """Three triangles, tip to tip: hot and cold in from one side, mixed water out on the other."""
    sockets = {"hot": (-15.0, 0.0), "cold": (-15.0, 17.0), "mixed": (15.0, 0.0)}
    return Symbol(
        name,
        30.0,
        36.0,
        (
            straight((-15.0, 17.0), (0.0, 17.0), (0.0, 13.0), width=1.4),
            shape((-15.0, -8.0), (-15.0, 8.0), (0.0, 0.0)),
            shape((15.0, -8.0), (15.0, 8.0), (0.0, 0.0)),
            shape((-8.0, 14.0), (8.0, 14.0), (0.0, 0.0)),
            Disc(0.0, 0.0, 3.2, "ink"),
        ),
        sockets,
        turns="whole",
    )


@symbol("checked_meter")
def checked_meter(name: str) -> Symbol:
    """A meter with a check in its outlet."""
    return _checked(meter(name))


@symbol("checked_pump")
def checked_pump(name: str) -> Symbol:
    """A pump with a check in its outlet."""
    return _checked(pump(name))


@symbol("checked_softener")
def checked_softener(name: str) -> Symbol:
    """A softener with a check in its outlet."""
    return _checked(softener(name))


@symbol("checked_filter")
def checked_filter(name: str) -> Symbol:
    """A filter with a check in its outlet."""
    return _checked(strainer(name))


@symbol("checked_booster_pump")
def checked_booster_pump(name: str) -> Symbol:
    """A pump in a box, with the check that holds its pressure."""
    return in_line(name, 46.0, 32.0, box(46.0, 32.0), *_checked(pump(name)).marks)
