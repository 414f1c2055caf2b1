"""Modules found and imported in the order of their names."""

import pkgutil
import sys
from pathlib import Path
from types import ModuleType

import pytest

from plumbnet.discover import discover


def package(folder: Path) -> ModuleType:
    found = ModuleType("found_here")
    found.__path__ = [str(folder)]
    return found


def test_every_module_of_a_package_and_its_folders_is_imported_in_name_order(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("b", "a", "c"):
        (tmp_path / f"{name}.py").write_text("import sys\nsys.order_of_import.append(__name__)\n")
    (tmp_path / "notes.txt").write_text("no module")
    (tmp_path / "d").mkdir()
    (tmp_path / "d" / "__init__.py").write_text("")
    (tmp_path / "d" / "aa.py").write_text("import sys\nsys.order_of_import.append(__name__)\n")
    order: list[str] = []
    monkeypatch.setattr(sys, "order_of_import", order, raising=False)
    monkeypatch.setitem(sys.modules, "found_here", package(tmp_path))
    backwards = list(pkgutil.walk_packages([str(tmp_path)], "found_here."))[::-1]
    monkeypatch.setattr(pkgutil, "walk_packages", lambda _path, _prefix: backwards)
    discover(package(tmp_path))
    assert order == ["found_here.a", "found_here.d.aa", "found_here.b", "found_here.c"]
    for name in [*order, "found_here.d"]:
        monkeypatch.delitem(sys.modules, name)


def test_module_that_cannot_be_imported_is_not_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "broken.py").write_text("raise RuntimeError('broken')\n")
    monkeypatch.setitem(sys.modules, "found_here", package(tmp_path))
    with pytest.raises(RuntimeError, match="broken"):
        discover(package(tmp_path))
