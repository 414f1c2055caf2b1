"""Between what a heat source warms its water, and what that grows by."""

import pytest
from conftest import PSI, drawn

from plumbnet.analysis.equilibrium.heating_range import Unanswerable, cold_k, grows_m3, heated_abs_pa
from plumbnet.physics.fluids.water import ATMOSPHERE_PA

METRE_PA = 9806.65
F50 = 283.15


def test_pressure_at_a_heater_is_that_at_its_height() -> None:
    layout = drawn("street -> cv -> heater -> tap.hot", heater="elevation: 10 m")
    (heated,) = layout.network.heated
    assert heated_abs_pa(layout.network, heated) == pytest.approx(60 * PSI - 10 * METRE_PA + ATMOSPHERE_PA)
    assert grows_m3(layout.network, heated, 2.0) == pytest.approx(2.0 * grows_m3(layout.network, heated, 1.0))


def test_water_that_no_supply_reaches_is_taken_as_just_full_and_cold() -> None:
    layout = drawn("tee -> heater -> tap.hot", tap="elevation: 10 m")
    zone = layout.zone("heater")
    assert layout.network.start_pa(zone) == pytest.approx(10 * METRE_PA)
    assert cold_k(layout.network, zone) == pytest.approx(F50, abs=5.0)


def test_heater_of_which_nothing_can_be_computed_is_named() -> None:
    error = Unanswerable("boiler", "its mixture is not known")
    assert (error.heater, str(error)) == ("boiler", "its mixture is not known")


def test_growth_is_that_of_so_much_water_from_its_own_supply_to_its_setpoint() -> None:
    """The steam tables: from 60 to 140 degF under 60 psi a litre grows by 16 mL; from 50 degF by 17."""
    layout = drawn("street -> cv -> heater -> tap.hot", street="temperature: 60 degF")
    (heated,) = layout.network.heated
    assert cold_k(layout.network, layout.zone("heater")) == pytest.approx((60 + 459.67) / 1.8)
    assert grows_m3(layout.network, heated, 3.0) == pytest.approx(3.0 * 0.01608, rel=1e-3)


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        (
            {"heater": "elevation: 60 m"},
            (
                "its water would stand at -25.34 psi, and is known from -14.7 psi to 14,489 psi; look at the "
                "pressures and the heights"
            ),
        ),
        (
            {"heater": "elevation: -5000 m", "street": "elevation: 10000 m"},
            (
                "its water would stand at 21,395 psi, and is known from -14.7 psi to 14,489 psi; look at the "
                "pressures and the heights"
            ),
        ),
        (
            {"street": "kind: filling_loop, fill: 12 psi, temperature: 14 degF"},
            (
                "its water would be at 14 degF, and is known from 32 degF to 662 degF; look at the temperatures of its "
                "supply"
            ),
        ),
        (
            {"heater": "setpoint: 240 degF, antifreeze: {glycol: propylene, share: 30 %}"},
            "water with 30% propylene glycol by volume is known from -35 to 100 degC, not at 115.6",
        ),
    ],
)
def test_heater_whose_water_is_outside_what_is_known_is_named_with_the_reason(
    parts: dict[str, str], words: str
) -> None:
    layout = drawn("street -> cv -> heater -> tap.hot", **parts)
    (heated,) = layout.network.heated
    if heated.source.mixture is not None:
        pytest.importorskip("CoolProp")
    with pytest.raises(Unanswerable) as caught:
        grows_m3(layout.network, heated, 1.0)
    assert (caught.value.heater, str(caught.value)) == ("heater", words)
