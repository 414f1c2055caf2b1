"""What all declarations have in common."""

import pytest
from pydantic import ValidationError

from plumbnet.layout.model.base_model import Declared, file_name_of, said_of


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


class RoofDrain(Drain):
    """A drain on a roof."""

    basket: bool
    """Whether leaves are
    held back."""
    heated: bool = False


class HeatedDrain(RoofDrain):
    """A drain of which nothing is said where it says nothing itself."""

    width_m: float = 0.2


def test_docstring_of_a_field_describes_it() -> None:
    assert said_of(Drain) == {"width_m": "How wide it is."}
    assert said_of(RoofDrain) == {"width_m": "How wide it is.", "basket": "Whether leaves are\nheld back."}
    assert said_of(HeatedDrain) == {"basket": "Whether leaves are\nheld back."}


def test_schema_describes_each_field() -> None:
    properties = RoofDrain.model_json_schema()["properties"]
    assert properties["width"]["description"] == "How wide it is."
    assert properties["basket"]["description"] == "Whether leaves are\nheld back."
    assert "description" not in properties["heated"]


def test_name_with_a_unit_is_unknown_in_the_file() -> None:
    with pytest.raises(ValidationError):
        Drain.model_validate({"width_m": 0.2})
    assert Drain.model_validate({"width": 0.2}).width_m == 0.2


def test_text_is_no_number() -> None:
    with pytest.raises(ValidationError):
        Drain.model_validate({"width": "0.2"})
