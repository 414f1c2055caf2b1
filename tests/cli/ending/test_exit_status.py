"""The statuses are promises to those who call the program."""

from plumbnet.cli.ending import exit_status


def test_statuses_are_those_that_are_promised() -> None:
    told = {name: value for name, value in vars(exit_status).items() if name.isupper()}
    assert told == {"FINE": 0, "FOUND": 1, "NOT_UNDERSTOOD": 2, "ON_TRUST": 3, "INTERRUPTED": 130}
