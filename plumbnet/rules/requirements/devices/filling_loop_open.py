"""A filling loop that was left open."""

from collections.abc import Iterator

from plumbnet.layout.model import System
from plumbnet.layout.model.kinds import FillingLoop
from plumbnet.rules.example_layouts import Example
from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Severity
from plumbnet.rules.four_answers import Answer, Breach, Met
from plumbnet.rules.requirement import requirement
from plumbnet.rules.rule_profile import Profile

_IN_LINE = 2
"""How many pipes a part has that stands in a line."""

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


@requirement(
    "filling-loop-open",
    Severity.WARNING,
    bad=BAD,
    good=GOOD,
    asks="A filling loop is shut once the circuit is filled, unless a good enough preventer stands in its line.",
    of="filling loops",
    held_to=("fill_preventer",),
)
def filling_loop_open(facts: Facts, profile: Profile) -> Iterator[Answer]:
    """A loop by which a circuit is filled by hand stands open.

    The circuit is then pressed by whatever the cold pipe comes to, at night too; a leak is made good unseen, and only
    the loop's check keeps the circuit's water out of the drinking water. Shut it, and take the hose off. It may stay
    joined where a backflow preventer that the rules take for good enough stands in its line.
    """
    for name, part in facts.system.parts.items():
        if not isinstance(part, FillingLoop):
            continue
        if part.state != "open":
            yield Met((name,), "it is shut")
        elif _is_guarded(facts.system, name, profile):
            yield Met((name,), "a backflow preventer that may stay joined stands in its line")
        else:
            yield Breach(
                (name,),
                f"{name} stands open: what lies behind it is pressed by the cold pipe, and joined to it.",
                f"Shut it, take its hose off, and let what it fills down to {facts.pressure(part.fill_pa)}.",
            )


def _is_guarded(system: System, loop: str, profile: Profile) -> bool:
    """Whether a preventer that the rules take for good enough stands in the line of a loop."""
    return any(profile.fill_preventer.takes(system.parts[name].protects) for name in _in_line(system, loop))


def _in_line(system: System, start: str) -> list[str]:
    """A part and those that stand in one line with it, nothing branching off between."""
    ends = [(pipe.start.part, pipe.end.part) for pipe in system.pipes]
    met = [start]
    for name in met:
        beside = [other for pair in ends if name in pair for other in pair]
        met += [one for one in dict.fromkeys(beside) if one not in met and _only_passes(system, ends, one)]
    return met


def _only_passes(system: System, ends: list[tuple[str, str]], name: str) -> bool:
    """Whether a part has two pipes and no water of its own."""
    return sum(pair.count(name) for pair in ends) == _IN_LINE and not system.parts[name].is_vessel
