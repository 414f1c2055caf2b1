"""What helps whoever writes a layout: the JSON Schema for editors, layouts to begin from, assemblies to use."""

from plumbnet.layout.authoring.assembly_sets import shipped_assemblies, shipped_names
from plumbnet.layout.authoring.schema import layout_schema
from plumbnet.layout.authoring.starters import starter, starter_names

__all__ = ["layout_schema", "shipped_assemblies", "shipped_names", "starter", "starter_names"]
