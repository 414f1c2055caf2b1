"""Heaters of which one story is true: those that share their water, or stand alike in alike instances; no others."""

from conftest import system

import plumbnet
from plumbnet.layout.model.system import System
from plumbnet.report.page.chapters.heater_groups import alike_heaters

TWINS = """street -> cv -> tee -> heater1 -> tap.hot
           tee -> heater2 -> tap.cold"""


def groups(layout: System) -> list[list[str]]:
    return [[heater.name for heater in group] for group in alike_heaters(plumbnet.check(layout).facts)]


def test_heaters_of_one_water_are_told_together() -> None:
    assert groups(system(TWINS)) == [["heater1", "heater2"]]


def test_heaters_that_differ_in_anything_told_are_not() -> None:
    assert groups(system(TWINS, heater2="volume: 80 gal")) == [["heater1"], ["heater2"]]


def test_houses_alike_are_told_together_whatever_their_parts_are_called() -> None:
    houses = "\n".join(f"tee -> heater{number} -> tap{number}.hot" for number in (1, 2, 3))
    assert groups(system(f"street -> tee\n{houses}")) == [["heater1", "heater2", "heater3"]]
    checked = "street -> tee -> cv1 -> heater1 -> tap1.hot\ntee -> cv2 -> heater2 -> tap2.hot"
    assert groups(system(checked)) == [["heater1"], ["heater2"]], "the check is named, and is another"
