"""Layouts to learn from that come with the program."""

from importlib.resources.abc import Traversable
from pathlib import Path

import pytest

from plumbnet.layout.authoring import shipped_layouts
from plumbnet.layout.authoring.shipped_layouts import example_bytes, example_names

SYSTEMS = Path(__file__).parents[3] / "systems"


def test_examples_are_the_systems_of_the_town() -> None:
    assert list(example_names()) == sorted(path.stem for path in SYSTEMS.glob("*.yaml"))
    assert example_bytes("open-house") == (SYSTEMS / "open-house.yaml").read_bytes()


@pytest.mark.parametrize("name", ["", "open-house.yaml", "../pyproject", "buildings/weir-house"])
def test_there_is_no_other(name: str) -> None:
    with pytest.raises(KeyError):
        example_bytes(name)


def test_installed_program_has_them_among_its_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "data" / "examples").mkdir(parents=True)
    (tmp_path / "data" / "examples" / "shed.yaml").write_bytes(b"plumbnet: 1\n")

    def installed(_package: str) -> Traversable:
        return tmp_path

    monkeypatch.setattr(shipped_layouts, "files", installed)
    assert (example_names(), example_bytes("shed")) == (("shed",), b"plumbnet: 1\n")
