"""The files that arguments stand for: files as they are, folders walked, patterns matched; sorted and without loops."""

import errno
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import Path

from plumbnet.layout.model import AssemblyFile

ENDINGS = (".yaml", ".yml")
"""How the name of a layout ends, where a folder is searched for them."""
STANDARD_INPUT = "-"
"""The argument that stands for it."""
STANDARD_INPUT_NAME = "standard input"
"""What messages call it."""
EMPTY = f"it is a folder, and no file in it ends in {' or '.join(ENDINGS)}"
"""Of a folder that is called like a layout and holds none."""
_MAGIC = frozenset("*?[")
_ANY_DEPTH = "**"


@dataclass(frozen=True, slots=True)
class Target:
    """A file to be checked, as its argument or the walk spells it.

    One that is not named was found in a folder and may turn out to be no layout. `trouble` says why there is nothing
    to read: no file in a folder, none that matches, a folder that could not be looked into. `note` says why there
    need be nothing to read: a folder is called like a layout. `given` is what came by standard input, `shelf` are the
    files that bring assemblies.
    """

    file: str
    is_named: bool = True
    trouble: str = ""
    given: bytes | None = None
    note: str = ""
    shelf: tuple[AssemblyFile, ...] = ()


def targets(arguments: Sequence[str]) -> tuple[Target, ...]:
    """The files that the arguments stand for, in their order, those of a folder or a pattern sorted.

    What exists under the very name is taken as it is; a folder stands for all layouts that lie in it and below,
    a pattern for what matches, `**` in it for folders of any depth. Names that begin with a dot are passed over,
    links are followed, no folder is entered twice. What was found by searching is left out where it came before;
    what is named comes as often as it is named. An argument that stands for nothing is a target in trouble; so that
    it is told, and hides no other. A name that does not exist is a target: whoever opens it will say so.
    """
    found: list[Target] = []
    seen: set[Path] = set()
    for argument in arguments:
        named = _is_name(argument)
        own = [Target(argument)] if named else list(_searched(argument))
        for target in own or [Target(argument, trouble=_nothing(argument))]:
            if named or Path(target.file) not in seen:
                found.append(target)
                seen.add(Path(target.file))
    return tuple(found)


def file_size(target: Target) -> int:
    """Bytes of a file; 0 where that cannot be seen."""
    try:
        return Path(target.file).stat().st_size if target.given is None else len(target.given)
    except OSError:
        return 0


def _is_name(argument: str) -> bool:
    path = Path(argument)
    return argument == STANDARD_INPUT or not (_is_folder(path) or (_MAGIC & set(argument) and not _exists(path)))


def _is_folder(path: Path) -> bool:
    """Whether it is a folder, as far as one can see."""
    try:
        return path.is_dir()
    except OSError:
        return False


def _exists(path: Path) -> bool:
    """Whether something has this name, were it a link that leads nowhere or a file that may not be seen."""
    try:
        return path.exists() or path.is_symlink()
    except OSError as error:
        return error.errno != errno.ENAMETOOLONG


def _nothing(argument: str) -> str:
    if _is_folder(Path(argument)):
        return f"no file in this folder ends in {' or '.join(ENDINGS)}"
    return "no file matches this pattern"


def _searched(argument: str) -> Iterator[Target]:
    if _is_folder(Path(argument)):
        yield from _layouts(Path(argument))
        return
    for match in _matches(Path(argument)):
        yield from _layouts(match) if _is_folder(match) else [Target(str(match))]


def _layouts(top: Path) -> list[Target]:
    """Files in a folder and below whose names end as those of layouts, and folders that cannot be looked into."""
    found: list[Target] = []
    called_like_one: list[Path] = []
    for folder in _folders(top):
        called_like_one += [folder] if folder != top and folder.name.lower().endswith(ENDINGS) else []
        try:
            found += [Target(str(path), is_named=False) for path in _inside(folder) if _is_like_a_layout(path)]
        except OSError as error:
            found.append(Target(str(folder), trouble=error.strerror or str(error)))
    holders = {holder for target in found for holder in (Path(target.file), *Path(target.file).parents)}
    found += [Target(str(folder), is_named=False, note=EMPTY) for folder in called_like_one if folder not in holders]
    return sorted(found, key=lambda target: Path(target.file).parts)


def _is_like_a_layout(path: Path) -> bool:
    return path.name.lower().endswith(ENDINGS) and not _is_folder(path)


def _folders(top: Path) -> Iterator[Path]:
    """A folder and all below it, each once: those behind a link last, and only if nothing else leads to them."""
    entered: set[tuple[int, int]] = set()
    waiting, linked = [top], list[Path]()
    while waiting or linked:
        folder = waiting.pop() if waiting else linked.pop(0)
        status = folder.stat()
        if (status.st_dev, status.st_ino) not in entered:
            entered.add((status.st_dev, status.st_ino))
            yield folder
            for path in _inner(folder):
                (linked if path.is_symlink() else waiting).append(path)


def _inner(folder: Path) -> list[Path]:
    """Folders that stand in a folder; none where it cannot be looked into."""
    try:
        return [path for path in _inside(folder) if _is_folder(path)]
    except OSError:
        return []


def _inside(folder: Path) -> list[Path]:
    return sorted(path for path in folder.iterdir() if not path.name.startswith("."))


def _matches(pattern: Path) -> list[Path]:
    """What matches a pattern, found part by part; only where a part holds a sign is a folder looked into."""
    while pattern.name == _ANY_DEPTH:  # a folder is walked in any case
        pattern = pattern.parent
    found = [Path(pattern.anchor)]
    for part in pattern.parts[1 if pattern.anchor else 0 :]:
        found = list(dict.fromkeys(match for folder in found for match in _step(folder, part)))
    return sorted(found)


def _step(folder: Path, part: str) -> Iterable[Path]:
    if not _is_folder(folder):
        return []
    if part == _ANY_DEPTH:
        return _folders(folder)
    if _MAGIC.isdisjoint(part):
        return [folder / part] if _exists(folder / part) else []
    return [path for path in _visible(folder, part) if fnmatch(path.name, part)]


def _visible(folder: Path, part: str) -> list[Path]:
    """What stands in a folder, less what begins with a dot unless the pattern does so too."""
    try:
        return [path for path in folder.iterdir() if part.startswith(".") or not path.name.startswith(".")]
    except OSError:
        return []
