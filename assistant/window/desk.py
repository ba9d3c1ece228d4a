"""Where visits come from: the shelf on disk, the trees that new ones are walked with, the first start."""

from __future__ import annotations

import contextlib
from collections.abc import Iterable
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.resources import trees_folder
from assistant.trail.calls import FOLDER, interrupted
from assistant.trail.clock import now
from assistant.trail.error import LockedError, TrailError
from assistant.trail.names import folder_name
from assistant.trail.shelf import PRACTICE, Shelved, make_shelf, shelf_folder, shelved, visits
from assistant.window.refused import Refused

if TYPE_CHECKING:
    from assistant.house.place import Problem
    from assistant.past.memory import Memory
    from assistant.past.store import Store
    from assistant.tree.library import Library
    from assistant.walk.earlier_visit import Past
    from assistant.window.session import Driver

SHOP = "shop.yaml"

MARK = "notice-was-read"

MOST_BEHIND = 300
"""Visits read anew before a call-back is looked up; more would keep the person waiting."""


def _whose(texts: dict[str, str]) -> str:
    who = ", ".join(texts[name] for name in ("name", "address") if texts.get(name, "").strip())
    return who or "no name yet"


class OpenElsewhere(Refused):
    """The visit is open in another window, or was left open on another computer."""


class Desk:
    """`shelf` and `trees` are folders; the user's own and the shipped ones when not given. The shop's
    instruments lie beside the shelf. What only a visit needs is loaded when one is opened: the list of visits
    shows without it.
    """

    def __init__(self, shelf: Path | None = None, trees: Path | None = None) -> None:
        self.shelf = shelf or shelf_folder()
        self._trees = trees
        self.sheets: dict = {}
        """What stands on the workbench: computation -> its texts and units, so that nothing typed is lost."""

    @property
    def tree_folder(self) -> Path:
        """The folder of the trees of new visits."""
        return self._trees or trees_folder()

    @cached_property
    def library(self) -> Library:
        """The trees of new visits, loaded when first needed."""
        from assistant.tree.library import read_folder

        return read_folder(self._trees or trees_folder())

    @cached_property
    def problems(self) -> list[Problem]:
        """What is wrong with these trees. One that has an error is not walked anew."""
        from assistant.tree.check import check

        return check(self.library)

    @property
    def shop_path(self) -> Path:
        """Where the shop's instruments, and what it may open, are written down."""
        return self.shelf.parent / SHOP

    def forget_shop(self) -> None:
        """Read the shop's file again for the next visit."""
        self.__dict__.pop("shop", None)

    @cached_property
    def shop(self) -> tuple[dict, list[str]]:
        """The shop's instruments and what its people may open, and a sentence for each mistake in that
        file.
        """
        path = self.shop_path
        if not path.exists():
            return {}, []
        from assistant.trail.shop_file import shop_data

        return shop_data(path)

    @cached_property
    def memory(self) -> Memory:
        """What all visits together say. It is worked out from them; `read_visits` brings it up to date."""
        from assistant.past.memory import Memory

        return Memory(self.shelf)

    def read_visits(self, seconds: float, anew: bool = False) -> bool:
        """Bring the list of visits up to date for about so long; True while there is more to read. Raises
        Refused where the shelf can't be read.
        """
        if anew:
            self.memory.begin()
        try:
            return self.memory.work(seconds)
        except TrailError as problem:
            raise Refused(str(problem)) from problem

    def visits(self) -> list[Shelved]:
        """Every visit, the latest first. Raises Refused where the list can't be read."""
        try:
            return visits(self.shelf)
        except TrailError as problem:
            raise Refused(str(problem)) from problem

    @property
    def calls(self) -> Path:
        """Where telephone calls lie that are no visit yet."""
        return self.shelf.parent / FOLDER

    def interrupted(self, but: Path | None = None) -> list[tuple[Path, str]]:
        """Calls that were left before they became a visit, and whose they are, the latest first."""
        return [(folder, _whose(texts)) for folder, texts in interrupted(self.calls, but)]

    def close(self) -> None:
        """Let go of what was open beside the visits."""
        if "memory" in vars(self):
            self.memory.close()
            del self.memory

    def begin(self, complaints: tuple[tuple[str, str], ...]) -> Driver:
        """A new visit with these complaints (name, the customer's words). Raises Refused."""
        from assistant.trail.live import LiveVisit
        from assistant.walk.state import BadAnswer
        from assistant.window.session import Driver

        at = now()
        try:
            make_shelf(self.shelf)
            folder = self.shelf / folder_name(at, tuple(name for name, _ in complaints))
            return Driver(LiveVisit.start(folder, self.library, complaints, at=at, shop=self.shop[0]))
        except (TrailError, BadAnswer) as problem:
            raise Refused(str(problem)) from problem

    def take_up(self, folder: Path, take_over: bool = False, join: str | None = None) -> Driver:
        """A visit from the list, where it stopped. Raises Refused; OpenElsewhere where `take_over` would
        open it all the same.
        """
        from assistant.trail.live import LiveVisit
        from assistant.walk.state import BadAnswer
        from assistant.window.session import Driver

        try:
            live = LiveVisit.take_up(folder, take_over=take_over, join=join)
            live.go_on_after_interruption()
            return Driver(live)
        except LockedError as problem:
            raise (Refused if problem.here else OpenElsewhere)(str(problem)) from problem
        except (TrailError, BadAnswer) as problem:
            raise Refused(str(problem)) from problem

    def earlier(self, address: str, serial: str = "", but: Path | None = None) -> tuple[Past, ...]:
        """Our own earlier visits to this address or unit, the latest first; empty where none is found."""
        from assistant.trail.earlier import recall, same_place

        if not address.strip() and not serial.strip():
            return ()
        try:
            return recall(same_place(self._might_be(address, serial), address, serial, but))
        except TrailError:
            return ()

    def perhaps(self, person: dict[str, str], but: Iterable[Path]) -> list[tuple[Path, str]]:
        """Visits that may have been here too, each with why and when, the latest first: the address written
        differently, or the same telephone number. Only a person can say so.
        """
        from assistant.past.search import search
        from assistant.trail.alike import looked_up, same_address, same_phone

        address, phone = person.get("address", ""), person.get("phone", "")
        asked, without = looked_up(address, phone), set(but)
        if not asked:
            return []
        store = self._index()
        try:
            found = {each.folder: each for words in asked for each in search(store, self.shelf, words)}
        finally:
            store.close()
        out = []
        for each in sorted(found.values(), key=lambda each: (each.last, each.folder.name), reverse=True):
            there = dict(each.person)
            why = same_address(address, there.get("address", "")) or same_phone(phone, there.get("phone", ""))
            if why and each.folder not in without and each.state != PRACTICE:
                who = ", ".join(there[name] for name in ("name", "address", "phone") if there.get(name))
                out.append((each.folder, f"{who}\n{each.began[:10]}: {why}"))
        return out

    def recalled(self, folder: Path) -> Past | None:
        """One earlier visit summed up; None where it can't be followed."""
        from assistant.trail.earlier import past_of

        return past_of(folder)

    def _might_be(self, address: str, serial: str) -> list[Shelved]:
        """Visits that hold the words of the address or of the serial number, from the index, brought up to
        date as far as that is quick.
        """
        from assistant.past.search import search
        from assistant.trail.earlier import plain

        store = self._index()
        try:
            found = [
                each
                for words in (address, serial, plain(serial))
                if words.strip()
                for each in search(store, self.shelf, words)
            ]
        finally:
            store.close()
        return [shelved(folder) for folder in dict.fromkeys(each.folder for each in found)]

    def _index(self) -> Store:
        """The index of the visits, brought up to date as far as that is quick."""
        from assistant.past.refresh import refresh
        from assistant.past.store import index_file, open_store

        store = open_store(index_file(self.shelf))
        with contextlib.suppress(TrailError):
            for _, behind in refresh(store, self.shelf):
                if behind > MOST_BEHIND:
                    break
        return store

    def first_time(self) -> bool:
        """Whether the notice was never put away on this shelf."""
        return not (self.shelf.parent / MARK).exists()

    def notice_read(self) -> None:
        """Remember it; where that can't be written down, it is shown again next time."""
        try:
            self.shelf.parent.mkdir(parents=True, exist_ok=True)
            (self.shelf.parent / MARK).write_text(now() + "\n", encoding="ascii")
        except OSError:
            pass
