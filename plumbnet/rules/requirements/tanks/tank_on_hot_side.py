"""A tank that hangs on the hot pipe of a heater."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import CLOSED_HOUSE, TANK_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = CLOSED_HOUSE.altered("""
  heater: ...
  split: tee
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi}  # <- tank-on-hot-side
runs:
  - street -> meter -> heater -> split -> tap.hot
  - split -> tank
""")


@requirement(
    "tank-on-hot-side",
    Severity.WARNING,
    bad=BAD,
    good=TANK_HOUSE,
    rests_on="control_side",
    asks="An expansion tank of drinking water hangs on the cold pipe.",
    of="expansion tanks",
)
def tank_on_hot_side(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A tank hangs on the hot pipe of a water heater.

    It works, but the heat ages its membrane and warms its air, and codes ask for the cold side. Move it to
    the cold pipe of the heater, behind the last check. The tank of a heating circuit belongs in that circuit
    and is not meant here.
    """
    if profile.control_side.value != "cold":
        yield NotApplicable((), "the rules ask for no side")
        return
    for tank in facts.tanks:
        if tank.on_hot_side and tank.reached:
            yield Breach(
                (tank.name,),
                f"{tank.name} hangs on the hot pipe of a heater, where heat ages its membrane.",
                "Move it to the heater's cold pipe, downstream of the last check.",
            )
        else:
            yield Met((tank.name,), "it hangs on no hot pipe to taps")
