"""What the author wrote: YAML text to a typed system of parts and pipes, in SI.

`yaml` reads bytes to nodes with their places, `units` numbers with units, `model` holds what a layout is made of,
`edits` changes it on a copy, `file` puts a whole file together, `rewriting` writes changes into its lines, `authoring`
helps those who write one.
"""

from plumbnet.layout.presentation import Shown, shown

__all__ = ["Shown", "shown"]
