"""The trees that come with the program are held by every rule."""

from assistant.resources import trees_folder
from assistant.tree.check import check
from assistant.tree.library import read_folder


def test_the_shipped_trees_have_no_problem():
    library = read_folder(trees_folder())
    assert len(library.trees) >= 40
    assert check(library) == []
