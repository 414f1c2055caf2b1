"""What the program shows is the same bytes in every process, whatever its hashes begin with."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from every_output import SHOWN, WRITTEN, digests
from tall_buildings import tower

ROOT = Path(__file__).parents[1]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, path in (
        ("school", "systems/school-shared-tanks.yaml"),
        ("bakery", "systems/bakery-tank-too-small.yaml"),
        ("faulty", "tests/faults/several-at-once.yaml"),
    ):
        (tmp_path / f"{name}.yaml").write_bytes((ROOT / path).read_bytes())
    (tmp_path / "tower.yaml").write_text(tower(storeys=5, shafts=2), encoding="utf-8")
    return tmp_path


def told(folder: Path, seed: int) -> list[str]:
    """What a process says whose hashes begin with a seed."""
    command = [sys.executable, str(ROOT / "tests" / "every_output.py"), str(folder)]
    environment = os.environ | {"PYTHONHASHSEED": str(seed), "PYTHONPATH": os.pathsep.join(sys.path)}
    run = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)  # noqa: S603  ours
    return run.stdout.splitlines()


def test_every_output_is_the_same_bytes_whatever_the_seed_of_hashes(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """This process has a seed by chance, or one that whoever started the tests has set; the other has its own."""
    monkeypatch.chdir(folder)
    here = list(digests())
    assert len(here) == len(SHOWN) + len(WRITTEN)
    assert all(int(line.split()[-1]) > 200 for line in here)
    assert here == told(folder, 2 if os.environ.get("PYTHONHASHSEED") == "1" else 1)
