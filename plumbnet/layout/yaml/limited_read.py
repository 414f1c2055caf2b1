"""A file, whatever it is, to its bytes and never more of them than the largest layout has."""

import os
from pathlib import Path
from typing import BinaryIO

from plumbnet.layout.yaml.source import MAX_BYTES

_WITHOUT_WAITING = getattr(os, "O_NONBLOCK", 0)


def bytes_of(path: str | Path) -> bytes:
    """The bytes of a file, of a larger one than can be read one byte more than that.

    A device without end is left off there; a named pipe that nobody writes to is empty and not waited for.
    Raises OSError.
    """
    if not Path(path).is_fifo():
        with Path(path).open("rb") as file:
            return bytes_from(file)
    with os.fdopen(_opened(path), "rb") as pipe:
        return bytes_from(pipe)


def bytes_from(stream: BinaryIO) -> bytes:
    """What a stream gives to its end, or one byte more than can be read."""
    return stream.read(MAX_BYTES + 1)


def _opened(path: str | Path) -> int:
    """The pipe, opened without waiting for who writes to it, and read as any file is."""
    descriptor = os.open(path, os.O_RDONLY | _WITHOUT_WAITING)
    os.set_blocking(descriptor, True)
    return descriptor
