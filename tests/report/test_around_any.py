"""Whatever is written around the walk is taken or refused with a sentence, and every report can be made."""

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.report.html import to_html
from assistant.report.invoice import to_csv, to_json
from assistant.report.tell import tell
from assistant.report.text import to_text
from assistant.walk.earlier_visit import Past, PastReading
from assistant.walk.event import Advised, AsFound, AsLeft, Filled, Recalled
from assistant.walk.state import BadAnswer
from assistant.walk.visit import asked, fold
from tests.played import at, play, shipped

ODD = st.sampled_from(
    ["<script>", "=cmd()", "\u202eabc", "\ud83d", "\0", "OL", "1,200", "-5", "x" * 10_000, "", " "]
)
TEXT = ODD | st.text(max_size=40)
SHEETS = shipped().vocabulary.sheets


@st.composite
def filled(draw):
    name = draw(st.sampled_from([*SHEETS, "weather"]))
    known = SHEETS[name].questions if name in SHEETS else {}
    questions = draw(st.lists(st.sampled_from([*known, "odd"]), unique=True, max_size=4))
    return Filled(
        at(1),
        name,
        {
            q: draw(TEXT | st.sampled_from((known[q].choices if q in known else ()) or ("0", "71 ppm")))
            for q in questions
        },
    )


END = st.none() | st.floats(-1e6, 1e6)
READING = st.builds(
    PastReading,
    st.sampled_from(["ac_voltage", "pressure", "temperature", "no_quantity"]),
    st.sampled_from([("r", "c"), ("static.supply",), ("moon",), ()]),
    st.sampled_from(["V", "inwc", "F"]),
    TEXT,
    TEXT,
    END,
    END,
)
PAST = st.builds(
    Past,
    TEXT,
    TEXT,
    TEXT,
    *(st.lists(TEXT, max_size=2).map(tuple),) * 5,
    st.lists(st.tuples(st.sampled_from(["igniter", "moon"]), TEXT), max_size=2).map(tuple),
    st.lists(READING, max_size=3).map(tuple),
    st.booleans(),
)
THINGS = st.dictionaries(st.sampled_from(["levers", "fan", "odd thing"]), TEXT, max_size=3)
EVENTS = (
    filled()
    | st.builds(AsLeft, st.just(at(2)), THINGS)
    | st.builds(AsFound, st.just(at(2)), THINGS)
    | st.builds(
        Advised, st.just(at(3)), TEXT, TEXT, TEXT, st.sampled_from(["", "accepted", "declined", "perhaps"])
    )
    | st.builds(Recalled, st.just(at(4)), st.lists(PAST, max_size=2).map(tuple))
)


@settings(max_examples=60, deadline=None)
@given(st.lists(EVENTS, max_size=6))
def test_anything_around_the_walk_is_taken_or_refused_and_told(events):
    """Units that don't fit their quantity are what another program may have written into a trail."""
    visit = play("[]", None, "no_heat")
    refused = []
    for event in events:
        try:
            visit = fold(visit, event)
        except BadAnswer as problem:
            refused.append(str(problem))
    assert all(words.strip() for words in refused)
    assert asked(visit).kind in ("look", "stop")
    story = tell(list(visit.events), visit.library, "0" * 64)
    assert "<script>" not in to_html(story) and "\u202e" not in to_text(story)
    assert to_csv(visit, list(visit.events), "x") and to_json(visit, list(visit.events), "x")
