"""What makes a sealed heater safe; never a remedy by itself."""

from curing import HOUSE, cures, heater, house, scene

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.layout.model.system import System
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.relief_first import Safeguard, safeguards

BARE = "input: 40000 Btu/h"


def safe(layout: System) -> list[Safeguard]:
    return list(safeguards(scene(layout), heater(layout)))


def fields(layout: System) -> list[dict[str, object]]:
    return [change_fields(change) for one in safe(layout) for change in one.changes]


def test_missing_relief_valve_is_fitted_with_the_lowest_usual_set_that_keeps_the_limit() -> None:
    assert fields(house(heater=BARE)) == [
        {
            "set": {
                "part": "heater",
                "relief": {"pressure": "100 psi", "temperature": "210 degF", "capacity": "40000 Btu/h"},
            }
        }
    ]


def test_set_leaves_its_margin_above_a_high_static_pressure() -> None:
    found = fields(house(heater=BARE, street="pressure: 95 psi"))
    assert found[0]["set"] == {
        "part": "heater",
        "relief": {"pressure": "125 psi", "temperature": "210 degF", "capacity": "40000 Btu/h"},
    }


def test_set_is_never_above_the_rating_of_the_heater() -> None:
    assert fields(house(heater=f"{BARE}, rating: 90 psi")) == []


def test_heating_circuit_gets_the_set_of_a_heating_circuit() -> None:
    layout = house("street -> cv -> prv -> tee -> boiler", boiler="volume: 5 gal", prv="set: 12 psi")
    found = list(safeguards(scene(layout), heater(layout, "boiler")))
    assert "30 psi" in found[0].title


def test_shut_valve_before_the_relief_valve_is_opened_and_its_going_advised() -> None:
    layout = house(f"{HOUSE}\n heater.relief -> valve -> relief", heater=BARE, valve="state: shut")
    assert fields(layout) == [{"open": "valve"}]
    assert "taken out" in safe(layout)[0].title


def test_plugged_relief_valve_is_exchanged() -> None:
    layout = house(f"{HOUSE}\n heater.relief -> relief", heater=BARE, relief="state: plugged")
    assert fields(layout) == [{"set": {"part": "relief", "state": "sound"}}]


def test_relief_valve_alone_is_no_remedy() -> None:
    layout = house(heater=BARE)
    (guard,) = safe(layout)
    assert heater(with_changes(layout, guard.changes)).verdict is Verdict.TRAPPED
    found = cures(layout)
    assert found
    for remedy in found:
        assert remedy.changes[: len(guard.changes)] == guard.changes
        assert len(remedy.changes) > len(guard.changes)


def test_sealed_heater_that_no_relief_valve_can_be_fitted_to_gets_no_remedy() -> None:
    assert cures(house(heater=f"{BARE}, rating: 90 psi")) == ()
