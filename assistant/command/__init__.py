"""The commands, one a file: the module's name is the word, the first line of its docstring the help.

Each has `add_arguments(parser)` and `run(arguments) -> int`, and is imported only when its word is said.
Exit codes: 0 the work is done and no defect was found; 1 a defect was found; 2 it could not run or finish.
"""

from __future__ import annotations

import ast
import importlib
import pkgutil
from types import ModuleType


def words() -> list[str]:
    """All commands by name, without importing any of them. A module that begins with _ is no command."""
    return sorted(info.name for info in pkgutil.iter_modules(__path__) if not info.name.startswith("_"))


def summary(word: str) -> str:
    """The first line of a command's docstring, read from its source: importing all would take too long."""
    for info in pkgutil.iter_modules(__path__):
        if info.name == word:
            spec = info.module_finder.find_spec(f"{__name__}.{word}", None)
            source = spec.loader.get_source(spec.name) if spec and spec.loader else None
            if source:
                return (ast.get_docstring(ast.parse(source)) or "").partition("\n")[0].rstrip(". ")
    return ""


def load(word: str) -> ModuleType:
    """The module of a command that `words` names."""
    return importlib.import_module(f"{__name__}.{word}")
