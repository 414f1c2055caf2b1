"""What is to be sized in, a tank and every step to it out, by EN 12828, DIN 4807-5 and the British rule."""

from dataclasses import replace

from plumbnet.physics.fluids import saturation_abs_pa, saturation_source
from plumbnet.physics.sizing.duty import Duty, Sizing, Step, step
from plumbnet.physics.sizing.sizing_steps import charge_step, closed_tank, expansion_steps, growth_steps, pressure_steps

EN = "EN 12828, annex D (from memory)"
DIN = "DIN 4807-5, as read at haustechnikdialog.de, SHKwissen 1146"
UK = "practice of BS 6700 and BS 8558 (from memory)"

_BAR = 1e5
_EN_MARGIN_PA = 0.3 * _BAR  # of the charge over the column of water; from memory, as all of EN 12828 here
_EN_RESERVE, _EN_LEAST_RESERVE_M3 = 0.005, 0.003
_EN_LOW_SET_PA, _EN_BELOW_SET_PA = 5.0 * _BAR, 0.5 * _BAR
_DIN_BELOW_START_PA = 0.2 * _BAR
_DIN_COLD_K, _DIN_GROWTH = 283.15, {333.15: 0.017, 343.15: 0.023, 353.15: 0.029}  # table of n: read
_ROW_K = 0.05  # a temperature this close to that of a table's row is that row's
_UK_GROWTH = 0.04


def en_12828(duty: Duty) -> Sizing:
    """A vessel for a heating circuit: growth and a reserve of water, between the charge and the relief valve.

    The charge is the column of water, the gauge pressure of vapour at the hottest and 0.3 bar, or more if chosen
    so. The end is 0.5 bar below a relief valve of up to 5 bar, and nine tenths of a higher one. The reserve is
    0.5 % of the water and at least 3 L. Errors as `methods.size`. Source: EN 12828, annex D, from memory.

    >>> duty = Duty(volume_m3=1.0, cold_k=283.15, hot_k=353.15, head_pa=1.2e5, relief_abs_pa=4e5, atmosphere_abs_pa=1e5)
    >>> sized = en_12828(duty)  # by head: p_0 1.5 bar, p_e 2.5 bar, so (28.7 + 5) * 3.5 / 1.0
    >>> round(sized.tank_m3 * 1000), round(sized.fill_abs_pa)
    (118, 261063)
    """
    charge = _en_charge(duty)
    p_0 = charge[-1].value
    least = max(_EN_RESERVE * duty.volume_m3, _EN_LEAST_RESERVE_M3)
    steps = (
        *charge,
        step("p_1", "start pressure", "p_0", p_0, EN, p_0=p_0),
        _en_end(duty),
        *expansion_steps(duty, growth_steps(duty, p_0)),
        step("V_r", "reserve", "max(0.005 * V, V_min)", least, EN, V=duty.volume_m3, V_min=_EN_LEAST_RESERVE_M3),
    )
    sized = closed_tank("en-12828", steps, EN)
    lowest = sized.fill_range(sized.tank_m3).lowest_abs_pa
    numbers = {"V_t": sized.tank_m3, "V_r": least, "p_0": p_0}
    fill = step("p_fill", "lowest fill pressure", "V_t * p_0 / (V_t - V_r)", lowest, EN, **numbers)
    return replace(sized, fill_abs_pa=lowest, steps=(*sized.steps, fill))


def _en_charge(duty: Duty) -> tuple[Step, ...]:
    """Steps to the charge: the column of water, the pressure at which the hottest water boils, and a margin."""
    air, head, boiling = duty.atmosphere_abs_pa, duty.demand("head_pa"), saturation_abs_pa(duty.hot_k)
    vapour = max(0.0, boiling - air)
    least = air + head + vapour + _EN_MARGIN_PA
    numbers = {"p_atm": air, "d_head": head, "d_vapour": vapour, "d_margin": _EN_MARGIN_PA}
    steps = (
        step(
            "d_vapour",
            "vapour pressure, gauge",
            "max(0, p_sat(T_2) - p_atm)",
            vapour,
            saturation_source(duty.hot_k),
            T_2=duty.hot_k,
            p_atm=air,
        ),
        step("p_least", "least charge", "p_atm + d_head + d_vapour + d_margin", least, EN, **numbers),
    )
    chosen = least if duty.charge_abs_pa is None else duty.charge_abs_pa
    return (
        *steps,
        step("p_0", "charge", "max(p_least, p_chosen)", max(least, chosen), EN, p_least=least, p_chosen=chosen),
    )


def _en_end(duty: Duty) -> Step:
    relief, air = duty.demand("relief_abs_pa"), duty.atmosphere_abs_pa
    if relief - air <= _EN_LOW_SET_PA:
        numbers = {"p_sv": relief, "d_below": _EN_BELOW_SET_PA}
        return step("p_2", "end pressure", "p_sv - d_below", relief - _EN_BELOW_SET_PA, EN, **numbers)
    end = air + 0.9 * (relief - air)
    return step("p_2", "end pressure", "p_atm + 0.9 * (p_sv - p_atm)", end, EN, p_atm=air, p_sv=relief)


def din_4807_5(duty: Duty) -> Sizing:
    """A membrane tank for a drinking-water heater: charged 0.2 bar below the start, to 0.8 of the relief valve's set.

    The growth is the standard's own n for water of 10 degC heated to 60, 70 or 80 degC, and by IAPWS-IF97
    elsewhere. Errors as `methods.size`. Source: DIN 4807-5, read at haustechnikdialog.de, SHKwissen 1146; that the
    end is 0.8 of the set is inferred from the results printed there.

    >>> pressures = {"static_abs_pa": 4e5, "relief_abs_pa": 7e5, "atmosphere_abs_pa": 1e5}
    >>> duty = Duty(volume_m3=100, cold_k=283.15, hot_k=333.15, **pressures)
    >>> round(din_4807_5(duty).tank_m3, 1)  # printed there for 100 L, 3 bar and 6 bar: 5.8 L
    5.8
    """
    static, relief, air = duty.demand("static_abs_pa"), duty.demand("relief_abs_pa"), duty.atmosphere_abs_pa
    charge = static - _DIN_BELOW_START_PA
    end = air + 0.8 * (relief - air)
    steps = (
        step("p_1", "start pressure", "p_static", static, DIN, p_static=static),
        step("p_0", "charge", "p_1 - d_0", charge, DIN, p_1=static, d_0=_DIN_BELOW_START_PA),
        step("p_2", "end pressure", "p_atm + 0.8 * (p_sv - p_atm)", end, DIN, p_atm=air, p_sv=relief),
        *expansion_steps(duty, _din_growth(duty)),
    )
    return closed_tank("din-4807-5", steps, DIN)


def _din_growth(duty: Duty) -> tuple[Step, ...]:
    """Steps to the growth: the standard's own n where its table has it, and the properties of water elsewhere."""
    rows = [n for hot_k, n in _DIN_GROWTH.items() if abs(duty.hot_k - hot_k) <= _ROW_K]
    if duty.growth is None and rows and abs(duty.cold_k - _DIN_COLD_K) <= _ROW_K:
        return (step("e", "growth of the water, from the table of n", "e", rows[0], DIN, e=rows[0]),)
    return growth_steps(duty, duty.demand("static_abs_pa"))


def uk_4_percent(duty: Duty) -> Sizing:
    """A membrane tank for an unvented heater, 4 % of whose water is allowed for growth.

    A note says so where the liquid grows by more. Errors as `methods.size`. Source: practice of BS 6700 and
    BS 8558, from memory.

    >>> duty = Duty(volume_m3=210, cold_k=283.15, hot_k=338.15, static_abs_pa=4.5e5, limit_abs_pa=7e5)
    >>> round(uk_4_percent(duty).tank_m3, 1)  # by head: 8.4 / (1 - 4.5/7)
    23.5
    """
    allowed = step("e", "allowance for growth", "e", _UK_GROWTH, UK, e=_UK_GROWTH)
    real = growth_steps(duty, duty.demand("static_abs_pa"))[-1].value
    notes = (f"the liquid grows by {real:.1%}, more than the 4 % allowed for",) if real > _UK_GROWTH else ()
    steps = (*pressure_steps(duty, charge_step(duty, "p_static")), *expansion_steps(duty, (allowed,)))
    return closed_tank("uk-4-percent", steps, UK, notes)
