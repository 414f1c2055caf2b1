"""The commands and the help of each, of which no module has been run."""

import pkgutil
from collections.abc import Iterator
from importlib.util import find_spec
from types import CodeType, FunctionType

from plumbnet.cli import commands


def names() -> list[str]:
    """Every command, each the name of its module."""
    return sorted(module.name for module in pkgutil.iter_modules(commands.__path__))


def helps() -> Iterator[tuple[str, str]]:
    """Every command with its help, in the order of their names.

    A command is the function of its module's name, and its help the docstring of that function, read out of what the
    module was compiled to: to run every module for a list of them takes as long as to check a house.
    """
    for name in names():
        yield name, _docstring(_compiled(f"{commands.__name__}.{name}"), name)


def _compiled(module: str) -> CodeType:
    compiled: CodeType = find_spec(module).loader.get_code(module)  # type: ignore[union-attr]  # it was just listed
    return compiled


def _docstring(module: CodeType, function: str) -> str:
    """The docstring of a function of a module, or nothing; the name has _ behind where Python keeps it for itself."""
    found = next(
        each for each in module.co_consts if isinstance(each, CodeType) and each.co_name.removesuffix("_") == function
    )
    return FunctionType(found, {}).__doc__ or ""
