"""A file to what is shown of it as it was last saved whole, and what is wrong with what was saved since."""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Generic, TypeVar

import watchfiles

from plumbnet.boards.live.shown_page import ShownPage
from plumbnet.layout.yaml import LayoutError
from plumbnet.report.output import unread

Shown_co = TypeVar("Shown_co", bound=ShownPage, covariant=True)


@dataclass
class FollowedFile(Generic[Shown_co]):
    """What is shown of a file; `look_again` reads it anew, and keeps the last good one where that fails.

    `seen` counts the versions looked at, from 1; `mistake` has what is wrong with the last of them, empty if nothing.
    """

    path: Path | None
    read: Callable[[], Shown_co]
    seen: int = 1
    mistake: str = ""
    shown: Shown_co = field(init=False)
    _stop: threading.Event = field(default_factory=threading.Event)

    def __post_init__(self) -> None:
        """Read it; raises what reading raises."""
        self.shown = self.read()

    def look_again(self) -> None:
        """Read the file once more."""
        try:
            self.shown, self.mistake = self.read(), ""
        except (LayoutError, OSError) as error:
            self.mistake = unread(str(self.path), error).words
        self.seen += 1

    def follow(self, told: Callable[[], None]) -> None:
        """Look again at each save, until `stop`, and tell of it; editors that write beside a file are followed too."""
        if self.path is None:
            return
        while not self._stop.is_set():
            self._follow_these(self._names(self.path), told)

    def _follow_these(self, names: frozenset[Path], told: Callable[[], None]) -> None:
        """Look again at each save of some files, until others are shown."""
        folders = {name.parent for name in names}
        for changed in watchfiles.watch(*folders, stop_event=self._stop, recursive=False, rust_timeout=500, step=20):
            if not names.isdisjoint(Path(path) for _, path in changed):
                self.look_again()
                told()
                if self.path is None or self._names(self.path) != names:
                    return

    def _names(self, path: Path) -> frozenset[Path]:
        """The file, and those beside it that are shown."""
        beside = [Path(name).resolve() for name in self.shown.files]
        return frozenset([path.resolve(), *(name for name in beside if name.is_file())])

    def stop(self) -> None:
        """End `follow`."""
        self._stop.set()
