"""The charts as pictures."""

from pathlib import Path

import pytest
from conftest import system

import plumbnet
from plumbnet.library.chart_picture import Charted, chart
from plumbnet.report.charts.chart_writer import chart_file
from plumbnet.study.dossier.tank_curves import sizes
from plumbnet.study.dossier.warm_ups import warm_ups_with_tank

HOUSE = plumbnet.check(system("street -> cv -> heater -> tap.hot", heater="relief: {pressure: 150 psi}"))
FOUND = {"ladder": None, "warmup": warm_ups_with_tank(HOUSE, "heater"), "tank": sizes(HOUSE, "heater")}
TWO = plumbnet.check(system("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"))


@pytest.mark.parametrize("of", ["ladder", "warmup", "tank"])
def test_picture_is_that_of_the_command(of: Charted, tmp_path: Path) -> None:
    path = tmp_path / "out.svg"
    picture = chart(HOUSE, of, "heater", path, theme="dark")
    assert path.read_bytes() == picture.content == chart_file(HOUSE, "heater", FOUND[of], "svg", theme="dark")


def test_ladders_of_all_are_shown_and_the_tank_of_one_that_is_named() -> None:
    assert chart(TWO, "ladder").content == chart_file(TWO, "", None, "svg")
    with pytest.raises(plumbnet.UnknownHeater, match=r"^the layout has 2 heaters; name one: heater1 or heater2$"):
        chart(TWO, "tank")
    with pytest.raises(plumbnet.UnknownHeater, match='no heater is called "boiler"'):
        chart(TWO, "ladder", "boiler")


def test_only_heater_needs_no_name() -> None:
    assert chart(HOUSE, "tank", form="png").content == chart_file(HOUSE, "heater", FOUND["tank"], "png")


def test_warm_up_that_there_is_not_says_why() -> None:
    with pytest.raises(plumbnet.NoWarmUp, match="lacks an input"):
        chart(system("street -> cv -> indirect -> tap.hot"), "warmup")
