import pytest

from plumbnet.rules import known
from plumbnet.rules.known import RESTS_ON, without_clause
from plumbnet.rules.requirement import REQUIREMENTS


def test_every_finding_is_known_with_what_it_rests_on() -> None:
    assert {name: rests_on for name, rests_on in RESTS_ON.items() if rests_on is not None} == {
        name: rule.rests_on for name, rule in REQUIREMENTS.items() if not rule.practice
    }


def test_clause_stands_behind_a_finding_by_its_name_by_its_value_or_in_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(known, "RESTS_ON", {"tank-cut-off": "", "bypass-counts": "bypass", "tag-missing": None})
    assert list(without_clause((), ())) == ["tank-cut-off", "bypass-counts"]
    assert list(without_clause(("tank-cut-off",), ("bypass",))) == []
    assert list(without_clause(("bypass-counts",), ())) == ["tank-cut-off"]
