"""What is written to accept a finding about a part: its name, the part or parts, the reason in words."""

from collections.abc import Collection, Iterator, Sequence
from typing import Annotated, ClassVar, Self

from pydantic import AfterValidator, Field, model_validator

from plumbnet.layout.model.base_model import Declared
from plumbnet.layout.model.validation_messages import Mistake
from plumbnet.layout.yaml import quoted


def _in_words(reason: str) -> str:
    """The reason as it is. Raises ValueError where no letter and no figure stands in it."""
    if not any(sign.isalnum() for sign in reason):
        raise ValueError(f"say why in words, not {quoted(reason)}")
    return reason


class Acceptance(Declared):
    """A finding about a part that somebody accepts; it is still reported, with the reason, but counts no more."""

    called: ClassVar[str] = "an acceptance"

    finding: str = Field(examples=["static-above-limit"])
    """Name of the finding."""
    part: str = Field(default="", examples=["garden-tap"])
    """The part that the finding is about: the one on whose line it is reported."""
    parts: Annotated[tuple[str, ...], Field(strict=False)] = ()
    """All parts that the finding is about, in place of the one, where several findings of that name are led by it."""
    reason: Annotated[str, AfterValidator(_in_words)] = Field(examples=["exempt by letter of the authority"])
    """Why it is accepted."""

    @model_validator(mode="after")
    def _names_part_or_parts(self) -> Self:
        if bool(self.part) == bool(self.parts):
            raise ValueError("an acceptance names the part that the finding is about, or else all its parts")
        return self

    @property
    def names(self) -> tuple[str, ...]:
        """The part, or all parts, that it names."""
        return self.parts or (self.part,)

    @property
    def in_words(self) -> str:
        """The finding, and of what."""
        return f"{self.finding} of {', '.join(self.names)}"

    def is_about(self, finding: str, parts: Sequence[str]) -> bool:
        """Whether it accepts the finding of that name about those parts, the first of them leading."""
        if self.finding != finding:
            return False
        return set(self.parts) == set(parts) if self.parts else self.part == parts[0]


def of_no_part(accepted: Sequence[Acceptance], known: Collection[str]) -> Iterator[Mistake]:
    """A mistake for each part that an acceptance names and that is none of those known; paths count from their list."""
    for index, acceptance in enumerate(accepted):
        for number, name in enumerate(acceptance.names):
            if name not in known:
                path = (index, "parts", number) if acceptance.parts else (index, "part")
                yield Mistake(path, f"no part is called {quoted(name)}", meant=(name, known))
