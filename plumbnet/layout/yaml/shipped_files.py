"""YAML files that come with the program, by their names: those of one folder of its data."""

from dataclasses import dataclass
from importlib.resources import files
from importlib.resources.abc import Traversable

_ENDING = ".yaml"


@dataclass(frozen=True, slots=True)
class ShippedFiles:
    """The YAML files of a folder; each is called by its name without the ending."""

    folder: Traversable

    def names(self) -> tuple[str, ...]:
        """Their names, in the order of the alphabet."""
        entries = (entry.name for entry in self.folder.iterdir())
        return tuple(sorted(name.removesuffix(_ENDING) for name in entries if name.endswith(_ENDING)))

    def read(self, name: str) -> bytes:
        """The bytes of the file of that name. Raises KeyError where there is none."""
        if name not in self.names():
            raise KeyError(name)
        return (self.folder / f"{name}{_ENDING}").read_bytes()


def shipped_in(*folders: str) -> ShippedFiles:
    """The files of a folder of the program's data, named from the top."""
    return ShippedFiles(files("plumbnet").joinpath("data", *folders))
