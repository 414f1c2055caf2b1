"""Who is tested in a file of its own, and so need not stand in the tables and showcases of all."""

from pathlib import Path

from plumbnet.layout.model.part import KINDS
from plumbnet.rules.requirement import REQUIREMENTS

TESTS = Path(__file__).parent


def findings_with_own_tests() -> set[str]:
    """The findings whose test file names them: their words and their bounds stand there."""
    return {
        name
        for name in REQUIREMENTS
        if _names(TESTS / "rules" / "requirements" / f"test_{_stem(REQUIREMENTS[name].test)}.py", name)
    }


def kinds_with_own_tests() -> set[str]:
    """The kinds of part that the test file of their module names."""
    folder = TESTS / "layout" / "model" / "kinds"
    return {name for name in KINDS if _names(folder / f"test_{_stem(KINDS[name])}.py", name)}


def _stem(declared: object) -> str:
    return str(getattr(declared, "__module__", "")).rpartition(".")[2]


def _names(file: Path, name: str) -> bool:
    return file.is_file() and f'"{name}"' in file.read_text(encoding="utf-8")
