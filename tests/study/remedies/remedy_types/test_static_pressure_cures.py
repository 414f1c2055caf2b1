"""The static pressure lowered first, where no tank can do it alone."""

from curing import HOUSE, cure, cured, efforts, house, psi

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import change_fields
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.remedies.candidate import Effort

HIGH = "pressure: 95 psi"
REDUCED = "street -> prv -> tee -> heater -> tap.hot"


def test_new_reducer_and_a_tank_cure_a_house_on_a_high_main() -> None:
    layout = house(street=HIGH)
    remedy = cure(layout, Effort.LOWER_PRESSURE)
    assert change_fields(remedy.changes[0]) == {
        "insert": {"part": "street-reducer", "kind": "pressure_reducer", "between": ["cv", "tee"], "set": "60 psi"}
    }
    after = cured(layout, remedy)
    assert after.verdict is Verdict.CONTROLLED
    assert psi(after.static_pa) == 60.0
    assert "then fit an expansion tank" in remedy.title


def test_reducer_that_is_set_too_high_is_set_lower() -> None:
    layout = house(REDUCED, street=HIGH, prv="set: 85 psi")
    remedy = cure(layout, Effort.LOWER_PRESSURE)
    assert change_fields(remedy.changes[0]) == {"set": {"part": "prv", "set": "60 psi"}}


def test_tank_that_is_there_is_used_once_the_pressure_is_lower() -> None:
    layout = house(f"{HOUSE}\n tee -> tank", street=HIGH, tank="volume: 8 gal, precharge: 95 psi")
    remedy = cure(layout, Effort.LOWER_PRESSURE)
    assert "charge tank to 60 psi" in remedy.title
    assert cured(layout, remedy).verdict is Verdict.CONTROLLED


def test_pressure_is_not_lowered_where_a_tank_does() -> None:
    assert Effort.LOWER_PRESSURE not in efforts(house())


def test_pressure_is_not_lowered_so_far_that_a_high_fixture_runs_dry() -> None:
    layout = house(f"{HOUSE}\n tee -> tap2.cold", street=HIGH, tap2="elevation: 120 ft")
    assert Effort.LOWER_PRESSURE not in efforts(layout)


def test_circuit_filled_too_high_is_let_down_and_no_reducer_fitted() -> None:
    layout = house(
        "street -> loop -> tee -> boiler -> emitter -> pump -> tee\ntee -> tank\nboiler.relief -> relief",
        loop="fill: 28 psi",
        relief="pressure: 30 psi",
        tank="precharge: 12 psi",
    )
    remedy = cure(layout, Effort.LOWER_PRESSURE, "boiler")
    assert remedy.title.startswith("Let the circuit behind loop down to 20 psi, and fill it no higher")
    assert change_fields(remedy.changes[0]) == {"set": {"part": "loop", "fill": "20 psi"}}
    assert remedy.verdict is Verdict.CONTROLLED


def test_pump_of_a_well_is_not_parted_from_its_tank() -> None:
    runs = "well -> tee -> heater -> tap.hot\n tee -> tank"
    assert Effort.LOWER_PRESSURE not in efforts(house(runs, well="cut_in: 70 psi, cut_out: 90 psi"))


def test_reducer_stands_at_the_height_of_what_lies_before_it() -> None:
    layout = house(street=HIGH, cv="elevation: 20 ft")
    changed = with_changes(layout, cure(layout, Effort.LOWER_PRESSURE).changes)
    assert round(changed.parts["street-reducer"].elevation_m, 3) == 6.096
