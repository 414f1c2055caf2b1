import numpy as np
from matplotlib.path import Path

from plumbnet.drawing.ink.outline import edges, hatching, outline


def inside(path: Path, x: float, y: float) -> bool:
    return bool(path.contains_point((x, y)))


def test_outline_goes_round_what_the_boxes_cover() -> None:
    path = outline([(0, 0, 100, 20), (80, 0, 100, 200)])
    assert inside(path, 50, 10)
    assert inside(path, 90, 150)
    assert not inside(path, 20, 150)


def test_small_gap_is_closed_and_a_wide_one_is_not() -> None:
    assert inside(outline([(0, 0, 100, 20), (0, 34, 100, 60)]), 50, 27)
    assert not inside(outline([(0, 0, 100, 20), (0, 60, 100, 90)]), 50, 40)


def test_small_hole_is_filled_and_a_large_one_is_left() -> None:
    def rings(size: float) -> int:
        frame = outline([(0, 0, size, 6), (0, size - 6, size, size), (0, 0, 6, size), (size - 6, 0, size, size)])
        return len(frame.to_polygons())

    assert (rings(50), rings(200)) == (1, 2)


def test_outline_has_a_point_only_at_corners() -> None:
    assert np.asarray(outline([(0, 0, 300, 200)]).vertices).shape[0] < 12


def test_very_large_area_is_drawn_on_a_coarser_raster() -> None:
    path = outline([(0, 0, 9000, 40), (0, 0, 40, 9000)])
    assert inside(path, 20, 8000)
    assert not inside(path, 4000, 4000)


def test_hatches_differ_in_the_slope_of_their_lines() -> None:
    def slopes(path: Path) -> set[float]:
        points = np.asarray(path.vertices).reshape(-1, 2, 2)
        return {round(float((b[1] - a[1]) / (b[0] - a[0])), 3) for a, b in points}

    box = (0.0, 0.0, 60.0, 40.0)
    assert slopes(hatching(box, "rising")) == {-1.0}
    assert slopes(hatching(box, "falling")) == {1.0}
    assert slopes(hatching(box, "crossed")) == {-1.0, 1.0}
    assert slopes(hatching(box, "level")) == {0.0}
    assert np.asarray(hatching(box, "").vertices).size == 0


def test_hatch_covers_its_whole_box() -> None:
    for hatch in ("rising", "falling"):
        points = np.asarray(hatching((10.0, 20.0, 70.0, 60.0), hatch).vertices).reshape(-1, 2, 2)
        for x, y in ((11, 21), (69, 21), (11, 59), (69, 59), (40, 40)):
            gaps = [abs((b[1] - a[1]) * (x - a[0]) / (b[0] - a[0]) + a[1] - y) for a, b in points]
            assert min(gaps) <= 7.0


def test_edges_lie_along_the_outline() -> None:
    found = list(edges(outline([(0, 0, 100, 50)])))
    assert min(box[0] for box in found) < 1
    assert max(box[2] for box in found) > 99
    assert not any(box[0] < 50 < box[2] and box[1] < 25 < box[3] for box in found)
