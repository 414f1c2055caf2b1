import xml.etree.ElementTree as ET

from matplotlib.figure import Figure
from matplotlib.path import Path

from plumbnet.drawing.ink.pen import Cut, Group, Pen, add_group, filled, identifier, line, outlines, text
from plumbnet.drawing.symbols.symbol import SYMBOLS, Disc, Letter, Stroke
from plumbnet.report.figures.colours import PALETTES
from plumbnet.report.figures.figure_file import saved, settled

PEN = Pen(PALETTES["light"])
SVG = "{http://www.w3.org/2000/svg}"


def svg_of(*groups: Group) -> ET.Element:
    with settled():
        figure = Figure((2, 2))
        axes = figure.add_axes((0, 0, 1, 1))
        axes.set_xlim(0, 100)
        axes.set_ylim(100, 0)
        for group in groups:
            add_group(axes, group)
    return ET.fromstring(saved(figure, "svg", title="t"))  # noqa: S314  # our own


def test_ids_differ_wherever_names_differ() -> None:
    names = ["a", "a_", "a__", "a/b", "a_2f_b", "a b", "a-b", "ä", "A", "_5f_", "水"]
    ids = [identifier("part", name) for name in names]
    assert len(set(ids)) == len(names)
    assert all(sign.isascii() and (sign.isalnum() or sign in "-_.") for name in ids for sign in name)


def test_group_carries_its_id_and_words_into_the_svg() -> None:
    root = svg_of(
        Group("part-x", [text((50, 50), "x & <y>", 7, colour="#000000"), line([(0, 0), (9, 9)], "#000000", 1)], 1)
    )
    group = next(element for element in root.iter(f"{SVG}g") if element.get("id") == "part-x")
    assert [element.text for element in group.iter(f"{SVG}text")] == ["x & <y>"]
    assert len(list(group.iter(f"{SVG}path"))) == 1


def test_marks_are_put_in_their_place_in_the_colours_of_the_palette() -> None:
    marks = (Stroke(((0, 0), (1, 0))), Disc(0, 0, 2, "ink"), Letter(0, 0, "M"))
    stroke, disc, letter = outlines(marks, lambda point: (point[0] + 10, point[1] + 20), PEN)
    assert stroke.get_path().vertices[0].tolist() == [10, 20]  # type: ignore[attr-defined]  # a patch
    assert disc.get_path().get_extents().bounds == (8, 18, 4, 4)  # type: ignore[attr-defined]  # a patch
    assert letter.get_position() == (10, 20)  # type: ignore[attr-defined]  # a word


def test_dashes_keep_their_length_whatever_the_width() -> None:
    thin, thick = (line([(0, 0), (9, 0)], "#000000", width, (6.0, 2.0)) for width in (1.0, 2.0))
    paths = [svg_of(Group("a", [shape], 1)).find(f".//{SVG}g[@id='a']//{SVG}path") for shape in (thin, thick)]
    styles = ["" if path is None else path.get("style") or "" for path in paths]
    dashes = [next(rule for rule in style.split(";") if "dasharray" in rule) for style in styles]
    assert dashes[0].split() == ["stroke-dasharray:", "6,2"]
    assert dashes[0] == dashes[1]


def test_cut_shape_is_drawn_inside_its_outline_only() -> None:
    inside = Path([(10, 10), (20, 10), (20, 20), (10, 10)], closed=True)
    root = svg_of(Group("cut", [Cut(Path([(0, 0), (90, 90)]), inside, "#000000", 1.0)], 1))
    (path,) = root.findall(f".//{SVG}g[@id='cut']//{SVG}path")
    assert (path.get("clip-path") or "").startswith("url(#")


def test_filled_shape_has_no_outline() -> None:
    assert filled([(0, 0), (1, 0), (1, 1)], "#123456").get_linewidth() == 0.0


def test_every_symbol_can_be_drawn() -> None:
    groups = [
        Group(f"part-{n}", list(outlines(SYMBOLS[name].marks, lambda p: p, PEN)), 1) for n, name in enumerate(SYMBOLS)
    ]
    root = svg_of(*groups)
    for group in groups:
        assert root.find(f".//{SVG}g[@id='{group.get_gid()}']/*") is not None
