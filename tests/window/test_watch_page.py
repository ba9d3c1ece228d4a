"""Watching one cycle: taps with times, readings afterwards."""

import pytest
from hand import Hand
from scenes import Scene

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.tree.model import Watch
from assistant.walk.ask import Ask
from assistant.walk.event import Watched
from assistant.window.page.watch import WatchPage


@pytest.fixture
def hand(at):
    hand = at("to_watch")
    hand.time = 100.0
    hand.page.clock = lambda: hand.time
    return hand


def later(hand, seconds):
    hand.time = 100.0 + seconds
    hand.page.tick()
    return hand


def test_digits_are_events_with_their_times(hand):
    """The clock starts with Enter; each digit stamps its event."""
    hand.enter()
    later(hand, 3).digit(1)
    later(hand, 18.5).digit(2)
    later(hand, 24).digit(3)
    later(hand, 60).digit(4)
    hand.enter()
    assert hand.verdict == "Everything happened"
    hand.type("24.1").enter()
    event = hand.driver.visit.events[-1]
    assert event.events == {"inducer.runs": 3, "ignitor.glows": 18.5, "burner.lights": 24, "blower.runs": 60}
    assert event.readings["vac"].text == "24.1"


def test_taps_work_as_digits_do(hand):
    """The first tap starts the clock by itself."""
    hand.tap(hand.page.events["inducer.runs"])
    assert hand.page.times == {"inducer.runs": 0.0}
    later(hand, 9).tap(hand.page.events["ignitor.glows"])
    assert hand.page.events["ignitor.glows"].small == "✓ at 9 s"


def test_what_is_missing_is_said_and_decides(hand):
    """The first event that did not come, in words; the walk goes its way."""
    hand.enter()
    later(hand, 3).digit(1)
    hand.enter()
    assert hand.verdict == "Did not happen: the igniter glows"
    hand.enter()
    assert isinstance(hand.driver.visit.events[-1], Watched)
    assert "did not happen: the igniter glows" in hand.driver.visit.path[-1].answer


def test_a_second_tap_changes_nothing_and_the_last_can_be_taken_back(hand):
    """A finger that slips twice does no harm."""
    hand.enter()
    later(hand, 3).digit(1)
    later(hand, 7).digit(1).digit(2)
    assert hand.page.times == {"inducer.runs": 3, "ignitor.glows": 7}
    hand.alt("u")
    assert hand.page.times == {"inducer.runs": 3}


def test_starting_over_forgets_the_taps(hand):
    """The furnace locked out: the same page from the start."""
    hand.enter().digit(1).alt("s")
    assert hand.page.times == {} and hand.page.begun is None


def test_the_clock_says_when_time_is_over(hand):
    """In words, without a sound and without ending anything."""
    hand.enter()
    later(hand, 95)
    assert "Past 1 min 30 s" in hand.page.running.text()


def test_an_implausible_reading_asks_back_before_anything_is_saved(hand):
    """As on any other page; the taps are kept meanwhile."""
    hand.enter().digit(1).enter().type("241").enter()
    assert hand.page.offers.isVisible() and hand.page.times
    hand.digit(1)
    assert hand.page.lines["vac"][0].text == "24.1"


def in_sight(hand, widget):
    seen = widget.visibleRegion().boundingRect()
    return widget.isVisible() and seen == widget.rect()


def long_watches(qtbot, window, tmp_path):
    """A hand, and for each watch of the shipped trees the way to show its page."""
    trees = read_folder(trees_folder())
    driver = Scene(tmp_path / "long", trees=trees).driver
    window.show_visit(driver)
    hand = Hand(qtbot, window).rest()

    def show(address, tree, step):
        window._put(WatchPage(driver, Ask("watch", address, tree, step, complaint="no_heat")))
        return hand.rest()

    return hand, [
        lambda address=f"{tree.name}.{name}", tree=tree, step=step: show(address, tree, step)
        for tree in trees.trees.values()
        for name, step in tree.steps.items()
        if isinstance(step, Watch)
    ]


def test_every_event_is_in_sight_before_the_clock_starts(qtbot, window, tmp_path):
    """Of every watch in the shipped trees at 1024 by 600, with no scrolling; the longest has seven events
    and three cautions, which stand in a line each above.
    """
    hand, shows = long_watches(qtbot, window, tmp_path)
    assert (window.width(), window.height()) == (1024, 600)
    assert shows
    for show in shows:
        page = show().page
        assert [b.text() for b in page.events.values() if not in_sight(hand, b)] == []
        assert page.cautions and all(in_sight(hand, sign) for sign in page.cautions)


def test_the_whole_caution_is_one_key_away(qtbot, window, tmp_path):
    """Alt+F shows it; the clock's start folds it again, for what happens must be in sight."""
    hand, shows = long_watches(qtbot, window, tmp_path)
    page = shows[0]().page
    assert not any(sign.isVisible() for sign in page._full_cautions)
    hand.alt("f")
    assert all(sign.isVisible() for sign in page._full_cautions)
    assert not any(sign.isVisible() for sign in page.cautions)
    hand.press("Start the clock")
    assert page.begun is not None and all(sign.isVisible() for sign in page.cautions)


def test_a_caution_never_opened_is_not_counted_as_read(qtbot, window, tmp_path):
    """The next page with it shows it in full; opened, it counts."""
    hand, shows = long_watches(qtbot, window, tmp_path)
    page = shows[0]().page
    page.seen()
    assert all(hand.driver.caution_is_new(name) for name in page.common.caution)
    hand.alt("f")
    page.seen()
    assert not any(hand.driver.caution_is_new(name) for name in page.common.caution)
