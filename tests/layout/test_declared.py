"""What all declarations have in common."""

import pytest
from pydantic import ValidationError

from plumbnet.layout.declared import Declared, file_name_of


class Drain(Declared):
    """A drain."""

    width_m: float = 0.1
    """How wide it is."""


@pytest.mark.parametrize(
    ("name", "in_file"),
    [
        ("volume_m3", "volume"),
        ("precharge_pa", "precharge"),
        ("cut_in_pa", "cut_in"),
        ("setpoint_k", "setpoint"),
        ("input_w", "input"),
        ("elevation_m", "elevation"),
        ("draw_m3_s", "draw"),
        ("state", "state"),
        ("form", "form"),
    ],
)
def test_name_in_the_file_is_the_name_in_code_without_its_unit(name: str, in_file: str) -> None:
    assert file_name_of(name) == in_file


def test_docstring_of_a_field_describes_it() -> None:
    assert Drain.model_fields["width_m"].description == "How wide it is."


def test_name_with_a_unit_is_unknown_in_the_file() -> None:
    with pytest.raises(ValidationError):
        Drain.model_validate({"width_m": 0.2})
    assert Drain.model_validate({"width": 0.2}).width_m == 0.2


def test_text_is_no_number() -> None:
    with pytest.raises(ValidationError):
        Drain.model_validate({"width": "0.2"})
