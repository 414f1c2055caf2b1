from pathlib import Path

import pytest
from running import Write


@pytest.fixture
def write(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Write:
    """Writes files into the folder the program runs in, and returns the name."""
    monkeypatch.chdir(tmp_path)

    def one(name: str, text: str) -> str:
        Path(name).write_text(text, encoding="utf-8")
        return name

    return one
