"""The top-level fields of a layout."""

import pytest
from pydantic import ValidationError

from plumbnet.layout.file.document import FORMAT, Document, RunWithPipe


def document(**fields: object) -> Document:
    written = {"plumbnet": FORMAT, "parts": {}, "runs": [], **fields}
    return Document.model_validate(written, context={"units": fields.get("units", "us")})


def test_fields_are_those_of_the_format() -> None:
    names = ["plumbnet", "title", "units", "rules", "job", "tank_sizes", "parts", "runs"]
    names += ["assemblies", "change", "scenarios", "accept"]
    assert [field.alias for field in Document.model_fields.values()] == names


def test_what_is_left_out_is_empty_and_us() -> None:
    bare = document()
    assert (bare.title, bare.units, bare.rules, bare.tank_sizes, bare.scenarios) == ("", "us", None, (), {})


def test_tank_sizes_are_read_in_the_units_of_the_file() -> None:
    assert document(tank_sizes=[8, "2 gal"], units="metric").tank_sizes == pytest.approx((0.008, 0.00757082))


def test_run_with_a_pipe_is_read_in_the_units_of_the_file() -> None:
    run = RunWithPipe.model_validate({"path": "a -> b", "length": 10}, context={"units": "metric"})
    assert (run.length_m, run.volume_m3, run.pipe) == (10.0, None, None)


@pytest.mark.parametrize("wrong", [{"plumbnet": 2}, {"units": "imperial"}, {"rules": 5}, {"title": None}, {"x": 1}])
def test_wrong_fields_are_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        document(**wrong)
