"""The schematic as a picture."""

from pathlib import Path

import pytest
from conftest import system

import plumbnet
from plumbnet.library.schematic_picture import draw
from plumbnet.report.figures.figure_file import FORMS, Form
from plumbnet.report.schematic.schematic_figure import schematic_file

HOUSE = system("street -> cv -> heater -> tap.hot")


@pytest.mark.parametrize("form", FORMS)
def test_picture_is_that_of_the_command_in_every_form(form: Form, tmp_path: Path) -> None:
    report = plumbnet.check(HOUSE)
    path = tmp_path / f"out.{form}"
    picture = draw(report, path, theme="bw", date="12 May")
    assert path.read_bytes() == picture.content == schematic_file(report, form, theme="bw", date="12 May")
    assert picture.form == form


def test_report_that_is_given_is_the_one_that_is_drawn() -> None:
    opened = plumbnet.whatif(HOUSE, [plumbnet.Change(remove="cv")]).after
    assert b'id="zone-1"' in draw(HOUSE).content
    assert b'id="zone-1"' not in draw(opened).content


def test_ending_that_says_nothing_is_refused_before_anything_is_drawn(tmp_path: Path) -> None:
    with pytest.raises(plumbnet.UnknownForm):
        draw(tmp_path / "none.yaml", tmp_path / "out.gif")
