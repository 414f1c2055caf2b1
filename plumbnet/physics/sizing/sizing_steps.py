"""What is to be sized in, the steps that sizing methods share out.

A step's symbol is the same in every method: V volume, e growth, V_e expansion, V_r reserve, p_0 charge, p_1 start,
p_2 end, V_t tank.
"""

from typing import Literal

from plumbnet.physics.fluids import counted_from_k, source, specific_volume_m3_kg
from plumbnet.physics.sizing.duty import Duty, OutsideMethod, Sizing, Step, step
from plumbnet.physics.vessels import tank_volume_m3

BOYLE, GIVEN = "Boyle's law", "given"

_CHOSEN, _USUAL, _DEFINITION = "chosen", "usual practice", "by definition"
_WATER = "IAPWS R7-97(2012), equation 7"
_WALLS = "ASHRAE and ASPE handbooks (from memory)"


def vessel_growth_m3(volume_m3: float, rise_k: float, *, linear_per_k: float) -> float:
    """Room that pipes and vessels gain by warming.

    Source: ASHRAE and ASPE handbooks (from memory); a linear expansion is `sizing.STEEL_PER_K`.

    >>> from plumbnet.physics.sizing.duty import STEEL_PER_K
    >>> round(vessel_growth_m3(900, 100 / 1.8, linear_per_k=STEEL_PER_K), 3)  # ASPE, example 2 (from memory): 1.8 gal
    1.755
    """
    return volume_m3 * 3.0 * linear_per_k * rise_k


def charge_step(duty: Duty, otherwise: Literal["p_static", "p_atm"]) -> Step:
    """The charge p_0: that chosen, or the pressure named.

    Raises MissingInput (physics.sizing) where the static pressure is asked for and unknown.

    >>> charge_step(Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15), "p_atm").value
    101325.0
    """
    if duty.charge_abs_pa is not None:
        return step("p_0", "charge", "p_0", duty.charge_abs_pa, _CHOSEN, p_0=duty.charge_abs_pa)
    usual = duty.atmosphere_abs_pa if otherwise == "p_atm" else duty.demand("static_abs_pa")
    return step("p_0", "charge", otherwise, usual, _USUAL, **{otherwise: usual})


def pressure_steps(duty: Duty, charge: Step) -> tuple[Step, ...]:
    """The pressures of a closed tank: its charge, the start p_1 and the end p_2.

    A start below the charge counts from the charge. Raises MissingInput (physics.sizing).

    >>> duty = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, static_abs_pa=4e5, limit_abs_pa=6e5)
    >>> [each.value for each in pressure_steps(duty, charge_step(duty, "p_atm"))]
    [101325.0, 400000.0, 600000.0]
    """
    static, end = duty.demand("static_abs_pa"), duty.demand("limit_abs_pa")
    numbers = {"p_static": static, "p_0": charge.value}
    start = step("p_1", "start pressure", "max(p_static, p_0)", max(numbers.values()), BOYLE, **numbers)
    return charge, start, step("p_2", "end pressure", "p_limit", end, GIVEN, p_limit=end)


def growth_steps(duty: Duty, pressure_abs_pa: float) -> tuple[Step, ...]:
    """Steps to e, the part of its cold volume by which the liquid grows, under a pressure if the duty names none.

    Water that is filled colder than its density maximum counts from there, and water that would boil counts as
    saturated liquid. Raises OutsideWater (physics.water). Source: as `expansion.growth`.

    >>> duty = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15)
    >>> round(growth_steps(duty, 101325.0)[-1].value, 4)  # 10 to 60 degC by IAPWS-95: 1.6789 %
    0.0168
    """
    if duty.growth is not None:
        return (step("e", "growth of the liquid", "e", duty.growth, duty.growth_source, e=duty.growth),)
    p = pressure_abs_pa if duty.heated_abs_pa is None else duty.heated_abs_pa
    base_k = counted_from_k(duty.cold_k, pressure_abs_pa=p)
    if duty.hot_k <= base_k:
        return (step("e", "growth of water that is not warmed", "e", 0.0, _WATER, e=0.0),)
    cold, hot = (specific_volume_m3_kg(t, pressure_abs_pa=p) for t in (base_k, duty.hot_k))
    of_cold, of_hot = (source(t, pressure_abs_pa=p) for t in (base_k, duty.hot_k))
    return (
        step("v_1", "volume of cold water, or of the densest", "v(T_1, p)", cold, of_cold, T_1=base_k, p=p),
        step("v_2", "volume of hot water", "v(T_2, p)", hot, of_hot, T_2=duty.hot_k, p=p),
        step("e", "growth of the water", "v_2 / v_1 - 1", hot / cold - 1.0, of_hot, v_1=cold, v_2=hot),
    )


def net_growth_steps(duty: Duty, pressure_abs_pa: float) -> tuple[Step, ...]:
    """Steps to e_net, what is left of the liquid's growth when pipes and vessels have grown.

    Nothing where they grow more than the liquid. Errors as `growth_steps`.

    >>> duty = Duty(volume_m3=3000, cold_k=277.594, hot_k=377.594, growth=0.01677 / 0.01602 - 1)
    >>> round(net_growth_steps(duty, 101325.0)[-1].value * 3000, 1)  # ASHRAE (from memory), steel, 40 to 220 degF
    129.9
    """
    steps = growth_steps(duty, pressure_abs_pa)
    alpha, rise_k = duty.vessel_per_k, max(0.0, duty.hot_k - duty.cold_k)
    walls = vessel_growth_m3(1.0, rise_k, linear_per_k=alpha)
    numbers = {"T_1": duty.cold_k, "T_2": duty.hot_k, "a": alpha}
    grown = step("e_walls", "growth of pipes and vessels", "max(0, 3 * a * (T_2 - T_1))", walls, _WALLS, **numbers)
    net = max(0.0, steps[-1].value - walls)
    last = step("e_net", "net growth", "max(0, e - e_walls)", net, _WALLS, e=steps[-1].value, e_walls=walls)
    return (*steps, grown, last)


def expansion_steps(duty: Duty, growth: tuple[Step, ...]) -> tuple[Step, ...]:
    """The growth's steps, and that to the volume V_e.

    >>> duty = Duty(volume_m3=0.2, cold_k=283.15, hot_k=333.15, growth=0.02)
    >>> expansion_steps(duty, growth_steps(duty, 101325.0))[-1].value
    0.004
    """
    last = growth[-1]
    numbers = {"V": duty.volume_m3, last.symbol: last.value}
    expansion = step("V_e", "expansion", f"V * {last.symbol}", duty.volume_m3 * last.value, _DEFINITION, **numbers)
    return (*growth, expansion)


def closed_tank(method: str, steps: tuple[Step, ...], source: str, notes: tuple[str, ...] = ()) -> Sizing:
    """A closed tank for the V_e, V_r (if any), p_0, p_1 and p_2 that the steps came to.

    Raises NoTank (physics.tank), OutsideMethod, KeyError where a step is wanting. Source: `tank.tank_volume_m3`.

    >>> duty = Duty(volume_m3=1, cold_k=283.15, hot_k=333.15, growth=0.1, static_abs_pa=1e5, limit_abs_pa=2e5)
    >>> steps = (*pressure_steps(duty, charge_step(duty, "p_static")), *expansion_steps(duty, growth_steps(duty, 1e5)))
    >>> closed_tank("", steps, BOYLE).tank_m3  # half of the gas is pressed away when the pressure doubles
    0.2
    """
    found = {each.symbol: each.value for each in steps}
    charge, start, end = found["p_0"], found["p_1"], found["p_2"]
    expansion, reserve = found["V_e"], found.get("V_r", 0.0)
    if charge <= 0.0:
        raise OutsideMethod("it would charge the tank to less than a vacuum, so low does the water stand there")
    volume = tank_volume_m3(expansion + reserve, charge_abs_pa=charge, start_abs_pa=start, end_abs_pa=end)
    water = "(V_e + V_r)" if reserve else "V_e"
    numbers = {symbol: found[symbol] for symbol in ("V_e", "V_r", "p_0", "p_1", "p_2") if symbol in found}
    return Sizing(
        method=method,
        tank_m3=volume,
        expansion_m3=expansion,
        reserve_m3=reserve,
        charge_abs_pa=charge,
        start_abs_pa=start,
        end_abs_pa=end,
        steps=(*steps, step("V_t", "tank", f"{water} / (p_0 / p_1 - p_0 / p_2)", volume, source, **numbers)),
        notes=notes,
    )
