"""A heater that is out of service, so that nothing is said of what it does when it heats."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = PLAIN_HOUSE.altered("""
  heater: ...
  spare: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, state: out_of_service}  # <- heater-out-of-service
runs:
  - street -> spare -> heater -> tap.hot
""")

GOOD = PLAIN_HOUSE.altered("")


@requirement(
    "heater-out-of-service",
    Severity.NOTE,
    bad=BAD,
    good=GOOD,
    asks="Every heater of the layout is in service, so that it is judged.",
    of="heaters, in service or not",
    practice="common practice: what is lit again one day is judged before it is lit",
)
def heater_out_of_service(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A heater is marked as out of service, and taken as cold.

    It holds its water and lets water pass, but nothing grows in it, so that it has no verdict and no tank is counted
    for it. Before it is lit again, look at the layout with it in service.
    """
    heating = {heater.name for heater in facts.heaters}
    for name, part in facts.system.parts.items():
        if part.is_out_of_service():
            yield Breach(
                (name,),
                f"{name} is out of service: it is taken as cold, and has no verdict.",
                "Before it is lit again, check the layout with it in service; a sweep does so for each alone.",
            )
        elif name in heating:
            yield Met((name,), "it is in service")
