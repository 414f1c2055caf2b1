"""What helps whoever writes a layout: the JSON Schema for editors, layouts to begin and to learn from, assemblies."""

from plumbnet.layout.authoring.assembly_sets import shipped_assemblies, shipped_names
from plumbnet.layout.authoring.schema import DIALECT, layout_schema
from plumbnet.layout.authoring.shipped_layouts import example_bytes, example_names
from plumbnet.layout.authoring.starters import starter, starter_names

__all__ = [
    "DIALECT",
    "example_bytes",
    "example_names",
    "layout_schema",
    "shipped_assemblies",
    "shipped_names",
    "starter",
    "starter_names",
]
