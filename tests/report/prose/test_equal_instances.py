"""Equal findings of instances, told together."""

from pathlib import Path

import pytest
from every_command import app
from typer.testing import CliRunner

import plumbnet
from plumbnet.report.prose.equal_instances import equal_findings, instances_in_short

TERRACE = Path(__file__).parents[3] / "systems" / "buildings" / "coopers-terrace.yaml"


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ("h/1 h/2 h/4 h/5 h/6", "h/1, 2, 4-6"),
        ("h/3", "h/3"),
        ("h/1 h/2 h/3 h/4 h/5 h/6 h/7 h/8", "h/1-8"),
        ("flat w/a/r/2 w/b/r/1", "flat; w/a/r/2; w/b/r/1"),
        ("a b c d e f", "a; b; c; d; and 2 more groups"),
    ],
)
def test_names_are_put_together_by_their_place_in_the_file(names: str, told: str) -> None:
    groups = {"h": [*"12345678"], "w/a/r": [*"12"], "w/b/r": [*"12"]}
    assert instances_in_short(names.split(), groups) == told


def test_lost_tanks_of_eight_houses_are_one_finding_in_words(tmp_path: Path) -> None:
    worn = tmp_path / "worn.yaml"
    lost = (
        "\n  - set: {part: houses/1-2/tank, state: waterlogged}\n  - set: {part: houses/4-6/tank, state: waterlogged}"
    )
    text = TERRACE.read_text(encoding="utf-8")
    worn.write_text(text.replace("change:", f"change:{lost}", 1), encoding="utf-8")
    told = CliRunner().invoke(app, ["check", str(worn)]).output
    assert "    houses/1, 2, 4-6: tank has lost its air; it is full of water and takes no more." in told
    assert told.count("has lost its air") == 1


def test_findings_that_differ_are_told_apart() -> None:
    system = plumbnet.read(TERRACE)
    worn = system.with_changes(system.changes_of("tanks-worn-out"))
    found = plumbnet.check(worn).findings
    together = equal_findings(found, worn)
    assert sum(len(each.findings) for each in together) == len(found)
    lost = [each for each in together if each.findings[0].name == "tank-waterlogged"]
    assert [each.instances for each in lost] == ["houses/1-8"]
    apart = equal_findings(found, worn, [one for one in found if one.name == "tank-waterlogged"])
    assert sum(each.findings[0].name == "tank-waterlogged" for each in apart) == 8
