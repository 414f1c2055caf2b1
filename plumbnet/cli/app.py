"""The program as typer knows it; every command registers here."""

import inspect
from collections.abc import Callable
from functools import wraps
from typing import Annotated, Final

import typer
from typer.core import TyperCommand

_HELP: Final = "A file whose assemblies layouts may use, or a set that plumbnet assemblies lists; several may be named."
_LAYOUTS: Final = frozenset({"file", "files", "folders", "old"})
"""Arguments of commands that are layouts."""
_OPTION: Final = "with_files"
_With = Annotated[list[str] | None, typer.Option("--with", metavar="FILE", help=_HELP)]


def _with_assemblies(command: Callable[..., None]) -> Callable[..., None]:
    """The function of a command with the option, where it reads layouts; they may use what is named while it runs."""
    signature = inspect.signature(command)
    if not _LAYOUTS & signature.parameters.keys():
        return command

    @wraps(command)
    def run(*given: object, **options: object) -> None:
        from plumbnet.cli.file_search import use_assemblies  # noqa: PLC0415  help does without

        named = options.pop(_OPTION, None)
        use_assemblies([str(name) for name in named] if isinstance(named, list) else [])
        command(*given, **options)

    own = inspect.Parameter(_OPTION, inspect.Parameter.KEYWORD_ONLY, default=None, annotation=_With)
    run.__dict__["__signature__"] = signature.replace(parameters=[*signature.parameters.values(), own])
    run.__annotations__ = {**command.__annotations__, _OPTION: _With}
    return run


class _Program(typer.Typer):
    """Registers commands, those that read layouts with the option that all of them have."""

    def command(  # type: ignore[override]  # what is used of it
        self,
        name: str | None = None,
        *,
        cls: type[TyperCommand] | None = None,
        help: str | None = None,  # noqa: A002  its name there
    ) -> Callable[[Callable[..., None]], Callable[..., None]]:
        """Register a command; its function stays as it is."""
        register = super().command(name, cls=cls, help=help)

        def registered(function: Callable[..., None]) -> Callable[..., None]:
            register(_with_assemblies(function))
            return function

        return registered


app = _Program(
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
