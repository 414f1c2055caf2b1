import numpy as np
from matplotlib.patches import PathPatch
from matplotlib.path import Path

from plumbnet.drawing.ink.pen import Pen
from plumbnet.drawing.ink.pipes import HOP, crossings, pipe
from plumbnet.drawing.items.item import Link
from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing.placement import Arrangement, Route
from plumbnet.layout.model.system import End
from plumbnet.report.figures.colours import PALETTES

PEN = Pen(PALETTES["light"])


def route(number: int, *points: tuple[float, float], service: Service = Service.COLD) -> Route:
    return Route(Link(number, End("a", "out"), End("b", "in"), service), "", service, points)


LEVEL = route(0, (0, 50), (100, 50))
UPRIGHT = route(1, (40, 0), (40, 100))


def path_of(drawn: Route, hops: list[tuple[float, float]]) -> Path:
    first = next(pipe(drawn, hops, PEN))
    assert isinstance(first, PathPatch)
    return first.get_path()


#         |
#   ------)------    the upright hops over the level pipe
#         |
def test_upright_hops_over_the_level_pipe_it_crosses() -> None:
    assert crossings(Arrangement((), (), (LEVEL, UPRIGHT))) == {1: [(40, 50)]}
    path = path_of(UPRIGHT, [(40, 50)])
    assert np.count_nonzero(np.asarray(path.codes) == Path.CURVE4) == 3
    assert float(np.asarray(path.vertices)[:, 0].max()) > 40


def test_dashed_upright_is_interrupted_instead() -> None:
    path = path_of(route(1, (40, 100), (40, 0), service=Service.RETURN), [(40, 50)])
    assert np.count_nonzero(np.asarray(path.codes) == Path.MOVETO) == 2
    ys = sorted(float(y) for y in np.asarray(path.vertices)[:, 1])
    assert ys == [0, 50 - HOP, 50 + HOP, 100]


def test_pipes_that_only_touch_do_not_cross() -> None:
    assert crossings(Arrangement((), (), (LEVEL, route(1, (40, 50), (40, 100))))) == {}
    assert crossings(Arrangement((), (), (LEVEL, route(1, (100, 0), (100, 100))))) == {}


def test_only_a_return_has_an_arrow_and_it_points_the_way_the_pump_drives() -> None:
    assert len(list(pipe(LEVEL, [], PEN))) == 1
    for points, sign in (((100, 50), (0, 50)), -1), (((0, 50), (100, 50)), 1):
        _, arrow = pipe(route(0, *points, service=Service.RETURN), [], PEN)
        assert isinstance(arrow, PathPatch)
        vertices = np.asarray(arrow.get_path().vertices)
        assert (vertices[0][0] - vertices[1][0]) * sign > 0


def test_two_hops_close_together_become_one() -> None:
    path = path_of(UPRIGHT, [(40, 50), (40, 53)])
    assert np.count_nonzero(np.asarray(path.codes) == Path.CURVE4) == 3
