from running import run


def test_kinds_are_listed_or_told_one_by_one() -> None:
    assert "check_valve" in run("kinds").stdout
    assert run("kinds", "meter").stdout.startswith("meter\n\nA water meter.")
    result = run("kinds", "metre")
    assert (result.exit_code, result.stderr) == (2, 'unknown kind "metre": did you mean "meter"?\n')
    assert run("kinds", "xyz").stderr == 'unknown kind "xyz"; the command plumbnet kinds lists them all\n'
