from drawing_board import sketch
from matplotlib.figure import Figure

from plumbnet.drawing.ink.paint import paint_composition
from plumbnet.drawing.ink.pen import Group, Pen
from plumbnet.report.figures.colours import PALETTES


def test_areas_lie_below_pipes_pipes_below_symbols_and_words_on_top() -> None:
    axes = Figure().add_subplot()
    house = sketch("street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold")
    paint_composition(axes, house.composition, Pen(PALETTES["light"]))
    groups = [each for each in axes.get_children() if isinstance(each, Group)]
    heights = {str(group.get_gid()): group.get_zorder() for group in groups}
    in_order = ["zone-1", "pipe-0", "part-tee", "part-heater", "zone-1-tag"]
    assert sorted(in_order, key=heights.__getitem__) == in_order
    assert {f"part-{name}" for name in house.diagram.items} <= set(heights)
