"""Run alone where a profile that comes with the program is refused: what is wrong with it is told once."""

import pytest
from conftest import refused_profiles


def test_every_profile_can_be_read_and_has_a_clause_for_every_finding() -> None:
    if refused := refused_profiles():
        pytest.fail(refused, pytrace=False)
