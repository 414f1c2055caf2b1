"""What the program was tested with, as a bill of materials (CycloneDX): python tests/bill_of_materials.py OUT.json

It is made of `pylock.toml` (PEP 751), which names every package with its version and the hashes of its files, and of
`pyproject.toml`. The same lock gives the same bytes: no clock and no chance goes into it.
"""

import sys
import tomllib
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Final
from uuid import NAMESPACE_URL, uuid5

from cyclonedx.model import HashAlgorithm, HashType
from cyclonedx.model.bom import Bom
from cyclonedx.model.component import Component, ComponentType
from cyclonedx.output.json import JsonV1Dot6
from packageurl import PackageURL
from packaging.pylock import Package, Pylock

ROOT: Final = Path(__file__).parents[1]
LOCK: Final = ROOT / "pylock.toml"
NO_TIME: Final = datetime(1970, 1, 1, tzinfo=UTC)


def lock() -> Pylock:
    """The lock, looked through by the library of its format."""
    return Pylock.from_dict(tomllib.loads(LOCK.read_text(encoding="utf-8")))


def bill() -> str:
    """The bill as JSON."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    program = Component(
        name=project["name"], version=project["version"], type=ComponentType.APPLICATION, bom_ref=project["name"]
    )
    parts = [_component(package) for package in lock().packages]
    made = Bom(components=parts, serial_number=uuid5(NAMESPACE_URL, LOCK.read_text(encoding="utf-8")))
    made.metadata.component, made.metadata.timestamp = program, NO_TIME
    made.register_dependency(program, parts)
    return str(JsonV1Dot6(made).output_as_string(indent=1)) + "\n"


def _component(package: Package) -> Component:
    version = str(package.version)
    return Component(
        name=package.name,
        version=version,
        type=ComponentType.LIBRARY,
        bom_ref=f"{package.name}@{version}",
        purl=PackageURL("pypi", None, package.name, version),
        hashes=[HashType(alg=HashAlgorithm.SHA_256, content=one) for one in _hashes(package)],
    )


def _hashes(package: Package) -> Iterator[str]:
    for wheel in package.wheels or ():
        yield wheel.hashes["sha256"]
    if package.sdist is not None:
        yield package.sdist.hashes["sha256"]


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(bill(), encoding="utf-8")
