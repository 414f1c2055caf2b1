"""Parts that do nothing: pumps that drive no loop, parts that no water reaches; and tankless heaters in a loop."""

from collections.abc import Iterator

from plumbnet.rules.facts import Facts
from plumbnet.rules.finding import Breach, Severity, finding
from plumbnet.rules.profile import Profile

LOOP = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  far: tee
  pump: circulator
  tap: fixture
runs:
  - street -> split -> heater -> far -> tap.hot
  - far -> pump -> split
"""

IDLE = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  pump: circulator  # <- pump-drives-nothing
  tap: fixture
runs:
  - street -> split -> heater -> tap.hot
  - split -> pump -> tap.cold
"""

UNREACHED = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: storage_heater, volume: 40 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  backwards: check_valve
  tap: fixture  # <- unreached-part
runs:
  - street -> split -> heater -> tap.hot
  - tap.cold -> backwards -> split
"""

TANKLESS = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  split: tee
  heater: {kind: tankless_heater, setpoint: 140 degF, relief: {pressure: 150 psi}}  # <- tankless-in-loop
  far: tee
  pump: circulator
  tap: fixture
runs:
  - street -> split -> heater -> far -> tap.hot
  - far -> pump -> split
"""


@finding("pump-drives-nothing", Severity.WARNING, bad=IDLE, good=LOOP)
def pump_drives_nothing(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A running circulator has no way round: a dead end, a shut valve or a check against it.

    It stirs water and burns out. Look for a missing return, a shut valve, or a check put in backwards.
    """
    for name in facts.idle_pumps:
        yield Breach(
            (name,),
            f"{name} runs but can drive water round no loop.",
            "Look for a missing return, a shut valve, or a check that faces the wrong way.",
        )


@finding("unreached-part", Severity.WARNING, bad=UNREACHED, good=LOOP)
def unreached_part(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """No water can reach a part from any supply, even with every shut valve open.

    A device faces the wrong way, or a supply is missing in the layout. A heating circuit that is filled by
    hose and then left closed shows here too; draw its filling connection.
    """
    for name in facts.unreached:
        yield Breach(
            (name,),
            f"no water reaches {name} from any supply.",
            "Look for a device that faces the wrong way, or draw the missing supply.",
        )


@finding("tankless-in-loop", Severity.NOTE, bad=TANKLESS, good=LOOP)
def tankless_in_loop(facts: Facts, _profile: Profile) -> Iterator[Breach]:
    """A heater that fires on flow sits in a driven loop: it fires with every fixture shut, like a storage heater.

    Its water expands, and it runs far more hours than it was sold for. Ask its maker for the duty and the
    warranty in continuous circulation.
    """
    for heater in facts.heaters:
        if heater.on_flow and heater.loops:
            pumps = " and ".join(sorted({loop[0] for loop in heater.loops}))
            yield Breach(
                (heater.name, *sorted({loop[0] for loop in heater.loops})),
                f"{heater.name} fires whenever {pumps} runs, with every fixture shut.",
                "Ask its maker for the duty and the warranty in continuous circulation.",
            )
