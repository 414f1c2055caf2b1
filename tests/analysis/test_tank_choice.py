"""Where a tank would hang, and whom it would hold."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.physics.water import ATMOSPHERE_PA
from plumbnet.rules.facts import HeaterFacts, Need, Verdict

RELIEF = "relief: {pressure: 150 psi}"


def heater(runs: str, name: str = "heater", **parts: str) -> HeaterFacts:
    return next(one for one in plumbnet.check(system(runs, **parts)).heaters if one.name == name)


def need(runs: str, name: str = "heater", **parts: str) -> Need:
    found = heater(runs, name, **parts).need
    assert found is not None
    return found


# Two in a row: what the first grows by pushes on to the last one's tap, so that one tank there is for both.
#
#     street >| tee1 > heater1 >| tee2 > heater2

ROW = """
    street -> cv1 -> tee1 -> heater1 -> cv2 -> tee2 -> heater2 -> tap.hot
    heater1.relief -> relief1
    heater2.relief -> relief2
"""


def test_one_tank_behind_the_last_check_is_sized_for_all_water_that_comes_to_it() -> None:
    first, last = (heater(ROW, name) for name in ("heater1", "heater2"))
    assert first.need is not None
    assert first.need == last.need
    assert (first.need.at, first.need.serves) == ("tee2", ("heater1", "heater2"))
    assert first.shares_with == ("heater2",)
    gas = (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA)
    assert first.need.tank_m3 == pytest.approx(2.0 * last.expansion_m3 / (1.0 - gas), rel=1e-9)


def test_tank_the_last_needs_cures_both() -> None:
    last = heater(ROW, "heater2").need
    assert last is not None
    assert last.tank_m3 is not None
    runs = f"{ROW}tee2 -> tank"
    for name in ("heater1", "heater2"):
        assert (
            heater(runs, name, tank=f"volume: {last.tank_m3 * 1000!r} L, precharge: 60 psi").verdict
            is Verdict.CONTROLLED
        )


# A tap beyond a mixing valve: the heater's own water may stand at 135 psi, the tap's at 80.
#
#     street >| tee > heater > mixer >| tap

MIXED = """
    street -> cv -> tee -> heater -> mixer.hot
    tee -> mixer.cold
    mixer.mixed -> tap.hot
    heater.relief -> relief
"""


def test_tank_is_sized_for_the_tap_beyond_the_mixing_valve() -> None:
    one = heater(MIXED)
    gas = (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA)
    assert need(MIXED).tank_m3 == pytest.approx(one.expansion_m3 / (1.0 - gas), rel=1e-9)
    assert need(MIXED).at == "tee"


def test_tank_that_holds_the_heater_alone_and_not_the_tap_is_too_small() -> None:
    runs = f"{MIXED}tee -> tank"
    one = heater(runs, tank="volume: 2 gal")
    assert one.verdict is Verdict.TRAPPED
    assert [(place.part, place.way) for place in one.broken] == [("tap", ("mixer",))]
    assert heater(runs, tank=f"volume: {(need(MIXED).tank_m3 or 0) * 1000!r} L").verdict is Verdict.CONTROLLED


def test_tanks_at_hand_are_counted_on_and_one_charged_wrong_is_named() -> None:
    runs = f"{MIXED}tee -> tank"
    short = need(runs, tank="volume: 2 gal")
    assert (short.beside, short.recharge) == (("tank",), ())
    wrong = need(runs, tank="volume: 5 gal, precharge: 20 psi")
    assert [(one.tank, round(one.right_pa / PSI), round(one.wrong_pa / PSI)) for one in wrong.recharge] == [
        ("tank", 60, 20)
    ]


def test_method_that_asks_for_more_than_holds_is_told_beside_it() -> None:
    runs = "street -> cv -> tee -> heater -> tap.hot"
    own = need(runs, heater=f"{RELIEF}, sizing: uk-4-percent")
    plain = need(runs, heater=RELIEF)
    assert own.tank_m3 == pytest.approx(plain.tank_m3, rel=1e-4)
    assert own.asked_m3 is not None
    assert own.method == "uk-4-percent"
    assert own.nominal_m3 is not None
    assert own.nominal_m3 >= own.asked_m3 > (own.tank_m3 or 0.0)
    assert (plain.asked_m3, plain.method) == (None, "")


def heating(precharge: str, volume: str = "8 L") -> Report:
    """A circuit filled to 1.5 bar by hand, its radiator 5 m up: EN 12828 charges to 0.49 + 0.3 = 0.79 bar."""
    return plumbnet.check(
        system(
            "street -> loop -> tee -> boiler -> pump -> emitter -> tee\ntee -> tank",
            loop="fill: 1.5 bar",
            boiler="volume: 20 L, setpoint: 80 degC, sizing: en-12828, relief: {pressure: 3 bar}",
            emitter="volume: 80 L, elevation: 5 m",
            tank=f"volume: {volume}, precharge: {precharge}",
        )
    )


def test_vessel_charged_as_its_method_charges_it_is_not_charged_wrong() -> None:
    names = {one.name for one in heating("0.79 bar").findings}
    assert "tank-charge-differs" not in names
    assert "tank-charge-differs" not in {one.name for one in heating("1.5 bar").findings}
    (wrong,) = (one for one in heating("1 psi").findings if one.name == "tank-charge-differs")
    assert "charge it to 11.5 psi" in wrong.advice


def test_tank_for_a_circuit_filled_by_hand_holds_under_the_fill_pressure_of_the_file() -> None:
    need_ = heating("0.79 bar").heaters[0].need
    assert need_ is not None
    assert need_.precharge_pa == pytest.approx(5 * 9806.65 + 0.3e5)
    assert need_.tank_m3 is not None
    for share, verdict in ((1.0, "controlled"), (0.99, "trapped")):
        made = plumbnet.check(
            system(
                "street -> loop -> tee -> boiler -> pump -> emitter -> tee\ntee -> tank\ntee -> tank2",
                loop="fill: 1.5 bar",
                boiler="volume: 20 L, setpoint: 80 degC, sizing: en-12828, relief: {pressure: 3 bar}",
                emitter="volume: 80 L, elevation: 5 m",
                tank="volume: 8 L, precharge: 0.79 bar",
                tank2=f"volume: {need_.tank_m3 * share * 1000!r} L, precharge: {need_.precharge_pa!r} Pa",
            )
        )
        assert made.heaters[0].verdict.value == verdict
