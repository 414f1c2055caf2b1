import pkgutil

from typer.main import get_command

from plumbnet import cli
from plumbnet.cli.every import app


def test_every_command_has_a_module_of_its_name() -> None:
    commands = set(get_command(app).commands)  # type: ignore[attr-defined]  # typer makes a group
    assert commands <= {module.name for module in pkgutil.iter_modules(cli.__path__)}
    assert len(commands) == 17
