"""The house rules: every module has its tests, everything public is documented, nothing points outside."""

import ast
import importlib
import importlib.metadata
import inspect
import re
from collections import Counter
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest

import plumbnet
from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.base_model import said_of
from plumbnet.layout.model.part import KINDS
from plumbnet.layout.units.tubes import tube

ROOT = Path(__file__).parents[1]
HOUSE = ROOT / "plumbnet"
MODULES = sorted(HOUSE.rglob("*.py"))
TEXTS = sorted(
    path
    for path in ROOT.rglob("*")
    if path.suffix in {".py", ".yaml", ".yml", ".md", ".toml", ".csv", ".out", ".ipynb", ".txt", ".cfg"}
    and not any(part.startswith(".") or part in {"build", "dist"} for part in path.relative_to(ROOT).parts)
)
LONGEST = 250

TESTED_ELSEWHERE = {
    "__init__": "holds no code of its own; its example is a doctest",
    "__main__": "tests/cli/test_app.py runs it",
    "physics/vessels/defaults": "numbers alone, each with its source",
    "rules/requirements/": "tests/rules/test_requirements.py runs the example of every requirement",
}
"""Modules without a test file of the same name, with the reason."""


def name_of(module: Path) -> str:
    return module.relative_to(HOUSE).with_suffix("").as_posix()


@cache
def tree_of(module: Path) -> ast.Module:
    return ast.parse(module.read_text(encoding="utf-8"))


def documentation(module: Path) -> str:
    return ast.get_docstring(tree_of(module)) or ""


def offending(offends: Callable[[Path], object]) -> list[str]:
    """Modules against a rule, by name; all of them in one test, since there are so many that tests themselves cost."""
    return [name_of(module) for module in MODULES if offends(module)]


def test_every_module_has_its_test_file() -> None:
    def lacks_tests(module: Path) -> bool:
        folders = tuple(folder for folder in TESTED_ELSEWHERE if "/" in folder)
        tests = ROOT / "tests" / module.relative_to(HOUSE).with_name(f"test_{module.name}")
        return not (module.stem in TESTED_ELSEWHERE or name_of(module).startswith(folders) or tests.is_file())

    assert offending(lacks_tests) == []


def test_exceptions_are_needed() -> None:
    names = [name_of(module) for module in MODULES]
    for known in TESTED_ELSEWHERE:
        assert any(name.endswith(known) or name.startswith(known) for name in names), known


def test_every_module_says_in_its_first_line_what_it_is_for() -> None:
    assert offending(lambda module: not documentation(module).partition("\n")[0].endswith((".", ":"))) == []


def test_long_modules_give_their_reason() -> None:
    def is_long(module: Path) -> bool:
        imports = (node for node in tree_of(module).body if isinstance(node, ast.ImportFrom))
        lines = sum((node.end_lineno or 0) - node.lineno + 1 for node in imports)
        return len(module.read_text(encoding="utf-8").splitlines()) - lines > LONGEST

    assert offending(lambda one: is_long(one) and not re.search(r"\b[Oo]ne (module|place)\b", documentation(one))) == []


def functions(module: Path) -> Iterator[ast.FunctionDef]:
    return (node for node in ast.walk(tree_of(module)) if isinstance(node, ast.FunctionDef))


def test_only_the_command_line_imports_our_modules_inside_functions() -> None:
    def imports_inside(module: Path) -> bool:
        inside = (node for each in functions(module) for node in ast.walk(each) if isinstance(node, ast.ImportFrom))
        return any((node.module or "").startswith("plumbnet") for node in inside)

    assert [name for name in offending(imports_inside) if not name.startswith("cli/")] == []


def test_no_function_is_longer_than_a_page() -> None:
    assert offending(lambda one: any((each.end_lineno or 0) - each.lineno >= 60 for each in functions(one))) == []


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_kind_is_documented_field_by_field(kind: str) -> None:
    declared = KINDS[kind]
    assert declared.__doc__
    assert inspect.cleandoc(declared.__doc__).splitlines()[0].endswith((".", ":", ","))
    assert said_of(declared).keys() == declared.model_fields.keys()


def test_no_file_names_a_path_of_this_machine() -> None:
    roots = r"(?<![\w.\-/~])/(?:work|home|opt|tmp|root|usr|mnt|Users|var)/\w"
    for path in TEXTS:
        found = re.search(roots, path.read_text(encoding="utf-8", errors="replace"))
        assert found is None, (path.relative_to(ROOT), found)


def test_no_exception_from_the_rules_stands_without_a_reason() -> None:
    mark = re.compile(r"#\s*(?:noqa|type:\s*ignore)(?P<codes>[:\[]\s*[\w-]+(?:, ?[\w-]+)*\]?)?\s*(?P<reason>\S.*)?$")
    for path in TEXTS:
        if path.suffix == ".py" and path != Path(__file__):
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
                found = mark.search(line)
                assert found is None or (found["codes"] and found["reason"]), (path.relative_to(ROOT), number)


def test_version_is_that_of_the_package() -> None:
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert f'version = "{importlib.metadata.version("plumbnet")}"' in text


def test_typed_marker_lies_in_the_package() -> None:
    assert (Path(inspect.getfile(plumbnet)).parent / "py.typed").is_file()


def test_example_values_of_the_format_are_real() -> None:
    assert tube("copper-L 3/4 in").volume_m3_per_m > 0
    runs = "runs: [street -> meter -> heater]"
    parts = "{street: {kind: main, pressure: 62 psi}, meter: meter, heater: {kind: boiler, volume: 5, setpoint: 180}}"
    assert read_system(f"plumbnet: 1\nparts: {parts}\n{runs}".encode(), file="f").pipes


WORDED = {
    "to_each_of": "a change to each of many, from the text that a survey keeps of it",
    "as_scenario": "a remedy as the text of a scenario",
    "remedy_lists": "remedies that were found, once for all heaters that share their water",
    "left_out": "heaters of which not every change was tried",
    "scenario_text": "changes as the text of a scenario",
}
"""Functions of lower floors that writers call, and what they put into other words; none analyses or searches."""


def called_by_writers() -> Iterator[tuple[str, str]]:
    """Functions and modules of the floors that compute which are imported in report/, and where."""
    for module in (HOUSE / "report").rglob("*.py"):
        for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith(COMPUTING):
                own = importlib.import_module(node.module)
                for one in node.names:
                    thing = getattr(own, one.name)
                    if inspect.isfunction(thing) or inspect.ismodule(thing):
                        yield one.name, name_of(module)


COMPUTING = tuple(f"plumbnet.{room}" for room in ("analysis", "api", "network", "physics", "study"))


def test_writers_import_types_from_the_floors_below_and_call_nothing_that_computes() -> None:
    assert [(name, where) for name, where in called_by_writers() if name not in WORDED] == []
    assert {name for name, _ in called_by_writers()} == WORDED.keys()


LARGEST = 17
"""Modules of the largest room, save the commands: a module of theirs is a command, and the folder their list."""


def test_rooms_have_more_than_one_module_and_not_too_many() -> None:
    for room in {module.parent for module in MODULES} - {HOUSE}:
        inside = [each for each in room.iterdir() if each.suffix == ".py" or (each / "__init__.py").is_file()]
        assert 2 < len(inside) <= LARGEST + 1 or name_of(room) == "cli/commands", room


NAMED_ALIKE = ("cli/commands/", "drawing/symbols/")
"""Where a name stands for a thing that has it elsewhere: a command for the call, a symbol for what it draws."""


def test_no_two_modules_and_no_two_public_names_are_alike() -> None:
    stems = Counter(module.stem for module in MODULES if not name_of(module).startswith(NAMED_ALIKE))
    assert {stem for stem, count in stems.items() if count > 1} == {"__init__"}
    public = Counter(name for module in MODULES for name in public_names(module))
    assert {name for name, count in public.items() if count > 1} == set()


def public_names(module: Path) -> Iterator[str]:
    """Functions and classes that a module defines for others."""
    if not name_of(module).startswith(NAMED_ALIKE):
        for node in ast.parse(module.read_text(encoding="utf-8")).body:
            if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
                yield node.name


def test_writers_ask_nothing_of_the_network() -> None:
    for module in (HOUSE / "report").rglob("*.py"):
        asked = [node for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))) if _is_network(node)]
        assert asked == [], name_of(module)


def _is_network(node: ast.AST) -> bool:
    return isinstance(node, ast.Attribute) and node.attr == "network"
