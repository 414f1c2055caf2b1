"""Changes to the text of a scenario, as it can be pasted under `scenarios:` of the layout they were made for."""

from collections.abc import Sequence

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change
from plumbnet.layout.rewriting import inline_yaml
from plumbnet.study.remedies.remedy import Remedy


def as_scenario(remedy: Remedy, name: str) -> str:
    """A remedy as a scenario of that name, indented to stand under `scenarios:`; quantities in the file's units.

    Ends with a line break.
    """
    return scenario_text(name, remedy.title, remedy.changes)


def scenario_text(name: str, note: str, changes: Sequence[Change]) -> str:
    """A scenario as YAML: its note and its changes, one to a line."""
    lines = [f"  {inline_yaml(name)}:", f"    note: {inline_yaml(note)}", "    change:"]
    for change in changes:
        for action, value in change_fields(change).items():
            lines.append(f"      - {action}: {inline_yaml(value)}")
    return "\n".join(lines) + "\n"
