"""A YAML file that holds named entries under one key, such as drills or faults, read with places."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.house.fields import Form, Problems, good_name
from assistant.house.reader import Fields, read


def named_entries(
    data: bytes, file: str, key: str, one: str, holds: str, problems: Problems
) -> Iterator[tuple[str, Form]]:
    """(name, its fields) of each entry under `key`; `one` names an entry ("drill") and `holds` its fields for
    a sentence. An entry during which a problem is added is the caller's to leave out. Raises Unreadable.
    """
    node = read(data, file)
    if not isinstance(node, Fields):
        problems.add(node.place, "type", f"{file} is a set of fields: format and {key}")
        return
    top = Form(node, file, problems)
    written = top.text("format", need=True)
    if written and written.value != "1":
        problems.add(written.place, "format", f"this program reads format 1, not '{written.value[:20]}'")
    listed = top.fields(key, need=True)
    top.close()
    for name, entry in (listed.entries if listed else {}).items():
        place = listed.keys[name]
        if not good_name(name, place, f"a {one}", problems):
            continue
        if not isinstance(entry, Fields):
            problems.add(entry.place, "type", f"{one} '{name}' must be fields: {holds}")
            continue
        yield name, Form(Fields(entry.entries, entry.keys, place), f"{one} '{name}'", problems)
