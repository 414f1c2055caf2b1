from sketching import recipe, sketch, system

from plumbnet.study.exercise.blocks.wing_plant import annex
from plumbnet.study.exercise.stock.stretch import Spot


def test_wing_has_a_heater_a_tap_and_a_cold_pipe_of_its_own() -> None:
    drawn = sketch()
    annex(drawn, recipe(annex_check=1.0))
    parts = system(drawn).parts
    assert [part.kind for part in parts.values() if part.heat() is not None] == ["storage_heater"]
    places = [stretch.place for stretch in drawn.stretches[1:]]
    assert places == [Spot.WING, Spot.FEED, Spot.HOT_TAP, Spot.TAP]
    assert "check" in drawn.stretches[2].devices


def test_its_heater_is_tankless_by_a_share_of_its_own() -> None:
    drawn = sketch()
    annex(drawn, recipe(tankless=0.0, annex_tankless=1.0, bare=1.0))
    assert drawn.parts["heater"]["kind"] == "tankless_heater"
    assert "relief" in drawn.parts["heater"]
