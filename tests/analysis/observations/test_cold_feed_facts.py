from conftest import system

import plumbnet
from plumbnet.rules.facts.feed_facts import FeedFacts


def feeds(runs: str, **parts: str) -> tuple[FeedFacts, ...]:
    return plumbnet.check(system(runs, **parts), rules="en-806").facts.feeds


def test_nearest_cold_tap_is_told_before_the_supply() -> None:
    assert feeds("street -> valve -> tee -> heater -> tap.hot\ntee -> tap.cold") == (FeedFacts("heater", "tap", ()),)


def test_supply_is_told_where_no_tap_is_nearer() -> None:
    assert feeds("street -> valve -> heater -> tap.hot") == (FeedFacts("heater", "street", ()),)


def test_check_in_the_feed_parts_all_that_stands_before_it() -> None:
    runs = "street -> tee -> cv -> tee2 -> heater -> tap.hot\ntee -> tap.cold\ntee2 -> tank"
    assert feeds(runs) == (FeedFacts("heater", None, ("cv",)),)


def test_check_before_the_taps_does_not_stand_in_the_feed() -> None:
    assert feeds("street -> cv -> tee -> heater -> tap.hot\ntee -> tap.cold") == (FeedFacts("heater", "tap", ()),)


def test_reducer_shut_valve_and_plain_pump_are_no_checks_and_one_with_a_check_is() -> None:
    assert feeds("street -> prv -> valve -> heater", valve="state: shut")[0].comes_to == "street"
    assert feeds("street -> booster -> heater", booster="check: false")[0].comes_to == "street"
    assert feeds("street -> booster -> heater", booster="check: true")[0] == FeedFacts("heater", None, ("booster",))


def test_check_that_is_stuck_open_is_none() -> None:
    assert feeds("street -> cv -> heater", cv="state: stuck_open")[0].comes_to == "street"


def test_branch_with_a_check_towards_a_cold_tap_is_open_towards_it() -> None:
    (feed,) = feeds("street -> cv1 -> tee -> heater -> tap.hot\ntee -> cv2 -> tap.cold")
    assert feed.comes_to == "tap"


def test_hot_taps_mixing_valve_and_return_of_a_loop_are_not_the_cold_feed() -> None:
    runs = (
        "street -> cv -> tee -> heater -> tee2 -> mixer.hot\ntee -> mixer.cold\nmixer -> tap.hot\ntee2 -> pump -> tee"
    )
    assert feeds(runs) == (FeedFacts("heater", None, ("cv",)),)


def test_two_heaters_behind_one_check_have_it_both() -> None:
    runs = "street -> cv -> tee -> heater1 -> tap1.hot\ntee -> heater2 -> tap2.hot"
    assert feeds(runs) == (FeedFacts("heater1", None, ("cv",)), FeedFacts("heater2", None, ("cv",)))


def test_heater_behind_another_says_so() -> None:
    assert feeds("street -> cv -> heater1 -> heater2 -> tap.hot") == (
        FeedFacts("heater1", None, ("cv",)),
        FeedFacts("heater2", None, (), ("heater1",)),
    )


def test_heater_that_nothing_feeds_has_an_empty_feed() -> None:
    assert feeds("heater -> tap.hot") == (FeedFacts("heater", None, ()),)


def test_order_of_the_file_does_not_choose_between_two_taps_alike_near() -> None:
    for runs in ("tee -> tap2.cold\ntee -> tap1.cold", "tee -> tap1.cold\ntee -> tap2.cold"):
        assert feeds(f"street -> valve -> tee -> heater\n{runs}")[0].comes_to == "tap1"
