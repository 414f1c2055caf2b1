"""Each factor against scipy's, to the bit: the printed digits of every report rest on them."""

import pytest
from scipy import constants

from plumbnet.layout.units import factors

OF_SCIPY = {
    "MILLI": constants.milli,
    "CENTI": constants.centi,
    "KILO": constants.kilo,
    "MEGA": constants.mega,
    "INCH": constants.inch,
    "FOOT": constants.foot,
    "POUND": constants.pound,
    "GRAVITY": constants.g,
    "PSI": constants.psi,
    "BAR": constants.bar,
    "ATMOSPHERE": constants.atm,
    "LITRE": constants.litre,
    "GALLON": constants.gallon,
    "FLUID_OUNCE": constants.fluid_ounce,
    "DEGREE_FAHRENHEIT": constants.degree_Fahrenheit,
    "ZERO_CELSIUS": constants.zero_Celsius,
    "BTU": constants.Btu_IT,
    "MINUTE": constants.minute,
    "HOUR": constants.hour,
    "DAY": constants.day,
}


@pytest.mark.parametrize("name", OF_SCIPY)
def test_factor_is_that_of_scipy_to_the_bit(name: str) -> None:
    assert getattr(factors, name) == OF_SCIPY[name]


def test_every_factor_is_held_to_scipy() -> None:
    assert {name for name in vars(factors) if name.isupper()} == set(OF_SCIPY)


def test_pound_is_that_of_the_agreement() -> None:
    assert pytest.approx(0.45359237, rel=2.3e-16) == factors.POUND  # 7000 grains round to a double's last bit beside it
