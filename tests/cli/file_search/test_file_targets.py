"""Which files an argument stands for."""

import os
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.cli.file_search.file_targets import Target, file_size, targets

TREE = (
    "plans/a.yaml",
    "plans/b.YML",
    "plans/notes.txt",
    "plans/.hidden.yaml",
    "plans/.git/c.yaml",
    "plans/east/d.yaml",
    "plans/east/deep/e.yml",
    "plans-b/f.yaml",
    "odd[1].yaml",
)


@pytest.fixture
def tree(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with layouts at several depths, in which the program runs."""
    monkeypatch.chdir(tmp_path)
    for name in TREE:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("plumbnet: 1\n", encoding="utf-8")
    (tmp_path / "empty").mkdir()
    return tmp_path


def files(*arguments: str) -> list[str]:
    return [Path(target.file).as_posix() for target in targets(arguments)]


@pytest.mark.usefixtures("tree")
def test_file_is_taken_as_it_is_named_however_often() -> None:
    assert targets(["plans/a.yaml", "./plans/a.yaml", "none.yaml"]) == (
        Target("plans/a.yaml"),
        Target("./plans/a.yaml"),
        Target("none.yaml"),
    )


@pytest.mark.usefixtures("tree")
def test_folder_stands_for_the_layouts_in_it_and_below_but_not_what_begins_with_a_dot() -> None:
    assert files("plans") == ["plans/a.yaml", "plans/b.YML", "plans/east/d.yaml", "plans/east/deep/e.yml"]
    assert not any(target.is_named for target in targets(["plans"]))


@pytest.mark.usefixtures("tree")
def test_hidden_folder_is_walked_where_it_is_named_itself() -> None:
    assert files("plans/.git") == ["plans/.git/c.yaml"]


@pytest.mark.usefixtures("tree")
def test_here_is_a_folder_too() -> None:
    assert files(".")[:3] == ["odd[1].yaml", "plans/a.yaml", "plans/b.YML"]


def test_absolute_folder_gives_absolute_names(tree: Path) -> None:
    assert files(str(tree / "plans-b")) == [(tree / "plans-b" / "f.yaml").as_posix()]
    assert files(str(tree / "*-b" / "*")) == [(tree / "plans-b" / "f.yaml").as_posix()]


@pytest.mark.usefixtures("tree")
@pytest.mark.parametrize(
    ("pattern", "expected"),
    [
        ("plans/*.yaml", ["plans/a.yaml"]),
        ("plans/?.*", ["plans/a.yaml", "plans/b.YML"]),
        ("plans*/[a-f].yaml", ["plans/a.yaml", "plans-b/f.yaml"]),
        ("**/*.yml", ["plans/east/deep/e.yml"]),
        ("plans/**/*.yaml", ["plans/a.yaml", "plans/east/d.yaml"]),
        ("plans/**/deep/*", ["plans/east/deep/e.yml"]),
        ("plans/.*.yaml", ["plans/.hidden.yaml"]),
        ("*/a.yaml", ["plans/a.yaml"]),
        ("plans/../plans/a*", ["plans/../plans/a.yaml"]),
    ],
)
def test_pattern_stands_for_what_matches_sorted(pattern: str, expected: list[str]) -> None:
    assert files(pattern) == expected
    assert all(target.is_named for target in targets([pattern]))


@pytest.mark.usefixtures("tree")
@pytest.mark.parametrize("pattern", ["plans/**", "plans/**/**", "plan?"])
def test_folder_that_matches_a_pattern_is_walked(pattern: str) -> None:
    assert files(pattern) == files("plans")


@pytest.mark.usefixtures("tree")
def test_name_with_the_signs_of_a_pattern_is_the_file_where_there_is_one() -> None:
    assert targets(["odd[1].yaml"]) == (Target("odd[1].yaml"),)


@pytest.mark.usefixtures("tree")
@pytest.mark.parametrize(
    ("argument", "said"),
    [
        ("empty", "no file in this folder ends in .yaml or .yml"),
        ("none*.yaml", "no file matches this pattern"),
        ("none/*.yaml", "no file matches this pattern"),
        ("plans/a.yaml/*", "no file matches this pattern"),
        ("[!a-z]" * 900, "no file matches this pattern"),
    ],
)
def test_folder_or_pattern_without_a_file_is_told(argument: str, said: str) -> None:
    assert targets(["plans/a.yaml", argument]) == (Target("plans/a.yaml"), Target(argument, trouble=said))


@pytest.mark.usefixtures("tree")
def test_what_is_found_twice_by_searching_is_taken_once() -> None:
    assert files("plans/a.yaml", "plans", "plans/*.yaml", "./plans/east") == [
        "plans/a.yaml",
        "plans/b.YML",
        "plans/east/d.yaml",
        "plans/east/deep/e.yml",
    ]
    assert files("plans-b", "plans-b/f.yaml") == ["plans-b/f.yaml", "plans-b/f.yaml"]


@pytest.mark.usefixtures("tree")
def test_standard_input_is_no_pattern_and_no_folder() -> None:
    assert targets(["-", "-"]) == (Target("-"), Target("-"))


needs_links = pytest.mark.skipif(sys.platform == "win32", reason="links need a permission there")


@needs_links
def test_links_in_a_circle_end(tree: Path) -> None:
    (tree / "plans" / "east" / "up").symlink_to(tree / "plans", target_is_directory=True)
    (tree / "plans" / "aside").symlink_to(tree / "plans" / "east", target_is_directory=True)
    (tree / "plans" / "zside").symlink_to(tree / "plans" / "east", target_is_directory=True)
    (tree / "plans" / "self").symlink_to("self")
    expected = ["plans/a.yaml", "plans/b.YML", "plans/east/d.yaml", "plans/east/deep/e.yml"]
    assert files("plans") == expected
    assert files("plans/**/*.y*ml") == ["plans/a.yaml", *expected[2:]]


@needs_links
def test_folder_behind_a_link_is_entered_where_nothing_else_leads_to_it(tree: Path) -> None:
    (tree / "plans" / "other").symlink_to(tree / "plans-b", target_is_directory=True)
    assert "plans/other/f.yaml" in files("plans")


@needs_links
def test_link_that_leads_nowhere_is_left_to_whoever_opens_it(tree: Path) -> None:
    (tree / "plans-b" / "gone.yaml").symlink_to("nowhere")
    (tree / "plans-b" / "gone.txt").symlink_to("nowhere")
    assert files("plans-b") == ["plans-b/f.yaml", "plans-b/gone.yaml"]
    assert files("plans-b/g*.yaml") == ["plans-b/gone.yaml"]


@pytest.mark.usefixtures("tree")
def test_folder_that_cannot_be_looked_into_is_told_and_hides_no_other(monkeypatch: pytest.MonkeyPatch) -> None:
    shut, real = Path("plans") / "east", Path.iterdir

    def refuse(path: Path) -> object:
        if path == shut:
            raise PermissionError(13, "Permission denied", str(path))
        return real(path)

    monkeypatch.setattr(Path, "iterdir", refuse)
    assert targets(["plans"])[-1] == Target(str(shut), trouble="Permission denied")
    assert files("plans")[:2] == ["plans/a.yaml", "plans/b.YML"]
    assert targets(["plans/*/*.yaml"])[0].trouble == "no file matches this pattern"


def test_deep_folders_are_walked(tree: Path) -> None:
    deep = tree / "deep"
    path = deep
    for _ in range(150):
        path /= "d"
    path.mkdir(parents=True)
    (path / "x.yaml").write_text("", encoding="utf-8")
    assert len(files("deep")) == 1
    assert len(files("deep/**/x.*")) == 1


@pytest.mark.usefixtures("tree")
def test_size_of_a_file_is_in_bytes_and_of_none_is_0() -> None:
    assert file_size(Target("plans/a.yaml")) == len(b"plumbnet: 1\n")
    assert file_size(Target("none.yaml")) == 0
    assert file_size(Target("-", given=b"abc")) == 3


@pytest.mark.usefixtures("tree")
def test_order_does_not_depend_on_that_of_the_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    before, real = files("."), os.listdir
    monkeypatch.setattr(os, "listdir", lambda path: real(path)[::-1])
    assert files(".") == before


@given(st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), min_size=1, max_size=300))
def test_any_argument_stands_for_files_or_is_told(argument: str) -> None:
    assert targets([argument.partition("/")[0] or "x"])
