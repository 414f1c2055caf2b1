"""What a rule profile is made of where it extends another: the file of that one, and which of them wrote what."""

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from plumbnet.layout.yaml import Plain, bytes_of, quoted, reason_of

FILE_ENDINGS = (".yaml", ".yml")
FINDINGS = "findings"
"""The field of a profile under which the clauses of findings stand."""
SITE = "site"
"""The field under which stands what is to be seen on site."""
NOT_ASKED = "not-asked"
"""What stands in place of an entry of `site` that a profile takes over from another and does not ask for."""
MOST_FILES = 16
"""Files that may extend one another in a row: from a town to a state there are some three."""


class NoBase(Exception):
    """The profile that another one extends cannot be had; the text says why."""


@dataclass(frozen=True, slots=True)
class Opened:
    """The files of profiles read so far, each for the one before it; a profile that stands in no file has none."""

    paths: tuple[Path, ...] = ()

    def beside(self, named: str) -> tuple[Path, bytes]:
        """The path of the file that the last one extends, seen from its folder, and its bytes. Raises NoBase."""
        if not self.paths:
            raise NoBase(f"{quoted(named)} is a file, and only a profile that is read from a file extends another file")
        path = self.paths[-1].parent / named
        if len(self.paths) >= MOST_FILES:
            raise NoBase(f"more than {MOST_FILES} files extend one another here; write what differs into fewer")
        try:
            self._refuse_circle(path)
            return path, bytes_of(path)
        except OSError as error:
            raise NoBase(_unreadable(named, reason_of(error))) from error
        except (ValueError, RuntimeError) as error:  # a null in a name; links that lead to one another
            raise NoBase(_unreadable(named, "no file can be called so")) from error

    def _refuse_circle(self, path: Path) -> None:
        met = [each.resolve() for each in self.paths]
        if path.resolve() in met:
            circle = [*self.paths[met.index(path.resolve()) :], path]
            raise NoBase(f"profiles extend one another in a circle: {', then '.join(each.name for each in circle)}")

    def then(self, path: Path) -> "Opened":
        """These files and one more."""
        return Opened((*self.paths, path))


def _unreadable(named: str, why: str) -> str:
    return f"{quoted(named)}, which this profile extends, cannot be read: {why}"


def is_file(named: str) -> bool:
    """Whether a profile is named by its file: by a name with a folder in it or with the ending of a YAML file."""
    return named.endswith(FILE_ENDINGS) or "/" in named or "\\" in named


@dataclass(frozen=True, slots=True)
class ProfileSource:
    """What a profile was read from: its fields as written, the hash of all the bytes, and how deep each field lies.

    `depths` counts the profiles above that in which a field is written, 0 for the profile itself; the clause of a
    finding goes by `findings/NAME`. `deepest` is how deep the last of them lies.
    """

    fields: Plain
    sha256: str
    depths: Mapping[str, int]
    deepest: int

    def depth_of(self, name: str) -> int:
        """How deep a value lies; what nobody writes lies as deep as the last profile."""
        return self.depths.get(name, self.deepest)

    def depth_of_finding(self, name: str) -> int:
        """How deep the clause of a finding lies."""
        return self.depth_of(f"{FINDINGS}/{name}")


def source_of(value: Plain, data: bytes, base: ProfileSource | None) -> ProfileSource:
    """The fields that a profile writes itself and those it takes from another; `data` are the bytes of its own file."""
    own, written = hashlib.sha256(data).hexdigest(), dict.fromkeys(_written(value), 0)
    if base is None or not isinstance(value, dict):
        return ProfileSource(_as_asked(value), own, written, 0)
    fields = base.fields if isinstance(base.fields, dict) else {}
    merged: dict[str, Plain] = {**{key: kept for key, kept in fields.items() if key != "note"}, **value}
    for name in (FINDINGS, SITE):
        entries, own_entries = fields.get(name), value.get(name)
        if isinstance(entries, dict) and isinstance(own_entries, dict):
            merged[name] = {**entries, **own_entries}
    depths = {name: depth + 1 for name, depth in base.depths.items()} | written
    digest = hashlib.sha256((own + base.sha256).encode()).hexdigest()
    return ProfileSource(_as_asked(merged), digest, depths, base.deepest + 1)


def _as_asked(value: Plain) -> Plain:
    """The fields of a profile less what is called not asked among that which is to be seen on site."""
    site = value.get(SITE) if isinstance(value, dict) else None
    if not isinstance(value, dict) or not isinstance(site, dict):
        return value
    return {**value, SITE: {name: entry for name, entry in site.items() if entry != NOT_ASKED}}


def _written(value: Plain) -> Iterator[str]:
    """The names of what a profile writes itself, findings one by one."""
    if isinstance(value, dict):
        yield from value
        clauses = value.get(FINDINGS)
        yield from (f"{FINDINGS}/{name}" for name in (clauses if isinstance(clauses, dict) else ()))
