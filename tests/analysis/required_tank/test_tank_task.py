"""The tank that heated water needs, by every method, and what each is handed of the layout."""

from dataclasses import replace

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.required_tank.tank_task import nominal_m3, sized, tank_answer
from plumbnet.analysis.verdict.case import Case
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.layout.model.part import Mixture
from plumbnet.layout.model.system import System
from plumbnet.network.network import network_of
from plumbnet.physics.fluids import glycol
from plumbnet.physics.sizing.duty import MissingInput, OutsideMethod
from plumbnet.physics.sizing.methods import METHODS
from plumbnet.physics.vessels.tank import NoTank, nominal_sizes
from plumbnet.rules.rule_profile import Profile, profile
from plumbnet.rules.ruling import SizingRuling

RELIEF = "relief: {pressure: 150 psi}"
RUNS = "street -> cv -> tee -> heater -> tap.hot"


def case(drawn: System, name: str = "heater", rules: Profile | None = None) -> Case:
    network, chosen = network_of(drawn), rules or profile("general")
    return judge_of(network, chosen).case(next(heated for heated in network.heated if heated.name == name))


def by_rule(method: str) -> Profile:
    ruling = SizingRuling.model_validate({"value": method, "clause": "a test", "verified": False})
    return profile("general").model_copy(update={"sizing": ruling})


def test_heaters_own_method_goes_before_that_of_the_rules() -> None:
    assert case(system(RUNS)).method == "membrane"
    assert case(system(RUNS), rules=by_rule("uk-4-percent")).method == "uk-4-percent"
    own = system(RUNS, heater="sizing: din-4807-5")
    assert case(own, rules=by_rule("uk-4-percent")).method == "din-4807-5"


def test_general_practice_sizes_by_boyles_law() -> None:
    assert profile("general").sizing.value == "membrane"


@pytest.mark.parametrize("method", METHODS)
def test_report_gives_the_tank_of_the_method_chosen(method: str) -> None:
    made = plumbnet.check(system(RUNS, heater=f"{RELIEF}, sizing: {method}"))
    stated = made.heaters[0].need
    assert stated is not None
    alone = case(system(RUNS, heater=RELIEF))
    asked = sum(one.tank_m3 for one in sized(alone.tank.task, method))
    assert stated.tank_m3 is not None
    assert max(stated.tank_m3, stated.asked_m3 or 0.0) == pytest.approx(max(asked, stated.tank_m3), rel=1e-4)
    assert (stated.method == method) == (stated.asked_m3 is not None)


def test_european_charge_is_that_of_the_vessel_and_not_of_the_line() -> None:
    drawn = system(RUNS, heater=f"{RELIEF}, sizing: en-12828", tap="elevation: 33.4553 ft")
    stated = plumbnet.check(drawn).heaters[0].need
    assert stated is not None
    assert stated.precharge_pa == pytest.approx(1.3e5, rel=1e-4)  # 10 m of water and 0.3 bar


def test_plain_tank_is_charged_with_the_air() -> None:
    stated = plumbnet.check(system(RUNS, heater=f"{RELIEF}, sizing: asme-iv")).heaters[0].need
    assert stated is not None
    assert stated.precharge_pa == 0.0


def test_method_without_an_answer_leaves_it_to_boyles_law() -> None:
    one = case(system(RUNS))
    assert one.tank.task.relief_pa is None
    with pytest.raises(MissingInput):
        sized(one.tank.task, "en-12828")
    assert tank_answer(one.tank.task, "en-12828") == sized(one.tank.task, "membrane")


def test_no_tank_can_do_it_by_any_method_where_the_static_pressure_is_at_the_limit() -> None:
    one = case(system(RUNS, street="pressure: 80 psi"))
    with pytest.raises(NoTank):
        sized(one.tank.task, "membrane")
    assert tank_answer(one.tank.task, "membrane") == ()
    assert one.tank.need.tank_m3 is None


def test_pressures_of_the_task_stand_at_the_height_of_the_tank() -> None:
    one = case(system(RUNS, heater=RELIEF, tee="elevation: 10 ft", tap="elevation: 30 ft"))
    column = 9806.65 * 0.3048
    assert one.tank.task.static_pa == pytest.approx(60 * PSI - 10 * column)
    assert one.tank.task.limit_pa == pytest.approx(80 * PSI + 20 * column)
    assert one.tank.task.relief_pa == pytest.approx(150 * PSI - 10 * column)
    assert one.tank.task.head_pa == pytest.approx(20 * column)


def test_waters_warmed_alike_are_one_water() -> None:
    alike = case(system("street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"))
    assert [water.heaters for water in alike.tank.waters] == [("heater", "heater2")]
    other = case(
        system("street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot", heater2="setpoint: 160 degF")
    )
    assert [water.heaters for water in other.tank.waters] == [("heater",), ("heater2",)]


def test_water_with_antifreeze_is_one_by_itself_and_grows_as_it_does() -> None:
    pytest.importorskip("CoolProp")
    mixed = "antifreeze: {glycol: propylene, share: 30 %}"
    both = "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"
    plain, other = case(system(both, heater2=mixed)).tank.waters
    assert (plain.heaters, plain.mixture) == (("heater",), None)
    assert (other.heaters, other.mixture) == (("heater2",), Mixture("propylene", 0.3))
    sizings = sized(case(system(both, heater2=mixed)).tank.task, "membrane")
    expected = [glycol.glycol_growth("propylene", 0.3, 283.15, 333.15) * other.volume_m3]
    assert [sizings[1].expansion_m3] == pytest.approx(expected)
    assert sizings[0].expansion_m3 < sizings[1].expansion_m3


def test_water_that_two_warm_names_the_warmer_first() -> None:
    drawn = system("street -> cv -> tee -> heater -> tee2 -> pump -> heater2 -> tee", heater2="setpoint: 160 degF")
    (water,) = case(drawn).tank.waters
    assert water.heaters == ("heater2", "heater")
    assert len(water.pieces) == 2


def test_all_waters_are_charged_alike() -> None:
    drawn = system(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot",
        heater=f"{RELIEF}, setpoint: 250 degF",
        heater2=RELIEF,
    )
    charges = {one.charge_abs_pa for one in sized(case(drawn).tank.task, "en-12828")}
    assert len(charges) == 1


def test_size_is_that_of_the_file_where_it_lists_any() -> None:
    drawn = replace(system(RUNS), tank_sizes_m3=(0.01, 0.03))
    assert (nominal_m3(0.011, drawn), nominal_m3(0.04, drawn)) == (0.03, None)


def test_growth_bears_the_pressure_at_the_heater_and_not_that_at_the_tank() -> None:
    drawn = system(RUNS, heater=RELIEF, tee="elevation: 50 ft", street="pressure: 75 psi")
    grown_m3 = plumbnet.check(drawn).heaters[0].expansion_m3
    assert sized(case(drawn).tank.task, "membrane")[0].expansion_m3 == pytest.approx(grown_m3, rel=1e-12)


def test_method_that_would_charge_below_a_vacuum_gives_way_to_boyles_law() -> None:
    well = "cut_in: 1005 kPa, cut_out: 1091 kPa"
    breaker = "kind: vacuum_breaker, opens: 1005 kPa"
    heater = f"elevation: 18 m, sizing: din-4807-5, {RELIEF}"  # DIN charges 0.2 bar below the static pressure
    drawn = system("well -> breaker -> heater -> tap.hot", well=well, breaker=breaker, heater=heater)
    asked = case(drawn)
    assert asked.tank.task.static_pa == pytest.approx(86e3 - 18 * 9806.65, abs=50)
    with pytest.raises(OutsideMethod):
        sized(asked.tank.task, "din-4807-5")
    wanted = asked.tank.need
    (plain,) = sized(asked.tank.task, "membrane")
    assert wanted.tank_m3 is not None
    assert wanted.precharge_pa == 0.0  # nobody charges a tank to less than the air
    assert wanted.tank_m3 > plain.tank_m3


def test_size_is_that_of_the_table_where_the_file_lists_none() -> None:
    drawn = system(RUNS)
    assert drawn.tank_sizes_m3 == ()
    assert nominal_m3(0.011, drawn) == min(size for size in nominal_sizes("us") if size >= 0.011)
