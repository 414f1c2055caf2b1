"""What an author writes to accept a finding about a part: its name, the part, the reason."""

from typing import Annotated, ClassVar

from pydantic import Field

from plumbnet.layout.declared import Declared


class Acceptance(Declared):
    """A finding about a part that the author accepts; it is still reported, with the reason, but counts no more."""

    called: ClassVar[str] = "an acceptance"

    finding: str = Field(examples=["static-above-limit"])
    """Name of the finding."""
    part: str = Field(examples=["garden-tap"])
    """The part that the finding is about: the one on whose line it is reported."""
    reason: Annotated[str, Field(min_length=1)] = Field(examples=["exempt by letter of the authority"])
    """Why it is accepted."""
