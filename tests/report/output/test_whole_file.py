"""What is written is there whole, or the old file is, wherever the writing ends."""

import os
import re
import stat
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from plumbnet.report.output.whole_file import write_whole

PACKAGE = Path(__file__).parents[3] / "plumbnet"
WRITERS = ("os.fdopen", "os.fsync", "pathlib.Path.chmod", "pathlib.Path.replace")
"""Every step of the writing at which it may end."""


class Killed(BaseException):
    """The process is ended."""


@pytest.mark.parametrize("step", WRITERS)
@pytest.mark.parametrize("ended", [Killed, KeyboardInterrupt, OSError])
def test_old_file_stands_alone_wherever_the_writing_ends(
    step: str, ended: type[BaseException], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out.svg"
    out.write_bytes(b"old")

    def end(*_: object, **__: object) -> None:
        raise ended

    with monkeypatch.context() as patched:
        patched.setattr(step, end)
        with pytest.raises(ended):
            write_whole(out, b"new and longer")
    assert {each.name: each.read_bytes() for each in tmp_path.iterdir()} == {"out.svg": b"old"}


@pytest.mark.skipif(sys.platform != "linux", reason="counts the system calls of Linux")
def test_name_is_taken_in_the_last_step(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A process killed outright leaves the old file or the new: nothing touches it before it is replaced at once."""
    out, seen = tmp_path / "out.svg", list[bytes]()
    out.write_bytes(b"old")

    def watched(step: Callable[..., object]) -> Callable[..., object]:
        def call(*given: object, **named: object) -> object:
            seen.append(out.read_bytes())
            return step(*given, **named)

        return call

    monkeypatch.setattr("os.fsync", watched(os.fsync))
    monkeypatch.setattr("pathlib.Path.chmod", watched(Path.chmod))
    monkeypatch.setattr("pathlib.Path.replace", watched(Path.replace))
    write_whole(out, b"new")
    assert (seen, out.read_bytes()) == ([b"old"] * 3, b"new")


@pytest.mark.skipif(sys.platform == "win32", reason="rights are those of POSIX")
def test_rights_of_a_file_stay_and_a_new_one_has_the_usual_ones(tmp_path: Path) -> None:
    old, new = tmp_path / "old.svg", tmp_path / "new.svg"
    old.write_bytes(b"old")
    old.chmod(0o640)
    write_whole(old, b"1")
    before = os.umask(0o027)
    try:
        write_whole(new, b"2")
    finally:
        os.umask(before)
    assert [stat.S_IMODE(each.stat().st_mode) for each in (old, new)] == [0o640, 0o640]


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_link_stays_one_and_its_file_is_written(tmp_path: Path) -> None:
    target, link = tmp_path / "target.svg", tmp_path / "link.svg"
    target.write_bytes(b"old")
    link.symlink_to(target)
    write_whole(link, b"new")
    assert (link.is_symlink(), target.read_bytes()) == (True, b"new")


@pytest.mark.skipif(sys.platform != "linux", reason="has the device")
def test_device_is_written_as_it_is() -> None:
    write_whole(Path("/dev/null"), b"new")
    with pytest.raises(OSError, match="No space left"):
        write_whole(Path("/dev/full"), b"new")
    assert Path("/dev/full").is_char_device()


@pytest.mark.skipif(sys.platform == "win32" or os.geteuid() == 0, reason="root may do anything")
def test_file_without_the_right_to_write_it_is_refused(tmp_path: Path) -> None:
    out = tmp_path / "out.svg"
    out.write_bytes(b"old")
    out.chmod(0o444)
    with pytest.raises(PermissionError):
        write_whole(out, b"new")
    assert out.read_bytes() == b"old"


def test_nothing_else_of_the_package_writes_a_file() -> None:
    writing = re.compile(r"\.write_(bytes|text)\(|open\([^)]*[\"'][wax]b?[\"']")
    found = [each.name for each in PACKAGE.rglob("*.py") if writing.search(each.read_text(encoding="utf-8"))]
    assert found == ["whole_file.py"]
