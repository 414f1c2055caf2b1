"""Every message of the reader, its full text with line and caret: each case is a file and the output beside it."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from telling import told_of

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.yaml.fault import LayoutError

FOLDER = Path(__file__).parent / "faults"
CASES = sorted(FOLDER.glob("*.yaml"))
LAYOUT = Path(__file__).parents[1] / "plumbnet" / "layout"

SPEAKING = (
    "assemblies/body_reader",
    "assemblies/definition_reader",
    "assemblies/differing",
    "assemblies/writing_order",
    "assemblies/joined_ports",
    "assemblies/labels",
    "assemblies/port_places",
    "assemblies/run_plan",
    "assemblies/survey",
    "edits/selection",
    "file/assembled_reader",
    "file/change_lists",
    "file/selected_acceptances",
    "file/loader",
    "file/named_rules",
    "file/scenario_reader",
    "model/runs",
    "edits/edit_draft",
    "edits/pipe_edits",
    "edits/apply",
    "model/validation_messages",
    "model/change",
    "model/acceptance",
    "model/kinds/custom",
    "model/kinds/control",
)
"""Modules that say what is wrong with a layout."""

UNSEEN = {
    "can fail in several ways": "no kind has more than one failure; test_apply.py makes one that has",
    "cannot be used here": "for a mistake that the library may report one day; test_validation_messages.py",
    "an item of a pair is missing": "never shown: the name of a mistake",
    "relieves pressure only": "no message: what is taken when left out",
    "charge lost": "no message: an event of the sweep",
    "this run has": "more pipes than a case is worth; test_loader.py",
    "write it as several": "likewise",
    "up to here the runs have": "likewise",
    "split the layout": "likewise",
    "more than ": "likewise; test_scenario_reader.py",
    " scenarios build on each other here": "likewise",
    "(?:": "no message: a regular expression",
}
"""Texts that no file can bring out, with the reason."""


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_message_is_the_one_on_file(case: Path) -> None:
    assert f"{told_of(case.read_bytes(), file=case.name)}\n" == case.with_suffix(".out").read_text(encoding="utf-8")


def test_every_case_has_its_output_and_every_output_its_case() -> None:
    assert {case.stem for case in CASES} == {out.stem for out in FOLDER.glob("*.out")}
    assert len(CASES) > 100


def sentences(module: str) -> Iterator[str]:
    """The literal pieces of every text that a module puts into a message."""
    tree = ast.parse((LAYOUT / f"{module}.py").read_text(encoding="utf-8"))
    documentation = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in documentation:
            yield from re.findall(r"[^\"]{10,}", node.value)


@pytest.mark.parametrize("module", SPEAKING)
def test_every_text_of_a_module_is_seen_in_a_case(module: str) -> None:
    seen = "".join(out.read_text(encoding="utf-8") for out in FOLDER.glob("*.out"))
    missing = {text for text in sentences(module) if " " in text.strip() and text.strip(" ;,:") not in seen}
    assert {text for text in missing if not any(known in text for known in UNSEEN)} == set()


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_message_is_one_calm_sentence(case: Path) -> None:
    for fault in told_of(case.read_bytes(), file=case.name).faults:
        assert not fault.sentence.endswith((".", "!", " ", ";", ":"))
        assert not re.search(r"\b(should|invalid|illegal|input|valid|None|dict|str|tuple|Error)\b", fault.sentence)
        assert "  " not in fault.sentence
        assert len(fault.sentence) < 200


def test_all_faults_of_a_file_come_in_one_go() -> None:
    with pytest.raises(LayoutError) as caught:
        read_system((FOLDER / "several-at-once.yaml").read_bytes(), file="several-at-once.yaml")
    assert [fault.line for fault in caught.value.faults] == [2, 4, 5, 8, 11, 14, 15, 18]
