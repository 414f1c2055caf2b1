"""What other programs call."""

import gc
import importlib
import inspect
import re
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import pytest
from conftest import layout

import plumbnet
from plumbnet.api import as_report
from plumbnet.layout.presentation import MAKERS
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.rule_profile import UnknownProfile

HOUSE = layout("street -> cv -> heater -> tap.hot")


def test_layout_is_read_from_a_path_or_from_bytes(tmp_path: Path) -> None:
    file = tmp_path / "house.yaml"
    file.write_text(HOUSE, encoding="utf-8")
    from_file, from_bytes = plumbnet.read(file), plumbnet.read_bytes(HOUSE.encode(), file="house.yaml")
    assert from_file.parts == from_bytes.parts
    assert from_file.record.sha256 == from_bytes.record.sha256
    assert (from_file.record.file, from_bytes.record.file) == (str(file), "house.yaml")
    assert plumbnet.read(str(file)) == from_file


def test_file_that_is_not_there_is_an_error_of_the_system(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        plumbnet.read(tmp_path / "none.yaml")


def test_faulty_layout_names_the_file_it_is_given() -> None:
    with pytest.raises(LayoutError, match=r"^layout: there is nothing in this file$"):
        plumbnet.read_bytes(b"")
    with pytest.raises(LayoutError, match=r"^bakery: there is nothing in this file$"):
        plumbnet.read_bytes(b"", file="bakery")


def test_general_practice_holds_where_no_rules_are_named() -> None:
    assert plumbnet.check(plumbnet.read_bytes(HOUSE.encode())).profile.profile == "general"


def test_rules_named_in_the_call_go_before_those_of_the_file() -> None:
    system = plumbnet.read_bytes(HOUSE.replace("units", "rules: nowhere\nunits").encode())
    assert plumbnet.check(system, rules="general").profile.profile == "general"


def test_unknown_rules_in_the_call_are_an_unknown_profile() -> None:
    with pytest.raises(UnknownProfile, match='no rule profile is called "genral": did you mean "general"'):
        plumbnet.check(plumbnet.read_bytes(HOUSE.encode()), rules="genral")


def test_unknown_rules_in_the_file_are_a_fault_at_their_place() -> None:
    text = "plumbnet: 1\nrules: genral\nparts: {m: {kind: main, pressure: 60}, t: tee}\nruns: [m -> t]\n"
    with pytest.raises(LayoutError) as caught:
        plumbnet.check(plumbnet.read_bytes(text.encode(), file="f.yaml"))
    assert str(caught.value) == (
        'f.yaml:2:8: no rule profile is called "genral": did you mean "general"?\n'
        "  2 | rules: genral\n"
        "    |        ^~~~~~"
    )


def test_sentences_of_a_report_take_the_units_of_the_file_or_of_the_call() -> None:
    system = plumbnet.read_bytes(HOUSE.encode())
    assert plumbnet.check(system).facts.units == "us"
    assert plumbnet.check(system, units="metric").facts.units == "metric"


def test_layout_is_checked_from_a_path_from_bytes_or_as_it_was_read(tmp_path: Path) -> None:
    file = tmp_path / "house.yaml"
    file.write_text(HOUSE, encoding="utf-8")
    read = plumbnet.check(plumbnet.read(file))
    assert plumbnet.check(file) == plumbnet.check(str(file)) == read
    given = plumbnet.check(HOUSE.encode())
    assert (given.heaters, given.system.record.file) == (read.heaters, "layout")
    with pytest.raises(LayoutError, match=r"^layout: there is nothing in this file$"):
        plumbnet.check(b"")
    with pytest.raises(FileNotFoundError):
        plumbnet.check(tmp_path / "none.yaml")


def test_report_stays_as_it_is_where_a_layout_would_do() -> None:
    report = plumbnet.check(HOUSE.encode(), rules="ipc-2021")
    assert as_report(report, units="metric") is report
    assert as_report(report.system, units="metric").facts.units == "metric"


NEEDED = {"System", "Report", "Change", "Profile", "LayoutError", "ChangeError", "UnknownProfile", "__version__"}
ASKED = {
    "read",
    "check",
    "whatif",
    "sweep",
    "remedies",
    "size",
    "warmup",
    "trace",
    "compare",
    "draw",
    "chart",
    "margins",
}


def test_names_of_the_package_are_those_it_offers() -> None:
    assert set(plumbnet.__all__) >= NEEDED | ASKED
    assert set(plumbnet.__all__) <= set(dir(plumbnet))
    assert plumbnet.__version__ == version("plumbnet")
    with pytest.raises(AttributeError, match=r"^module 'plumbnet' has no attribute 'wahtif'$"):
        _ = plumbnet.wahtif


@pytest.mark.parametrize("name", sorted(set(plumbnet.__all__) - {"__version__"}))
def test_what_is_offered_says_what_it_is_for(name: str) -> None:
    offered = getattr(plumbnet, name)
    assert offered.__name__ == name
    assert inspect.getdoc(offered)


@pytest.mark.parametrize("name", sorted(ASKED))
def test_function_says_what_it_raises_and_shows_an_example(name: str) -> None:
    said = inspect.getdoc(getattr(plumbnet, name)) or ""
    assert ">>> " in said
    assert re.search(r"\braises?\b", said, re.IGNORECASE)


def test_package_is_light_until_it_is_asked() -> None:
    script = (
        "import sys, plumbnet\n"
        "dir(plumbnet), plumbnet.__version__, plumbnet.LayoutError\n"
        "assert not {'numpy', 'scipy', 'pydantic', 'networkx', 'matplotlib'} & sys.modules.keys()\n"
        "plumbnet.trace('systems/open-house.yaml')\n"
        "assert 'matplotlib' not in sys.modules\n"
    )
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0  # noqa: S603  # this file's text


@pytest.mark.parametrize("at_work", [True, False])
def test_collector_is_left_as_it_was_found(*, at_work: bool) -> None:
    before = gc.isenabled()
    try:
        (gc.enable if at_work else gc.disable)()
        plumbnet.check(plumbnet.read_bytes(HOUSE.encode()))
        assert gc.isenabled() is at_work
        with pytest.raises(LayoutError):
            plumbnet.read_bytes(b"")
        assert gc.isenabled() is at_work
    finally:
        (gc.enable if before else gc.disable)()


@pytest.mark.parametrize(
    ("form", "maker"), sorted((form, maker) for form, maker in MAKERS.items() if maker[0].startswith("plumbnet."))
)
def test_every_form_in_which_something_shows_itself_has_its_maker(
    form: tuple[str, str], maker: tuple[str, str]
) -> None:
    module, function = maker
    assert callable(getattr(importlib.import_module(module), function)), form
