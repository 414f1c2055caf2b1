"""Symbols of what heats water or gives its heat away, of tanks that hold it, and of what takes air out of it."""

from plumbnet.drawing.symbols.symbol import (
    HEAVY,
    Disc,
    Letter,
    Mark,
    Stroke,
    Symbol,
    box,
    curve,
    shape,
    straight,
    symbol,
    vessel,
)


def _flame(x: float, y: float) -> Stroke:
    return curve(
        (x, y + 7.0),
        (x - 8.0, y + 5.0),
        (x - 5.0, y - 2.0),
        (x, y - 8.0),
        (x + 1.0, y - 3.0),
        (x + 8.0, y + 3.0),
        (x, y + 7.0),
        width=1.1,
    )


@symbol("storage_heater")
def storage_heater(name: str) -> Symbol:
    """A tall tank with a flame in it."""
    sockets = {"cold": (-19.0, 20.0), "hot": (19.0, -20.0), "return": (19.0, 6.0), "relief": (19.0, -9.0)}
    return Symbol(
        name, 38.0, 64.0, (vessel(38.0, 64.0), _flame(0.0, 10.0)), sockets, is_two_sided=True, tops=("relief",)
    )


@symbol("tankless_heater")
def tankless_heater(name: str) -> Symbol:
    """A box with a coiled pipe over a flame."""
    coil = straight((0.0, 2.0), (-9.0, 0.5), (9.0, -3.0), (-9.0, -6.5), (9.0, -10.0), (0.0, -12.0), width=1.2)
    sockets = {"cold": (-17.0, 2.0), "hot": (17.0, -12.0), "relief": (17.0, 12.0)}
    body = box(34.0, 46.0)
    return Symbol(
        name,
        34.0,
        46.0,
        (body, coil, _flame(0.0, 14.0)),
        sockets,
        is_two_sided=True,
        tops=("relief",),
        leads={"cold": (0.0, 2.0), "hot": (0.0, -12.0)},
    )


@symbol("indirect_heater")
def indirect_heater(name: str) -> Symbol:
    """A tall tank with a coil of another circuit in its lower half."""
    coil = straight((0.0, 2.0), (-10.0, 5.0), (10.0, 8.5), (-10.0, 12.0), (10.0, 15.5), (0.0, 18.0), width=1.2)
    sockets = {
        "cold": (-22.0, 29.0),
        "hot": (22.0, -27.0),
        "return": (22.0, -8.0),
        "relief": (22.0, -17.0),
        "coil_in": (22.0, 2.0),
        "coil_out": (22.0, 18.0),
    }
    leads = {"coil_in": (0.0, 2.0), "coil_out": (0.0, 18.0)}
    marks = (vessel(44.0, 76.0), coil)
    return Symbol(name, 44.0, 76.0, marks, sockets, is_two_sided=True, tops=("relief",), leads=leads)


@symbol("heat_exchanger")
def heat_exchanger(name: str) -> Symbol:
    """A box that a slanting line cuts in two waters."""
    cut = straight((-19.0, 26.0), (19.0, -26.0), width=HEAVY)
    sockets = {
        "cold": (-19.0, -4.0),
        "hot": (19.0, -18.0),
        "relief": (19.0, -11.0),
        "primary_in": (19.0, 6.0),
        "primary_out": (19.0, 18.0),
    }
    return Symbol(name, 38.0, 52.0, (box(38.0, 52.0), cut), sockets, is_two_sided=True, tops=("relief",))


@symbol("boiler")
def boiler(name: str) -> Symbol:
    """A box with a large flame and a B."""
    sockets = {"supply": (20.0, -14.0), "return": (20.0, 16.0), "relief": (20.0, 2.0)}
    return Symbol(
        name,
        40.0,
        50.0,
        (box(40.0, 50.0), _flame(0.0, 8.0), Letter(0.0, -14.0, "B", 9.0)),
        sockets,
        is_two_sided=True,
        tops=("relief",),
    )


@symbol("emitter")
def emitter(name: str) -> Symbol:
    """A radiator of four columns."""
    columns = tuple(shape((x, -11.0), (x + 7.0, -11.0), (x + 7.0, 11.0), (x, 11.0)) for x in (-14.0, -7.0, 0.0, 7.0))
    sockets = {"in": (-14.0, 0.0), "out": (14.0, 0.0)}
    return Symbol(name, 28.0, 22.0, columns, sockets, one_side={"in": -6.0, "out": 6.0})


@symbol("solar_collector")
def solar_collector(name: str) -> Symbol:
    """A slanting panel under the sun."""
    panel = shape((-19.0, 17.0), (-7.0, -17.0), (19.0, -17.0), (7.0, 17.0))
    bars = tuple(straight((-12.5 + x, 17.0), (-0.5 + x, -17.0), width=0.8) for x in (0.0, 6.5, 13.0))
    rays = (
        straight((-22.5, -11.0), (-24.0, -11.0)),
        straight((-17.5, -16.0), (-17.5, -17.5)),
        straight((-21.0, -14.5), (-22.0, -15.5)),
    )
    feet = straight((-19.0, 11.0), (-16.9, 11.0), width=1.2), straight((19.0, -6.0), (15.1, -6.0), width=1.2)
    marks: tuple[Mark, ...] = (panel, *bars, Disc(-17.5, -11.0, 3.5), *rays, *feet)
    sockets = {"in": (-19.0, 11.0), "out": (19.0, -6.0), "relief": (19.0, 4.0)}
    return Symbol(name, 38.0, 34.0, marks, sockets, is_two_sided=True, tops=("relief",))


@symbol("storage_tank")
def storage_tank(name: str) -> Symbol:
    """A tall tank."""
    sockets = {"in": (-20.0, 22.0), "out": (20.0, -22.0), "return": (20.0, 8.0), "relief": (20.0, -10.0)}
    return Symbol(name, 40.0, 68.0, (vessel(40.0, 68.0),), sockets, is_two_sided=True, tops=("relief",))


@symbol("device")
def device(name: str) -> Symbol:
    """A box with a question mark: any other device, its ports spread over both sides."""
    return Symbol(name, 34.0, 30.0, (box(34.0, 30.0), Letter(0.0, 0.0, "?", 12.0)), is_two_sided=True)


@symbol("air_separator")
def air_separator(name: str) -> Symbol:
    """A drum with bubbles that rise to a vent; below it the tapping for a tank."""
    drum = shape((-13.0, -10.0), (13.0, -10.0), (13.0, 10.0), (-13.0, 10.0))
    bubbles = (Disc(-5.0, 5.0, 1.6, "none"), Disc(1.0, 0.5, 1.6, "none"), Disc(4.0, -5.0, 1.6, "none"))
    vent = straight((0.0, -10.0), (0.0, -14.0)), Disc(0.0, -16.5, 2.5)
    sockets = {"in": (-13.0, 0.0), "out": (13.0, 0.0), "tank": (13.0, 7.0)}
    return Symbol(name, 26.0, 20.0, (drum, *bubbles, *vent), sockets)
