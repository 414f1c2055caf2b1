"""What the program shows is the same bytes in every process, whatever its hashes begin with."""

import os
import subprocess
import sys
from pathlib import Path

from every_output import SHOWN, WRITTEN
from tall_buildings import tower

ROOT = Path(__file__).parents[1]


def told(folder: Path, seed: str) -> list[str]:
    for name, path in (
        ("school", "systems/school-shared-tanks.yaml"),
        ("bakery", "systems/bakery-tank-too-small.yaml"),
        ("faulty", "tests/faults/several-at-once.yaml"),
    ):
        (folder / f"{name}.yaml").write_bytes((ROOT / path).read_bytes())
    (folder / "tower.yaml").write_text(tower(storeys=5, shafts=2), encoding="utf-8")
    command = [sys.executable, str(ROOT / "tests" / "every_output.py"), str(folder)]
    environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)}
    run = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)  # noqa: S603  ours
    return run.stdout.splitlines()


def test_every_output_is_the_same_bytes_whatever_the_seed_of_hashes(tmp_path: Path) -> None:
    first = told(tmp_path, "1")
    assert len(first) == len(SHOWN) + len(WRITTEN)
    assert all(int(line.split()[-1]) > 200 for line in first)
    assert first == told(tmp_path, "2")
