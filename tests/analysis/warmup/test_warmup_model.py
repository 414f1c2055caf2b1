"""What takes part in a warm-up."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.equilibrium.shared_tanks import SharedTanks
from plumbnet.analysis.warmup.warmup_model import WarmupModel
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.physics.warmup.heated_bodies import Burner
from plumbnet.rules.circuit_rules import ruled_by
from plumbnet.rules.rule_profile import GENERAL, profile


def stage(runs: str, **parts: str) -> WarmupModel:
    network = drawn(runs, **parts).network
    return WarmupModel(ruled_by(profile(GENERAL)), network, SharedTanks(network), network.heated[0])


def test_zones_beyond_a_check_take_part_and_the_street_does_not() -> None:
    plant = stage("street -> cv -> tee -> heater -> cv2 -> tap.hot\ntee -> tank").plant
    assert len(plant.basins) == 2
    assert [sorted(basin.tanks) for basin in plant.basins.values()] == [["tank"], []]


def test_tank_charged_above_the_relief_valve_never_works() -> None:
    plant = stage(
        "street -> cv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> spill", tank="precharge: 120 psi"
    ).plant
    assert next(iter(plant.basins.values())).tanks == {}


def test_valves_fall_a_tenth_before_they_close_and_vents_do_not() -> None:
    plant = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> spill\ntee -> vent", vent="elevation: 200 ft").plant
    spill, vent = sorted(next(iter(plant.basins.values())).outlets, key=lambda one: one.name)
    assert spill.blowdown_pa == pytest.approx(10.0 * PSI)
    assert vent.blowdown_pa == 0.0
    assert not vent.gives_back


def test_pressures_count_at_the_height_of_each() -> None:
    made = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> tank", heater="elevation: 10 ft")
    (body,) = made.plant.bodies
    assert body.fill_abs_pa == pytest.approx(ATMOSPHERE_PA + 60.0 * PSI - body.head_pa)
    assert made.heads_pa["heater"] == body.head_pa == pytest.approx(10.0 * 0.43353 * PSI, rel=1e-3)
    assert made.heads_pa["tank"] == 0.0


def test_limit_is_that_of_the_heater_s_zone() -> None:
    (fired,) = stage("street -> cv -> heater -> tap.hot").fired()
    assert fired.limit_pa == pytest.approx(80.0 * PSI)


APART = "street -> cv -> tee -> heater -> tap.hot\ntee -> heater2 -> tap2.hot"
LOOPED = "street -> cv -> tee -> heater -> tee2 -> tap.hot\ntee -> heater2 -> tee2\ntee2 -> pump -> store -> tee"


def test_heaters_that_share_no_water_warm_bodies_of_their_own_and_those_on_one_loop_the_same() -> None:
    burners = [[burner.name for burner in body.burners] for body in stage(APART).plant.bodies]
    assert burners == [["heater"], ["heater2"]]
    (body,) = stage(LOOPED).plant.bodies
    assert [burner.name for burner in body.burners] == ["heater", "heater2"]
    assert [shell.volume_m3 for shell in body.shells.values()] == pytest.approx([180 * 231 * 0.0254**3])


def test_heater_that_fires_is_told_with_its_input_setpoint_body_and_limit_at_its_height() -> None:
    made = stage(LOOPED, heater2="setpoint: 160 degF, input: 20000 Btu/h, elevation: 10 ft")
    first, second = made.fired()
    (body,) = made.plant.bodies
    assert body.name == "heater2"  # the one whose water grows most
    assert [(one.name, one.body, one.zone) for one in (first, second)] == [
        ("heater", "heater2", next(iter(made.plant.basins))),
        ("heater2", "heater2", next(iter(made.plant.basins))),
    ]
    assert [one.input_w for one in (first, second)] == pytest.approx([11_722.8, 5_861.4], rel=1e-4)
    assert [one.hot_k for one in (first, second)] == pytest.approx([333.15, 344.261], abs=1e-3)
    assert first.limit_pa - second.limit_pa == pytest.approx(10.0 * 0.3048 * 9806.65)


def test_water_of_a_loop_that_checks_part_stands_in_two_zones() -> None:
    """From the heater through one check to the store and the pump, and back to it through the other."""
    made = stage("street -> cv -> tee -> heater -> cv2 -> store -> pump -> cv3 -> tee")
    (body,) = made.plant.bodies
    rooms = {name: body.shells[made.network.zoning.zone_of[node]] for name, node in _nodes(made).items()}
    assert len(body.shells) == len(made.plant.basins) == 2
    assert rooms["heater"].volume_m3 == pytest.approx(50 * 231 * 0.0254**3)
    assert rooms["store"].volume_m3 == pytest.approx(80 * 231 * 0.0254**3)


def _nodes(made: WarmupModel) -> dict[str, int]:
    return {name: next(made.network.piping.nodes_of(name)) for name in ("heater", "store")}


def test_stage_takes_no_burner_without_an_input() -> None:
    bare = "kind: storage_heater, volume: 50 gal, setpoint: 140 degF"
    with pytest.raises(ValueError, match="heater has no input"):
        _ = stage("street -> cv -> heater -> tap.hot", heater=bare).plant


def test_main_that_takes_water_back_gives_it_back_too() -> None:
    runs = "street -> prv -> tee -> heater -> tap.hot"
    plant = stage(runs, street="pressure: 90 psi", prv="set: 50 psi, bypass: true").plant
    outlets = [one for basin in plant.basins.values() for one in basin.outlets]
    assert [(one.name, one.gives_back, one.blowdown_pa) for one in outlets] == [("street", True, 0.0)] * len(outlets)
    assert outlets


def test_burner_fires_by_the_file_and_the_usual_efficiency() -> None:
    (body,) = stage("street -> cv -> heater -> tap.hot").plant.bodies
    (burner,) = body.burners
    assert burner == Burner(name="heater", input_w=burner.input_w, hot_k=burner.hot_k, efficiency=0.8)
    assert [burner.input_w, burner.hot_k] == pytest.approx([11_722.8, 333.15], rel=1e-4)


def test_zone_is_filled_to_its_highest_place_at_the_pressure_that_stands_there() -> None:
    """20 ft up the water stands 8.7 psi lower; where it could not be lifted so far, it is filled under air."""
    high, all_high = (
        stage("street -> cv -> heater -> tap.hot", tap=f"elevation: {feet} ft").plant.basins for feet in (20, 200)
    )
    (basin,) = high.values()
    assert basin.fill_abs_pa == pytest.approx(60.0 * PSI - 20.0 * 0.3048 * 9806.65 + ATMOSPHERE_PA)
    assert [one.fill_abs_pa for one in all_high.values()] == [ATMOSPHERE_PA]


def test_pipes_beside_the_heated_water_stay_cold() -> None:
    (basin,) = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> store").plant.basins.values()
    assert basin.unheated.volume_m3 == pytest.approx(80 * 231 * 0.0254**3)


def test_tank_behind_a_check_stands_lower_by_what_that_takes_to_open() -> None:
    made = stage("street -> cv -> tee -> heater -> tap.hot\ntee -> cv2 -> tank", cv2="opens: 5 psi")
    assert made.heads_pa["tank"] - made.heads_pa["heater"] == pytest.approx(5.0 * PSI)


def test_two_checks_side_by_side_are_one_way_for_the_water() -> None:
    made = stage("street -> cv -> tee -> heater -> tee3 -> cv2 -> tee2 -> tap.hot\ntee3 -> cv3 -> tee2")
    assert len(made.plant.basins) == 2
    assert len(made.plant.gates) == 1


def test_heaters_on_two_loops_that_meet_in_a_third_heater_warm_one_water() -> None:
    """The first shares its loop with the tankless one and the last with it too: neither could stay cold alone."""
    made = stage(
        """street -> cv -> tee1 -> heater1 -> tee2 -> tankless -> tee3 -> pump1 -> tee1
        tee3 -> pump2 -> heater3 -> tee2
        tee1 -> tap.hot""",
        tankless="input: 20 kW",
    )
    assert [sorted(burner.name for burner in body.burners) for body in made.plant.bodies] == [
        ["heater1", "heater3", "tankless"]
    ]


def test_heater_behind_a_check_stands_lower_by_what_that_takes_to_open() -> None:
    made = stage(
        "street -> cv -> tee -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot\ntee2 -> tank",
        cv2="opens: 5 psi",
        heater2="elevation: 10 m",
    )
    assert made.heads_pa["heater2"] - made.heads_pa["heater1"] == pytest.approx(5.0 * PSI + 10 * 9806.65)
