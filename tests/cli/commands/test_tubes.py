from running import run


def test_tubes_are_listed_or_told_one_by_one() -> None:
    assert "copper-EN" in run("tubes").stdout
    assert run("tubes", "copper-l").stdout.startswith("copper-L\n")
    result = run("tubes", "coper-L")
    assert (result.exit_code, result.stdout) == (2, "")
    assert 'no tubes are called "coper-L": did you mean "copper-L"?' in result.stderr
    assert run("tubes", "xyz").stderr.startswith('no tubes are called "xyz"; ')
