"""Files, pipes and devices to no more bytes than a layout may have."""

import io
import os
import sys
from pathlib import Path

import pytest

from plumbnet.layout.yaml.limited_read import bytes_from, bytes_of
from plumbnet.layout.yaml.source import MAX_BYTES

unix_only = pytest.mark.skipif(sys.platform == "win32", reason="there are no such files")


def test_file_is_read_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "f.yaml"
    path.write_bytes(b"plumbnet: 1\r\n\xff\x00")
    assert bytes_of(path) == bytes_of(str(path)) == b"plumbnet: 1\r\n\xff\x00"


@unix_only
def test_device_without_end_is_left_off() -> None:
    assert len(bytes_of("/dev/zero")) == MAX_BYTES + 1


def test_stream_without_end_is_left_off() -> None:
    assert len(bytes_from(io.BytesIO(b" " * (MAX_BYTES + 1_000)))) == MAX_BYTES + 1


@unix_only
def test_pipe_that_nobody_writes_to_is_empty_and_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.yaml")
    assert bytes_of(tmp_path / "pipe.yaml") == b""


@unix_only
def test_pipe_that_is_written_to_is_read_to_its_end() -> None:
    ours, theirs = os.pipe()
    os.write(theirs, b"plumbnet: 1")
    os.close(theirs)
    assert bytes_of(f"/dev/fd/{ours}") == b"plumbnet: 1"
    os.close(ours)
