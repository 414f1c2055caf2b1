from difflib import ndiff
from pathlib import Path

import pytest
from running import run

import plumbnet


def test_command_prints_all_or_those_of_one_heater() -> None:
    result = run("remedies", "systems/two-heaters-own-checks.yaml", "heater-b")
    assert result.exit_code == 1
    assert "heater-b: TRAPPED" in result.output
    assert "heater-a: TRAPPED" not in result.output
    fine = run("remedies", "systems/open-house.yaml")
    assert fine.exit_code == 0
    assert "No heater here needs a remedy." in fine.output


def test_command_refuses_a_heater_that_is_not_there() -> None:
    result = run("remedies", "systems/open-house.yaml", "heeter")
    assert result.exit_code == 2
    assert 'did you mean "heater"?' in result.output


@pytest.mark.parametrize(
    "name", ["house-with-check", "bakery-tank-cut-off", "bakery-tank-too-small", "british-cylinder"]
)
def test_written_remedy_is_the_layout_that_was_promised(name: str, tmp_path: Path) -> None:
    old, new = tmp_path / "old.yaml", tmp_path / "new.yaml"
    old.write_bytes(Path(f"systems/{name}.yaml").read_bytes())
    before = plumbnet.check(plumbnet.read(old))
    for heater, own in plumbnet.remedies(before).items():
        for number, remedy in enumerate(own, 1):
            run("remedies", str(old), heater, "--apply", str(number), "-o", str(new), "--force")
            after = plumbnet.check(plumbnet.read(new))
            facts = next(one for one in after.heaters if one.name == heater)
            assert (facts.verdict, facts.settled_pa) == (remedy.verdict, remedy.settled_pa)
            told = run("compare", str(old), str(new))
            assert told.exit_code == 0
            assert f"- {heater} is better: " in told.output


def test_comments_and_order_of_the_file_are_kept(tmp_path: Path) -> None:
    new = tmp_path / "new.yaml"
    result = run("remedies", "systems/house-with-check.yaml", "--apply", "1", "-o", str(new))
    assert result.exit_code == 0
    old = Path("systems/house-with-check.yaml").read_text(encoding="utf-8").splitlines()
    changed = [line for line in ndiff(old, new.read_text(encoding="utf-8").splitlines()) if line[0] in "+-"]
    assert changed == [
        "+   heater-tank: {kind: expansion_tank, volume: 5 gal, precharge: 62 psi}",
        "+   - split -> heater-tank",
    ]


def test_file_that_is_there_is_written_over_by_force_alone_and_the_file_itself_never(tmp_path: Path) -> None:
    old, new, link = tmp_path / "old.yaml", tmp_path / "new.yaml", tmp_path / "link.yaml"
    old.write_bytes(Path("systems/house-with-check.yaml").read_bytes())
    new.write_text("mine", encoding="utf-8")
    link.symlink_to(old)
    refused = run("remedies", str(old), "--apply", "1", "-o", str(new))
    assert (refused.exit_code, new.read_text(encoding="utf-8")) == (2, "mine")
    assert f"{new} is there already; with --force it is written over" in refused.output
    for same in (old, link):
        eaten = run("remedies", str(old), "--apply", "1", "-o", str(same), "--force")
        assert eaten.exit_code == 2
        assert f"{same} is the file that was read, and stays as it is; write to another name" in eaten.output
    assert old.read_bytes() == Path("systems/house-with-check.yaml").read_bytes()
    assert run("remedies", str(old), "--apply", "1", "-o", str(new), "--force").exit_code == 0
    assert new.read_text(encoding="utf-8") != "mine"


def test_number_and_file_go_together() -> None:
    for words in (["--apply", "1"], ["-o", "new.yaml"]):
        result = run("remedies", "systems/house-with-check.yaml", *words)
        assert result.exit_code == 2
        assert "--apply N and -o NEW go together; say which remedy and where to write the layout" in result.output


def test_number_that_there_is_not_is_refused(tmp_path: Path) -> None:
    result = run("remedies", "systems/house-with-check.yaml", "--apply", "9", "-o", str(tmp_path / "new.yaml"))
    assert result.exit_code == 2
    assert "there is no remedy 9 for heater; it has one remedy, number 1" in result.output
    assert not list(tmp_path.iterdir())
