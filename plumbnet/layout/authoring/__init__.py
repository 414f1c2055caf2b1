"""What helps whoever writes a layout: the JSON Schema for editors, and commented layouts to begin from."""

from plumbnet.layout.authoring.schema import layout_schema
from plumbnet.layout.authoring.starters import starter, starter_names

__all__ = ["layout_schema", "starter", "starter_names"]
