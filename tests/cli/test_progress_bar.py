import io
import sys

import pytest

from plumbnet.cli.progress_bar import at_work, at_work_on, watched


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


def test_work_is_told_on_a_terminal_and_its_line_is_gone_when_it_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    terminal = Terminal(is_one=True)
    monkeypatch.setattr(sys, "stderr", terminal)
    with at_work("thinking"):
        while "thinking" not in terminal.getvalue():
            pass
    assert terminal.getvalue().rpartition("thinking")[2].strip(" .\r") == ""
    assert terminal.getvalue().endswith("\r")


def test_work_is_told_nowhere_else(monkeypatch: pytest.MonkeyPatch) -> None:
    elsewhere = Terminal(is_one=False)
    monkeypatch.setattr(sys, "stderr", elsewhere)
    with at_work("thinking"):
        pass
    assert not elsewhere.getvalue()


def test_all_that_is_made_comes_and_what_goes_wrong_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stderr", Terminal(is_one=True))
    assert list(at_work_on([1, None, 3], "making")) == [1, None, 3]
    with pytest.raises(ZeroDivisionError):
        list(at_work_on((1 // number for number in (1, 0)), "making"))
