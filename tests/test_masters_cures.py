"""Ten layouts with the cure that a master plumber would choose first, written down before the program was asked."""

from dataclasses import dataclass, replace

import pytest

import plumbnet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.layout.model.system import System
from plumbnet.study.remedies.candidate import Effort

RELIEF = "relief: {pressure: 150 psi, temperature: 210 degF, capacity: 105000 Btu/h}"


@dataclass(frozen=True)
class Case:
    """A layout, who is in trouble there, and how the first remedy begins and where or to what it is done."""

    parts: str
    runs: str
    heater: str
    says: tuple[str, ...]
    rules: str = "general"

    @property
    def system(self) -> System:
        """The layout, read."""
        parts = "\n".join(f"  {line.strip()}" for line in self.parts.strip().splitlines())
        runs = "\n".join(f"  - {line.strip()}" for line in self.runs.strip().splitlines())
        text = f"plumbnet: 1\nrules: {self.rules}\nparts:\n{parts}\nruns:\n{runs}\n"
        return plumbnet.read_bytes(text.encode())


CASES = {
    # One heater behind its service valve: the tank hangs on the header, where closing that valve to exchange the
    # heater leaves the tank with the house.
    "a house with a checked meter and no tank": Case(
        f"""street: {{kind: main, pressure: 62 psi}}
            meter: {{kind: meter, check: true}}
            split: tee
            cold-valve: valve
            heater: {{kind: storage_heater, volume: 50 gal, setpoint: 140 degF, {RELIEF}}}
            sink: fixture""",
        """street -> meter -> split -> cold-valve -> heater -> sink.hot
           split -> sink.cold""",
        "heater",
        ("Fit an expansion tank of ", "charged to 62 psi, at split"),
    ),
    # Two screws and no purchase: the reducer lower, the tank charged to match.
    "a reducer set so high that the tank has no room": Case(
        f"""street: {{kind: main, pressure: 100 psi}}
            prv: {{kind: pressure_reducer, set: 79 psi}}
            split: tee
            tank: {{kind: expansion_tank, volume: 20 gal, precharge: 79 psi}}
            heater: {{kind: storage_heater, volume: 110 gal, setpoint: 140 degF, {RELIEF}}}
            sink: fixture""",
        """street -> prv -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank""",
        "heater",
        ("Set prv to ", "charge tank to "),
    ),
    "a sound tank charged as it came from the shop": Case(
        f"""street: {{kind: main, pressure: 62 psi}}
            meter: {{kind: meter, check: true}}
            split: tee
            tank: {{kind: expansion_tank, volume: 5 gal, precharge: 12 psi}}
            heater: {{kind: storage_heater, volume: 40 gal, setpoint: 120 degF, {RELIEF}}}
            sink: fixture""",
        """street -> meter -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank""",
        "heater",
        ("Charge tank to 62 psi",),
    ),
    # The tank that hangs there is exchanged for a larger one in the same place; nobody fits a second tee.
    "a tank too small, rightly charged": Case(
        f"""street: {{kind: main, pressure: 62 psi}}
            meter: {{kind: meter, check: true}}
            split: tee
            tank: {{kind: expansion_tank, volume: 2 gal, precharge: 62 psi}}
            heater: {{kind: storage_heater, volume: 80 gal, setpoint: 140 degF, {RELIEF}}}
            sink: fixture""",
        """street -> meter -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank""",
        "heater",
        ("Exchange tank for one of ", "charged to 62 psi"),
    ),
    # One tank for both, upstream of both service valves and not behind one of them.
    "two heaters side by side, each with its service valve": Case(
        f"""street: {{kind: main, pressure: 60 psi}}
            meter: {{kind: meter, check: true}}
            entry: tee
            header: tee
            valve-a: valve
            valve-b: valve
            a-tee: tee
            b-tee: tee
            a: {{kind: storage_heater, volume: 80 gal, setpoint: 140 degF, {RELIEF}}}
            b: {{kind: storage_heater, volume: 80 gal, setpoint: 140 degF, {RELIEF}}}
            out: tee
            drain-a: fixture
            drain-b: fixture
            sink: fixture""",
        """street -> meter -> entry -> header
           header -> valve-a -> a-tee -> a -> out -> sink.hot
           header -> valve-b -> b-tee -> b -> out
           a-tee -> drain-a.cold
           b-tee -> drain-b.cold
           entry -> sink.cold""",
        "b",
        ("Fit an expansion tank of ", "charged to 60 psi, at header"),
    ),
    # Not in the warm water that comes back: on the cold pipe before the return's connection.
    "a pumped return that enters the cold pipe": Case(
        f"""street: {{kind: main, pressure: 60 psi}}
            meter: {{kind: meter, check: true}}
            cold-tee: tee
            cold-valve: valve
            ret-tee: tee
            heater: {{kind: storage_heater, volume: 100 gal, setpoint: 140 degF, {RELIEF}}}
            far: tee
            pump: {{kind: circulator, check: true}}
            sink: fixture""",
        """street -> meter -> cold-tee -> cold-valve -> ret-tee -> heater -> far -> sink.hot
           far -> pump -> ret-tee
           cold-tee -> sink.cold""",
        "heater",
        ("Fit an expansion tank of ", "charged to 60 psi, at cold-tee"),
    ),
    "a right tank behind a valve that was left shut": Case(
        f"""street: {{kind: main, pressure: 60 psi}}
            meter: {{kind: meter, check: true}}
            split: tee
            tank-valve: {{kind: valve, state: shut}}
            tank: {{kind: expansion_tank, volume: 5 gal, precharge: 60 psi}}
            heater: {{kind: storage_heater, volume: 50 gal, setpoint: 120 degF, {RELIEF}}}
            sink: fixture""",
        """street -> meter -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank-valve -> tank""",
        "heater",
        ("Open tank-valve, and lock or tag it open",),
    ),
    # Common practice: where the pump draws, near the boiler's return, so that its head nowhere lowers the pressure.
    "a heating circuit filled through a check": Case(
        """street: {kind: main, pressure: 60 psi}
           fill: {kind: pressure_reducer, set: 12 psi}
           check: check_valve
           fill-tee: tee
           boiler: {kind: boiler, volume: 10 gal, setpoint: 180 degF, relief: {pressure: 30 psi}}
           supply-tee: tee
           pump: circulator
           rads: {kind: emitter, volume: 20 gal}
           suction: tee
           tap: fixture
           split: tee""",
        """street -> split -> fill -> check -> fill-tee -> boiler.return
           split -> tap.cold
           boiler.supply -> supply-tee -> rads -> suction -> pump -> fill-tee""",
        "boiler",
        ("Fit an expansion tank of ", "charged to 12 psi, at suction"),
        "us-boiler",
    ),
    "a tank full of water": Case(
        f"""street: {{kind: main, pressure: 60 psi}}
            meter: {{kind: meter, check: true}}
            split: tee
            tank: {{kind: expansion_tank, volume: 5 gal, precharge: 60 psi, state: waterlogged}}
            heater: {{kind: storage_heater, volume: 50 gal, setpoint: 120 degF, {RELIEF}}}
            sink: fixture""",
        """street -> meter -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank""",
        "heater",
        ("Exchange tank for a sound one of the same size, charged to 60 psi",),
    ),
    # A screw before a purchase: the tank is sound and large, only the building stands at its limit.
    "a reducer at the limit above a right tank": Case(
        f"""street: {{kind: main, pressure: 110 psi}}
            prv: {{kind: pressure_reducer, set: 80 psi}}
            split: tee
            tank: {{kind: expansion_tank, volume: 10 gal, precharge: 60 psi}}
            heater: {{kind: storage_heater, volume: 50 gal, setpoint: 120 degF, {RELIEF}}}
            sink: fixture""",
        """street -> prv -> split -> heater -> sink.hot
           split -> sink.cold
           split -> tank""",
        "heater",
        ("Set prv to ", "any set from "),
    ),
}
"""What is wrong, and what a master does about it first."""


LOCKED = "two heaters side by side, each with its service valve"


def test_valves_of_several_heaters_are_locked_open_where_the_rules_want_none_before_a_tank() -> None:
    first = plumbnet.remedies(replace(CASES[LOCKED], rules="uk-2010").system)["a"][0].title
    assert first.endswith(", charged to 60 psi, at header, and lock valve-a and valve-b open.")
    first = plumbnet.remedies(replace(CASES[LOCKED], rules="upc-2018").system)["a"][0].title
    assert first.endswith(", charged to 60 psi, at header.")


@pytest.mark.parametrize("name", CASES)
def test_need_sheet_and_added_tank_name_one_place(name: str) -> None:
    case = CASES[name]
    report = plumbnet.check(case.system)
    heater = next(one for one in report.heaters if one.name == case.heater)
    (sheet,) = sheets(report, [heater])
    assert heater.need is not None
    assert (sheet.outcome.at, sheet.outcome.why) == (heater.need.at, heater.need.why)
    added = [one for one in plumbnet.remedies(report)[case.heater] if one.effort is Effort.ADD]
    assert all(one.why == heater.need.why for one in added)
    assert all(f", at {heater.need.at}" in one.title for one in added)


@pytest.mark.parametrize("name", CASES)
def test_first_remedy_is_what_a_master_would_do_first(name: str) -> None:
    case = CASES[name]
    first = plumbnet.remedies(case.system)[case.heater][0].title
    assert first.startswith(case.says[0])
    assert all(words in first for words in case.says)
