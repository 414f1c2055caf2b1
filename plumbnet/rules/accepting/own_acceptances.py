"""The inspector's own list of acceptances: which findings about which parts of which files, each with a reason."""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import PurePath
from typing import Annotated, ClassVar, Final, Literal

from pydantic import AfterValidator, Field

from plumbnet.layout.file import read_declared
from plumbnet.layout.model import Acceptance, Declared, Mistake
from plumbnet.layout.yaml import LayoutError, YamlNode, bytes_of, quoted
from plumbnet.rules.acceptors import MayAccept
from plumbnet.rules.known import FINDINGS_ADVICE, unknown_finding
from plumbnet.rules.requirement import REQUIREMENTS

OWN_KEY: Final = "plumbnet-acceptances"
"""The key at the top of a file that makes it such a list."""


def _naming_a_file(pattern: str) -> str:
    """The pattern as it is. Raises ValueError where it can fit no file."""
    if not PurePath(pattern).name:
        raise ValueError(f"{quoted(pattern)} names no file")
    return pattern


class OwnAcceptance(Acceptance):
    """What the inspector accepts: a finding about a part of the files that are meant."""

    file: Annotated[str, AfterValidator(_naming_a_file)] = Field(examples=["bakery.yaml"])
    """The file, by name or by pattern, the last folders before it too where they matter."""

    def is_for(self, file: str) -> bool:
        """Whether a file is meant: by its very name, or by a pattern that fits the end of its path.

        >>> one = OwnAcceptance(file="south/*.yaml", finding="heat-soak", part="heater", reason="seen on site")
        >>> one.is_for("plans/south/bakery.yaml"), one.is_for("plans/north/bakery.yaml")
        (True, False)
        """
        return file == self.file or PurePath(file).match(self.file)


class _OwnList(Declared):
    """The list as a file holds it."""

    called: ClassVar[str] = "a list of acceptances"

    version: Literal[1] = Field(alias=OWN_KEY, examples=[1])
    """Version of the form."""
    accept: Annotated[tuple[OwnAcceptance, ...], Field(strict=False)] = Field(
        examples=[[{"file": "bakery.yaml", "finding": "heat-soak", "part": "heater", "reason": "seen on site"}]]
    )
    """What is accepted."""


@dataclass(frozen=True, slots=True)
class OwnAcceptances:
    """What decides in place of the acceptances in files: each entry and its line; an empty one accepts nothing.

    `file` names the list, empty where there is none.
    """

    file: str = ""
    sha256: str = ""
    accept: tuple[OwnAcceptance, ...] = ()
    lines: tuple[int, ...] = ()


def own_acceptances_at(path: str) -> OwnAcceptances:
    """The list of a file. Raises LayoutError with every fault of it, OSError."""
    return read_own_acceptances(bytes_of(path), file=path)


def read_own_acceptances(data: bytes, *, file: str) -> OwnAcceptances:
    """The list that the bytes of a file hold. Raises LayoutError with every fault of the file, as a layout does."""
    declared = read_declared(data, _OwnList, file=file, unlike=_unlike_a_list)
    accept, root = declared.form.accept, declared.root
    faults = [mistake.fault(root) for mistake in _not_to_be_accepted(accept)]
    if faults:
        raise LayoutError(file, faults, declared.text)
    return OwnAcceptances(file, hashlib.sha256(data).hexdigest(), accept, _lines(root, len(accept)))


def _lines(root: YamlNode, count: int) -> tuple[int, ...]:
    return tuple(root.at("accept", index, "finding").line for index in range(count))


def _unlike_a_list(root: YamlNode) -> Mistake | None:
    if isinstance(root.value, dict):
        return None
    return Mistake((), f"{_OwnList.called} is a mapping", f"begin it with {OWN_KEY}: 1")


def _not_to_be_accepted(accept: tuple[OwnAcceptance, ...]) -> Iterator[Mistake]:
    """Findings that there are not, and those that nobody can accept."""
    for index, one in enumerate(accept):
        at = ("accept", index, "finding")
        if one.finding not in REQUIREMENTS:
            yield Mistake(at, unknown_finding(one.finding), FINDINGS_ADVICE, meant=(one.finding, REQUIREMENTS))
        elif REQUIREMENTS[one.finding].may_accept is MayAccept.NOBODY:
            text = f"{quoted(one.finding)} is a danger to life and is accepted by no list"
            yield Mistake(at, text, "have the layout put right, and take this entry out")
