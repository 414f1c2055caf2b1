"""Lessons that come with the program: files of questions, and the layouts they ask about."""

from plumbnet.layout.authoring import example_bytes, example_names
from plumbnet.layout.yaml import bytes_of, shipped_in


def lesson_names() -> tuple[str, ...]:
    """Their names, in the order of the alphabet."""
    return shipped_in("lessons").names()


def lesson_bytes(name: str) -> bytes:
    """The file of questions of that name. Raises KeyError where there is none."""
    return shipped_in("lessons").read(name)


def lesson_layout_names() -> tuple[str, ...]:
    """Layouts that a file of questions can ask about by name alone: those of the lessons, then the examples."""
    return (*shipped_in("lessons", "layouts").names(), *example_names())


def lesson_layout(name: str) -> bytes:
    """The layout of that name. Raises KeyError where there is none."""
    own = shipped_in("lessons", "layouts")
    return own.read(name) if name in own.names() else example_bytes(name)


def questions_bytes(path: str) -> bytes:
    """The bytes of a file, or of the shipped lesson of that name where there is no such file. Raises OSError."""
    try:
        return bytes_of(path)
    except FileNotFoundError:
        if path not in lesson_names():
            raise
        return lesson_bytes(path)
