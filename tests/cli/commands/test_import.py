"""The command `import`."""

from pathlib import Path

from running import Write, run

PARTS = "name,kind,pressure\nstreet,main,60 psi\ntap,fixture,\n"
PIPES = "from,to,length\nstreet,tap.cold,10 ft\n"


def test_layout_is_written_and_can_be_checked(write: Write) -> None:
    write("parts.csv", PARTS)
    write("pipes.csv", PIPES)
    result = run("import", "parts.csv", "pipes.csv", "-o", "house.yaml")
    assert (result.output, result.exit_code) == ("", 0)
    assert run("check", "house.yaml").exit_code == 0
    again = run("import", "parts.csv", "pipes.csv", "-o", "house.yaml")
    assert (again.output, again.exit_code) == ("house.yaml is there already; with --force it is written over\n", 2)
    assert run("import", "parts.csv", "pipes.csv", "-o", "house.yaml", "--force").exit_code == 0


def test_table_is_never_written_over(write: Write) -> None:
    write("parts.csv", PARTS)
    write("pipes.csv", PIPES)
    result = run("import", "parts.csv", "pipes.csv", "-o", "pipes.csv", "--force")
    assert result.output.startswith("pipes.csv is the file that was read, and stays as it is")
    assert run("import", "parts.csv", "pipes.csv", "-o", "pipes.csv").output == result.output  # no advice to force it
    assert Path("pipes.csv").read_text(encoding="utf-8") == PIPES


def test_every_mistake_has_a_line_and_nothing_is_written(write: Write) -> None:
    write("parts.csv", PARTS.replace("fixture", "fixtrue"))
    write("pipes.csv", PIPES.replace("street", "stret"))
    result = run("import", "parts.csv", "pipes.csv", "-o", "house.yaml")
    assert result.output == (
        'parts.csv, row 3, column kind: unknown kind "fixtrue": did you mean "fixture"?\n'
        'pipes.csv, row 2, column from: "stret" is in no row of parts.csv: did you mean "street"?\n'
    )
    assert result.exit_code == 2
    assert not Path("house.yaml").exists()


def test_table_that_cannot_be_read_is_one_sentence(write: Write) -> None:
    write("pipes.csv", "")
    assert run("import", "pipes.csv", "-o", "x.yaml").output == (
        "pipes.csv: this table is empty; its first row names the columns\n"
    )
    assert run("import", "none.csv", "-o", "x.yaml").output == "none.csv: no such file or directory\n"
