"""Whether two addresses or telephone numbers may be the same place though they are written differently.

"12 Sample Lane, Apt. 3" and "12 SAMPLE LN #3" are; "12 Sample Lane" and "12 Sample Lane, Apt. 3" may be;
two different units are not. It is never taken for certain: a person says whether it is the same place. The
words and their abbreviations are those that mail in the United States is addressed with (from memory).
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

_WAYS = {
    "avenue": ("ave", "av"), "boulevard": ("blvd", "boul"), "circle": ("cir", "circ"), "court": ("ct", "crt"),
    "crescent": ("cres",), "drive": ("dr", "drv"), "expressway": ("expy",), "heights": ("hts",),
    "highway": ("hwy",), "hill": ("hl",), "lane": ("ln",), "loop": (), "parkway": ("pkwy", "pky"),
    "place": ("pl",), "plaza": ("plz",), "road": ("rd",), "route": ("rte", "rt"), "row": (),
    "square": ("sq",), "street": ("st", "str"), "terrace": ("ter", "terr"), "trail": ("trl",),
    "turnpike": ("tpke",), "walk": (), "way": (),
}  # fmt: skip
_TURNS = {"north": ("n",), "south": ("s",), "east": ("e",), "west": ("w",), "northeast": ("ne",),
          "northwest": ("nw",), "southeast": ("se",), "southwest": ("sw",)}  # fmt: skip
_UNITS = (
    "apt", "apartment", "unit", "suite", "ste", "flat", "floor", "fl", "room", "rm", "lot", "trailer", "no"
)  # fmt: skip
_LONG = {short: long for table in (_WAYS, _TURNS) for long, shorts in table.items() for short in shorts}
FEWEST_DIGITS = 7
"""Of a telephone number that may mean one house."""
WRITTEN = "the same address, written differently"
ONE_UNIT = "the same house, a unit number in one of the two only"
PHONE = "the same telephone number"


@dataclass(frozen=True)
class Address:
    """`house`: number, street and its direction in full words; `unit`; `rest`: town, state, code."""

    house: tuple[str, ...]
    unit: str
    rest: frozenset[str]


def read_address(text: str) -> Address | None:
    """None where it has no house number and street."""
    plain = unicodedata.normalize("NFKC", text).casefold().replace("#", " unit ")
    words = re.sub(r"[^\w]+", " ", re.sub(r"['\u2019.]", "", plain)).replace("_", " ").split()
    if len(words) < 2 or not any(char.isdigit() for char in words[0]):
        return None
    unit, rest = "", []
    place = 0
    while place < len(words):
        if words[place] in _UNITS and place > 1 and place + 1 < len(words):
            if words[place + 1] not in _UNITS:
                unit = words[place + 1]
                place += 1
        else:
            rest.append(_LONG.get(words[place], words[place]))
        place += 1
    end = next((i for i, word in enumerate(rest) if i >= 2 and word in _WAYS), None)
    end = len(rest) if end is None else end + 1
    while end < len(rest) and rest[end] in _TURNS:
        end += 1
    return Address(tuple(rest[:end]), unit, frozenset(rest[end:]))


def same_address(one: str, other: str) -> str:
    """Why they may be the same place; empty where they are not."""
    here, there = read_address(one), read_address(other)
    if here is None or there is None or here.house != there.house:
        return ""
    if here.rest and there.rest and not (here.rest <= there.rest or there.rest <= here.rest):
        return ""
    if here.unit == there.unit:
        return WRITTEN
    return ONE_UNIT if not here.unit or not there.unit else ""


def same_phone(one: str, other: str) -> str:
    """The same, of telephone numbers: a number without its area code may be one with it."""
    here, there = _digits(one), _digits(other)
    if min(len(here), len(there)) < FEWEST_DIGITS:
        return ""
    return PHONE if here.endswith(there) or there.endswith(here) else ""


def looked_up(address: str, phone: str) -> list[str]:
    """What to look for in the index, which holds words and no addresses: a few words of such a visit each."""
    found = []
    here = read_address(address)
    if here is not None and len(here.house) > 1:
        names = [word for word in here.house[1:] if word not in _WAYS and word not in _TURNS]
        found.append(" ".join((here.house[0], max(names, key=len, default=here.house[1]))))
    digits = _digits(phone)
    if len(digits) >= FEWEST_DIGITS:
        found += [digits[-4:], digits[-7:], digits, f"1{digits}"]
    return list(dict.fromkeys(found))


def _digits(text: str) -> str:
    digits = "".join(char for char in unicodedata.normalize("NFKC", text) if char.isdecimal())
    return digits[1:] if len(digits) == 11 and digits[0] == "1" else digits
