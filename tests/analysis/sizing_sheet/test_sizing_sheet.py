"""Whole layout files to calculation sheets: published answers, provenance, rounding, both systems of units."""

import hashlib
import re
from functools import cache
from pathlib import Path

import pytest
from conftest import PSI
from hypothesis import given
from hypothesis import strategies as st

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.sizing_sheet.sheet_model import Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet, sheets
from plumbnet.physics.fluids import glycol
from plumbnet.physics.sizing.methods import METHODS
from plumbnet.physics.vessels.tank import nominal_sizes
from plumbnet.rules.facts.verdict_words import Verdict

ROOT = Path(__file__).parents[3]
SYSTEMS = sorted((ROOT / "systems").glob("*.yaml"))
GALLON = 231 * 0.0254**3
BAR = 1e5


@cache
def check(text: str, file: str = "house.yaml") -> Report:
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file=file))


def only(text: str, method: str | None = None) -> Sheet:
    made = check(text)
    return sheet(made, made.heaters[0], method=method)


def closed(
    heater: str, street: str = "3 bar, temperature: 10 degC", *, units: str = "metric", more: str = "", runs: str = ""
) -> str:
    """A heater behind a check valve, and no fixture, so that relief valve or rating sets the limit."""
    return (
        f"plumbnet: 1\nunits: {units}\nparts:\n  street: {{kind: main, pressure: {street}}}\n  cv: check_valve\n"
        f"  heater: {{{heater}}}\n{more}runs:\n  - street -> cv -> heater\n{runs}"
    )


# Published examples, end to end.


@pytest.mark.parametrize(("hot", "relief", "litres"), [(60, 6, 5.8), (60, 8, 3.9), (70, 6, 7.8), (70, 8, 5.3)])
def test_german_drinking_water_example_comes_out_of_a_layout(hot: int, relief: int, litres: float) -> None:
    # DIN 4807-5, read at haustechnikdialog.de, SHKwissen 1146: 100 L, 3 bar; printed to a tenth of a litre.
    made = only(
        closed(
            f"kind: storage_heater, volume: 100 L, setpoint: {hot} degC, sizing: din-4807-5, "
            f"relief: {{pressure: {relief} bar}}"
        )
    )
    assert made.outcome.method_m3 is not None
    assert made.outcome.method_m3 * 1000 == pytest.approx(litres, rel=0.01)
    assert made.outcome.charge_pa == pytest.approx(2.8 * BAR)


@pytest.mark.parametrize(("gallons", "tank"), [(100, 15), (500, 75), (1000, 150), (2000, 300)])
def test_table_of_the_michigan_boiler_rules_comes_out_of_a_layout(gallons: int, tank: int) -> None:
    # Michigan R 408.4272, table 272B: plain tanks, 195 degF, 12 to 30 psig.
    made = only(
        closed(
            "kind: boiler, volume: 20 gal, setpoint: 195 degF, rating: 30 psi, sizing: asme-iv",
            "12 psi",
            units="us",
            more=f"  pump: circulator\n  hall: {{kind: emitter, volume: {gallons - 20} gal}}\n  t: tee\n",
            runs="  - heater -> pump -> hall -> t\n",
        ).replace("cv -> heater", "cv -> t -> heater")
    )
    assert made.outcome.method_m3 is not None
    assert made.outcome.method_m3 / GALLON == pytest.approx(tank, rel=0.005)
    assert made.outcome.charge_pa == 0.0


def test_british_allowance_comes_out_of_a_layout() -> None:
    made = only(
        closed("kind: storage_heater, volume: 210 L, setpoint: 65 degC, rating: 6 bar", "3.5 bar"), "uk-4-percent"
    )
    assert made.outcome.method_m3 is not None
    assert made.outcome.method_m3 * 1000 == pytest.approx(23.6, abs=0.06)


def test_heater_from_40_to_140_fahrenheit_comes_out_of_a_layout() -> None:
    # 50 gal, 60 to 80 psig, by IAPWS-95: 4.04 gal.
    made = only(
        closed("kind: storage_heater, volume: 50, setpoint: 140", "60 psi, temperature: 40", units="us")
        .replace("cv -> heater", "cv -> heater -> tap.hot")
        .replace("  cv:", "  tap: fixture\n  cv:")
    )
    assert made.outcome.method_m3 is not None
    assert made.outcome.method_m3 / GALLON == pytest.approx(4.04, abs=0.006)


def test_european_vessel_takes_head_and_relief_valve_from_the_layout() -> None:
    # By head: column 10 m = 0.98 bar, charge 1.281 bar, end 2.5 bar; (V e + 5 L) (2.5 + 1.013)/(2.5 - 1.281).
    made = only(
        closed(
            "kind: boiler, volume: 1000 L, setpoint: 80 degC, sizing: en-12828, relief: {pressure: 3 bar}",
            "2 bar, temperature: 10 degC",
            more="  top: {kind: vent, elevation: 10 m}\n".replace("vent", "tee"),
            runs="  - heater -> top\n",
        )
    )
    growth = next(step.value for section in made.sections for step in section.steps if step.symbol == "e")
    charge = 0.980665 + 0.3
    assert made.outcome.method_m3 is not None
    assert made.outcome.method_m3 * 1000 == pytest.approx(
        (1000 * growth + 5) * (2.5 + 1.01325) / (2.5 - charge), rel=1e-6
    )
    assert made.outcome.charge_pa == pytest.approx(charge * BAR)
    assert "column of water above the tank" in [item.name for section in made.sections for item in section.items]


def test_two_waters_have_a_tank_each_and_one_for_all_and_the_next_size_is_tried_with_both() -> None:
    other = "  other: {kind: storage_heater, volume: 100 L, setpoint: 80 degC, relief: {pressure: 8 bar}}\n  tee: tee\n"
    heater = "kind: storage_heater, volume: 100 L, setpoint: 60 degC, relief: {pressure: 8 bar}"
    text = closed(heater, "3 bar", more=other, runs="  - tee -> other\n").replace("cv -> heater", "cv -> tee -> heater")
    made = only(text, "membrane")
    first, second, whole, last = (section for section in made.sections[1:5])
    assert [one.title for one in (first, second, whole, last)] == [
        "Tank for the water of heater, Membrane tank by Boyle's law",
        "Tank for the water of other, Membrane tank by Boyle's law",
        "One tank for all of it",
        "With the next size up",
    ]
    (total,) = whole.steps
    assert (total.symbol, total.name, total.formula) == ("V_t", "tank", "V_t1 + V_t2")
    assert total.value == first.steps[-1].value + second.steps[-1].value == made.outcome.method_m3
    settled, gauge = last.steps
    assert (settled.symbol, settled.name) == ("p_settled", "pressure at which it settles")
    assert (gauge.symbol, gauge.name) == ("d_settled", "the same, gauge")
    # 1.678 L and 2.871 L into 12 L charged to 3 bar, all absolute: 4.01325 * 12 / (12 - 4.5497)
    assert settled.value == pytest.approx(4.01325e5 * 12.0 / (12.0 - 4.54967), rel=1e-5)
    assert made.outcome.settled_pa == gauge.value == pytest.approx(settled.value - 101325.0)


def test_european_vessel_without_relief_valve_is_refused_in_words_and_the_report_falls_back() -> None:
    made = check(closed("kind: boiler, volume: 100 L, setpoint: 80 degC, rating: 3 bar, sizing: en-12828", "1 bar"))
    answer = sheet(made, made.heaters[0])
    assert answer.outcome.refusal == "EN 12828, annex D: needs the set of the relief valve"
    assert answer.outcome.tank_m3 is None
    need = made.heaters[0].need
    assert need is not None
    assert need.tank_m3 == sheet(made, made.heaters[0], method="membrane").outcome.tank_m3


# What it rests on, and the tank that was tried.


def test_sheet_names_its_file_rules_and_method() -> None:
    text = "title: Mill Lane\n" + closed("kind: storage_heater, volume: 210 L, setpoint: 65 degC, rating: 6 bar")
    made = plumbnet.check(plumbnet.read_bytes(text.encode(), file="mill.yaml"), rules="uk-2010")
    one = sheet(made, made.heaters[0])
    assert (one.file, one.title, one.scenario) == ("mill.yaml", "Mill Lane", made.scenario)
    assert one.sha256 == hashlib.sha256(text.encode()).hexdigest()
    assert (one.rules, one.rules_title) == ("uk-2010", made.profile.title)
    assert one.rules_sha256 == made.profile.sha256
    assert (one.method.name, one.method.chosen.split(":")[0]) == (made.profile.sizing.value, "profile uk-2010")
    assert one.heater is made.heaters[0]


SMALL = """\
plumbnet: 1
units: us
parts:
  street: {kind: main, pressure: 60}
  cv: check_valve
  tee: tee
  heater: {kind: storage_heater, volume: 50, setpoint: 140, relief: {pressure: 150}}
  small: {kind: expansion_tank, volume: 2, precharge: 60}
  tap: fixture
runs:
  - street -> cv -> tee -> heater -> tap.hot
  - tee -> small
"""


def test_tank_beside_one_that_is_too_small_is_shown_as_tried_with_what_the_next_size_comes_to() -> None:
    made = check(SMALL)
    one, need = sheet(made, made.heaters[0]), made.heaters[0].need
    assert need is not None
    (least, comes) = next(each for each in one.sections if each.title == "The tank tried in the layout").items
    assert (least.symbol, least.name, least.value) == (
        "V_t",
        "least tank that holds, beside small as it stands",
        need.tank_m3,
    )
    assert least.origin == "found by halving: each size hung there, and every order in which the heaters warm looked at"
    assert (comes.symbol, comes.name, comes.origin) == ("d_settled", "what the next size comes to", least.origin)
    assert one.outcome.settled_pa == comes.value
    assert one.outcome.holds_m3 == need.tank_m3
    assert one.outcome.beside == ("small",)
    with_it = SMALL.replace("  - tee -> small", "  - tee -> small\n  - tee -> large")
    large = f"  large: {{kind: expansion_tank, volume: {(need.nominal_m3 or 0.0) / GALLON!r}, precharge: 60}}\n"
    both = check(with_it.replace("  tap: fixture\n", f"{large}  tap: fixture\n")).heaters[0]
    assert both.settled_pa == pytest.approx(comes.value, abs=2.0)
    assert both.verdict is Verdict.CONTROLLED


def test_tank_that_no_listed_size_reaches_settles_nowhere() -> None:
    made = check(f"tank_sizes: [0.5 gal]\n{SMALL}")
    one = sheet(made, made.heaters[0])
    tried = next(each for each in one.sections if each.title == "The tank tried in the layout").items
    assert [item.symbol for item in tried] == ["V_t"]
    assert (one.outcome.nominal_m3, one.outcome.settled_pa) == (None, None)
    assert one.outcome.sizes_from == "the sizes that the file lists"


def test_size_of_no_list_is_of_the_round_series_that_comes_with_the_program() -> None:
    assert only(SMALL).outcome.sizes_from == "a round series that comes with the program"


# What stands in the file, and where.

KEYS = {
    "d_supply": ("pressure", "cut_out", "elevation"),
    "d_set": ("set",),
    "d_relief": ("pressure",),
    "d_sv": ("pressure", "set"),
    "d_limit": ("rating", "set"),
    "d_0": ("precharge",),
    "V_n": ("volume",),
    "V_most": ("acceptance",),
    "T_1": ("temperature",),
    "T_2": ("setpoint",),
}


def stands_there(path: Path, origin: str, keys: tuple[str, ...]) -> bool:
    found = re.search(rf"line (\d+) of {re.escape(path.name)}", origin)
    if found is None:
        return not origin.startswith("line")
    line = path.read_text(encoding="utf-8").splitlines()[int(found[1]) - 1]
    return any(re.search(rf"\b{key}: ", line) for key in keys)


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_every_input_names_the_line_on_which_it_stands(path: Path) -> None:
    made = check(path.read_text(encoding="utf-8"), path.name)
    for each in sheets(made, list(made.heaters)):
        items = [*each.inputs, *(item for section in each.sections for item in section.items)]
        for item in items:
            assert stands_there(path, item.origin, KEYS.get(item.symbol, ("-",))), item
        for content in each.contents:
            keys = ("pipe",) if content.name.startswith("pipe ") else ("volume", "coil_volume", "primary_volume")
            assert stands_there(path, content.origin, keys), content


def test_inputs_say_what_is_a_default_and_what_the_rules_set() -> None:
    made = only(
        "plumbnet: 1\nparts:\n  street: {kind: main, pressure: 60 psi}\n  cv: check_valve\n  t: tee\n  p: circulator\n"
        "  heater: {kind: tankless_heater, setpoint: 140}\n  tap: fixture\n"
        "runs:\n  - street -> cv -> t -> heater -> f -> tap.hot\n  - f -> p -> t\n".replace("  p:", "  f: tee\n  p:")
    )
    assert made.contents[0].origin == "default: it holds 1 L of water (0.26 gal)"
    assert made.inputs[0].origin == "street, default: it delivers water at 10 °C (50 °F)"
    assert made.inputs[1].origin == "line 8 of house.yaml"
    items = {item.symbol: item for item in made.sections[0].items}
    assert items["d_supply"].origin == "line 3 of house.yaml"
    assert items["d_limit"].origin.startswith("profile general: 80 psi (552 kPa)")
    assert made.method.chosen.startswith("profile general: common practice")


def test_antifreeze_comes_with_its_source_and_its_line() -> None:
    made = only(
        closed(
            "kind: solar_collector, volume: 20 L, setpoint: 90 degC, rating: 6 bar, "
            "antifreeze: {glycol: propylene, share: 40 %}",
            "2 bar, temperature: 10 degC",
        )
    )
    steps = {step.symbol: step for section in made.sections for step in section.steps}
    assert steps["e"].value == pytest.approx(glycol.glycol_growth("propylene", 0.4, 283.15, 363.15))
    assert steps["e"].source == glycol.GLYCOL_SOURCE
    assert {item.symbol: item.origin for item in made.inputs}["e_glycol"] == "line 6 of house.yaml"


# Rounding and sharing.


@given(litres=st.floats(20.0, 2000.0), sizes=st.lists(st.floats(1.0, 900.0), min_size=1, max_size=6))
def test_size_to_fit_is_never_below_the_least(litres: float, sizes: list[float]) -> None:
    listed = ", ".join(f"{size!r} L" for size in sizes)
    text = closed(f"kind: storage_heater, volume: {litres!r} L, setpoint: 60 degC, relief: {{pressure: 10 bar}}")
    outcome = only(text.replace("units", f"tank_sizes: [{listed}]\nunits")).outcome
    assert outcome.tank_m3 is not None
    enough = [size / 1000 for size in sorted(sizes) if size / 1000 >= outcome.tank_m3 * (1 - 1e-9)]
    assert outcome.nominal_m3 == (pytest.approx(enough[0]) if enough else None)


def test_next_size_settles_below_the_limit() -> None:
    for path in SYSTEMS:
        made = check(path.read_text(encoding="utf-8"))
        for each in sheets(made, list(made.heaters)):
            limits = [step for step in each.sections[0].steps if step.symbol == "p_limit"]
            if each.outcome.settled_pa is not None:
                assert each.outcome.settled_pa <= limits[0].value - 101325.0 + 1.0


def test_next_size_holds_the_reserve_besides_the_expansion() -> None:
    text = closed(
        "kind: boiler, volume: 1000 L, setpoint: 80 degC, sizing: en-12828, relief: {pressure: 3 bar}", "1 bar"
    )
    least = only(text, "en-12828").outcome.tank_m3
    assert least is not None
    just = only(text.replace("units", f"tank_sizes: [{least!r} m3]\nunits"), "en-12828").outcome
    assert just.settled_pa == pytest.approx(2.5 * BAR)  # half a bar below the relief valve


@pytest.mark.parametrize("path", SYSTEMS, ids=lambda path: path.stem)
def test_sheet_agrees_with_the_report(path: Path) -> None:
    made = check(path.read_text(encoding="utf-8"))
    for heater, each in zip(made.heaters, sheets(made, list(made.heaters)), strict=True):
        if heater.need is not None:
            wanted = heater.need.asked_m3 or heater.need.tank_m3
            assert (each.outcome.tank_m3, each.outcome.nominal_m3) == (wanted, heater.need.nominal_m3)
            assert each.outcome.at == heater.need.at
        if each.at_hand is not None and heater.verdict is not Verdict.OPEN:
            assert each.at_hand.short_m3 == pytest.approx(heater.short_m3, abs=1e-12)
            assert each.at_hand.settled_pa == pytest.approx(heater.settled_pa)
            assert set(each.at_hand.heaters) == {heater.name, *heater.shares_with}


@pytest.mark.parametrize("method", METHODS)
def test_every_method_has_an_answer_or_a_reason_for_every_heater(method: str) -> None:
    for path in SYSTEMS:
        made = check(path.read_text(encoding="utf-8"))
        for each in sheets(made, list(made.heaters), method=method):
            assert (each.outcome.tank_m3 is None) == bool(each.outcome.refusal)
            assert each.method.name == method


def test_two_heaters_at_two_temperatures_add_their_tanks() -> None:
    text = closed(
        "kind: storage_heater, volume: 100 L, setpoint: 60 degC, relief: {pressure: 6 bar}",
        more="  other: {kind: storage_heater, volume: 50 L, setpoint: 80 degC, relief: {pressure: 6 bar}}\n  t: tee\n",
        runs="  - t -> other\n",
    ).replace("cv -> heater", "cv -> t -> heater")
    both = only(text)
    alone = [
        only(closed(f"kind: storage_heater, volume: {volume} L, setpoint: {hot} degC, relief: {{pressure: 6 bar}}"))
        for volume, hot in ((100, 60), (50, 80))
    ]
    assert both.outcome.tank_m3 == pytest.approx(sum(one.outcome.tank_m3 or 0.0 for one in alone))
    assert [item.symbol for item in both.inputs] == ["T_1", "T_2", "T_1", "T_2"]


# One building in two systems of units.

US = """\
plumbnet: 1
units: us
tank_sizes: [2 gal, 3 gal, 5 gal]
parts:
  street: {kind: main, pressure: 60, temperature: 50}
  cv: check_valve
  split: {kind: tee, elevation: 6}
  heater: {kind: storage_heater, volume: 50, setpoint: 140, relief: {pressure: 150}}
  tank: {kind: expansion_tank, volume: 2, precharge: 55, elevation: 6}
  far: tee
  pump: circulator
  tap: {kind: fixture, elevation: 12}
runs:
  - street -> cv -> split -> heater
  - split -> tank
  - {path: heater -> far -> tap.hot, pipe: copper-L 3/4 in, length: 40}
  - {path: far -> pump -> heater.return, pipe: copper-L 1/2 in, length: 40}
"""
FEET = 0.3048
METRIC = (
    US.replace("units: us", "units: metric")
    .replace("pressure: 60, temperature: 50", f"pressure: {60 * PSI / 1000!r}, temperature: 10")
    .replace("volume: 50, setpoint: 140", f"volume: {50 * GALLON * 1000!r}, setpoint: 60")
    .replace("pressure: 150", f"pressure: {150 * PSI / 1000!r}")
    .replace("volume: 2, precharge: 55", f"volume: {2 * GALLON * 1000!r}, precharge: {55 * PSI / 1000!r}")
    .replace("elevation: 6", f"elevation: {6 * FEET!r}")
    .replace("elevation: 12", f"elevation: {12 * FEET!r}")
    .replace("length: 40", f"length: {40 * FEET!r}")
)


@pytest.mark.parametrize("method", METHODS)
def test_two_systems_of_units_give_one_result(method: str) -> None:
    us, metric = only(US, method), only(METRIC, method)
    assert us.verdict is metric.verdict is Verdict.TRAPPED
    for one, other in zip(us.sections, metric.sections, strict=True):
        assert [item.symbol for item in one.items] == [item.symbol for item in other.items]
        for step, same in zip(one.steps, other.steps, strict=True):
            assert step.formula == same.formula
            assert step.value == pytest.approx(same.value, rel=1e-9, abs=1e-12)
    assert us.outcome.tank_m3 == pytest.approx(metric.outcome.tank_m3, rel=1e-9)
    assert us.outcome.nominal_m3 == metric.outcome.nominal_m3


def test_table_of_sizes_is_that_of_the_files_units() -> None:
    assert only(US.replace("tank_sizes: [2 gal, 3 gal, 5 gal]\n", "")).outcome.nominal_m3 in nominal_sizes("us")
    assert only(METRIC.replace("tank_sizes: [2 gal, 3 gal, 5 gal]\n", "")).outcome.nominal_m3 in nominal_sizes("metric")


def test_unknown_method_is_a_broken_promise() -> None:
    with pytest.raises(KeyError):
        only(US, "guess")


def test_cold_temperature_is_that_of_a_supply_that_reaches_the_heater() -> None:
    # The loop is filled from the street and shut: two waters at 10 degC.
    text = """
        plumbnet: 1
        units: metric
        parts:
          street: {kind: main, pressure: 3 bar}
          tee: tee
          cv: check_valve
          heater: {kind: storage_heater, volume: 100 L, setpoint: 60 degC}
          loop: {kind: filling_loop, fill: 1 bar}
          boiler: {kind: boiler, volume: 50 L, setpoint: 70 degC}
        runs: [street -> tee -> cv -> heater, tee -> loop -> boiler]
    """
    made = check(text)
    origins = {one.name: sheet(made, one).inputs[0].origin for one in made.heaters}
    assert origins["heater"].startswith("street, ")
    assert origins["boiler"].startswith("loop, ")


def test_cold_temperature_of_water_that_no_supply_reaches_is_the_usual_one() -> None:
    made = check(
        "plumbnet: 1\nparts: {street: {kind: main, pressure: 60 psi}, tap: fixture, "
        "heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF}, tap2: fixture}\n"
        "runs: [street -> tap.cold, heater -> tap2.hot]\n"
    )
    assert sheet(made, made.heaters[0]).inputs[0].origin.startswith("default: no supply reaches it")


def test_sheet_below_a_plugged_relief_valve_has_the_limit_of_its_set() -> None:
    sound = closed("kind: storage_heater, volume: 200 L, setpoint: 60 degC, relief: {pressure: 7 bar}")
    plugged = sound.replace("runs:", "scenarios:\n  p: {change: [{fail: {part: heater/relief, how: plugged}}]}\nruns:")
    made = plumbnet.whatif(plumbnet.check(plumbnet.read_bytes(plugged.encode())), scenario="p").after
    bounds = [
        next(
            step.value
            for section in sheet(one, one.heaters[0]).sections
            for step in section.steps
            if step.symbol == "p_limit"
        )
        for one in (check(sound), made)
    ]
    assert bounds[0] == bounds[1]


def test_who_chose_the_method_is_told_by_its_own_line() -> None:
    text = """plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  heater:
    kind: storage_heater
    volume: 50 gal
    setpoint: 140 degF
    sizing: uk-4-percent
runs:
  - street -> cv -> heater
"""
    assert only(text).method.chosen == "line 9 of house.yaml"
    assert only(text, "membrane").method.chosen == "asked for"


def test_next_size_is_told_with_every_number_of_its_formula() -> None:
    text = """plumbnet: 1
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs:
  - street -> cv -> heater -> tap.hot
"""
    (section,) = (one for one in only(text).sections if one.title == "With the next size up")
    assert [set(step.numbers) for step in section.steps] == [{"p_0", "p_1", "V_n", "V_w"}, {"p_settled", "p_atm"}]


def test_tank_by_a_method_asked_for_has_its_next_size_too() -> None:
    """Four hundredths of 50 gal are 2 gal, of a gas pressed from 60 to 135 psi: 3.99 gal, and the next size is 5."""
    text = """plumbnet: 1
units: us
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  heater: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
runs:
  - street -> cv -> heater
"""
    outcome = only(text, "uk-4-percent").outcome
    assert outcome.tank_m3 is not None
    share = 1.0 - (60 * PSI + 101325.0) / (135 * PSI + 101325.0)
    assert outcome.tank_m3 / GALLON == pytest.approx(0.04 * 50 / share, rel=1e-6)
    assert outcome.nominal_m3 == pytest.approx(5 * GALLON)
