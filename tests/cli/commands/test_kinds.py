from running import run


def test_kinds_are_listed_or_told_one_by_one() -> None:
    assert "check_valve" in run("kinds").stdout
    assert run("kinds", "meter").stdout.startswith("meter\n\nA water meter.")
    result = run("kinds", "metre")
    assert (result.exit_code, result.stdout) == (2, "")
    assert 'did you mean "meter"?' in result.stderr
    assert run("kinds", "xyz").stderr.startswith('unknown kind "xyz"; ')
