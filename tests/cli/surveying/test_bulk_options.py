import pytest
import typer

from plumbnet.cli.surveying.bulk_options import supposed_of
from plumbnet.study.whatif.bulk_changes import FitEach, SetEach, Supposed


def test_values_are_set_before_parts_are_fitted_and_all_of_a_kind_at_once() -> None:
    each = ["check_valve.kind=pressure_reducer", "meter.check=true", "check_valve.set=50 psi"]
    assert supposed_of("repair", each, ["main=check_valve"]) == Supposed(
        "repair",
        (
            SetEach("check_valve", {"kind": "pressure_reducer", "set": "50 psi"}),
            SetEach("meter", {"check": True}),
            FitEach("main", "check_valve", {}),
        ),
    )


def test_value_left_out_is_the_usual_one() -> None:
    assert supposed_of(None, ["meter.check="], None) == Supposed(None, (SetEach("meter", {"check": None}),))


def test_fitted_part_may_have_fields() -> None:
    (done,) = supposed_of(None, None, ["main = {kind: pressure_reducer, set: 50 psi}"]).to_each
    assert done == FitEach("main", "pressure_reducer", {"set": "50 psi"})


def test_nothing_given_supposes_nothing() -> None:
    assert not supposed_of(None, None, None)


SET = "write it as kind.field=value, for example meter.check=true"
FIT = 'write it as kind=kind, for example main=check_valve or "main={kind: pressure_reducer, set: 50 psi}"'


@pytest.mark.parametrize(
    ("each", "behind", "said"),
    [
        (["meter"], [], f"--each meter: {SET}\n"),
        (["check=true"], [], f"--each check=true: {SET}\n"),
        (["meter.check=[1"], [], "--each meter.check=[1: "),
        (["meter.chek=true"], [], '--each meter: a meter has no field "chek": did you mean "check"?\n'),
        ([], ["main"], f"--behind main: {FIT}\n"),
        ([], ["main=[check_valve]"], f"--behind main=[check_valve]: {FIT}\n"),
        ([], ["main={set: 50 psi}"], f"--behind main={{set: 50 psi}}: {FIT}\n"),
        ([], ["main={kind: vent}"], "--behind main: a vent cannot stand in a pipe"),
    ],
)
def test_what_can_be_done_in_no_layout_is_told(
    capsys: pytest.CaptureFixture[str], each: list[str], behind: list[str], said: str
) -> None:
    with pytest.raises(typer.Exit) as ended:
        supposed_of(None, each, behind)
    assert ended.value.exit_code == 2
    assert capsys.readouterr().err.startswith(said)


def test_all_that_is_wrong_is_told_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit):
        supposed_of(None, ["metre.check=true", "valve.state=ajar"], ["mian=meter"])
    metre, valve, mian = capsys.readouterr().err.splitlines()
    assert metre.startswith("--each metre: ")
    assert metre.endswith('"meter"?')
    assert valve.startswith("--each valve: state: ")
    assert valve.endswith(', not "ajar"')
    assert mian.startswith("--behind mian: ")
    assert mian.endswith('"main"?')
