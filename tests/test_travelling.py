"""What a program holds of plumbnet can be copied and sent to another process, and is the same there."""

import copy
import pickle
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

import plumbnet
from plumbnet.analysis.equilibrium.heating_range import Unanswerable
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheets
from plumbnet.analysis.warmup.heater_warmup import NoWarmUp, warm_up
from plumbnet.layout.edits.edit_draft import ChangeError
from plumbnet.layout.model.system import System
from plumbnet.layout.yaml.fault import Fault, LayoutError
from plumbnet.rules.circuit_rules import UnknownCircuit
from plumbnet.rules.rule_profile import UnknownProfile, profile, profile_names
from plumbnet.study.compare.layout_revision import revision
from plumbnet.study.whatif.what_if import UnknownScenario

SYSTEMS = Path(__file__).parents[1] / "systems"
NAMES = ("house-with-check", "tankless-alone", "school-shared-tanks", "reducer-with-bypass-main-below-limit")
READ = {name: plumbnet.read(SYSTEMS / f"{name}.yaml") for name in NAMES}
WAYS: dict[str, Callable[[object], object]] = {
    "sent": lambda thing: pickle.loads(pickle.dumps(thing)),  # noqa: S301  what we wrote ourselves
    "copied": copy.copy,
    "copied deeply": copy.deepcopy,
}


@pytest.fixture(params=NAMES)
def system(request: pytest.FixtureRequest) -> System:
    return READ[request.param]


def assert_travels(thing: object) -> None:
    for way, travelled in WAYS.items():
        there = travelled(thing)
        assert type(there) is type(thing), way
        assert there == thing, way
        assert repr(there) == repr(thing), way


def test_system_and_its_report_travel(system: System) -> None:
    assert_travels(system)
    assert_travels(plumbnet.check(system))


def test_report_that_was_sent_answers_as_before(system: System) -> None:
    report = plumbnet.check(system)
    there = pickle.loads(pickle.dumps(report))  # noqa: S301  what we wrote ourselves
    assert plumbnet.remedies(there) == plumbnet.remedies(report)
    assert list(sheets(there, list(there.heaters))) == list(sheets(report, list(report.heaters)))


@pytest.mark.parametrize("name", profile_names())
def test_profile_travels_with_its_hash(name: str) -> None:
    assert_travels(profile(name))
    for travelled in WAYS.values():
        assert getattr(travelled(profile(name)), "sha256", "") == profile(name).sha256 != ""


def test_what_ifs_and_what_differs_travel(system: System) -> None:
    report = plumbnet.check(system)
    for scenario in system.scenarios:
        made = plumbnet.whatif(report, scenario=scenario)
        assert_travels(made)
        assert_travels(made.difference)
        assert_travels(revision(system, made.after.system, units="us"))
        for change in made.changes:
            assert_travels(change)


def test_what_is_found_of_a_report_travels(system: System) -> None:
    report = plumbnet.check(system)
    assert_travels(plumbnet.remedies(report))
    assert_travels(plumbnet.sweep(report))
    assert_travels(plumbnet.margins(report))
    assert_travels(tuple(sheets(report, list(report.heaters))))


def test_warm_up_travels() -> None:
    assert_travels(warm_up(plumbnet.check(READ["house-with-check"]), "heater"))


def test_comparison_and_picture_travel() -> None:
    house = READ["house-with-check"]
    assert_travels(plumbnet.compare(house, house.with_changes([plumbnet.Change(remove="check")])))
    assert_travels(plumbnet.draw(house))


def refused(change: dict[str, object]) -> ChangeError:
    with pytest.raises(ChangeError) as caught:
        READ["house-with-check"].with_changes([plumbnet.Change.model_validate(change)])
    return caught.value


@pytest.mark.parametrize(
    "error",
    [
        LayoutError("house.yaml", [Fault(2, 1, "there is no such part", "look again")], "plumbnet: 1\nparts: {}\n"),
        refused({"close": "house-stp"}),
        refused({"insert": {"part": "c", "kind": "chek_valve", "between": ["meter", "check"]}}),
        refused({"set": {"part": "heater", "setpont": "140 degF", "volume": "4 psi"}}),
        UnknownProfile("no rule profile is called so"),
        UnknownCircuit("no circuit is called so"),
        UnknownScenario("no scenario is called so"),
        NoWarmUp("it fires only while water moves"),
        Unanswerable("heater", "it stands dry"),
    ],
    ids=str,
)
def test_error_travels_with_its_words(error: Exception) -> None:
    for way, travelled in WAYS.items():
        there = travelled(error)
        assert type(there) is type(error), way
        assert str(there) == str(error), way
        assert vars(there).keys() == vars(error).keys(), way


def test_mistakes_of_a_change_that_was_sent_know_where_they_stand() -> None:
    error = refused({"set": {"part": "heater", "setpont": "140 degF", "volume": "4 psi"}})
    there = pickle.loads(pickle.dumps(error))  # noqa: S301  what we wrote ourselves
    assert [one.path for one in there.mistakes] == [one.path for one in error.mistakes] != []


def test_system_can_be_changed_in_a_process_that_has_done_nothing_else(tmp_path: Path) -> None:
    (tmp_path / "house").write_bytes(pickle.dumps(READ["house-with-check"]))
    script = (
        "import pathlib, pickle, plumbnet\n"
        f"house = pickle.loads(pathlib.Path({str(tmp_path / 'house')!r}).read_bytes())\n"
        "part = {'part': 'new', 'kind': 'booster_pump', 'rise': '9 psi', 'between': ['meter', 'check']}\n"
        "from plumbnet.layout.model.change import Change\n"
        "print(list(house.with_changes([Change.model_validate({'insert': part})]).parts)[-1])\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)  # noqa: S603  ours
    assert (done.stdout, done.stderr) == ("new\n", "")
