"""Who accepts, in words; tests/rules/test_silencing.py holds what comes of it."""

from plumbnet.rules.acceptors import Acceptor, MayAccept


def test_applicant_is_told_before_the_inspector() -> None:
    assert [by.value for by in Acceptor] == ["applicant", "inspector"]
    assert {may.value for may in MayAccept} == {"anybody", "inspector", "nobody"}
