"""The printed calculation sheet: a reader with a hand calculator gets the same answer; nothing in it is a mark."""

import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from reckoning import Printed, in_markdown, in_text
from shown import as_kept

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.analysis.sizing_sheet.sheet_model import Sheet
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.layout.units.units import Units
from plumbnet.physics.sizing.methods import METHODS
from plumbnet.report.sheets.sheet_report import sheets_markdown, sheets_text
from plumbnet.rules.facts.verdict_words import Verdict
from plumbnet.study.margins import margins_if_small

ROOT = Path(__file__).parents[3]
SYSTEMS = sorted(path.stem for path in (ROOT / "systems").glob("*.yaml"))
GOLDEN = ROOT / "tests" / "sheets"
HOSTILE = """\
plumbnet: 1
title: "[click](http://evil.example) <script>x</script> | # *b* `c` www.evil.example $x$ \\e[2J"
parts:
  street: {kind: main, pressure: 60 psi}
  cv: check_valve
  a_b__c_: {kind: storage_heater, volume: 50 gal, setpoint: 140 degF, relief: {pressure: 150 psi}}
  tap: fixture
runs: [street -> cv -> a_b__c_ -> tap.hot]
"""


@cache
def report(name: str) -> Report:
    data = (ROOT / "systems" / f"{name}.yaml").read_bytes()
    return plumbnet.check(plumbnet.read_bytes(data, file=f"systems/{name}.yaml"))


def drawn(text: str, file: str = "house.yaml") -> Report:
    return plumbnet.check(plumbnet.read_bytes(text.encode(), file=file))


def all_sheets(made: Report, method: str | None = None) -> list[Sheet]:
    return list(sheets(made, list(made.heaters), method=method))


@cache
def sheets_of(name: str, method: str | None = None) -> list[Sheet]:
    """All sheets of a showcase layout."""
    return all_sheets(report(name), method)


def assert_reckons(steps: list[Printed], mixture: tuple[str, float] | None = None) -> None:
    assert steps
    for step in steps:
        assert step.worked(mixture) == pytest.approx(float(step.result), abs=step.last_digit), step


def units_for(name: str, method: str) -> Units:
    """Of a layout every other method in the one units and the rest in the other; of the next the other way round."""
    return "metric" if (SYSTEMS.index(name) + list(METHODS).index(method)) % 2 else "us"


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("name", SYSTEMS)
def test_hand_calculator_comes_to_every_printed_result(name: str, method: str) -> None:
    made, units = sheets_of(name, method), units_for(name, method)
    text, markdown = in_text(sheets_text(made, units)), in_markdown(sheets_markdown(made, units))
    assert_reckons(text)
    assert [without_units(one) for one in text] == [without_units(one) for one in markdown]
    for written, listed in zip(text, markdown, strict=True):
        looks_up = re.search(r"v\(|v_mix\(|p_sat\(", written.formula)
        assert written.units == (listed.units if looks_up else dict.fromkeys(listed.units, ""))


def without_units(step: Printed) -> Printed:
    """A step without the units of the numbers that go into it, which text tells only where a table is entered."""
    return replace(step, units={})


@pytest.mark.parametrize("name", SYSTEMS)
def test_every_step_is_printed_once(name: str) -> None:
    made = sheets_of(name)
    steps = [step.symbol for sheet in made for section in sheet.sections for step in section.steps]
    assert [step.symbol for step in in_text(sheets_text(made, "us"))] == steps


def test_hand_calculator_comes_to_the_growth_of_a_mixture() -> None:
    text = HOSTILE.replace("setpoint: 140 degF", "setpoint: 140 degF, antifreeze: {glycol: propylene, share: 30 %}")
    made = all_sheets(drawn(text))
    steps = in_markdown(sheets_markdown(made, "us"))
    assert "v_mix(T_1)" in [step.formula for step in steps]
    assert_reckons(steps, ("propylene", 0.3))


def test_numbers_that_go_on_are_those_that_came_out() -> None:
    for name in SYSTEMS:
        for sheet in sheets_of(name):
            known: dict[str, Printed] = {}
            for step in in_text(sheets_text([sheet], "metric")):
                if step.symbol in known:  # the next section counts anew
                    known = {}
                for symbol, text in step.numbers.items():
                    if symbol in known and symbol not in {"p_0", "p_1", "p_2", "p_static", "p_settled", "V_n"}:
                        before = known[symbol]
                        digit = max(before.last_digit, 10.0 ** -len(text.partition(".")[2]))
                        assert float(text) == pytest.approx(float(before.result), abs=digit)
                known[step.symbol] = step


def gallons(cell: str) -> float:
    """A volume, or several alike, in the unit that is printed."""
    number, _, each = cell.strip().rpartition(" x ")
    return float(number or 1) * float(each.split()[0])


@pytest.mark.parametrize("name", SYSTEMS)
def test_pieces_of_heated_water_add_up(name: str) -> None:
    for sheet in sheets_of(name):
        rows = [re.split(r"(?<!\\)\|", line) for line in sheets_markdown([sheet], "us").splitlines()]
        volumes = [(row[1].strip(), gallons(row[2]), row[3]) for row in rows if len(row) == 6 and "gal" in row[2]]
        pieces = [row for row in volumes if row[1]]
        parts: list[float] = []
        for what, volume, _ in pieces:
            if what == "together":
                assert sum(parts) == pytest.approx(volume, rel=1e-8)
                parts = []
            else:
                parts.append(volume)
        assert not parts


def test_text_stays_within_a_hundred_columns_where_words_can_be_broken() -> None:
    for name in SYSTEMS:
        for line in sheets_text(sheets_of(name), "us").splitlines():
            assert len(line) <= 100 or " " not in line.strip(), line


def test_what_a_file_says_is_text_in_markdown_and_never_a_mark() -> None:
    markdown = sheets_markdown(all_sheets(drawn(HOSTILE, file="x|<b>[y](z).yaml")), "us")
    assert "<script" not in markdown.replace("\\<script", "")
    assert not re.search(r"(?<!\\)\]\(", markdown)
    assert not re.search(r"(?<!\\)<(?!br>)", markdown)
    assert "\x1b" not in markdown
    assert "www\\.evil" in markdown
    assert "http\\://evil" in markdown
    assert "a\\_b\\_\\_c\\_" in markdown
    for line in markdown.splitlines():
        if line.startswith("|"):
            assert len(re.findall(r"(?<!\\)\|", line)) in {3, 5, 7}


def test_what_a_file_says_does_not_reach_the_terminal_as_a_command() -> None:
    lines = sheets_text(all_sheets(drawn(HOSTILE)), "us").split("\n")
    assert all(line.isprintable() for line in lines)
    assert any("\\x1b[2J" in line for line in lines)


@pytest.mark.parametrize("path", sorted(GOLDEN.glob("*.yaml")), ids=lambda path: path.stem)
def test_sheet_is_the_one_on_file(path: Path) -> None:
    made = plumbnet.check(plumbnet.read_bytes(path.read_bytes(), file=path.name))
    told = as_kept(sheets_markdown(all_sheets(made), made.facts.units, margins_if_small(made)))
    assert told == path.with_suffix(".md").read_text(encoding="utf-8")


@pytest.mark.parametrize("verdict", Verdict)
def test_every_verdict_has_its_answer_and_the_caution(verdict: Verdict) -> None:
    name, heater = next((name, one) for name in SYSTEMS for one in report(name).heaters if one.verdict is verdict)
    (made,) = sheets(report(name), [heater])
    text = sheets_text([made], "us")
    assert f"is {verdict.value.upper()}: " in text
    assert "never plug, cap or remove one" in text
    assert "licensed person" in text
