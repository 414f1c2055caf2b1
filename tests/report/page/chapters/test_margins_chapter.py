"""The chapter of margins."""

from dataclasses import replace

from conftest import system

import plumbnet
from plumbnet.report.page.chapters.margins_chapter import how_far
from plumbnet.report.prose.prose_blocks import Paragraph
from plumbnet.report.studies.margins_report import margins_blocks
from plumbnet.study.dossier.report_dossier import dossier

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
DOSSIER = dossier(plumbnet.check(system("street -> cv -> heater -> tap.hot", heater=RELIEVED)))


def test_chapter_is_what_the_command_says() -> None:
    assert DOSSIER.margins is not None
    assert DOSSIER.margins.cures
    assert list(how_far(DOSSIER)) == list(margins_blocks(DOSSIER.margins))


def test_large_layout_is_left_to_the_command() -> None:
    (said,) = how_far(replace(DOSSIER, margins=None))
    assert said == Paragraph(
        "Margins are looked for in layouts of up to 120 parts, and there where it does not take long; the command "
        "plumbnet margins looks in any."
    )


def test_where_nothing_heats_water_there_is_no_chapter() -> None:
    assert list(how_far(dossier(plumbnet.check(system("street -> tap.cold"))))) == []
