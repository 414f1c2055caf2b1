from plumbnet.drawing.palette import Service
from plumbnet.drawing.routing.corners import dots, simple
from plumbnet.drawing.routing.placement import Route


def route(*points: tuple[float, float]) -> Route:
    return Route(None, "tee", Service.COLD, points)


def test_points_on_a_straight_line_are_left_out() -> None:
    assert simple([(0, 0), (5, 0), (9, 0), (9, 0), (9, 4)]) == ((0, 0), (9, 0), (9, 4))


def test_way_there_and_back_keeps_its_ends() -> None:
    assert simple([(0, 0), (0, 0)]) == ((0, 0),)


#      |
#   ---+---     a dot where three or four pipes meet, none at a corner
def test_dot_stands_where_three_pipes_meet_and_not_at_a_corner() -> None:
    through, down = route((0, 0), (20, 0)), route((10, 0), (10, 9), (20, 9))
    assert dots([through, down], [(10, 0)]) == ((10, 0),)
    assert dots([route((0, 0), (10, 0)), route((10, 0), (10, 9))], [(0, 0)]) == ((0, 0),)


def test_upright_with_two_branches_has_a_dot_at_each_but_the_last() -> None:
    home = route((0, 0), (20, 0))
    near, far = route((10, 0), (10, 5), (20, 5)), route((10, 5), (10, 9), (20, 9))
    assert dots([home, near, far], [(10, 0)]) == ((10, 0), (10, 5))
