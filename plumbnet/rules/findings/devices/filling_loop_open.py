"""A filling loop that was left open."""

from collections.abc import Iterator

from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity, finding
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.rule_profile import Profile

BAD = Example("""\
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 200 kPa}
  loop: {kind: filling_loop, fill: 100 kPa, state: open}  # <- filling-loop-open
  tee: tee
  vessel: {kind: expansion_tank, volume: 50 L, precharge: 200 kPa}
  boiler: {kind: boiler, volume: 10 L, setpoint: 70 degC, relief: {pressure: 300 kPa}}
  hall: {kind: emitter, volume: 20 L}
  pump: circulator
runs:
  - street -> loop -> tee -> boiler -> pump -> hall -> tee
  - tee -> vessel
""")

GOOD = BAD.altered("""
  loop: {kind: filling_loop, fill: 100 kPa}
  vessel: {kind: expansion_tank, volume: 50 L, precharge: 100 kPa}
""")


@finding(
    "filling-loop-open",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="A filling loop is shut, or taken off, once the circuit is filled.",
    of="filling loops",
)
def filling_loop_open(facts: Facts, _profile: Profile) -> Iterator[Answer]:
    """A loop by which a circuit is filled by hand stands open.

    The circuit is then pressed by whatever the cold pipe comes to, at night too; a leak is made good unseen, and only
    the loop's check keeps the circuit's water out of the drinking water. Shut it, and take the hose off.
    """
    for name, part in facts.system.parts.items():
        if not isinstance(part, FillingLoop):
            continue
        if part.state == "open":
            yield Breach(
                (name,),
                f"{name} stands open: what lies behind it is pressed by the cold pipe, and joined to it.",
                f"Shut it, take its hose off, and let what it fills down to {facts.pressure(part.fill_pa)}.",
            )
        else:
            yield Met((name,), "it is shut")
