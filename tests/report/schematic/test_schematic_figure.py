import xml.etree.ElementTree as ET
from itertools import combinations

import pytest
from conftest import layout
from drawing_board import sketch
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.text import Text
from matplotlib.transforms import Bbox

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.figures.colours import Theme
from plumbnet.report.figures.figure_file import settled
from plumbnet.report.schematic.schematic_figure import schematic, schematic_file, schematic_svg

SVG = "{http://www.w3.org/2000/svg}"
HOUSE = """
street -> meter -> tee1 -> heater -> tee2 -> tap1.hot
tee2 -> tap2.hot
tee1 -> tap1.cold
tee1 -> valve -> tank
heater.relief -> relief
tee2 -> pump -> tee1
"""
THEMES: list[Theme] = ["light", "dark", "bw"]


def house(meter: str = "check: true") -> Report:
    return sketch(HOUSE, meter=meter, tank="volume: 0.3 gal").report


def root_of(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314  # our own


def test_every_part_has_one_group_with_its_name_as_text() -> None:
    report = house()
    root = root_of(schematic_svg(report))
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    assert {name for name in ids if name and name.startswith("part-")} == {
        f"part-{name}" for name in report.system.parts
    }
    texts = {element.text for element in root.iter(f"{SVG}text")}
    assert {"meter", "heater", "tank", "TRAPPED"} <= texts


def test_zone_way_and_pipes_can_be_found() -> None:
    trapped = {element.get("id") for element in root_of(schematic_svg(house())).iter()}
    assert {"zone-1", "zone-1-tag", "title", "legend", "title-block", "caution", "pipe-0"} <= trapped
    is_open = {element.get("id") for element in root_of(schematic_svg(house("check: false"))).iter()}
    assert "way-1" in is_open
    assert "zone-1" not in is_open


def test_hostile_names_and_titles_stay_text() -> None:
    text = layout("street -> heater -> tap.hot").replace(
        "plumbnet: 1", "plumbnet: 1\ntitle: '</text><script>alert(1)</script> $\\frac{'"
    )
    text = text.replace("tap", "ЖЖ水 _-_ ü")
    svg = schematic_svg(plumbnet.check(plumbnet.read_bytes(text.encode())), date="$x$ & \x1b]0;")
    root = root_of(svg)
    assert "<script" not in svg
    assert "\x1b" not in svg
    texts = "".join(element.text or "" for element in root.iter(f"{SVG}text"))
    assert "</text><script>" in texts
    assert "$x$ & \\x1b]0;" in texts
    assert "ЖЖ水" in texts


def test_no_two_words_of_a_drawing_overlap() -> None:
    for report in (house(), sketch(HOUSE + "tee2 -> vent").report, sketch("street -> cv -> heater -> tap.hot").report):
        figure = schematic(report)
        with settled():
            FigureCanvasAgg(figure)
            texts = [text for text in figure.findobj(Text) if isinstance(text, Text) and text.get_text()]
            boxes = [(text.get_text(), text.get_window_extent()) for text in texts]
        for (one, a), (other, b) in combinations(boxes, 2):
            shared = Bbox.intersection(a, b)
            assert shared is None or min(shared.width, shared.height) < 2.0, (one, other)


def test_no_word_leaves_the_sheet() -> None:
    figure = schematic(house(), date="2026-11-25")
    with settled():
        FigureCanvasAgg(figure)
        for text in figure.findobj(Text):
            if isinstance(text, Text) and text.get_text():
                box = text.get_window_extent()
                assert figure.bbox.x0 <= box.x0
                assert box.x1 <= figure.bbox.x1
                assert figure.bbox.y0 <= box.y0
                assert box.y1 <= figure.bbox.y1


@pytest.mark.parametrize("theme", THEMES)
def test_every_theme_draws_the_same_parts(theme: Theme) -> None:
    root = root_of(schematic_svg(house(), theme=theme))
    assert sum((element.get("id") or "").startswith("part-") for element in root.iter()) == len(house().system.parts)


def test_black_and_white_uses_no_colour() -> None:
    svg = schematic_svg(house(), theme="bw")
    for element in root_of(svg).iter():
        for colour in (element.get("style") or "").split("#")[1:]:
            red, green, blue = colour[:2], colour[2:4], colour[4:6]
            assert red == green == blue


def test_pdf_goes_on_a_sheet_of_paper() -> None:
    assert b"/MediaBox [ 0 0 841.8" in schematic_file(house(), "pdf")


def test_layout_without_heaters_or_pipes_to_speak_of_is_drawn() -> None:
    assert "part-tap" in schematic_svg(sketch("street -> tap.cold").report)
