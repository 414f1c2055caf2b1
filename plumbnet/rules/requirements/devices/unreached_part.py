"""A part that no water can reach from any supply."""

from collections.abc import Iterator

from plumbnet.rules.example_layouts import PLAIN_HOUSE
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

BAD = PLAIN_HOUSE.altered("""
  street: ...
  split: tee
  heater: ...
  backwards: check_valve
  tap: fixture  # <- unreached-part
runs:
  - street -> split -> heater -> tap.hot
  - tap.cold -> backwards -> split
""")

GOOD = PLAIN_HOUSE.altered("""
  street: ...
  meter: meter
runs:
  - street -> meter -> heater -> tap.hot
""")


@requirement(
    "unreached-part",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="Water comes to every part from some supply.",
    of="parts",
)
def unreached_part(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """No water can reach a part from any supply, even with every shut valve open.

    A device faces the wrong way, or a supply is missing in the layout. A heating circuit that is filled by
    hose and then left closed shows here too; draw its filling connection.
    """
    for name in facts.unreached:
        yield Breach(
            (name,),
            f"no water reaches {name} from any supply.",
            "Look for a device that faces the wrong way, or draw the supply that is missing.",
        )
    if not facts.unreached:
        yield Met((), "water comes to every part")
