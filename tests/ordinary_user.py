"""The program as a user without any right of root, who may do anything: words of command lines in, answers out.

Where root starts it, it loads what it needs first, since that may lie where nobody else may look, by having done the
same work elsewhere, and lays its rights down for good before it looks at the words.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

NOBODY = 65534
"""The user of that name, on every Linux."""
LAYOUT = str(Path(__file__).parents[1] / "systems" / "house-with-check.yaml")
Answer = tuple[int, str, str]
"""Status, output and errors."""


@contextmanager
def common_folder() -> Iterator[Path]:
    """A folder of root's in which everybody may look, which pytest's own are not."""
    folder = Path(tempfile.mkdtemp(prefix="plumbnet-"))
    folder.chmod(0o755)
    try:
        yield folder
    finally:
        shutil.rmtree(folder)


def of_nobody(path: Path, rights: int) -> Path:
    """A file or folder given to the ordinary user, with rights."""
    os.chown(path, NOBODY, NOBODY)
    path.chmod(rights)
    return path


def as_ordinary_user(lines: Iterable[Sequence[str]], *, folder: Path) -> list[Answer]:
    """What comes of each command line, in a folder, one after another."""
    command = [sys.executable, __file__]
    given = json.dumps([list(line) for line in lines])
    done = subprocess.run(command, cwd=folder, input=given, capture_output=True, text=True, check=True, timeout=300)  # noqa: S603  ours
    return [(status, out, said) for status, out, said in json.loads(done.stdout)]


def main() -> None:
    """Load, lay down the rights, answer."""
    from running import run  # noqa: PLC0415  the others need none of it

    if os.geteuid() == 0:
        with tempfile.TemporaryDirectory() as folder:
            into = ("--into", f"{folder}/s")
            for line in (("check",), ("survey", *into), ("survey", *into, "--anew"), ("export", "-o", folder)):
                run(line[0], LAYOUT, *line[1:])
        os.setgroups([])
        os.setgid(NOBODY)
        os.setuid(NOBODY)
    found = [run(*line) for line in json.loads(sys.stdin.read())]
    sys.stdout.write(json.dumps([(one.exit_code, one.stdout, one.stderr) for one in found]))


if __name__ == "__main__":
    main()
