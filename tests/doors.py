"""The doors of the house, as a contract for import-linter: a room is entered through its `__init__` alone."""

from collections.abc import Iterator
from typing import Any

from grimp import ImportGraph
from importlinter import Contract, ContractCheck, output

_FRONT = "plumbnet"
"""The package itself, which says where each thing is that it offers, so that nothing else need be imported for it."""


class Doors(Contract):
    """A module that lies in a room is imported by nobody outside of that room; the room itself is, and what it exports.

    A room is a folder with an `__init__`. What stands in a room within a room may use what stands in the outer one.
    """

    type_name = "doors"

    def check(self, graph: ImportGraph, verbose: bool) -> ContractCheck:  # noqa: FBT001  the library's signature
        """Every import that reaches past a door."""
        output.verbose_print(verbose, "Looking for imports that reach past the door of a room...")
        past = sorted(_past_doors(graph))
        return ContractCheck(kept=not past, metadata={"past": past})

    def render_broken_contract(self, check: ContractCheck) -> None:
        """One line to an import, with what would be right."""
        for importer, imported, line in check.metadata["past"]:
            room = imported.rpartition(".")[0]
            output.print_error(f"{importer}:{line} reaches into {imported}; import it from {room}, which exports it.")


def _past_doors(graph: ImportGraph) -> Iterator[tuple[str, str, Any]]:
    rooms = {module.rpartition(".")[0] for module in graph.modules} - {""}
    for imported in graph.modules - rooms:
        room = imported.rpartition(".")[0]
        for importer in graph.find_modules_that_directly_import(imported):
            if importer not in {room, _FRONT} and not importer.startswith(f"{room}."):
                details = graph.get_import_details(importer=importer, imported=imported)
                yield importer, imported, min((one["line_number"] for one in details), default=0)
