import io
import sys

import pytest

from plumbnet.cli.progress_bar import watched


class Terminal(io.StringIO):
    def __init__(self, *, is_one: bool) -> None:
        super().__init__()
        self.is_one = is_one

    def isatty(self) -> bool:
        return self.is_one


@pytest.mark.parametrize("is_one", [True, False])
def test_bar_stands_on_a_terminal_only_and_passes_everything_on(
    monkeypatch: pytest.MonkeyPatch,
    is_one: bool,  # noqa: FBT001  a parameter of the test
) -> None:
    terminal = Terminal(is_one=is_one)
    monkeypatch.setattr(sys, "stderr", terminal)
    assert list(watched(iter([1, 2, 3]), 3)) == [1, 2, 3]
    shown = terminal.getvalue()
    assert ("tried" in shown, "100%" in shown) == (is_one, is_one)
