"""An expansion relief valve that the static pressure alone holds open."""

from collections.abc import Iterator

from plumbnet.layout.units import PRESSURE
from plumbnet.rules.example_layouts import LETOFF_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import NO_WATER, Answer, Breach, Measured, Met, NotApplicable
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = LETOFF_HOUSE.altered("""
  street: {kind: main, pressure: 60 psi}
  letoff: {kind: expansion_relief, pressure: 55 psi}  # <- expansion-relief-below-static
""")


@requirement(
    "expansion-relief-below-static",
    Severity.ERROR,
    bad=BAD,
    good=LETOFF_HOUSE,
    asks="An expansion relief valve is shut while nothing is heated.",
    of="expansion relief valves",
)
def expansion_relief_below_static(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """The static pressure stands at or above the set of an expansion relief valve, which runs day and night.

    Lower the static pressure, or fit a valve set above it and below the limit.
    """
    for relief in facts.expansion_reliefs:
        if relief.static_pa is None:
            yield NotApplicable((relief.name,), NO_WATER)
        elif relief.static_pa < relief.set_pa:
            yield Met((relief.name,), measured=Measured(relief.static_pa, relief.set_pa, PRESSURE))
        else:
            yield Breach(
                (relief.name,),
                f"{facts.pressure(relief.static_pa)} stands at {relief.name}, which is set to "
                f"{facts.pressure(relief.set_pa)}: it never shuts.",
                "Lower the static pressure, or fit an expansion relief valve set above it and below the limit.",
                Measured(relief.static_pa, relief.set_pa, PRESSURE),
            )
