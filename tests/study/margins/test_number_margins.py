"""Numbers to their margins."""

from conftest import system

import plumbnet
from plumbnet.study.margins.margin_trials import MarginTrials
from plumbnet.study.margins.number_margins import number_margins
from plumbnet.study.margins.uncertain_numbers import uncertain_numbers

RELIEVED = "relief: {pressure: 150 psi, temperature: 210 degF}"
RUNS = """street -> cv -> tee -> heater -> tap.hot
          tee -> tank"""


def test_numbers_that_turn_nothing_together_are_not_moved_by_themselves() -> None:
    trials = MarginTrials(plumbnet.check(system("street -> tee -> heater -> tap.hot", heater=RELIEVED)))
    numbers = [one for one in uncertain_numbers(trials.report) if one.together]
    assert all(one.is_free for one in number_margins(trials, numbers))
    assert trials.checks == 2 * len({one.dimension for one in numbers})


def test_number_that_turns_something_has_its_turn_on_that_side_alone() -> None:
    trials = MarginTrials(plumbnet.check(system(RUNS, heater=RELIEVED, tank="volume: 4 gal")))
    setpoint = next(one for one in uncertain_numbers(trials.report) if one.field == "setpoint")
    (found,) = number_margins(trials, [setpoint])
    assert found.below is None
    assert found.above is not None
    assert setpoint.told < found.above.holds_to < found.above.turns_at
