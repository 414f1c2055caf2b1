from conftest import system

import plumbnet
from plumbnet.layout.edits.apply import with_changes
from plumbnet.study.exercise.suppositions import suppositions

HOUSE = system(
    "street -> meter -> valve -> prv -> tee -> heater -> tap.hot\ntee -> tank\ntee -> pump -> tee2 -> tap.cold",
    prv="bypass: true",
    heater="relief: {pressure: 150 psi}",
)


def test_every_event_is_told_in_words() -> None:
    assert [one.words for one in suppositions(HOUSE)] == [
        "valve is left shut after a repair",
        "prv has failed: bypass stuck shut",
        "prv has failed: creeping",
        "tap has failed: crossover",
        "tank has failed: waterlogged",
        "tank was never pumped up: it holds the 40 psi with which it left the factory",
        "meter is exchanged for one with a check valve in it",
        "pump is exchanged for one with a check valve in it",
        "pump is switched off",
        "the pressure in street rises to 75 psi",
        "the pressure in street rises to 90 psi",
    ]


def test_tank_that_was_never_pumped_up_is_made_so() -> None:
    (event,) = [one for one in suppositions(HOUSE) if "never pumped" in one.words]
    cushion = with_changes(HOUSE, event.changes).parts["tank"].cushion()
    assert cushion is not None
    assert round(cushion.precharge_pa / 6894.757) == 40


def test_tap_for_cold_water_alone_joins_nothing_when_it_fails() -> None:
    yard = system("street -> tee -> heater -> tap.hot\ntee -> tap.cold\ntee -> tap2.cold")
    assert [one.words for one in suppositions(yard) if "crossover" in one.words] == ["tap has failed: crossover"]


def test_street_whose_highest_is_given_rises_above_that() -> None:
    rising = system("street -> heater -> tap.hot", street="pressure: 60 psi, highest: 70 psi")
    words = [one.words for one in suppositions(rising) if "street" in one.words]
    assert words == [
        "the highest pressure in street rises to 85 psi",
        "the highest pressure in street rises to 100 psi",
    ]
    for one in suppositions(rising):
        assert with_changes(rising, one.changes).parts != rising.parts


def test_filling_loop_may_be_left_open() -> None:
    circuit = system("street -> loop -> tee -> boiler -> emitter -> tee")
    (left,) = (one for one in suppositions(circuit) if "loop" in one.words)
    assert left.words == "loop is left open after the circuit was topped up"
    assert with_changes(circuit, left.changes).parts["loop"].drawn_as() == "open_filling_loop"
    assert not any("loop" in one.words for one in suppositions(with_changes(circuit, left.changes)))


def test_every_event_can_be_made_and_changes_the_layout() -> None:
    for one in suppositions(HOUSE):
        changed = with_changes(HOUSE, one.changes)
        assert changed.parts != HOUSE.parts, one.words
        assert plumbnet.check(changed).heaters


def test_what_has_failed_already_cannot_fail() -> None:
    worn = system("street -> heater -> tap.hot", tap="crossover: true")
    assert not any("crossover" in one.words for one in suppositions(worn))


def test_relief_valve_is_never_taken_out_nor_made_to_fail() -> None:
    assert not any("relief" in one.words for one in suppositions(HOUSE))
    actions = {change.action for one in suppositions(HOUSE) for change in one.changes}
    assert actions == {"close", "fail", "set"}
