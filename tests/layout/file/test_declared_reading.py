"""A file read as its declaration has it."""

import pytest

from plumbnet.layout.file.declared_reading import read_declared
from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.validation_messages import Mistake
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.layout.yaml.node import YamlNode


class Shelf(Declared):
    """For these tests."""

    called = "a shelf"

    jars: int


def unlike(root: YamlNode) -> Mistake | None:
    return None if isinstance(root.value, dict) else Mistake((), "a shelf is a mapping", "begin it with jars: 1")


def test_form_comes_with_its_tree_and_its_text() -> None:
    read = read_declared(b"# mine\njars: 3\n", Shelf, file="shelf.yaml", unlike=unlike)
    assert (read.form.jars, read.root.at("jars").line, read.text) == (3, 2, "# mine\njars: 3\n")


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"jars: many\n", "shelf.yaml:1:7: jars: "),
        (b"- jars\n", "a shelf is a mapping; begin it with jars: 1"),
        (b"jars: [1\n", "shelf.yaml:"),
        (b"\xff\xfe\xff", "shelf.yaml"),
    ],
)
def test_every_fault_is_told_at_its_place(data: bytes, told: str) -> None:
    with pytest.raises(LayoutError) as caught:
        read_declared(data, Shelf, file="shelf.yaml", unlike=unlike)
    assert told in str(caught.value)
