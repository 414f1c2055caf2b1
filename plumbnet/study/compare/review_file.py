"""The JSON of `plumbnet review` to the review of one file in it: who made it, by which rules, and its comments."""

import json
from collections.abc import Iterator
from pathlib import PurePath
from typing import Annotated, ClassVar, Literal, NoReturn

from pydantic import ConfigDict, Field, JsonValue, ValidationError

from plumbnet.analysis import Report
from plumbnet.layout.model import Declared, Mistake, validation_faults
from plumbnet.layout.yaml import Fault, LayoutError, YamlNode, decode, parse_yaml, quoted
from plumbnet.rules import AnswerWord, ByCircuit, rules_in_words

_SCHEMA = 1
_HINT = "plumbnet review FILE --format json writes one"
_Number = Annotated[float, Field(allow_inf_nan=False)]
_Word = Annotated[AnswerWord, Field(strict=False)]


class _Read(Declared):
    """What is read of a document that may hold more."""

    model_config = ConfigDict(extra="ignore")


class OldComment(_Read):
    """A requirement of a review; one that was broken or could not be told has a number, and is a comment."""

    called: ClassVar[str] = "a requirement"

    name: str
    """Name of the requirement."""
    number: Annotated[int, Field(ge=1)] | None = None
    """Its number in the review; None where nothing was to be done."""
    parts: list[str] = Field(default_factory=list)
    """Its subject, the leading part first; empty where it is about no part."""
    answer: _Word
    """What it answered."""
    clause: str = ""
    """What it rests on."""
    asks: str = ""
    """What is asked, in a sentence."""
    text: str = ""
    """What was found."""
    advice: str | None = None
    """What was to be done; None where nothing was, or the file has to say more."""
    value: _Number | None = None
    """What was measured, in SI."""
    bound: _Number | None = None
    """What it was held to, in SI."""
    unit: str | None = None
    """The unit of both."""


class LastReview(_Read):
    """The review of one file."""

    called: ClassVar[str] = "a review"

    file: str
    """The file as it was named then."""
    sha256: str
    """SHA-256 of the file that was reviewed."""
    rules: ByCircuit
    """Name of the rule profile, or of that of each circuit."""
    rules_sha256: ByCircuit | None = None
    """SHA-256 of the profile, or of each; None where the review does not say."""
    reviewer: str | None = None
    """Who made it."""
    date: str | None = None
    """The date that was given."""
    requirements: list[OldComment]
    """Every requirement, in the order of the review."""

    @property
    def comments(self) -> tuple[OldComment, ...]:
        """The numbered ones, by their numbers."""
        return tuple(sorted((one for one in self.requirements if one.number), key=_number))

    @property
    def highest(self) -> int:
        """The highest number; 0 where there is none."""
        return max(map(_number, self.comments), default=0)


class _ReviewFile(_Read):
    """The whole document."""

    called: ClassVar[str] = "a review file"

    schema_: Literal[1] = Field(alias="schema")
    """Version of its keys."""
    reviews: list[LastReview]
    """A review for each file."""


def _number(comment: OldComment) -> int:
    return comment.number or 0


def last_review(data: bytes, before: Report, *, file: str) -> LastReview:
    """The review of the file that `before` reports on, from the bytes of a JSON document named `file`.

    Raises LayoutError, with the place where there is one: for what is no JSON or no review, for one in which that
    file does not stand as it is now, or is judged by other rules, and for one that uses a number twice.
    """
    source = _Source(file, data)
    reviews = source.reviews()
    index = next((at for at, one in enumerate(reviews) if one.sha256 == before.system.record.sha256), None)
    if index is None:
        source.refuse(_of_another_file(reviews, before))
    review = reviews[index]
    if review.rules != before.rules.named:
        rules = f"the review of {review.file} was made by the rules {quoted(rules_in_words(review.rules))}"
        text = f"{rules}, and the layout before is judged by {quoted(rules_in_words(before.rules.named))}"
        source.refuse(
            Mistake(("reviews", index, "rules"), text, "compare by the rules of the review, or review it anew")
        )
    twice = next(_used_twice(review), None)
    if twice is not None:
        number = review.requirements[twice].number
        text = f"the number {number} stands twice in the review of {review.file}"
        source.refuse(Mistake(("reviews", index, "requirements", twice, "number"), text, "every comment has its own"))
    return review


def _of_another_file(reviews: list[LastReview], before: Report) -> Mistake:
    """That a file does not stand in a review, or stood there in another version."""
    wanted = before.system.record.file
    alike = [at for at, one in enumerate(reviews) if PurePath(one.file).name == PurePath(wanted).name]
    if alike:
        text = f"the review is of another version of {wanted}: its SHA-256 is not that of the layout before"
        return Mistake(("reviews", alike[0], "sha256"), text, "compare with the file that was reviewed")
    if not reviews:
        return Mistake(("reviews",), "there is no review in it", _HINT, at_key=True)
    there = ", ".join(quoted(one.file) for one in reviews[:3])
    more = " and others" if len(reviews) > 3 else ""  # noqa: PLR2004  # so many names are read in a sentence
    return Mistake(("reviews",), f"there is no review of {wanted} here, only of {there}{more}", _HINT, at_key=True)


def _used_twice(review: LastReview) -> Iterator[int]:
    seen: set[int] = set()
    for at, one in enumerate(review.requirements):
        if one.number is not None:
            if one.number in seen:
                yield at
            seen.add(one.number)


class _Source:
    """The document, and the places in it; the places are only looked for where something is wrong."""

    def __init__(self, file: str, data: bytes) -> None:
        self.file = file
        self.faults: list[Fault] = []
        self.text = decode(data, self.faults)

    def reviews(self) -> list[LastReview]:
        """All reviews of the document. Raises LayoutError."""
        value = self._value()
        if isinstance(value, dict) and "reviews" not in value and "reports" in value:
            self.refuse(Mistake(("reports",), "this is what plumbnet check writes, and no review", _HINT, at_key=True))
        try:
            return _ReviewFile.model_validate(value).reviews
        except ValidationError as error:
            root = self._root()
            faults = validation_faults(error, root, what="a review file", model=_ReviewFile)
            raise LayoutError(self.file, faults, self.text or "") from error

    def refuse(self, mistake: Mistake) -> NoReturn:
        """Raise LayoutError for one mistake."""
        raise LayoutError(self.file, [mistake.fault(self._root())], self.text or "")

    def _value(self) -> JsonValue:
        if self.text is None:
            raise LayoutError(self.file, self.faults)
        try:
            value: JsonValue = json.loads(self.text)
        except json.JSONDecodeError as error:
            fault = Fault(error.lineno, error.colno, f"this is no JSON: {error.msg[:1].lower()}{error.msg[1:]}", _HINT)
            raise LayoutError(self.file, [fault], self.text) from error
        except (RecursionError, ValueError) as error:
            fault = Fault(0, 0, "this is nested too deeply, or holds a number too long, to be a review", _HINT)
            raise LayoutError(self.file, [fault]) from error
        return value

    def _root(self) -> YamlNode:
        """The document as nodes with places; JSON is YAML, and where it is not, there are no places."""
        faults: list[Fault] = []
        root = parse_yaml(self.text or "", faults)
        return YamlNode(None, 0, 0) if root is None or faults else root
