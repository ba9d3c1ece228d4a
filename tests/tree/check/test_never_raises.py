"""Whatever is wrong in the files of a library, a check says so in sentences and never ends in an error."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.house.place import Problem
from assistant.tree.check import check, rule_problems
from assistant.tree.library import from_texts
from tests.tree.check.test_bad_examples import SOUND

WORDS = sorted({word for data in SOUND.values() for word in re.findall(r"[a-z_]{2,}", data.decode())})


@st.composite
def spoiled(draw):
    """The sound library with a few lines out, doubled or exchanged, or a word in place of another."""
    files = {name: data.decode().splitlines() for name, data in SOUND.items()}
    for _ in range(draw(st.integers(1, 4))):
        lines = files[draw(st.sampled_from(sorted(files)))]
        at = draw(st.integers(0, len(lines) - 1))
        how = draw(st.sampled_from(["out", "twice", "word", "word", "word", "swap"]))
        if how == "out" and len(lines) > 1:
            del lines[at]
        elif how == "twice":
            lines.insert(at, lines[at])
        elif how == "swap":
            other = draw(st.integers(0, len(lines) - 1))
            lines[at], lines[other] = lines[other], lines[at]
        else:
            present = [word for word in WORDS if word in lines[at]]
            if present:
                lines[at] = lines[at].replace(draw(st.sampled_from(present)), draw(st.sampled_from(WORDS)))
    return {name: "\n".join(lines).encode() for name, lines in files.items()}


@settings(max_examples=120)
@given(spoiled())
def test_a_spoiled_library_is_checked_to_the_end(texts):
    problems = check(from_texts(texts))
    assert problems == sorted(set(problems))
    for problem in problems:
        assert isinstance(problem, Problem)
        assert problem.line >= 1
        assert problem.column >= 1
        assert problem.message


@settings(max_examples=60)
@given(st.lists(st.sampled_from(sorted(SOUND)), max_size=6))
def test_a_library_with_files_missing_is_checked_to_the_end(missing):
    library = from_texts({name: data for name, data in SOUND.items() if name not in missing})
    assert isinstance(list(rule_problems(library)), list)
