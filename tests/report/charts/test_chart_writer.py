"""A chart as a file: the same bytes every time, and nothing in a title starts a formula or a tag."""

import xml.etree.ElementTree as ET
from dataclasses import replace
from io import BytesIO

import pytest
from conftest import system
from pypdf import PdfReader

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.report.charts.chart_writer import chart_file
from plumbnet.report.figures.figure_file import FORMS, Form
from plumbnet.study.dossier.tank_curves import Sizes, sizes
from plumbnet.study.dossier.warm_ups import WarmUps, warm_ups_with_tank

HOUSE = system("street -> cv -> tee -> heater -> tap.hot", heater="relief: {pressure: 150 psi}")
SORTS = ("ladder", "warmup", "tank")


def shown(report: Report, of: str) -> Sizes | WarmUps | None:
    if of == "ladder":
        return None
    return sizes(report, "heater") if of == "tank" else warm_ups_with_tank(report, "heater")


@pytest.mark.parametrize("of", SORTS)
@pytest.mark.parametrize("form", FORMS)
def test_the_same_chart_is_the_same_file(of: str, form: Form) -> None:
    report = plumbnet.check(HOUSE)
    first, second = (chart_file(report, "heater", shown(report, of), form) for _ in range(2))
    assert first == second


@pytest.mark.parametrize("of", SORTS)
def test_hostile_titles_are_text(of: str) -> None:
    title = '<script>alert("$x_1$")</script> \\frac{ \x1b[2J \u202e & </svg>'
    report = plumbnet.check(replace(HOUSE, title=title))
    root = ET.fromstring(chart_file(report, "heater", shown(report, of), "svg"))  # noqa: S314  # our own file
    assert not [each for each in root.iter() if each.tag.endswith("script")]
    words = " ".join(each.text or "" for each in root.iter() if each.tag.endswith("text"))
    assert "<script>" in words
    assert "$x_1$" in words
    assert not {"\x1b", "\u202e"} & set(words)


def test_pdf_holds_its_words_and_its_title() -> None:
    reader = PdfReader(BytesIO(chart_file(plumbnet.check(HOUSE), "heater", None, "pdf")))
    assert "limit 80 psi" in reader.pages[0].extract_text()
    assert reader.metadata is not None
    assert reader.metadata.title == "drawn.yaml: ladder chart of heater"
