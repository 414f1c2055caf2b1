"""The buildings in systems/buildings, each held against the same layout written out in plain text.

The plain texts in tests/written_out were made by another program, once; names there are joined by `--`.
"""

from functools import cache
from pathlib import Path

import pytest
from every_command import app
from shown import as_kept
from typer.testing import CliRunner

import plumbnet
from plumbnet.analysis.report import Report
from plumbnet.layout.model.system import End, System

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "systems" / "buildings"
NAMES = sorted(path.stem for path in FOLDER.glob("*.yaml"))
LINES = {
    "kingfisher-hotel": 1094,
    "weir-house": 116,
    "coopers-terrace": 91,
    "cottage-hospital": 72,
    "ropewalk-hall": 55,
}
"""Parts that each comes to, what is fixed to a part included."""
SAME = 1e-11
"""Sums over the same pipes in another order differ by less."""


@cache
def layout(name: str) -> System:
    return plumbnet.read(FOLDER / f"{name}.yaml")


@cache
def plain(name: str) -> System:
    return plumbnet.read(ROOT / "tests" / "written_out" / f"{name}.yaml")


def renamed(text: str) -> str:
    return text.replace("--", "/")


def reports(name: str) -> list[tuple[Report, Report]]:
    """The reports on both forms, as they stand and in every scenario."""
    one, other = layout(name), plain(name)
    changed = [[each.with_changes(each.changes_of(name)) for each in (one, other)] for name in one.scenarios]
    return [(plumbnet.check(first), plumbnet.check(second)) for first, second in [(one, other), *changed]]


def near(mine: float | None, theirs: float | None) -> bool:
    return mine is theirs is None or (mine is not None and mine == pytest.approx(theirs, rel=SAME))


@pytest.mark.parametrize("name", NAMES)
def test_building_has_the_parts_and_pipes_of_the_plain_text(name: str) -> None:
    one, other = layout(name), plain(name)
    assert list(one.parts) == [renamed(part) for part in other.parts]
    assert len(one.parts) == LINES[name]
    assert list(one.parts.values()) == list(other.parts.values())
    ends = [tuple(End(renamed(end.part), end.port) for end in pipe.ends) for pipe in other.pipes]
    assert sorted(pipe.ends for pipe in one.pipes) == sorted(ends)
    assert list(one.scenarios) == list(other.scenarios)


@pytest.mark.parametrize("name", NAMES)
def test_verdicts_findings_and_numbers_are_those_of_the_plain_text(name: str) -> None:
    for one, other in reports(name):
        assert [heater.name for heater in one.heaters] == [renamed(heater.name) for heater in other.heaters]
        for mine, theirs in zip(one.heaters, other.heaters, strict=True):
            assert mine.verdict is theirs.verdict
            for number in ("static_pa", "limit_pa", "heated_volume_m3", "expansion_m3", "settled_pa", "short_m3"):
                assert near(getattr(mine, number), getattr(theirs, number)), number
            assert [rung.outlet for rung in mine.ladder] == [renamed(rung.outlet) for rung in theirs.ladder]
            assert all(near(a.opens_pa, b.opens_pa) for a, b in zip(mine.ladder, theirs.ladder, strict=True))
        told, wanted = ([(found.name, renamed(found.text)) for found in each.findings] for each in (one, other))
        assert sorted(told) == sorted(wanted)


@pytest.mark.parametrize("name", NAMES)
def test_text_report_is_the_one_on_file(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """After a change of wording that is meant, `python tests/golden.py` writes it anew."""
    monkeypatch.chdir(ROOT)
    told = CliRunner().invoke(app, ["check", f"systems/buildings/{name}.yaml"])
    assert as_kept(told.stdout).encode() == (FOLDER / f"{name}.out").read_bytes()


@pytest.mark.parametrize("name", NAMES)
def test_file_opens_with_what_it_teaches_and_says_that_it_is_invented(name: str) -> None:
    lines = (FOLDER / f"{name}.yaml").read_text(encoding="utf-8").splitlines()
    comment = lines[: lines.index("plumbnet: 1")]
    assert comment[-1] == "# Lantern Falls and everything in it is invented."
    assert any(line.startswith("# Predict") for line in comment)


def test_hotel_is_said_in_a_hundred_lines() -> None:
    written = (FOLDER / "kingfisher-hotel.yaml").read_text(encoding="utf-8").splitlines()
    assert len(written) < 100
    assert sum(part.kind == "mixing_valve" for part in layout("kingfisher-hotel").parts.values()) == 200
