"""YAML files of a folder by their names."""

from pathlib import Path

import pytest

from plumbnet.layout.yaml.shipped_files import ShippedFiles, shipped_in


@pytest.fixture
def shelf(tmp_path: Path) -> ShippedFiles:
    for name in ("shed.yaml", "barn.yaml", "notes.txt"):
        (tmp_path / name).write_text(name, encoding="utf-8")
    (tmp_path / "inner").mkdir()
    (tmp_path / "inner" / "deep.yaml").write_text("", encoding="utf-8")
    return ShippedFiles(tmp_path)


def test_files_are_called_by_their_names_in_the_order_of_the_alphabet(shelf: ShippedFiles) -> None:
    assert shelf.names() == ("barn", "shed")
    assert shelf.read("shed") == b"shed.yaml"


@pytest.mark.parametrize("name", ["", "notes", "shed.yaml", "inner/deep", "../shed"])
def test_there_is_no_other(shelf: ShippedFiles, name: str) -> None:
    with pytest.raises(KeyError):
        shelf.read(name)


def test_folders_are_those_of_the_data() -> None:
    assert "general" in shipped_in("profiles").names()
    assert shipped_in("lessons", "layouts").names()
