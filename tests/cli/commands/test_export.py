"""The command `export`."""

from pathlib import Path

from running import Write, run

HOUSE = """\
plumbnet: 1
parts: {street: {kind: main, pressure: 60 psi}, tap: fixture}
runs: [{path: street -> tap.cold, length: 10 ft}]
"""


def test_tables_are_written_and_make_the_layout_again(write: Write) -> None:
    write("house.yaml", HOUSE)
    result = run("export", "house.yaml", "-o", "tables")
    assert (result.output, result.exit_code) == ("", 0)
    names = [f"tables/{name}.csv" for name in ("parts", "pipes", "layout", "tanks")]
    result = run("import", *names, "-o", "again.yaml")
    assert result.output == "tanks.csv is a schedule made of the parts, and is not read.\n"
    assert "street: {kind: main, pressure: 60 psi}" in Path("again.yaml").read_text(encoding="utf-8")


def test_tables_that_are_there_are_written_over_with_force_only(write: Write) -> None:
    write("house.yaml", HOUSE)
    assert run("export", "house.yaml", "-o", "tables").exit_code == 0
    result = run("export", "house.yaml", "-o", "tables")
    assert result.output == f"{Path('tables/parts.csv')} is there already; with --force it is written over\n"
    assert run("export", "house.yaml", "-o", "tables", "--force", "--semicolons").exit_code == 0
    assert b"street;tap.cold;;10 ft" in Path("tables/pipes.csv").read_bytes()


def test_template_is_written_without_a_layout_and_either_is_asked_for(write: Write) -> None:
    write("house.yaml", HOUSE)
    assert run("export", "--template", "-o", "empty").exit_code == 0
    assert sorted(path.name for path in Path("empty").iterdir()) == ["layout.csv", "parts.csv", "pipes.csv"]
    for words in (["house.yaml", "--template"], []):
        result = run("export", *words, "-o", "x")
        assert (result.output, result.exit_code) == ("name a layout, or say --template for empty tables\n", 2)


def test_folder_that_cannot_be_made_and_layout_that_cannot_be_read_are_one_sentence(write: Write) -> None:
    write("house.yaml", HOUSE)
    assert (
        run("export", "house.yaml", "-o", "no/such").output == "no/such cannot be written: no such file or directory\n"
    )
    assert run("export", "none.yaml", "-o", "x").output == "none.yaml: no such file or directory\n"
