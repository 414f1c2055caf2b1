"""A heater that fires on flow, in a loop that a pump drives."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import LOOP_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing

BAD = LOOP_HOUSE.altered("""
  heater:  # <- tankless-in-loop
    {kind: tankless_heater, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
""")


@requirement(
    "tankless-in-loop",
    Severity.NOTE,
    bad=BAD,
    good=LOOP_HOUSE,
    asks="A heater that fires on flow is meant for continuous circulation, where a pump drives water through it.",
    of="heaters that fire on flow",
)
def tankless_in_loop(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A heater that fires on flow sits in a driven loop: it fires with every fixture shut, like a storage heater.

    Its water expands, and it runs far more hours than one that waits for a tap. Ask its maker for the duty
    and the warranty in continuous circulation.
    """
    for heater in facts.heaters:
        if not heater.on_flow:
            continue
        if heater.loops:
            pumps = sorted({loop[0] for loop in heater.loops})
            yield Breach(
                (heater.name, *pumps),
                f"{heater.name} fires while {agreeing(pumps, 'runs')}, with every fixture shut; its water expands "
                "like that of a storage heater.",
                "Ask its maker for the duty and the warranty in continuous circulation.",
            )
        else:
            yield Met((heater.name,), "no pump drives water through it")
