"""Numbers tried together."""

from conftest import system

import plumbnet
from plumbnet.study.margins.joint_trial import that_may_turn
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
TAPS = "\n".join(f"tee -> tap{number}.cold" for number in range(2, 9))


def trials(**parts: str) -> MarginTrials:
    return MarginTrials(
        plumbnet.check(system(f"street -> tee -> heater -> tap1.hot\n{TAPS}", heater=RELIEVED, **parts))
    )


def test_where_nothing_turns_one_trial_tells_it_of_all_of_a_dimension() -> None:
    trial = trials()
    heights = [one for one in uncertain_numbers(trial.report) if one.field == "elevation"]
    assert len(heights) == 8
    assert that_may_turn(trial, heights, lambda one: one.lowest) == set()
    assert trial.checks == 1


def test_the_one_that_turns_is_found_among_many() -> None:
    trial = trials(street="pressure: 79 psi", tap5="elevation: -1 ft")
    heights = [one for one in uncertain_numbers(trial.report) if one.field == "elevation"]
    lower = that_may_turn(trial, heights, lambda one: one.told - (0.5 if one.part == "tap5" else 0.1))
    assert {one.part for one in lower} == {"tap5"}
    assert trial.checks <= 7
