"""What a review of files comes to: the layouts reviewed, those not understood, and files that are no layouts."""

from dataclasses import dataclass

from plumbnet.report.output import Noted, Unread
from plumbnet.study.review import Review


@dataclass(frozen=True, slots=True)
class ReviewedFiles:
    """Everything that the arguments of a review stood for; no file of it is left out of any form."""

    reviews: tuple[Review, ...]
    refused: tuple[Unread, ...] = ()
    others: tuple[Noted, ...] = ()

    @property
    def count(self) -> int:
        """How many files there are."""
        return len(self.reviews) + len(self.refused) + len(self.others)
