"""An event as a JSON object and back, without losing what this version doesn't know.

A field that equals its default is left out. An unknown kind becomes Unknown; a known kind with fields too
many, or with a value of another type than expected, keeps them in `rest`, so that event and rest together
give back exactly the object that was read.
"""

from __future__ import annotations

import json
import math
import re
from dataclasses import MISSING, fields, is_dataclass
from functools import cache
from typing import Any, Union, get_args, get_origin, get_type_hints

from assistant.walk.event import KINDS, Event, Unknown

ON_DISK = {"kind": "quantity"}
"""Fields of events under another name on disk: `kind` is the event's own kind there."""
KIND_OF = {cls: kind for kind, cls in KINDS.items()}
_AWKWARD = re.compile("[\x7f-\x9f\u2028\u2029\ud800-\udfff]")
_SURROGATE = re.compile("[\ud800-\udfff]")


def text_of(fields_: dict) -> str:
    """The one way to write an object: keys sorted, no spaces, one line however other programs count lines.

    Raises ValueError for a number that JSON has no word for (infinity, not a number).
    """
    text = json.dumps(fields_, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)
    if _SURROGATE.search(text):  # half a character pair from a clipboard; whole pairs are joined first
        text = text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "surrogatepass")
    return _AWKWARD.sub(lambda found: f"\\u{ord(found.group()):04x}", text)


def to_object(event: Event, rest: dict | None = None) -> dict:
    """The JSON object of an event; `rest` is what `from_object` handed back beside it."""
    if isinstance(event, Unknown):
        own = {"kind": event.kind, **({"at": event.at} if event.at else {}), **event.fields}
    else:
        own = {"kind": KIND_OF[type(event)], **_plain(event)}
    return _with(own, rest or {})


def from_object(found: dict) -> tuple[Event, dict]:
    """The event in an object, and what of the object the event doesn't hold.

    Never raises on an object that JSON can hold: what doesn't fit becomes Unknown.
    """
    cls = KINDS.get(found.get("kind")) if isinstance(found.get("kind"), str) else None
    if cls is not None:
        try:
            event = _built(cls, {name: value for name, value in found.items() if name != "kind"})
            rest = _beyond(found, to_object(event))
            if to_object(event, rest) == found:
                return event, rest
        except (TypeError, ValueError, KeyError, RecursionError):
            pass
    kind = found.get("kind")
    at = found.get("at")
    left = {
        name: value
        for name, value in found.items()
        if not (name == "kind" and isinstance(kind, str))
        and not (name == "at" and isinstance(at, str) and at)
    }
    return Unknown(at if isinstance(at, str) else "", kind if isinstance(kind, str) else "", left), {}


def _plain(value: Any) -> Any:
    if is_dataclass(value) and not isinstance(value, type):
        out = {}
        for part in fields(value):
            inside = getattr(value, part.name)
            if not _is_default(part, inside):
                out[ON_DISK.get(part.name, part.name)] = _plain(inside)
        return out
    if isinstance(value, dict):
        return {name: _plain(inside) for name, inside in value.items()}
    if isinstance(value, (tuple, list)):
        return [_plain(inside) for inside in value]
    if isinstance(value, float) and not math.isfinite(value):
        raise ValueError(f"a trail holds finite numbers only (got {value})")
    return value


def _is_default(part: Any, value: Any) -> bool:
    if part.default is not MISSING:
        return type(value) is type(part.default) and value == part.default
    return part.default_factory is not MISSING and value == part.default_factory()


@cache
def _types(cls: type) -> dict[str, tuple[str, Any]]:
    """Name on disk -> (the field's name, its type)."""
    hints = get_type_hints(cls)
    return {ON_DISK.get(part.name, part.name): (part.name, hints[part.name]) for part in fields(cls)}


def _built(cls: type, found: dict) -> Any:
    known = _types(cls)
    held = {known[name]: value for name, value in found.items() if name in known}
    return cls(**{name: _fitted(hint, value) for (name, hint), value in held.items()})


def _fitted(hint: Any, value: Any) -> Any:
    """`value` as the type that the field asks for; TypeError where it is another."""
    origin, inner = get_origin(hint), get_args(hint)
    if origin is Union or type(hint).__name__ == "UnionType":
        if value is None and type(None) in inner:
            return None
        return _fitted(next(part for part in inner if part is not type(None)), value)
    if origin is tuple:
        return _tuple(inner, value)
    if origin is dict or hint is dict:
        _must(isinstance(value, dict))
        return {name: _fitted(inner[1], inside) for name, inside in value.items()} if inner else value
    if is_dataclass(hint):
        _must(isinstance(value, dict))
        return _built(hint, value)
    if hint is float or hint is int:
        _must(isinstance(value, (int, float) if hint is float else int) and not isinstance(value, bool))
        return value
    _must(isinstance(value, hint))
    return value


def _tuple(inner: tuple, value: Any) -> tuple:
    _must(isinstance(value, list))
    if len(inner) == 2 and inner[1] is Ellipsis:
        return tuple(_fitted(inner[0], inside) for inside in value)
    _must(len(value) == len(inner))
    return tuple(_fitted(hint, inside) for hint, inside in zip(inner, value, strict=True))


def _must(fits: bool) -> None:
    if not fits:
        raise TypeError("another type than this field holds")


def _beyond(found: dict, held: dict) -> dict:
    """What `found` has and `held` hasn't, at any depth of objects."""
    out: dict = {}
    for name, value in found.items():
        if name not in held:
            out[name] = value
        elif isinstance(value, dict) and isinstance(held[name], dict):
            deeper = _beyond(value, held[name])
            if deeper:
                out[name] = deeper
    return out


def _with(own: dict, rest: dict) -> dict:
    out = dict(own)
    for name, value in rest.items():
        both = name in out and isinstance(out[name], dict) and isinstance(value, dict)
        out[name] = _with(out[name], value) if both else value
    return out
