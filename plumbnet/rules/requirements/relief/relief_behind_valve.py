"""A safety relief valve with something between it and the heater."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import RELIEF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile
from plumbnet.rules.sentences import agreeing

BAD = RELIEF_HOUSE.altered("""
  heater: ...
  stop: valve
  relief: {kind: relief_valve, pressure: 150 psi, temperature: 210 degF}  # <- relief-behind-valve
runs:
  - street -> heater -> tap.hot
  - heater.relief -> stop -> relief
""")


@requirement(
    "relief-behind-valve",
    Severity.ERROR,
    bad=BAD,
    good=RELIEF_HOUSE,
    asks="Nothing that can shut, stick or clog stands between a safety relief valve and its heater.",
    of="safety relief valves",
)
def relief_behind_valve(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A safety relief valve is not joined to a heater or tank by plain pipe: something stands between.

    What stands between can shut, stick or clog, and then the relief valve protects nothing. Move the relief
    valve to the heater's own tapping; take out what stands between, never the relief valve.
    """
    for relief in facts.reliefs:
        if relief.touches_vessel:
            yield Met((relief.name, *relief.touches), "pipe and fittings alone join it to a heater or tank")
        else:
            between = f"{agreeing(relief.touches, 'stands')} between" if relief.touches else "it is joined to none"
            yield Breach(
                (relief.name, *relief.touches),
                f"{relief.name} does not sit on a heater: {between}.",
                "Connect the relief valve to the heater's own tapping, with nothing between that can shut or stick.",
            )
