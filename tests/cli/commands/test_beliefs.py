"""The command `beliefs`."""

import pytest
from running import run

from plumbnet.study.beliefs.belief_file import belief_layout, known_beliefs


def test_beliefs_are_listed_and_each_is_told_as_its_layout() -> None:
    assert run("beliefs").stdout.count("\n") > len(known_beliefs())
    assert run("beliefs", "meter-is-no-valve").stdout == belief_layout("meter-is-no-valve").decode()


@pytest.mark.parametrize(("name", "told"), [("meter-is-valve", ': did you mean "meter-is-no-valve"?'), ("x", "; the")])
def test_belief_there_is_not_is_refused_in_a_sentence(name: str, told: str) -> None:
    result = run("beliefs", name)
    assert result.exit_code == 2
    assert f'no belief is called "{name}"{told}' in result.output
