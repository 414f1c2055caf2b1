"""Changes tried on a copy: whom they cure, and what is worse for them."""

from curing import HOUSE, RELIEVED, TANKED, house, scene

from plumbnet.layout.edits.change_text import change_of
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import System
from plumbnet.study.remedies.trial import Trial, tried


def trial(layout: System, *changes: Change) -> Trial:
    made = tried(scene(layout), changes)
    assert made is not None
    return made


def tank(volume: str = "5 gal") -> Change:
    fields = {"part": "new", "kind": "expansion_tank", "volume": volume, "precharge": "60 psi", "run": "tee -> new"}
    return change_of("add", fields)


def test_tank_that_is_large_enough_cures_and_harms_nothing() -> None:
    made = trial(house(), tank())
    assert list(made.cures()) == ["heater"]
    assert made.is_harmless


def test_tank_that_is_too_small_cures_nothing_and_is_no_new_trouble() -> None:
    made = trial(house(), tank("1 gal"))
    assert list(made.cures()) == []
    assert made.is_harmless


def test_change_that_traps_a_heater_is_no_harmless_one() -> None:
    assert not trial(house(TANKED), change_of("remove", "tank")).is_harmless


def test_change_that_seals_a_trapped_heater_is_no_harmless_one() -> None:
    runs = f"{HOUSE}\n heater.relief -> relief"
    made = trial(house(runs, heater="input: 40000 Btu/h"), change_of("remove", "relief"))
    assert not made.is_harmless


def test_new_error_about_another_part_is_harm() -> None:
    made = trial(house(TANKED), change_of("set", {"part": "street", "pressure": "95 psi"}))
    assert "static-above-limit" in {one.name for one in made.new_errors()}


def test_requirement_that_was_met_and_is_broken_is_told_however_mild_it_is() -> None:
    made = trial(house(TANKED), change_of("set", {"part": "tank", "precharge": "50 psi", "volume": "20 gal"}))
    assert [one.name for one in made.broken_anew()] == ["tank-charge-differs"]
    assert not any(made.new_errors())
    assert list(trial(house(), tank()).broken_anew()) == []


def test_change_that_cannot_be_made_is_no_trial() -> None:
    assert tried(scene(house()), [change_of("remove", "tee")]) is None


def test_check_is_kept_while_one_stands_on_the_way_to_the_street() -> None:
    two = "street -> cv -> cv2 -> tee -> heater -> tap.hot\n tee -> tank"
    made = trial(house(two, heater=RELIEVED), change_of("remove", "cv2"))
    assert made.keeps_check("heater")


def test_reducer_alone_does_not_count_as_a_check() -> None:
    two = "street -> prv -> cv -> tee -> heater -> tap.hot\n tee -> tank"
    made = trial(house(two, tank="precharge: 50 psi"), change_of("remove", "cv"))
    assert made.after.heaters["heater"].verdict.value == "controlled"
    assert not made.keeps_check("heater")
