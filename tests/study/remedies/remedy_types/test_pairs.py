"""Two jobs where no single one cures."""

from curing import HOUSE, cured, cures, efforts, house

import plumbnet
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.pairs import open_and_fit

BEHIND = f"{HOUSE}\ntee -> valve -> tank"
SHUT = {"valve": "state: shut", "tank": "volume: 5 gal, precharge: 20 psi"}


def test_valve_is_opened_and_the_tank_behind_it_set_right() -> None:
    layout = house(BEHIND, **SHUT)
    scene = RemedyContext(plumbnet.check(layout))
    first = next(open_and_fit(scene, scene.heaters["heater"]))
    assert first.title == (
        "open valve, and lock or tag it open; then charge tank to 60 psi, shut off from the line and empty of water"
    )
    assert first.effort is Effort.PAIR


def test_pair_is_tried_only_where_no_single_change_cures() -> None:
    assert Effort.PAIR not in efforts(house(BEHIND, **SHUT))


def test_valve_that_cures_alone_begins_no_pair() -> None:
    layout = house(BEHIND, valve="state: shut", tank="volume: 5 gal, precharge: 60 psi")
    scene = RemedyContext(plumbnet.check(layout))
    assert list(open_and_fit(scene, scene.heaters["heater"])) == []
    assert cured(layout, cures(layout)[0]).verdict is Verdict.CONTROLLED
