"""Lessons that come with the program: files of questions, and the layouts they ask about."""

from importlib.resources import files
from importlib.resources.abc import Traversable

from plumbnet.layout.authoring import example_bytes, example_names
from plumbnet.layout.yaml import bytes_of

_ENDING = ".yaml"


def _lessons() -> Traversable:
    return files("plumbnet") / "data" / "lessons"


def _names(folder: Traversable) -> tuple[str, ...]:
    return tuple(sorted(one.name.removesuffix(_ENDING) for one in folder.iterdir() if one.name.endswith(_ENDING)))


def lesson_names() -> tuple[str, ...]:
    """Their names, in the order of the alphabet."""
    return _names(_lessons())


def lesson_bytes(name: str) -> bytes:
    """The file of questions of that name. Raises KeyError where there is none."""
    if name not in lesson_names():
        raise KeyError(name)
    return (_lessons() / f"{name}{_ENDING}").read_bytes()


def lesson_layout_names() -> tuple[str, ...]:
    """Layouts that a file of questions can ask about by name alone: those of the lessons, then the examples."""
    return (*_names(_lessons() / "layouts"), *example_names())


def lesson_layout(name: str) -> bytes:
    """The layout of that name. Raises KeyError where there is none."""
    folder = _lessons() / "layouts"
    return (folder / f"{name}{_ENDING}").read_bytes() if name in _names(folder) else example_bytes(name)


def questions_bytes(path: str) -> bytes:
    """The bytes of a file, or of the shipped lesson of that name where there is no such file. Raises OSError."""
    try:
        return bytes_of(path)
    except FileNotFoundError:
        if path not in lesson_names():
            raise
        return lesson_bytes(path)
