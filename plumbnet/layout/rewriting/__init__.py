"""Changes written into the text of a layout file, which is left as it is wherever nothing changes.

The lines are edited at their places and not written out anew: comments, order, quoting and spacing stay the author's.
"""

from plumbnet.layout.rewriting.inline_value import inline_yaml
from plumbnet.layout.rewriting.rewritten_layout import NotWritten, file_bytes, rewritten
from plumbnet.layout.rewriting.run_texts import OldPath, Wholes, path_text, pipe_fields

__all__ = ["NotWritten", "OldPath", "Wholes", "file_bytes", "inline_yaml", "path_text", "pipe_fields", "rewritten"]
