"""A file written whole or not at all: what stood under its name stays until the new one is complete."""

import os
import stat
import tempfile
from pathlib import Path

_ALL_MAY = 0o666


def write_whole(path: Path, content: bytes) -> None:
    """Write the content beside the file, bring it to the disk, and let it take the name of the file in one step.

    A link is followed to its file, whose rights stay as they are; a device or a pipe is written as it is. Raises
    OSError where any of that cannot be done; then the old file stands as before, and nothing beside it.
    """
    target = Path(os.path.realpath(path))
    mode = _mode(target)
    if mode is not None and not stat.S_ISREG(mode):
        target.write_bytes(content)
        return
    if mode is not None and not os.access(target, os.W_OK):
        raise PermissionError(13, os.strerror(13), str(path))
    descriptor, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:40]}-", suffix=".part")
    beside = Path(name)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.chmod(_usual_rights() if mode is None else stat.S_IMODE(mode))
        beside.replace(target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _mode(path: Path) -> int | None:
    """What a file is and who may do what with it; None where there is none."""
    try:
        return path.stat().st_mode
    except FileNotFoundError:
        return None


def _usual_rights() -> int:
    """The rights of a new file, as the user has them set."""
    taken = os.umask(0)
    os.umask(taken)
    return _ALL_MAY & ~taken
