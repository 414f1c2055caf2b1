import pytest
from conftest import Drawn, drawn


def loops(d: Drawn) -> list[tuple[str, ...]]:
    return [loop.parts for loop in d.network.circulation.loops]


@pytest.fixture(params=[0, 1_000_000])
def hurried(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """With no time to try ways round, and with plenty."""
    monkeypatch.setattr("plumbnet.network.loops.loops._MOST_STEPS", request.param)


def idle(d: Drawn) -> tuple[str, ...]:
    return d.network.circulation.idle


def test_pump_drives_the_water_round_through_the_heater() -> None:
    # street - heater - tee1 - tap
    #             ^- pump -+
    d = drawn("street -> heater -> tee1 -> tap.hot\ntee1 -> pump -> heater.return")
    assert loops(d) == [("pump", "heater", "tee1")]
    assert idle(d) == ()


def test_loop_tells_its_parts_in_the_order_the_water_meets_them() -> None:
    d = drawn("boiler -> tee1 -> emitter -> pump -> boiler.return\ntee1 -> tank")
    assert loops(d) == [("pump", "boiler", "tee1", "emitter")]


@pytest.mark.parametrize(("first", "second"), [("1", "2"), ("2", "1")])
def test_loop_of_two_pumps_is_told_from_the_first_by_name(first: str, second: str) -> None:
    d = drawn(f"boiler -> pump{first} -> emitter -> pump{second} -> boiler.return")
    assert [loop[0] for loop in loops(d)] == ["pump1"]


def test_pump_that_stands_drives_nothing() -> None:
    d = drawn("street -> heater -> tee1 -> pump -> heater.return", pump="running: false")
    assert loops(d) == []
    assert idle(d) == ()


def test_pump_on_a_dead_end_drives_nothing() -> None:
    d = drawn("street -> heater -> tee1 -> tap.hot\ntee1 -> pump -> store")
    assert loops(d) == []
    assert idle(d) == ("pump",)


def test_pump_against_a_check_drives_nothing() -> None:
    # heater - tee1 -> pump -> (cv turned round) - heater.return
    d = drawn("street -> heater -> tee1 -> pump -> tee2\nheater.return -> cv -> tee2")
    assert loops(d) == []
    assert idle(d) == ("pump",)


def test_pump_with_a_check_the_same_way_drives_its_loop() -> None:
    d = drawn("street -> heater -> tee1 -> pump -> cv -> heater.return")
    assert loops(d) == [("pump", "cv", "heater", "tee1")]


def test_shut_valve_breaks_the_loop() -> None:
    d = drawn("street -> heater -> tee1 -> valve -> pump -> heater.return", valve="state: shut")
    assert idle(d) == ("pump",)


def test_halves_of_an_eight_that_touch_in_one_tee_are_two_loops() -> None:
    #   +- pump -+      +- heater2 -+
    #   |         tee1  |           |
    #   +- heater1 -+---+--- cv ----+      no pump on the right
    d = drawn("heater1 -> tee1 -> pump -> heater1.return\ntee1 -> heater2 -> cv -> tee1")
    assert loops(d) == [("pump", "heater1", "tee1")]


def test_halves_of_an_eight_that_touch_in_one_tank_are_two_loops() -> None:
    # boiler loop by tank ports in and out; a second ring by return and relief, not driven
    d = drawn("boiler -> store -> pump -> boiler\nstore.return -> emitter -> store.relief")
    assert loops(d) == [("pump", "boiler", "store")]


@pytest.mark.usefixtures("hurried")
def test_branch_checked_against_the_flow_is_no_part_of_the_loop() -> None:
    # pump -> tee1 --- heater1 ---- tee2 -> pump
    #           ^- cv -- heater2 -----+       from tee2 back to tee1 no pump pushes
    d = drawn("pump -> tee1 -> heater1 -> tee2 -> pump\ntee2 -> heater2 -> cv -> tee1")
    assert loops(d) == [("pump", "tee1", "heater1", "tee2")]


BARRED = """
pump -> tee1 -> tee4 -> pump
tee1 -> tee2 -> tee4
tee2 -> tee3 -> heater1 -> tee4
tee3 -> heater2 -> cv -> tee2
"""
"""Water comes to the check by tee2, where it would meet itself, or by tee4, through which alone it could get back."""


def test_check_that_bars_the_way_back_whichever_way_water_came_is_no_part_of_the_loop() -> None:
    assert loops(drawn(BARRED)) == [("pump", "tee1", "tee4", "tee2", "heater1", "tee3")]


def test_loop_that_would_take_too_long_to_try_is_taken_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    assert drawn(BARRED).network.circulation.whole == ()
    monkeypatch.setattr("plumbnet.network.loops.loops._MOST_STEPS", 10)
    assert "heater2" in loops(drawn(BARRED))[0]
    assert drawn(BARRED).network.circulation.whole == ("pump",)


@pytest.mark.usefixtures("hurried")
def test_branch_between_two_checks_that_face_each_other_is_no_part_of_the_loop() -> None:
    # pump -> tee1 ------- heater1 ------- tee2 -> pump
    #           +-> cv1 -> heater2 <- cv2 <-+       water enters from both ends and leaves by none
    d = drawn("pump -> tee1 -> heater1 -> tee2 -> pump\ntee1 -> cv1 -> heater2\ntee2 -> cv2 -> heater2.return")
    assert loops(d) == [("pump", "tee1", "heater1", "tee2")]


@pytest.mark.usefixtures("hurried")
def test_branch_checked_with_the_flow_is_part_of_the_loop() -> None:
    d = drawn("pump -> tee1 -> heater1 -> tee2 -> pump\ntee1 -> cv -> heater2 -> tee2")
    assert set(*loops(d)) == {"pump", "tee1", "heater1", "tee2", "cv", "heater2"}


@pytest.mark.usefixtures("hurried")
def test_pocket_that_leaves_and_comes_back_at_one_tee_is_no_part_of_the_loop() -> None:
    # tee2 -> cv -> heater2 - tee3, and tee3 - tee2 by a pipe: round by itself only past tee2 twice
    d = drawn("pump -> tee1 -> heater1 -> pump\ntee1 -> cv -> heater2 -> tee3 -> tee1")
    assert loops(d) == [("pump", "tee1", "heater1")]


@pytest.mark.usefixtures("hurried")
def test_parallel_pipes_between_two_tees_all_hold_water_of_the_loop() -> None:
    d = drawn("pump -> tee1 -> tee2 -> heater -> pump\ntee1 -> tee2")
    (loop,) = d.network.circulation.loops
    names = [d.system.pipes[number].name for number in loop.pipes]
    assert sorted(names) == ["heater -> pump", "pump -> tee1", "tee1 -> tee2", "tee1 -> tee2", "tee2 -> heater"]


def test_dead_leg_on_a_loop_is_no_part_of_it() -> None:
    d = drawn("street -> heater -> tee1 -> tee2 -> pump -> heater.return\ntee2 -> store -> tap.hot")
    assert "store" not in loops(d)[0]


def test_two_pumps_in_a_row_drive_one_loop() -> None:
    d = drawn("boiler -> pump1 -> pump2 -> boiler")
    assert loops(d) == [("pump1", "pump2", "boiler")]


def test_two_pumps_set_against_each_other_drive_nothing() -> None:
    d = drawn("boiler -> pump1 -> tee1\nboiler.return -> pump2 -> tee1")
    assert loops(d) == []
    assert idle(d) == ("pump1", "pump2")


def test_two_pumps_side_by_side_drive_a_loop_each() -> None:
    # boiler - tee1 -> pump1 -> tee2 - boiler
    #           +----> pump2 ----^
    d = drawn("boiler -> tee1 -> pump1 -> tee2 -> boiler\ntee1 -> pump2 -> tee2")
    assert [set(parts) for parts in loops(d)] == [{"boiler", "tee1", "tee2", pump} for pump in ("pump1", "pump2")]


def test_coil_of_an_indirect_heater_is_in_the_boiler_loop_and_its_tank_is_not() -> None:
    d = drawn("street -> indirect -> tap.hot\nboiler -> pump -> indirect.coil_in\nindirect.coil_out -> boiler")
    (loop,) = d.network.circulation.loops
    assert loop.parts == ("pump", "indirect", "boiler")
    assert d.node("indirect.coil_in") in loop.nodes
    assert d.node("indirect.cold") not in loop.nodes


def test_mixing_valve_lets_a_loop_through_from_inlet_to_outlet_only() -> None:
    # pump -> mixer.cold, mixer.mixed -> heater -> pump; and the reverse
    d = drawn("pump -> mixer.cold\nmixer.mixed -> heater -> pump")
    assert loops(d) == [("pump", "mixer", "heater")]
    assert idle(drawn("pump -> mixer.mixed\nmixer.cold -> heater -> pump")) == ("pump",)


def test_loop_may_lead_through_the_street() -> None:
    d = drawn("street -> heater -> pump -> street")
    assert loops(d) == [("pump", "street", "heater")]


def test_one_loop_touches_a_shared_heater_of_another() -> None:
    # two returns on one heater, each with its pump: two loops, both with the heater
    d = drawn("heater -> tee1 -> pump1 -> heater.return\nheater.cold -> tee2 -> pump2 -> heater.relief")
    assert [set(parts) for parts in loops(d)] == [{"pump1", "heater", "tee1"}, {"pump2", "heater", "tee2"}]


def test_booster_in_a_circle_drives_a_loop() -> None:
    d = drawn("street -> tee1 -> booster -> tee2 -> heater -> cv -> tee1")
    assert set(*loops(d)) == {"booster", "tee1", "tee2", "heater", "cv"}


@pytest.mark.usefixtures("hurried")
def test_two_hundred_risers_with_a_check_each_are_one_loop() -> None:
    risers = "\n".join(
        f"tee1{n} -> tee1{n + 1}\ntee1{n} -> cv{n} -> tee2{n}\ntee2{n + 1} -> tee2{n}" for n in range(200)
    )
    d = drawn(f"street -> heater -> tee10\n{risers}\ntee20 -> pump -> heater.return")
    assert len(*loops(d)) == 2 + 3 * 200


def test_loop_may_lead_through_a_reducer() -> None:
    d = drawn("boiler -> prv -> pump -> boiler.return")
    assert loops(d) == [("pump", "boiler", "prv")]
    assert idle(drawn("boiler -> pump -> tee1\nboiler.return -> prv -> tee1")) == ("pump",)


def test_pumps_past_the_budget_are_taken_to_drive_all_that_could_go_round(monkeypatch: pytest.MonkeyPatch) -> None:
    # a riser with a pumped return from each of three floors, and a pump on a dead end
    risers = "street -> tee9 -> heater -> tee1 -> tee2 -> tee3\ntee6 -> tee5 -> tee4 -> tee9\ntee3 -> pump4 -> store"
    runs = risers + "".join(f"\ntee{number} -> pump{number} -> tee{number + 3}" for number in (1, 2, 3))
    pumps = dict.fromkeys(("pump1", "pump2", "pump3"), "check: true")
    exact = drawn(runs, **pumps)
    first, *_, highest = exact.network.circulation.loops
    assert (exact.network.circulation.whole, idle(exact)) == ((), ("pump4",))
    monkeypatch.setattr("plumbnet.network.loops.loops.LOOPS", 1)
    hasty = drawn(runs, **pumps)
    assert hasty.network.circulation.whole == ("pump2", "pump3")
    assert idle(hasty) == ("pump4",)
    assert hasty.network.circulation.loops[0] == first
    assert hasty.network.circulation.loops[1].nodes >= highest.nodes
    assert len(hasty.network.circulation.loops) == 2
