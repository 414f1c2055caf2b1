"""What is to be sized in, a tank and every step to it out, by the method that a code or an engineer asks for.

All methods but that for an open tank end in the one formula of `tank.tank_volume_m3`. They differ in what counts
as expansion, in the charge, and in the pressures between which the tank works.
"""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from plumbnet.physics.sizing import european_methods as european
from plumbnet.physics.sizing.duty import Duty, Method, MissingInput, OutsideMethod, Sizing, step
from plumbnet.physics.sizing.sizing_steps import (
    BOYLE,
    GIVEN,
    charge_step,
    closed_tank,
    expansion_steps,
    growth_steps,
    net_growth_steps,
    pressure_steps,
)

_ASHRAE = "ASHRAE Handbook, HVAC Systems and Equipment, chapter on hydronic systems (from memory)"
_ASME = "ASME BPVC section IV, HG-709, as printed in 13 NCAC 13 .0412(d) and Mich. R 408.4272"

_ASME_RANGE_F = (160.0, 280.0)  # of the linear formula; from memory
_DECIMALS_F = 6  # 160 degF, written so and turned into kelvin, comes back as 159.99999999999994


def size_tank(name: str, duty: Duty) -> Sizing:
    """The tank that a method asks for.

    Raises KeyError for an unknown name, MissingInput naming all that is missing, NoTank (physics.tank) where the
    end is not above the start, OutsideMethod where the method has no answer, OutsideWater (physics.water).

    >>> duty = Duty(volume_m3=40, cold_k=277.594, hot_k=333.15, static_abs_pa=515_010, limit_abs_pa=652_906)
    >>> round(size_tank("membrane", duty).tank_m3, 2)  # 40 gal from 40 to 140 degF, 60 to 80 psig: 3.23 gal by IAPWS-95
    3.23
    """
    method = METHODS[name]
    missing = method.missing(duty)
    if missing:
        raise MissingInput(f"{method.title}: needs {' and '.join(missing)}")
    return method.size(duty)


def _membrane(duty: Duty) -> Sizing:
    grown = growth_steps(duty, duty.demand("static_abs_pa"))
    steps = (*pressure_steps(duty, charge_step(duty, "p_static")), *expansion_steps(duty, grown))
    return closed_tank("membrane", steps, BOYLE)


def _ashrae_diaphragm(duty: Duty) -> Sizing:
    static = duty.demand("static_abs_pa")
    charge = step("p_0", "charge", "p_static", static, _ASHRAE, p_static=static)
    steps = (*pressure_steps(duty, charge), *expansion_steps(duty, net_growth_steps(duty, static)))
    return closed_tank("ashrae-diaphragm", steps, _ASHRAE)


def _ashrae_air_water(duty: Duty) -> Sizing:
    air = duty.atmosphere_abs_pa
    charge = step("p_0", "charge of a plain tank filled from empty", "p_atm", air, _ASHRAE, p_atm=air)
    steps = (
        *pressure_steps(duty, charge),
        *expansion_steps(duty, net_growth_steps(duty, duty.demand("static_abs_pa"))),
    )
    return closed_tank("ashrae-air-water", steps, _ASHRAE)


def _ashrae_open(duty: Duty) -> Sizing:
    steps = expansion_steps(duty, net_growth_steps(duty, duty.atmosphere_abs_pa))
    expansion = steps[-1].value
    tank = step("V_t", "tank", "2 * V_e", 2.0 * expansion, _ASHRAE, V_e=expansion)
    return Sizing(method="ashrae-open", tank_m3=tank.value, expansion_m3=expansion, steps=(*steps, tank))


def _asme_iv(duty: Duty) -> Sizing:
    mean_k = duty.hot_k if duty.mean_k is None else duty.mean_k
    mean_f = (mean_k - 273.15) * 1.8 + 32.0
    net = 0.00041 * mean_f - 0.0466
    if net <= 0.0:
        raise OutsideMethod(f"the linear formula finds no expansion at a mean temperature of {mean_f:.0f} degF")
    grown = (
        step("F", "mean operating temperature", "(T_mean - 273.15) * 1.8 + 32", mean_f, GIVEN, T_mean=mean_k),
        step("e", "growth of water less that of steel, from 40 degF", "0.00041 * F - 0.0466", net, _ASME, F=mean_f),
    )
    steps = (*pressure_steps(duty, charge_step(duty, "p_atm")), *expansion_steps(duty, grown))
    return closed_tank("asme-iv", steps, _ASME, tuple(_asme_notes(duty, mean_f)))


def _asme_notes(duty: Duty, mean_f: float) -> Iterator[str]:
    lowest, highest = _ASME_RANGE_F
    if not lowest <= round(mean_f, _DECIMALS_F) <= highest:
        yield f"the linear formula holds from {lowest:.0f} to {highest:.0f} degF, and the mean is {mean_f:g} degF"
    if duty.mean_k is None:
        yield "the mean operating temperature is taken to be the highest"
    if duty.growth is not None:
        yield "the linear formula is for water; it leaves out the growth that was given"


_TO_LIMIT = ("static_abs_pa", "limit_abs_pa")

METHODS: Mapping[str, Method] = MappingProxyType(
    {
        method.name: method
        for method in (
            Method(
                name="membrane",
                title="Membrane tank by Boyle's law",
                source="Boyle's law for the gas behind the membrane; a textbook formula",
                verified=True,
                needs=_TO_LIMIT,
                size=_membrane,
            ),
            Method(
                name="ashrae-diaphragm",
                title="ASHRAE, membrane tank",
                source=_ASHRAE,
                verified=False,
                needs=_TO_LIMIT,
                size=_ashrae_diaphragm,
            ),
            Method(
                name="ashrae-air-water",
                title="ASHRAE, closed plain tank",
                source=_ASHRAE,
                verified=False,
                needs=_TO_LIMIT,
                size=_ashrae_air_water,
            ),
            Method(
                name="ashrae-open",
                title="ASHRAE, open tank",
                source=_ASHRAE,
                verified=False,
                needs=(),
                size=_ashrae_open,
            ),
            Method(
                name="asme-iv",
                title="ASME section IV, linear formula",
                source=_ASME,
                verified=True,
                needs=_TO_LIMIT,
                size=_asme_iv,
            ),
            Method(
                name="en-12828",
                title="EN 12828, annex D",
                source=european.EN,
                verified=False,
                needs=("head_pa", "relief_abs_pa"),
                size=european.en_12828,
            ),
            Method(
                name="din-4807-5",
                title="DIN 4807-5, drinking water",
                source=european.DIN,
                verified=True,
                needs=("static_abs_pa", "relief_abs_pa"),
                size=european.din_4807_5,
            ),
            Method(
                name="uk-4-percent",
                title="United Kingdom, four per cent",
                source=european.UK,
                verified=False,
                needs=_TO_LIMIT,
                size=european.uk_4_percent,
            ),
        )
    }
)
"""Every sizing method, by the name it has in a file."""
