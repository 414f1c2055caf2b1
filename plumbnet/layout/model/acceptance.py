"""What an author writes to accept a finding about a part: its name, the part, the reason."""

from collections.abc import Collection, Iterator, Sequence
from typing import Annotated, ClassVar

from pydantic import Field

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.validation_messages import Mistake
from plumbnet.layout.yaml import quoted


class Acceptance(Declared):
    """A finding about a part that the author accepts; it is still reported, with the reason, but counts no more."""

    called: ClassVar[str] = "an acceptance"

    finding: str = Field(examples=["static-above-limit"])
    """Name of the finding."""
    part: str = Field(examples=["garden-tap"])
    """The part that the finding is about: the one on whose line it is reported."""
    reason: Annotated[str, Field(min_length=1)] = Field(examples=["exempt by letter of the authority"])
    """Why it is accepted."""

    def is_about(self, finding: str, part: str) -> bool:
        """Whether it accepts the finding of that name about that part."""
        return (self.finding, self.part) == (finding, part)


def of_no_part(accepted: Sequence[Acceptance], known: Collection[str]) -> Iterator[Mistake]:
    """A mistake for each acceptance whose part is none of those known; paths count from the list of them."""
    for index, acceptance in enumerate(accepted):
        if acceptance.part not in known:
            text = f"no part is called {quoted(acceptance.part)}"
            yield Mistake((index, "part"), text, meant=(acceptance.part, known))
