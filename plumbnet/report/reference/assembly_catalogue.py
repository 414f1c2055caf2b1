"""The sets of assemblies that come with the program, as one looks them up."""

from collections.abc import Iterator, Mapping

from plumbnet.layout.yaml import Plain, parse_yaml
from plumbnet.report.prose import Paragraph, Table, document_text

_HOW = "Use one by --with NAME, or copy its file (plumbnet assemblies NAME) into a layout."


def assemblies_text(sets: Mapping[str, bytes]) -> str:
    """Every set by its name, with the ports of each assembly in it and what it is."""
    rows = tuple(row for name, data in sets.items() for row in _rows(name, data))
    return document_text([Table(("set", "assembly", "ports", "what it is"), rows), Paragraph(_HOW)])


def _rows(name: str, data: bytes) -> Iterator[tuple[str, ...]]:
    """One for each assembly of a set. The files come with the program, and are right."""
    root = parse_yaml(data.decode(), [])
    top = root.value if root is not None and isinstance(root.value, dict) else {}
    assemblies = top.get("assemblies")
    for assembly, body in (assemblies if isinstance(assemblies, dict) else {}).items():
        if isinstance(body, dict):
            yield name, assembly, ", ".join(_ports(body.get("ports"))), str(body.get("note", ""))


def _ports(ports: Plain) -> list[str]:
    return [str(port) for port in ports] if isinstance(ports, dict | list) else []
