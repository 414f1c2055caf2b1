from sketching import recipe, sketch, system

import plumbnet
from plumbnet.rules.facts import Verdict
from plumbnet.study.exercise.blocks.heating_plant import heating
from plumbnet.study.exercise.usual_sizes import USUAL


def test_boiler_and_indirect_heater_warm_two_waters() -> None:
    drawn = sketch()
    hot = heating(drawn, recipe(plate=0.0), [])
    drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
    report = plumbnet.check(system(drawn))
    indirect, boiler = sorted(report.heaters, key=lambda one: one.name, reverse=True)
    assert (indirect.name, boiler.name) == ("indirect", "boiler")
    assert round(boiler.static_pa or 0) == 82737  # the 12 psi of its filling line
    assert len(boiler.loops) == 2
    assert "boiler" not in indirect.shares_with


def test_plates_have_no_store_and_stand_cold_until_somebody_draws() -> None:
    drawn = sketch()
    check = drawn.part("check", "check_valve")
    hot = heating(drawn, recipe(plate=1.0), [check])
    drawn.run(hot, f"{drawn.part('tap', 'fixture')}.hot")
    exchanger = next(one for one in plumbnet.check(system(drawn)).heaters if one.name == "exchanger")
    assert (exchanger.kind, exchanger.verdict) == ("heat_exchanger", Verdict.ON_DEMAND)


def test_plates_in_a_circulation_heat_standing_water() -> None:
    drawn = sketch()
    line = [drawn.part("check", "check_valve"), drawn.part("return", "tee")]
    hot = heating(drawn, recipe(plate=1.0), line)
    drawn.run(hot, drawn.part("pump", "circulator"), "return")
    exchanger = next(one for one in plumbnet.check(system(drawn)).heaters if one.name == "exchanger")
    assert exchanger.verdict is Verdict.TRAPPED


def test_metric_heating_circuit_is_filled_by_hand() -> None:
    drawn = sketch(usual=USUAL["metric"])
    heating(drawn, recipe(plate=0.0), [])
    boiler = next(one for one in plumbnet.check(system(drawn)).heaters if one.name == "boiler")
    assert (boiler.stopped_by.sets, boiler.static_pa) == ((), 100e3)


def test_heating_circuit_is_filled_past_its_backflow_preventer() -> None:
    drawn = sketch()
    heating(drawn, recipe(plate=0.0), [])
    boiler = next(one for one in plumbnet.check(system(drawn)).heaters if one.name == "boiler")
    assert boiler.stopped_by.sets == (("fill-reducer", "fill-rp"),)
