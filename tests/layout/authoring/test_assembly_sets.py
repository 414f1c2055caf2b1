"""The assemblies that come with the program: each stands in a layout, and does what a plumber expects of it."""

import pytest

import plumbnet
from plumbnet.layout.authoring.assembly_sets import shipped_assemblies, shipped_names
from plumbnet.layout.model.system import AssemblyFile
from plumbnet.rules.facts.verdict_words import Verdict

HOUSE = """
plumbnet: 1
units: us
parts:
  street: {kind: main, pressure: 60 psi}
  t: tee
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
  tap: fixture
"""
LAYOUTS = {
    "inlet-group": f"""{HOUSE}
  group:
    use: inlet-group
    each:
      reducer: {{set: 45 psi}}
      vessel: {{volume: 5 gal, precharge: 45 psi}}
      expansion-valve: {{pressure: 90 psi}}
runs: [street -> group -> heater -> tap.hot, group.balanced-cold -> t -> tap.cold]
""",
    "safety-group": """
plumbnet: 1
units: metric
rules: en-806
parts:
  street: {kind: main, pressure: 300 kPa}
  t: tee
  group: {use: safety-group, each: {relief: {pressure: 700 kPa}}}
  heater: {kind: storage_heater, volume: 200 L, setpoint: 65 degC}
  tap: fixture
runs: [street -> t -> group -> heater -> tap.hot, t -> tap.cold]
""",
    "fill-set": """
plumbnet: 1
units: metric
parts:
  street: {kind: main, pressure: 400 kPa}
  t: tee
  fill: {use: fill-set, each: {reducer: {set: 150 kPa}}}
  heater: {kind: boiler, volume: 20 L, setpoint: 75 degC, relief: {pressure: 300 kPa}}
  pump: circulator
  radiator: {kind: emitter, volume: 60 L}
  back: tee
  vessel: {kind: expansion_tank, volume: 18 L, precharge: 100 kPa}
  tap: fixture
runs: [street -> t -> fill -> back, t -> tap.cold, heater -> pump -> radiator -> back -> heater, back -> vessel]
""",
    "primary-secondary": """
plumbnet: 1
units: metric
parts:
  heater: {kind: boiler, volume: 20 L, setpoint: 75 degC, relief: {pressure: 300 kPa}}
  spacing: {use: primary-secondary}
  radiators: {kind: emitter, volume: 60 L}
  street: {kind: main, pressure: 150 kPa}
  fill: {kind: valve, state: shut}
  vessel: {kind: expansion_tank, volume: 35 L, precharge: 100 kPa}
  t: tee
runs:
  - heater -> spacing -> heater
  - spacing.supply -> radiators -> spacing.return
  - spacing.fill -> t -> vessel
  - street -> fill -> t
""",
    "twin-heaters": """
plumbnet: 1
units: us
parts:
  street: {kind: main, pressure: 60 psi}
  check: check_valve
  twins:
    use: twin-heaters
    each:
      heaters: {volume: 100 gal, setpoint: 140 degF, relief: {pressure: 150 psi, temperature: 210 degF}}
      tank: {volume: 20 gal, precharge: 60 psi}
  tap: fixture
  t: tee
runs: [street -> check -> t -> twins.cold, twins.hot -> tap.hot, t -> tap.cold, twins.return -> capped]
""",
    "riser-with-return": f"""{HOUSE}
  riser: {{use: riser-with-return}}
  pump: circulator
  mix: tee
  hot: tee
runs:
  - street -> t -> mix -> heater -> hot -> riser.hot
  - t -> riser.cold
  - riser.return -> pump -> mix
  - hot -> tap.hot
  - t -> tap.cold
""",
}
VERDICTS = {
    "inlet-group": Verdict.CONTROLLED,
    "safety-group": Verdict.CONTROLLED,
    "fill-set": Verdict.CONTROLLED,
    "primary-secondary": Verdict.CONTROLLED,
    "twin-heaters": Verdict.CONTROLLED,
    "riser-with-return": Verdict.OPEN,
}


def shelf(name: str) -> list[AssemblyFile]:
    return [AssemblyFile(name, shipped_assemblies(name))]


def test_every_set_stands_in_a_layout_here() -> None:
    assert list(shipped_names()) == sorted(LAYOUTS)


@pytest.mark.parametrize("name", sorted(LAYOUTS))
def test_layout_with_the_set_is_answered_as_a_plumber_expects(name: str) -> None:
    system = plumbnet.read_bytes(LAYOUTS[name].strip().encode(), shelf=shelf(name))
    report = plumbnet.check(system)
    assert {heater.verdict for heater in report.heaters} == {VERDICTS[name]}
    assert not any(found.name == "not-connected" for found in report.findings)


@pytest.mark.parametrize("name", sorted(LAYOUTS))
def test_set_bears_its_own_units_so_that_any_layout_can_use_it(name: str) -> None:
    other = {"us": "metric", "metric": "us"}
    text = LAYOUTS[name].strip()
    units = "us" if "units: us" in text else "metric"
    system = plumbnet.read_bytes(text.encode(), shelf=shelf(name))
    turned = plumbnet.read_bytes(text.replace(f"units: {units}", f"units: {other[units]}").encode(), shelf=shelf(name))
    assert list(system.parts.values()) == list(turned.parts.values())


def test_riser_hands_the_heat_of_its_return_to_the_pump() -> None:
    name = "riser-with-return"
    report = plumbnet.check(plumbnet.read_bytes(LAYOUTS[name].strip().encode(), shelf=shelf(name)))
    (heater,) = report.heaters
    assert any("riser/storeys/3/hot" in loop for loop in heater.loops)
