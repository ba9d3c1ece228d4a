"""A tree's diagram: nothing is left out, nothing lies over anything, and it writes what the tree says."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations, pairwise

import pytest

from assistant.__main__ import main
from assistant.command import draw as command
from assistant.report.chart_svg import to_svg
from assistant.resources import trees_folder
from assistant.tree.chart.connect import crossings
from assistant.tree.chart.faults import faults_at
from assistant.tree.chart.lanes import ends_here, lanes_of, ways
from assistant.tree.chart.lettering import width, wrap
from assistant.tree.chart.marks import Box, Line, Words
from assistant.tree.chart.rows import ANSWER, HERE
from assistant.tree.chart.sheets import MARGIN, PAPERS, Walked, draw
from assistant.tree.chart.wording import answer
from assistant.tree.check.graph import Graph
from assistant.tree.library import from_texts, read_folder
from assistant.tree.model import Finding, Look

LIBRARY = read_folder(trees_folder())
TITLES = {tree.name: tree.title for tree in LIBRARY.trees.values()}
COMPLAINTS = [tree.name for tree in LIBRARY.trees.values() if tree.purpose == "complaint"]
BOLDLY_DRAWN = 2.5


def chart(name, paper="a3", **more):
    return draw(LIBRARY.trees[name], LIBRARY.vocabulary, TITLES, paper, **more)


@pytest.mark.parametrize("name", LIBRARY.trees)
def test_every_step_of_every_tree_has_its_place_and_every_sheet_its_number(name):
    drawn = chart(name)
    assert {step for sheet in drawn.sheets for step in sheet.places} == set(LIBRARY.trees[name].steps)
    assert [sheet.number for sheet in drawn.sheets] == list(range(1, len(drawn.sheets) + 1))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", COMPLAINTS)
def test_nothing_lies_over_anything_nor_beyond_the_margin(name, paper):
    drawn = chart(name, paper)
    for sheet in drawn.sheets:
        boxes = [mark for mark in sheet.marks if isinstance(mark, Box) and mark.weight]
        for one, other in combinations(boxes, 2):
            apart = (one.x + one.width <= other.x or other.x + other.width <= one.x
                     or one.y + one.height <= other.y or other.y + other.height <= one.y)
            assert apart, f"{name}, sheet {sheet.number}: {one} lies over {other}"
        for box in boxes:
            assert box.x >= MARGIN - 5
            assert box.x + box.width <= drawn.width - MARGIN + 5
            assert box.y + box.height <= drawn.height - MARGIN, f"{name}, sheet {sheet.number}: {box}"
        for words in (mark for mark in sheet.marks if isinstance(mark, Words)):
            assert words.y <= drawn.height
            if words.anchor == "start":
                reach = words.x + width(words.text, words.size, words.bold)
                assert reach <= drawn.width - MARGIN + 1, words


@pytest.mark.parametrize("name", COMPLAINTS)
def test_words_stay_in_their_box(name):
    for sheet in chart(name).sheets:
        boxes = [mark for mark in sheet.marks if isinstance(mark, Box) and mark.weight]
        for words in (mark for mark in sheet.marks if isinstance(mark, Words) and mark.anchor == "start"):
            holds = [box for box in boxes if box.x < words.x < box.x + box.width
                     and box.y < words.y < box.y + box.height]
            reach = words.x + width(words.text, words.size, words.bold)
            assert all(reach <= box.x + box.width for box in holds), words


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", COMPLAINTS)
def test_no_lines_cross(name, paper):
    """A line that would cross another is left out: the number at both its ends leads there too."""
    assert chart(name, paper).crossings == 0


def test_crossed_lines_are_counted():
    flat, upright = Line(((0, 5), (10, 5))), Line(((5, 0), (5, 10)))
    assert crossings([flat, upright]) == 1
    assert crossings([flat, Line(((10, 0), (10, 5)))]) == 0


@pytest.mark.parametrize("name", COMPLAINTS)
def test_where_a_step_has_several_ways_each_says_its_answer_and_none_is_cut(name):
    """"gas with standing pilot or gas with spark ..." left out what else goes that way."""
    graph = Graph(LIBRARY.trees[name])
    for step in graph.tree.steps.values():
        several = ways(graph, step.common.name)
        said = [answer(step, way.answers, LIBRARY.vocabulary) for way in several]
        assert len(said) < 2 or all(said), f"{name}.{step.common.name}: {said}"
        assert len(set(said)) == len(said), f"{name}.{step.common.name}: {said}"
    answers = [mark for sheet in chart(name).sheets for mark in sheet.marks
               if isinstance(mark, Words) and mark.size == ANSWER and not mark.bold]
    assert answers
    assert not [mark.text for mark in answers if "…" in mark.text]


@pytest.mark.parametrize("name", COMPLAINTS)
def test_a_sheet_says_which_steps_stand_on_it(name):
    """A box names others by number alone: whoever looks for one must find its sheet."""
    drawn = chart(name)
    for sheet in drawn.sheets:
        head = next(mark.text for mark in sheet.marks if isinstance(mark, Words) and "sheet" in mark.text
                    and " of " in mark.text and mark.anchor == "end")
        here = [drawn.numbers[step] for step in sheet.places if step in drawn.numbers]
        numbers = [int(number) for number in here if number.isdigit()]
        if numbers:
            assert f"{min(numbers)}" in head
            assert f"{max(numbers)}" in head
    assert drawn.step_of("1") == LIBRARY.trees[name].start
    assert isinstance(LIBRARY.trees[name].steps[drawn.step_of("f2")], Finding)
    assert drawn.step_of("9999") is None


@pytest.mark.parametrize("name", COMPLAINTS)
def test_each_way_of_a_step_leads_down_or_is_written_beside_it(name):
    """As many lines leave a step's box to the right as it has ways that do not go straight down."""
    graph, drawn = Graph(LIBRARY.trees[name]), chart(name)
    lanes = lanes_of(graph)
    down = {pair for lane in lanes for pair in pairwise(lane.steps)}
    drawn_ways = 0
    for sheet in drawn.sheets:
        drawn_ways += sum(isinstance(mark, Line) and mark.arrow and len(mark.points) == 2
                          and mark.points[0][1] == mark.points[1][1] for mark in sheet.marks)
    beside = [(step, way.to) for lane in lanes for step in lane.steps for way in ways(graph, step)
              if (step, way.to) not in down]
    decided = {edge.to for edges in graph.out.values() for edge in edges if edge.sure}
    weak_findings = {(step, edge.to) for step, edges in graph.out.items() for edge in edges
                     if isinstance(graph.tree.steps[edge.to], Finding) and edge.to not in decided}
    assert drawn_ways == len(beside) + len(weak_findings)


def test_the_walked_path_is_drawn_in_weight_and_here_is_said():
    tree = LIBRARY.trees["no_heat"]
    first = tree.steps[tree.start]
    assert isinstance(first, Look)
    after = next(way.to for way in first.choices.values() if not ends_here(tree.steps[way.to]))
    walked = Walked(frozenset({(tree.start, after)}), frozenset({tree.start, after}), after)
    marks = chart("no_heat", walked=walked).sheets[0].marks
    heavy = [mark for mark in marks if isinstance(mark, (Box, Line)) and mark.weight > BOLDLY_DRAWN]
    assert sum(isinstance(mark, Box) for mark in heavy) == 2
    assert any(isinstance(mark, Line) for mark in heavy)
    assert any(isinstance(mark, Words) and "you are here" in mark.text for mark in marks)
    plain = chart("no_heat").sheets[0].marks
    assert not [mark for mark in plain if isinstance(mark, (Box, Line)) and mark.weight > BOLDLY_DRAWN]


@pytest.mark.parametrize("at", [0.1, 0.4, 0.7])
def test_here_is_said_under_the_step_and_its_name_is_still_there(at):
    """It stood beside the verb once, where the name is."""
    graph = Graph(LIBRARY.trees["no_heat"])
    here = graph.order[int(at * len(graph.order))]
    path = graph.path(here)
    drawn = chart("no_heat", walked=Walked(frozenset(pairwise(path)), frozenset(path), here))
    sheet = drawn.sheet_of(here)
    x, y, wide, high = sheet.places[here]
    inside = [mark for mark in sheet.marks if isinstance(mark, Words)
              and x <= mark.x <= x + wide and y <= mark.y <= y + high]
    assert [mark.text for mark in inside].count(HERE) == 1
    assert ends_here(graph.tree.steps[here]) or here in [mark.text for mark in inside]
    rows = sorted({round(mark.y, 1) for mark in inside})
    assert next(round(mark.y, 1) for mark in inside if mark.text == HERE) == rows[-1]


def test_a_limit_is_written_with_the_sign_of_its_unit():
    said = " ".join(mark.text for sheet in chart("tripped_breaker").sheets for mark in sheet.marks
                    if isinstance(mark, Words))
    assert "Fdiff" not in said


def test_branches_off_the_path_can_be_folded_away():
    tree = LIBRARY.trees["no_heat"]
    lane = lanes_of(Graph(tree))[0]
    folded = chart("no_heat", unfolded=frozenset(lane.steps))
    assert len(folded.sheets) < len(chart("no_heat").sheets)
    said = " ".join(mark.text for sheet in folded.sheets for mark in sheet.marks if isinstance(mark, Words))
    assert "folded away" in said
    assert "?" not in re.findall(r"to (\S+)", said)
    assert folded.numbers == chart("no_heat").numbers
    assert set(lane.steps) <= {step for sheet in folded.sheets for step in sheet.places}


def test_what_is_wrong_stands_at_its_step():
    texts = {path.relative_to(trees_folder()).as_posix(): path.read_bytes()
             for path in sorted(trees_folder().rglob("*.yaml"))}
    file = "complaint/no_heat.yaml"
    tree = LIBRARY.trees["no_heat"]
    condemned = next(step for step in tree.steps.values()
                     if isinstance(step, Finding) and step.condemns == "transformer")
    lines = texts[file].decode().splitlines()
    at = next(number for number in range(condemned.common.place.line, len(lines))
              if lines[number].lstrip().startswith("causes:"))
    del lines[at]
    library = from_texts({**texts, file: "\n".join(lines).encode()})
    found = faults_at(library, library.trees["no_heat"])
    assert list(found) == [condemned.common.name]
    drawn = draw(library.trees["no_heat"], library.vocabulary, TITLES, errors=found)
    said = " ".join(mark.text for sheet in drawn.sheets for mark in sheet.marks if isinstance(mark, Words))
    assert "! causes:" in said


@pytest.mark.parametrize("text", ["a b c", "electroencephalographically", "under\u00a05\u00a0V", "", " x  y"])
@pytest.mark.parametrize("room", [12, 40, 200])
def test_lines_are_no_wider_than_their_room(text, room):
    lines = wrap(text, room, 8)
    assert all(width(line, 8) <= room or len(line) == 1 for line in lines)
    assert re.sub(r" ", "", "".join(lines)) == re.sub(r" ", "", text)
    assert len(wrap(text * 9, room, 8, most=2)) <= 2


def test_the_svg_is_well_formed_and_says_every_finding():
    root = ET.fromstring(to_svg(chart("tripped_breaker")).encode())
    said = " ".join(element.text or "" for element in root.iter() if element.tag.endswith("text"))
    for step in LIBRARY.trees["tripped_breaker"].steps.values():
        if isinstance(step, Finding):
            assert step.title.split()[0] in said
    assert "sheet 1 of" in said


@pytest.fixture
def quick(monkeypatch):
    """The trees that are loaded already, and nothing wrong with them."""
    monkeypatch.setattr(command, "read_folder", lambda _: LIBRARY)
    monkeypatch.setattr(command, "faults_at", lambda *_: {})


def run(capsys, *words):
    code = main(["draw", *map(str, words)])
    out, err = capsys.readouterr()
    return code, out, err


@pytest.mark.parametrize("paper", PAPERS)
def test_draw_writes_a_page_for_each_sheet(tmp_path, capsys, paper, quick):
    code, out, _ = run(capsys, "filter_habit", "--to", tmp_path / "small.pdf", "--paper",
                       paper)
    assert code == 0, out
    assert (tmp_path / "small.pdf").read_bytes().startswith(b"%PDF")
    assert "1 sheet" in out


def test_draw_writes_svg_from_a_name_or_a_file(tmp_path, capsys):
    by_name = run(capsys, "water_track", "--to", tmp_path / "one.svg")
    by_file = run(capsys, trees_folder() / "cause" / "water_track.yaml", "--to", tmp_path / "two.svg")
    assert by_name[0] == by_file[0] == 0
    assert (tmp_path / "one.svg").read_text() == (tmp_path / "two.svg").read_text()


@pytest.mark.parametrize(("tree", "to", "says"), [
    ("no_heet", "x.svg", "did you mean 'no_heat'"),
    ("no_heat", "x.png", "must end in .svg or .pdf"),
    ("nowhere.yaml", "x.svg", "There is no file or folder"),
    ("no_heat", "no/such/x.svg", "can't be written"),
])
def test_draw_says_what_it_can_not_do(tmp_path, capsys, tree, to, says, quick):
    code, _, err = run(capsys, tree, "--to", tmp_path / to)
    assert code == 2
    assert says in err
    assert "Traceback" not in err
