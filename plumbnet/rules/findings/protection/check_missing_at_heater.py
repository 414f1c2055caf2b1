"""A heater with no check between it and the main, where the rules ask for one."""

from collections.abc import Iterator

from plumbnet.layout.model import Role
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts, Verdict
from plumbnet.rules.finding import Severity, finding
from plumbnet.rules.four_answers import NOT_ASKED, Answer, Breach, Met, NotApplicable
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import why_closed

BAD = Example("""\
plumbnet: 1
rules: en-806
parts:
  street: {kind: main, pressure: 4 bar}
  heater:  # <- check-missing-at-heater
    {kind: storage_heater, volume: 150 L, setpoint: 60 degC, relief: {pressure: 7 bar, temperature: 95 degC}}
  tap: fixture
runs:
  - street -> heater -> tap.hot
""")

GOOD = BAD.altered("""
  street: ...
  check: check_valve
  split: tee
  tank: {kind: expansion_tank, volume: 18 L, precharge: 3.8 bar}
  heater: {kind: storage_heater, volume: 150 L, setpoint: 60 degC, relief: {pressure: 7 bar, temperature: 95 degC}}
runs:
  - street -> check -> split -> heater -> tap.hot
  - split -> tank
""")


@finding(
    "check-missing-at-heater",
    Severity.ERROR,
    bad=BAD,
    good=GOOD,
    rests_on="check_at_heater",
    asks="A check stands between the main and each heater.",
    of="heaters",
)
def check_missing_at_heater(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """Hot water can go back from a heater to the main, and the rules ask for a check before each heater.

    Such codes keep what has been heated out of the main and count on the control behind the check. Fit a check in the
    cold pipe of the heater, and with it the control of expansion, since the check closes the system.
    """
    if not profile.check_at_heater.is_asked:
        yield NOT_ASKED
        return
    for heater in facts.heaters:
        way = heater.way_out
        if heater.verdict is not Verdict.OPEN or way is None:
            yield Met((heater.name,), f"it is closed ({why_closed(heater)})")
        elif way.role is not Role.STREET:
            yield NotApplicable(
                (heater.name,), f"its water leaves to the open air at {way.outlet}, and not to the main"
            )
        else:
            yield Breach(
                (heater.name,),
                f"nothing keeps water of {heater.name} from going back to {way.outlet}; the rules ask for a check.",
                f"Fit a check in the cold pipe of {heater.name}, and a control of expansion between the two.",
            )
