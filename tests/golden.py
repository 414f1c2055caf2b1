"""Writes anew what is shown: systems/ with its buildings, tests/golden/*.out, tests/sheets/*.md, README.md.

With names, as `python tests/golden.py trace survey`, only those of tests/golden/. Read the diff; look at them.
"""

import os
import re
import sys
from pathlib import Path

from every_command import app
from shown import as_kept, as_run
from typer.testing import CliRunner

ROOT = Path(__file__).parent.parent


def output(*arguments: str) -> str:
    """What a command prints, as it is kept."""
    return as_kept(CliRunner().invoke(app, list(arguments)).output)


def write_systems() -> None:
    """The report on each showcase layout."""
    for layout in sorted(Path("systems").rglob("*.yaml")):
        layout.with_suffix(".out").write_text(output("check", str(layout)), encoding="utf-8")


def write_records(names: list[str]) -> None:
    """What the commands in tests/golden/ print, of all records or those named."""
    for record in sorted((ROOT / "tests" / "golden").glob("*.out")):
        if not names or record.stem in names:
            record.write_text(as_run(record.read_text(encoding="utf-8")), encoding="utf-8")


def write_sheets() -> None:
    """The calculation sheets, each as from its own folder."""
    for layout in sorted((ROOT / "tests" / "sheets").glob("*.yaml")):
        os.chdir(layout.parent)
        sheet = output("size", layout.name, "--format", "markdown")
        layout.with_suffix(".md").write_text(sheet, encoding="utf-8")
    os.chdir(ROOT)


def write_readme() -> None:
    """The outputs of the README's example."""
    readme = ROOT / "README.md"
    text = readme.read_text(encoding="utf-8")
    example = re.search(r"```yaml\n(.*?)```", text, re.DOTALL)
    if example is None:
        raise SystemExit("README.md has no example")
    house = Path("house.yaml")
    house.write_text(example[1], encoding="utf-8")
    shown = iter([output("check", "house.yaml"), output("trace", "house.yaml")])
    house.unlink()
    readme.write_text(
        re.sub(r"```text\n.*?```", lambda _: f"```text\n{next(shown)}```", text, flags=re.DOTALL), encoding="utf-8"
    )


def write_pictures() -> None:
    """The pictures of the README."""
    output("draw", "systems/school-shared-tanks.yaml", "-o", "systems/school-shared-tanks.png")
    output("chart", "systems/bakery-tank-right.yaml", "--of", "ladder", "-o", "systems/bakery-tank-right.ladder.png")


if __name__ == "__main__":
    os.chdir(ROOT)
    write_records(sys.argv[1:])
    if not sys.argv[1:]:
        write_systems()
        write_sheets()
        write_readme()
        write_pictures()
