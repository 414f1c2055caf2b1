"""What the program was tested with stands in a lock that agrees with its declaration, and in a bill of materials."""

import json
import re
import tomllib
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, requires
from pathlib import Path
from typing import Any

import pytest
from bill_of_materials import LOCK, bill, lock
from packaging.markers import default_environment
from packaging.pylock import Package
from packaging.requirements import Requirement
from packaging.specifiers import SpecifierSet
from packaging.utils import canonicalize_name, parse_wheel_filename

PROJECT: dict[str, Any] = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text(encoding="utf-8"))[
    "project"
]
LOCKED: dict[str, Package] = {package.name: package for package in lock().packages}
ASKED = [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["dev"]]
PUBLIC = "https://files.pythonhosted.org/packages/"
TESTED_ON = {**{key: str(value) for key, value in default_environment().items()}, "extra": ""}
HOLES_CLOSED = {"jinja2": "3.1.6", "pypdf": "7.0", "reportlab": "4.4.9"}
"""Packages of which holes were public in November 2026, each with the first release without them (from memory)."""


def files() -> Iterator[tuple[Package, Any]]:
    for package in LOCKED.values():
        yield from ((package, one) for one in [*(package.wheels or ()), *([package.sdist] if package.sdist else [])])


@pytest.mark.parametrize("asked", ASKED)
def test_lock_has_what_the_project_asks_for_in_a_version_that_it_allows(asked: str) -> None:
    requirement = Requirement(asked)
    package = LOCKED[canonicalize_name(requirement.name)]
    assert package.version is not None
    assert package.version in requirement.specifier


def test_lock_is_for_the_same_pythons() -> None:
    assert lock().requires_python == SpecifierSet(PROJECT["requires-python"])


def test_every_package_has_files_with_hashes_at_public_addresses_alone() -> None:
    for package, file in files():
        assert file.path is None
        assert file.url.startswith(PUBLIC)
        assert re.fullmatch("[0-9a-f]{64}", file.hashes["sha256"])
        assert package.index in {None, "https://pypi.org/simple"}
    assert all(package.wheels or package.sdist for package in LOCKED.values())
    others = re.sub(rf"{re.escape(PUBLIC)}|https://pypi\.org/simple", "", LOCK.read_text(encoding="utf-8"))
    assert not re.search(r"://|/tmp/|/home/|/root/|\.\./", others)


def test_files_are_those_of_their_package_and_version() -> None:
    for package in LOCKED.values():
        for wheel in package.wheels or ():
            name, version, _, _ = parse_wheel_filename(str(wheel.url).rsplit("/", 1)[1].replace("%2B", "+"))
            assert (name, version) == (package.name, package.version)


@pytest.mark.parametrize("name", sorted(LOCKED))
def test_lock_has_what_each_of_its_packages_asks_for(name: str) -> None:
    try:
        asked = [Requirement(line) for line in requires(name) or ()]
    except PackageNotFoundError:
        pytest.skip("not installed here")
    for one in asked:
        if one.marker is None or one.marker.evaluate(TESTED_ON):
            assert canonicalize_name(one.name) in LOCKED


@pytest.mark.parametrize("name", HOLES_CLOSED)
def test_lower_bounds_leave_out_releases_with_known_holes(name: str) -> None:
    (asked,) = [one for one in map(Requirement, PROJECT["dependencies"]) if one.name == name]
    assert asked.specifier == SpecifierSet(f">={HOLES_CLOSED[name]}")


def test_bill_of_materials_names_every_package_of_the_lock_and_is_the_same_each_time() -> None:
    text = bill()
    assert bill() == text
    made = json.loads(text)
    assert (made["bomFormat"], made["specVersion"]) == ("CycloneDX", "1.6")
    assert {(one["name"], one["version"]) for one in made["components"]} == {
        (package.name, str(package.version)) for package in LOCKED.values()
    }
    assert all(one["purl"] == f"pkg:pypi/{one['name']}@{one['version']}" for one in made["components"])
    (program,) = [one for one in made["dependencies"] if one["ref"] == "plumbnet"]
    assert len(program["dependsOn"]) == len(LOCKED)
