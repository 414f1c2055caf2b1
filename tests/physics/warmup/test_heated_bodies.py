"""Heat into water that warms as one."""

from dataclasses import replace

import pytest

from plumbnet.physics.fluids.water import enthalpy_j_kg, specific_volume_m3_kg
from plumbnet.physics.vessels.walls import Shell
from plumbnet.physics.warmup.heated_bodies import Body, Burner, pressed_j

FILL = 5.0e5


def body(**shells_m3: float) -> Body:
    shells = {int(zone.removeprefix("z")): Shell(volume) for zone, volume in (shells_m3 or {"z0": 0.2}).items()}
    return Body(name="heater", burners=(), shells=shells, cold_k=283.15, fill_abs_pa=FILL)


def test_body_is_filled_with_cold_water() -> None:
    cold = body(z0=0.2, z1=0.1).cold
    assert cold.mass_kg == pytest.approx(0.3 / specific_volume_m3_kg(283.15, pressure_abs_pa=FILL))
    assert cold.volume_m3(1) == pytest.approx(0.1)


def test_heat_at_one_pressure_is_the_rise_in_enthalpy() -> None:
    cold = body().cold
    heat = cold.mass_kg * (enthalpy_j_kg(333.15, pressure_abs_pa=FILL) - enthalpy_j_kg(283.15, pressure_abs_pa=FILL))
    assert cold.heated(heat, {0: 0.0}).temperature_k == pytest.approx(333.15, abs=1e-9)


def test_pressing_without_heat_warms_water_as_entropy_has_it() -> None:
    """dT = T v beta dp / cp: at 50 degC 323 K * 0.001012 * 457.6e-6 / 4181 for each pascal, 0.36 K for 10 MPa."""
    warm = body().cold.heated(0.2 * 999.9 * 4186.0 * 40.0, {0: 0.0})
    pressed = warm.heated(0.0, {0: 1.0e7})
    assert pressed.temperature_k - warm.temperature_k == pytest.approx(0.36, abs=0.01)
    assert pressed.enthalpy_j - warm.enthalpy_j == pytest.approx(pressed_j((warm,), (pressed,)), rel=1e-9)


def test_water_let_out_takes_its_enthalpy_along() -> None:
    cold = body().cold
    left, carried = cold.without({0: 1.0})
    assert left.mass_kg == pytest.approx(cold.mass_kg - 1.0)
    assert left.enthalpy_j + carried == pytest.approx(cold.enthalpy_j, rel=1e-12)
    assert left.temperature_k == cold.temperature_k


def test_cold_water_let_in_mixes() -> None:
    cold = body().cold
    hot = cold.heated(cold.mass_kg * 4186.0 * 50.0, {0: 0.0})
    mixed, brought = hot.fed(0, hot.mass_kg)
    assert mixed.temperature_k == pytest.approx(308.15, abs=0.1)
    assert mixed.enthalpy_j == pytest.approx(hot.enthalpy_j + brought, rel=1e-9)


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"input_w": 0.0}, "a burner of 0 W heats nothing"),
        ({"input_w": float("nan")}, "a burner of nan W heats nothing"),
        ({"input_w": float("inf")}, "a burner of inf W heats nothing"),
        ({"efficiency": 0.0}, "an efficiency of 0 is none: it lies above 0, and at most at 1"),
        ({"efficiency": 1.2}, "an efficiency of 1.2 is none: it lies above 0, and at most at 1"),
        ({"differential_k": -1.0}, "a thermostat has no differential of -1 K"),
        ({"differential_k": float("inf")}, "a thermostat has no differential of inf K"),
    ],
)
def test_burner_that_cannot_be(wrong: dict[str, float], words: str) -> None:
    with pytest.raises(ValueError, match=rf"^{words}$"):
        Burner(**{"name": "heater", "input_w": 1.0, "hot_k": 333.15} | wrong)  # type: ignore[arg-type]  # a mix


def test_burner_relights_below_its_differential() -> None:
    assert Burner(name="h", input_w=1.0, hot_k=333.0, differential_k=5.0).relights_k == 328.0


def test_electric_burner_gives_all_and_may_have_no_differential() -> None:
    electric = Burner(name="element", input_w=4500.0, hot_k=333.0, efficiency=1.0, differential_k=0.0)
    assert (electric.useful_w, electric.relights_k) == (4500.0, 333.0)


def test_water_let_out_of_one_zone_stays_in_the_other() -> None:
    cold = body(z0=0.2, z1=0.1).cold
    left, _ = cold.without({0: 1.0})
    assert left.masses_kg == {0: pytest.approx(cold.masses_kg[0] - 1.0), 1: cold.masses_kg[1]}


def test_room_of_water_is_that_of_the_pressure_it_would_be_under() -> None:
    cold = body().cold
    pressed = cold.mass_kg * specific_volume_m3_kg(283.15, pressure_abs_pa=FILL + 1e7)
    assert cold.volume_m3(0, 1e7) == pytest.approx(pressed, rel=1e-12)
    assert cold.volume_m3(0) == pytest.approx(0.2, rel=1e-12)


def test_work_of_pressing_is_asked_of_the_same_bodies_before_and_after() -> None:
    cold = body().cold
    with pytest.raises(ValueError, match="zip"):
        pressed_j((cold, cold), (cold,))


def test_work_of_pressing_counts_from_where_the_water_was_pressed_to() -> None:
    cold = body().cold
    once, twice = (replace(cold, rises_pa={0: rise_pa}) for rise_pa in (1e6, 3e6))
    mean_m3 = (once.volume_m3(0) + twice.volume_m3(0)) / 2.0
    assert pressed_j((once,), (twice,)) == pytest.approx(mean_m3 * 2e6, rel=1e-12)
