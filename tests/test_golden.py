"""Every output of the program, word for word: each record in golden/ holds commands and what they print.

What is said where, and which numbers, is tested beside the modules that say it; the words and how they are laid out,
here alone.
"""

from pathlib import Path

import pytest
from shown import PROMPT, as_run

ROOT = Path(__file__).parents[1]
RECORDS = sorted((ROOT / "tests" / "golden").glob("*.out"))


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: record.stem)
def test_output_is_the_one_on_file(record: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    kept = record.read_text(encoding="utf-8")
    assert as_run(kept) == kept, f"if it is meant, `python tests/golden.py {record.stem}` writes it anew; read the diff"


def test_every_record_has_a_command() -> None:
    assert RECORDS
    assert all(record.read_text(encoding="utf-8").startswith(PROMPT) for record in RECORDS)
