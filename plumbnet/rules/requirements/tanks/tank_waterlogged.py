"""A tank that has lost its air and takes nothing."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import TANK_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = TANK_HOUSE.altered("""
  tank: {kind: expansion_tank, volume: 5 gal, precharge: 60 psi, state: waterlogged}  # <- tank-waterlogged
""")


@requirement(
    "tank-waterlogged",
    Severity.ERROR,
    bad=BAD,
    good=TANK_HOUSE,
    asks="An expansion tank has its air.",
    of="expansion tanks",
)
def tank_waterlogged(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A tank has lost its air and is full of water.

    It takes nothing more, so the pressure climbs as if it were not there. A tank without a membrane is drained
    and charged again; one whose membrane has failed is exchanged.
    """
    for tank in facts.tanks:
        if tank.is_waterlogged:
            yield Breach(
                (tank.name,),
                f"{tank.name} has lost its air; it is full of water and takes no more.",
                f"Exchange {tank.name} or its membrane, and charge it to the line pressure with no water in it.",
            )
        else:
            yield Met((tank.name,), "it is sound")
