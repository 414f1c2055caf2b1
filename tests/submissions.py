"""A folder of fifty submissions as an inspector may get them: right ones, wrong ones, and what is none at all."""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto
from pathlib import Path

from conftest import layout
from running import FAULTY, OPEN, TRAPPED

SEALED = layout("street -> cv -> heater -> tap.hot")
KEY = "plumbnet: 1"
PROFILE = "profile: town\ntitle: The town (invented)\nextends: general\n"
OWN = (
    "plumbnet-acceptances: 1\naccept:\n"
    "  - {file: trusted-0.yaml, finding: trapped-expansion, part: heater, reason: tank ordered}\n"
    "  - {file: sealed-0.yaml, finding: relief-missing, part: heater, reason: fitted since}\n"
    "  - {file: gone.yaml, finding: heat-soak, part: heater, reason: seen on site}\n"
)


class Sent(Enum):
    """What becomes of a submission."""

    FINE = auto()
    TRUSTED = auto()
    """Nothing stands, as the applicant accepts it."""
    WRONG = auto()
    """An error stands."""
    REFUSED = auto()
    """It cannot be understood."""
    OTHER = auto()
    """It is no layout, and noted."""
    KNOWN = auto()
    """Likewise, and the program knows what it is."""


@dataclass(frozen=True)
class Submission:
    """A file of the folder, its content, and what becomes of it; the content None: something odd of that name."""

    name: str
    content: bytes | None
    sent: Sent


def accepting(text: str, *findings: str, reason: str = "owner says ok") -> str:
    said = (f"  - {{finding: {one}, part: heater, reason: {reason}}}\n" for one in findings)
    return text + "accept:\n" + "".join(said)


def submissions() -> tuple[Submission, ...]:
    """All fifty."""
    texts = [(name, text.encode(), sent) for name, text, sent in (*_layouts(), *_slips(), *_others())]
    return tuple(Submission(*one) for one in (*texts, *_odd()))


def write_into(folder: Path) -> tuple[Submission, ...]:
    """All fifty, written into a folder."""
    found = submissions()
    for one in found:
        path = folder / one.name
        path.parent.mkdir(parents=True, exist_ok=True)
        if one.content is not None:
            path.write_bytes(one.content)
    (folder / "leads-nowhere.yaml").symlink_to("gone.yaml")
    (folder / "leads-to-another.yaml").symlink_to("fine-0.yaml")
    (folder / "empty-folder.yaml").mkdir()
    os.mkfifo(folder / "pipe.yaml")
    return found


def _layouts() -> Iterator[tuple[str, str, Sent]]:
    for number in range(8):
        yield f"fine-{number}.yaml", OPEN, Sent.FINE
    for number in range(5):
        yield f"east/trapped-{number}.yml", TRAPPED, Sent.WRONG
    for number in range(4):
        yield f"trusted-{number}.yaml", accepting(TRAPPED, "trapped-expansion"), Sent.TRUSTED
    for number in range(3):
        yield f"sealed-{number}.yaml", accepting(SEALED, "sealed-heater", "relief-missing"), Sent.WRONG
    for number in range(3):
        yield f"faulty-{number}.yaml", FAULTY, Sent.REFUSED
    yield "-x.yaml", OPEN, Sent.FINE
    yield "--no-accept.yaml", OPEN, Sent.FINE
    yield "folder.yaml/inside.yaml", OPEN, Sent.FINE
    yield "no-reason.yaml", accepting(TRAPPED, "trapped-expansion", reason='". .\\e"'), Sent.REFUSED
    yield "no-such-finding.yaml", accepting(TRAPPED, "trapped-expansoin"), Sent.REFUSED
    yield "no-such-rules.yaml", f"rules: genral\n{OPEN}", Sent.REFUSED
    yield "two-documents.yaml", f"{OPEN}---\n{OPEN}", Sent.REFUSED


def _slips() -> Iterator[tuple[str, str, Sent]]:
    for number, key in enumerate(("plumnet", "Plumbnet", "PLUMBNET", "plumb-net", "plumbnett")):
        yield f"slip-{number}.yaml", TRAPPED.replace(KEY, f"{key}: 1"), Sent.REFUSED
    yield "slip-and-broken.yaml", "plumnet: 1\nparts: [\n", Sent.REFUSED


def _others() -> Iterator[tuple[str, str, Sent]]:
    yield "without-key-0.yaml", TRAPPED.replace(f"{KEY}\n", ""), Sent.OTHER
    yield "without-key-1.yaml", OPEN.replace(f"{KEY}\n", ""), Sent.OTHER
    yield "services.yaml", "services: {web: {image: nginx}}\n", Sent.OTHER
    yield "list.yaml", "- one\n- two\n", Sent.OTHER
    yield "empty.yaml", "", Sent.OTHER
    yield "no-yaml.yaml", "services: [\n", Sent.OTHER
    yield "town.yaml", PROFILE, Sent.KNOWN
    yield "own.yaml", OWN, Sent.KNOWN


def _odd() -> Iterator[tuple[str, bytes | None, Sent]]:
    yield "utf-16.yaml", OPEN.encode("utf-16"), Sent.REFUSED
    yield "latin-1.yaml", f"title: Caf\u00e9\n{OPEN}".encode("latin-1"), Sent.REFUSED
    yield "leads-nowhere.yaml", None, Sent.REFUSED
    yield "leads-to-another.yaml", None, Sent.FINE
    yield "empty-folder.yaml", None, Sent.OTHER
    yield "pipe.yaml", None, Sent.OTHER
