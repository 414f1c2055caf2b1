"""No test runs for ever; those of the long run take the time they need."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
ENDLESS = "def test_without_end() -> None:\n    while True:\n        pass\n"


def pytest_says(*arguments: str) -> str:
    command = [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", *arguments]
    ended = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)  # noqa: S603  # our own tests
    return ended.stdout


def test_every_test_has_a_limit_of_time(pytestconfig: pytest.Config) -> None:
    assert pytestconfig.getini("timeout") == "600"


def test_tests_of_the_long_run_have_none() -> None:
    said = pytest_says("-v", "--collect-only", "--hypothesis-profile=long", "tests/oracles/test_walks.py")
    assert "test_walks.py" in said
    assert "timeout: " not in said


def test_test_without_end_fails(tmp_path: Path) -> None:
    (tmp_path / "test_endless.py").write_text(ENDLESS, encoding="utf-8")
    said = pytest_says("--timeout=1", str(tmp_path / "test_endless.py"))
    assert "1 failed" in said
    assert "Timeout" in said
