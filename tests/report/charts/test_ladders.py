"""The ladder chart shows every pressure with its words, and none over another."""

from pathlib import Path

import pytest
import yaml
from conftest import system
from overlap import off_the_sheet, overlapping, written

import plumbnet
from plumbnet.layout.model.system import System
from plumbnet.report.charts.ladders import MOST_COLUMNS, ladder_chart

SYSTEMS = sorted((Path(__file__).parents[3] / "systems").glob("*.yaml"))
HOUSE = "street -> cv -> tee -> heater -> tap.hot"
LONG = "the-boiler-of-a-house-with-a-name-of-sixty-letters-no-more-x"
WIDE = "W" * 60


def named(heater: str, *, title: str) -> System:
    """A trapped heater of any name in a building of any title."""
    text = yaml.safe_dump(
        {
            "plumbnet": 1,
            "title": title,
            "parts": {
                "street": {"kind": "main", "pressure": "60 psi"},
                "check": "check_valve",
                heater: {"kind": "storage_heater", "volume": 50, "setpoint": 140, "relief": {"pressure": 150}},
                "tap": "fixture",
            },
            "runs": [f"street -> check -> {heater} -> tap.hot"],
        },
        allow_unicode=True,
        sort_keys=False,
    )
    return plumbnet.read_bytes(text.encode())


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_no_words_lie_over_others_or_off_the_sheet(path: Path) -> None:
    axes = ladder_chart(plumbnet.check(plumbnet.read(path)))
    assert overlapping(axes) == []
    assert off_the_sheet(axes) == []


def test_every_pressure_stands_beside_the_column() -> None:
    report = plumbnet.check(system(HOUSE, heater="relief: {pressure: 150 psi}"))
    words = " ".join(written(ladder_chart(report))).replace("\n", " ")
    for part in ("static 60 psi", "limit 80 psi (fixture tap)", "heater/relief 150 psi", "300 psi: heaters are tested"):
        assert part in words


def test_verdict_stands_at_the_foot_and_the_scale_in_the_report_s_units() -> None:
    report = plumbnet.check(system(HOUSE, heater="relief: {pressure: 150 psi}"), units="metric")
    axes = ladder_chart(report)
    assert "TRAPPED\nheater" in written(axes)
    assert axes.get_ylabel() == "pressure at the heater, kPa"
    assert "static 414 kPa" in written(axes)


def test_tank_and_where_it_settles_stand_on_the_ladder() -> None:
    report = plumbnet.check(system(f"{HOUSE}\ntee -> tank", tank="volume: 10 gal"))
    words = written(ladder_chart(report))
    assert "tank 60 psi" in words
    assert any(text.startswith("settles at 6") for text in words)


def test_a_second_heater_has_its_own_column() -> None:
    two = system("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot")
    axes = ladder_chart(plumbnet.check(two))
    assert {"TRAPPED\nheater1", "OPEN\nheater2"} <= {text.replace("SEALED", "TRAPPED") for text in written(axes)}
    assert overlapping(axes) == []


def test_one_heater_of_several_can_be_chosen() -> None:
    two = system("street -> tee -> cv -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot")
    words = "\n".join(written(ladder_chart(plumbnet.check(two), heaters=["heater2"])))
    assert "heater2" in words
    assert "heater1" not in words


def test_too_many_heaters_are_counted_in_the_heading() -> None:
    runs = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in range(1, MOST_COLUMNS + 3))
    axes = ladder_chart(plumbnet.check(system(f"street -> tee\n{runs}")))
    assert f"({MOST_COLUMNS} of {MOST_COLUMNS + 2} heaters)" in axes.get_title(loc="left").replace("\n", " ")


@pytest.mark.parametrize("name", [LONG, WIDE, "漢" * 20, "a_b-c_d"])
def test_names_of_any_length_and_letters_fit(name: str) -> None:
    axes = ladder_chart(plumbnet.check(named(name, title=f"The {name} $of$ \\alpha {name}")))
    assert overlapping(axes) == []
    assert off_the_sheet(axes) == []


def test_layout_without_heaters_says_so() -> None:
    axes = ladder_chart(plumbnet.check(system("street -> tee -> tap.cold")))
    assert axes.get_title(loc="left") == "Nothing here heats water"
