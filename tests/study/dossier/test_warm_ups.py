"""Warm-ups of a heater beside each other: as the layout is, and cured."""

from conftest import system

import plumbnet
from plumbnet.study.dossier.warm_ups import WarmUps, warm_ups, warm_ups_with_tank

HOUSE = "street -> cv -> tee -> heater -> tap.hot"
RELIEVED = {"heater": "relief: {pressure: 150 psi}"}


def test_heater_in_trouble_is_warmed_up_with_a_tank_too() -> None:
    found = warm_ups_with_tank(plumbnet.check(system(HOUSE, **RELIEVED)), "heater")
    assert found.cured is not None
    assert found.remedy.startswith("Fit an expansion tank of 5 gal")
    assert (found.as_it_is.outlets, found.cured.outlets) == (("heater/relief",), ())


def test_open_heater_is_warmed_up_as_it_is_only() -> None:
    found = warm_ups_with_tank(plumbnet.check(system("street -> tee -> heater -> tap.hot", **RELIEVED)), "heater")
    assert (found.cured, found.remedy) == (None, "")


def test_nothing_proposed_is_nothing_cured() -> None:
    report = plumbnet.check(system(HOUSE, **RELIEVED))
    assert warm_ups(report, "heater", None) == WarmUps(warm_ups(report, "heater", None).as_it_is)
