"""What the cover of a submission says: number, address, revision, date and author of the job."""

from typing import Annotated, ClassVar, TypeAlias

from pydantic import BeforeValidator, Field

from plumbnet.layout.model.base_model import Declared


def _as_text(value: object) -> object:
    """A whole number as its digits; job numbers and revisions are often nothing else."""
    return str(value) if isinstance(value, int) and not isinstance(value, bool) else value


_Text: TypeAlias = Annotated[str, BeforeValidator(_as_text)]


class Job(Declared):
    """The job that a layout belongs to, as its author names it; nothing is read into the words."""

    called: ClassVar[str] = "a job"

    number: _Text = Field(default="", examples=["2026-114"])
    """Number of the permit or of the job."""
    address: _Text = Field(default="", examples=["12 Mill Lane"])
    """Where the building stands."""
    revision: _Text = Field(default="", examples=["B"])
    """Which revision of the layout this is."""
    date: _Text = Field(default="", examples=["30 November 2026"])
    """Date of the layout, as its author writes dates."""
    author: _Text = Field(default="", examples=["J. Marsh, licensed plumber"])
    """Who drew it up."""

    def said(self) -> tuple[tuple[str, str], ...]:
        """Each field that was filled in, by its name, with its words."""
        return tuple((name, words) for name in type(self).model_fields if (words := getattr(self, name)))
