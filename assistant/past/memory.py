"""The shop's memory as a window uses it: asked at once, brought up to date in small pieces of work."""

from __future__ import annotations

import time
from collections.abc import Iterator
from pathlib import Path

from assistant.past.refresh import glance, look, read
from assistant.past.search import count, search
from assistant.past.store import Store, index_file, open_store
from assistant.trail.shelf import Shelved


class Memory:
    """What is known of the visits on one shelf. `work` reads on; `done` of `to_do` visits are read."""

    def __init__(self, shelf: Path, file: Path | None = None) -> None:
        self.shelf = Path(shelf)
        self.store: Store = open_store(file or index_file(self.shelf))
        self.done = self.to_do = 0
        self._work: Iterator[tuple[int, int]] | None = None

    def begin(self) -> None:
        """Look at the disk anew: what changed is read by `work`."""
        self._work = self._all()

    def work(self, seconds: float) -> bool:
        """Read on for about so long; True while there is more to read.

        Raises TrailError where the shelf can't be listed.
        """
        until = time.monotonic() + seconds
        while self._work is not None:
            step = next(self._work, None)
            if step is None:
                self._work = None
                break
            self.done, self.to_do = step
            if time.monotonic() >= until:
                break
        return self._work is not None

    def find(self, typed: str) -> list[Shelved]:
        """The visits that hold these words, the latest first."""
        return search(self.store, self.shelf, typed)

    def count(self) -> int:
        """How many visits there are."""
        return count(self.store)

    def close(self) -> None:
        """Let go of the index."""
        self._work = None
        self.store.close()

    def _all(self) -> Iterator[tuple[int, int]]:
        """First a glance at what is new, so that it is listed; then all of it, so that it is found."""
        changed = yield from look(self.store, self.shelf)
        yield from glance(self.store, self.shelf, changed)
        yield from read(self.store, self.shelf, changed)
