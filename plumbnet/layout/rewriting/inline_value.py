"""A plain value to YAML in one line, as it may stand anywhere in a layout file."""

import yaml

from plumbnet.layout.yaml import resolved

_NO_WRAP = 1 << 20


def inline_yaml(value: object) -> str:
    """A value as YAML in one line, quoted where it has to be.

    >>> inline_yaml({"kind": "valve", "note": "4"}), inline_yaml("62 psi")
    ("{kind: valve, note: '4'}", '62 psi')
    """
    text: str = yaml.dump(
        [value], Dumper=_Quoting, default_flow_style=True, sort_keys=False, allow_unicode=True, width=_NO_WRAP
    )
    return text.strip()[1:-1]


class _Quoting(yaml.SafeDumper):
    """Puts in quotes what the file's reader would take for a number, though YAML 1.1 would not."""


def _text(dumper: yaml.SafeDumper, text: str) -> yaml.ScalarNode:
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style=None if resolved(text) == text else "'")


_Quoting.add_representer(str, _text)
