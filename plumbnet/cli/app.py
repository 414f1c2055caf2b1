"""The program as typer knows it: every command registers here, and none of them ends in a traceback."""

import inspect
from collections.abc import Callable, Iterator, Sequence
from functools import wraps
from typing import Annotated, Final, NoReturn, ParamSpec, TypeVar

import typer
from typer.core import TyperCommand

from plumbnet.cli.ending import NOT_UNDERSTOOD

_Given = ParamSpec("_Given")
_Answer = TypeVar("_Answer")
FILE_ARGUMENTS = ("file", "files", "folders", "tables", "old", "new")
"""What a command calls the files that it reads."""
_HELP: Final = "A file whose assemblies layouts may use, or a set that plumbnet assemblies lists; several may be named."
_LAYOUTS: Final = frozenset({"file", "files", "folders", "old"})
"""Arguments of commands that are layouts."""
_OPTION: Final = "with_files"
_With = Annotated[list[str] | None, typer.Option("--with", metavar="FILE", help=_HELP)]

app = typer.Typer(
    name="plumbnet",
    help="Finds heated water with no way back to the street, what stops it, and what it needs.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)


@app.callback()
def program() -> None:
    """Keep a program with a single command asking for its name."""


def command(
    name: str | None = None, *, cls: type[TyperCommand] | None = None
) -> Callable[[Callable[_Given, _Answer]], Callable[_Given, _Answer]]:
    """Register a function as a command, of its own name or of that which is given.

    Whatever goes wrong in it unforeseen is told in a sentence for the files that it was given, with status 2. A command
    that is given several and can go on with the others sees to that itself, file by file.
    """

    def registered(function: Callable[_Given, _Answer]) -> Callable[_Given, _Answer]:
        @wraps(function)
        def told(*given: _Given.args, **named: _Given.kwargs) -> _Answer:
            try:
                return function(*given, **named)
            except (typer.Exit, typer.Abort):
                raise
            except Exception as error:  # whatever it is: a traceback would help nobody who called it
                if isinstance(error, OSError) and error.filename is None:
                    raise  # words could not be written: `streams` tells
                _fail_unforeseen([word for name in FILE_ARGUMENTS for word in _words(named.get(name))], error)

        app.command(name, cls=cls)(_with_assemblies(told))
        return function

    return registered


def _with_assemblies(command: Callable[_Given, _Answer]) -> Callable[..., _Answer]:
    """The function of a command with the option `--with`, where it reads layouts, which may use what is named."""
    signature = inspect.signature(command)
    if not _LAYOUTS & signature.parameters.keys():
        return command

    @wraps(command)
    def run(*given: _Given.args, **named: _Given.kwargs) -> _Answer:
        from plumbnet.cli.file_search import use_assemblies  # noqa: PLC0415  nothing of it is loaded for help

        use_assemblies(list(_words(named.pop(_OPTION, None))))
        return command(*given, **named)

    own = inspect.Parameter(_OPTION, inspect.Parameter.KEYWORD_ONLY, default=None, annotation=_With)
    run.__dict__["__signature__"] = signature.replace(parameters=[*signature.parameters.values(), own])
    run.__annotations__ = {**command.__annotations__, _OPTION: _With}
    return run


def _words(value: object) -> Iterator[str]:
    """What was given for an argument, one by one."""
    if isinstance(value, list):
        yield from map(str, value)
    elif value is not None:
        yield str(value)


def _fail_unforeseen(files: Sequence[str], error: Exception) -> NoReturn:
    from plumbnet.layout.yaml import visible  # noqa: PLC0415  nothing of it is loaded for help
    from plumbnet.report.output import program_failed  # noqa: PLC0415  likewise

    on = " on this file" if len(files) == 1 else " on these files" if files else ""
    typer.echo(visible(f"{', '.join(files) or 'plumbnet'}: {program_failed(error, on=on).sentence}"), err=True)
    raise typer.Exit(NOT_UNDERSTOOD) from error
