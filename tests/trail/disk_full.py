"""A disk that is full, as the system itself gives it."""

from __future__ import annotations

import contextlib

import pytest


@contextlib.contextmanager
def files_end_at(size: int):
    """The system takes no byte of any file beyond `size`, and refuses the rest of a write."""
    resource = pytest.importorskip("resource")  # not on Windows
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
