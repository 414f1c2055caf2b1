"""Where a tank would hang, and whom it would hold."""

import pytest
from conftest import PSI, system

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.required_tank.tank_choice import TankChoice
from plumbnet.analysis.verdict.judge import judge_of
from plumbnet.network.network import network_of
from plumbnet.physics.fluids.water import ATMOSPHERE_PA
from plumbnet.rules.facts.heater_answer import HeaterFacts
from plumbnet.rules.facts.tank_facts import Need
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.rules.rule_profile import profile

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


# What the first grows by, warmed before the last, brings the last's tap above its limit: each has a tank of its own.
#
#     street >| tee1 with tank1 > heater1 >| tee2 with tank2 > heater2

APART = f"{ROW}tee1 -> tank1\ntee2 -> tank2"
TANKS = {"tank1": "volume: 10 gal", "tank2": "volume: 5.2 gal"}


def test_one_tank_is_found_from_both_sides_and_named_for_all_whose_water_is_too_much_there() -> None:
    first, last = (need(APART, name, **TANKS) for name in ("heater1", "heater2"))
    assert first == last
    assert (first.at, first.serves, first.beside) == ("tee2", ("heater1", "heater2"), ("tank1", "tank2"))
    assert first.tank_m3 is not None
    assert first.is_tight
    more = f"{APART}\ntee2 -> tank3"
    held, short = (
        heater(more, "heater2", **TANKS, tank3=f"volume: {share * first.tank_m3 * 1000!r} L") for share in (1.01, 0.97)
    )
    assert (held.verdict, short.verdict) == (Verdict.CONTROLLED, Verdict.TRAPPED)


def choice(runs: str, **parts: str) -> TankChoice:
    network = network_of(system(runs, **parts))
    return judge_of(network, profile("general")).case(network.heated[0]).tank


def test_heater_that_needs_none_has_one_for_all_beside_it_and_one_that_stays_cold_for_itself() -> None:
    runs = "street -> tee -> {} -> tap.hot\ntee -> heater2 -> tap2.hot"
    assert [water.heaters for water in choice(runs.format("heater")).waters] == [("heater", "heater2")]
    (own,) = choice(runs.format("tankless"), tankless="setpoint: 140 degF, volume: 1 gal").waters
    assert own.heaters == ("tankless",)
    assert own.volume_m3 == pytest.approx(231 * 0.0254**3)


def test_tank_beyond_a_check_is_sized_for_the_water_of_both_though_they_settle_apart() -> None:
    one = choice(APART, **TANKS)
    assert one.company.heaters == ("heater1",)
    assert one.task.place.name == "tee2"
    assert [water.heaters for water in one.waters] == [("heater1", "heater2")]


def test_tank_is_sized_at_the_limit_as_it_counts_in_its_zone() -> None:
    """The taps bind at 80 psi behind a check that takes 3 psi to open: before it, 83 psi may stand."""
    one = choice("street -> cv -> tee -> heater -> cv2 -> tee2 -> tap.hot\nheater.relief -> relief", cv2="opens: 3 psi")
    assert one.task.place.name == "tee"
    assert one.task.limit_pa == pytest.approx(83 * PSI)


def test_what_a_trapped_heater_is_short_of_is_all_its_growth_or_what_the_worst_order_leaves() -> None:
    alone = heater("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief")
    assert alone.short_m3 == pytest.approx(alone.expansion_m3, rel=1e-9)
    first = heater(APART, "heater1", **TANKS)
    small_m3 = need(APART, "heater1", **TANKS).tank_m3 or 0.0
    gas = (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA)
    assert first.short_m3 == pytest.approx(small_m3 * (1.0 - gas), rel=1e-3)


def test_place_at_which_no_tank_holds_it_is_told_without_a_size() -> None:
    asked = need("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief", street="pressure: 80 psi")
    assert (asked.at, asked.serves, asked.tank_m3, asked.nominal_m3) == ("tee", ("heater",), None, None)
    one = heater("street -> cv -> tee -> heater -> tap.hot\nheater.relief -> relief", street="pressure: 80 psi")
    assert one.short_m3 == one.expansion_m3 > 0.0


def test_heater_that_a_tank_can_hold_has_one_though_no_tank_holds_the_other_whose_water_comes_to_it() -> None:
    """The first stands at its limit cold, 5 psi above the last: what it grows by is too much wherever it goes."""
    runs = f"{ROW}tee1 -> tap1.cold"
    first, last = (need(runs, name, street="pressure: 80 psi", cv2="opens: 5 psi") for name in ("heater1", "heater2"))
    assert (first.at, first.serves, first.tank_m3) == ("tee1", ("heater1",), None)
    assert (last.at, last.serves) == ("tee2", ("heater2",))
    assert last.tank_m3 is not None


def test_limit_of_a_tank_beyond_a_check_is_less_by_what_that_takes_to_open() -> None:
    small = {"tank1": "volume: 10 gal", "tank2": "volume: 4 gal, precharge: 57 psi"}
    one = choice(APART, **small, cv2="opens: 3 psi")
    assert one.limit_pa == pytest.approx(83 * PSI)
    assert one.task.place.name == "tee2"
    assert one.task.limit_pa == pytest.approx(80 * PSI)


def test_what_the_method_asks_is_told_of_a_heater_that_is_held_too_as_if_no_tank_were_there() -> None:
    """Four hundredths of 50 gal are 2 gal; of a gas of 60 psi pressed to 80 psi 0.2112 are taken: 9.47 gal."""
    held = {"heater": f"{RELIEF}, sizing: uk-4-percent", "tank": "volume: 20 gal"}
    runs = "street -> cv -> tee -> heater -> tap.hot\ntee -> tank"
    gas = (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA)
    assert choice(runs, **held).asked_m3 == pytest.approx(0.04 * 50 * 231 * 0.0254**3 / (1.0 - gas), rel=1e-9)
    assert choice(runs, heater=RELIEF, tank="volume: 20 gal").asked_m3 is None


def test_tank_is_not_said_to_hold_a_heater_whose_water_never_opens_the_check_to_it() -> None:
    """With 80 gal the first comes to 61 psi, and cv2 opens only for 20 psi: what it grows by stays where it is."""
    runs = f"{ROW}tee1 -> tank1"
    last = need(runs, "heater2", tank1="volume: 80 gal", cv2="opens: 20 psi")
    assert (last.at, last.serves) == ("tee2", ("heater2",))
    assert heater(runs, "heater1", tank1="volume: 80 gal", cv2="opens: 20 psi").verdict is Verdict.CONTROLLED


def test_last_heater_is_short_of_more_in_the_worst_order_than_all_at_once() -> None:
    """All at once its 3 gal leave what it grows by, less 3 gal * 0.2112; warmed after the first they leave more."""
    small = {"tank1": "volume: 10 gal", "tank2": "volume: 3 gal"}
    gas = (60 * PSI + ATMOSPHERE_PA) / (80 * PSI + ATMOSPHERE_PA)
    last = heater(APART, "heater2", **small)
    at_once_m3 = last.expansion_m3 - 3 * 231 * 0.0254**3 * (1.0 - gas)
    worst_m3 = (need(APART, "heater2", **small).tank_m3 or 0.0) * (1.0 - gas)
    assert worst_m3 > 2.0 * at_once_m3 > 0.0
    assert last.short_m3 == pytest.approx(worst_m3, rel=1e-3)
