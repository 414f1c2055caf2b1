"""Changes to the text of a scenario, as it can be pasted under `scenarios:` of the layout they were made for."""

from collections.abc import Sequence

import yaml

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change
from plumbnet.layout.yaml import resolved
from plumbnet.study.remedies.remedy import Remedy

_NO_WRAP = 1 << 20


def as_scenario(remedy: Remedy, name: str) -> str:
    """A remedy as a scenario of that name, indented to stand under `scenarios:`; quantities in the file's units.

    Ends with a line break.
    """
    return scenario_text(name, remedy.title, remedy.changes)


def scenario_text(name: str, note: str, changes: Sequence[Change]) -> str:
    """A scenario as YAML: its note and its changes, one to a line."""
    lines = [f"  {_inline(name)}:", f"    note: {_inline(note)}", "    change:"]
    for change in changes:
        for action, value in change_fields(change).items():
            lines.append(f"      - {action}: {_inline(value)}")
    return "\n".join(lines) + "\n"


def _inline(value: object) -> str:
    """A value as YAML in one line, quoted where it has to be."""
    text: str = yaml.dump(
        [value], Dumper=_Quoting, default_flow_style=True, sort_keys=False, allow_unicode=True, width=_NO_WRAP
    )
    return text.strip()[1:-1]


class _Quoting(yaml.SafeDumper):
    """Puts in quotes what the file's reader would take for a number, though YAML 1.1 would not."""


def _text(dumper: yaml.SafeDumper, text: str) -> yaml.ScalarNode:
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style=None if resolved(text) == text else "'")


_Quoting.add_representer(str, _text)
