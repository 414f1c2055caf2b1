"""The beliefs that come with the program, as one looks them up."""

from typing import TYPE_CHECKING

from plumbnet.report.prose import Paragraph, Table, document_text

if TYPE_CHECKING:  # what is looked up needs no studies
    from collections.abc import Mapping

    from plumbnet.study.beliefs import Belief

_HOW = "A layout that refutes one, with what to look at in it: plumbnet beliefs NAME."


def beliefs_text(beliefs: "Mapping[str, Belief]") -> str:
    """Every belief by its name; ends with a line break."""
    rows = tuple((name, one.holds) for name, one in beliefs.items())
    return document_text([Table(("belief", "what is held"), rows), Paragraph(_HOW)])
