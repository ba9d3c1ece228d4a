"""The workbench by hand: found by a word, worked out as it is typed, into the trail, onto paper, and back."""

from __future__ import annotations

import pytest
from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel
from test_geometry import inside
from test_names import check

from assistant.resources import trees_folder
from assistant.trade.registry import REGISTRY
from assistant.tree.library import read_folder
from assistant.walk.event import WorkedOut
from assistant.window import files, look
from assistant.window.app import dress
from assistant.window.page.bench.find import BenchPage
from assistant.window.page.bench.paper import printed
from assistant.window.page.bench.sheet import SheetPage
from tests.report.pdf_reader import pages, squeezed

CTRL = Qt.KeyboardModifier.ControlModifier


def words(hand) -> str:
    return "\n".join(each.text() for each in hand.page.findChildren(QLabel) if each.isVisible())


@pytest.fixture
def start(qtbot, window):
    """The list of visits, no visit open."""
    window.show_start()
    return Hand(qtbot, window).rest()


@pytest.fixture
def sheet(start):
    """`sheet("heat_rise", supply="120 F")`: a hand on that page, its fields typed."""

    def come(name: str, **texts: str):
        start.window.open(f"sheet:{name}")
        start.rest()
        for field in start.page.fields:
            if field.argument.name in texts:
                field.write(texts[field.argument.name])
        return start.rest()

    return come


def after_rise(at):
    """The page after the walk worked out a rise of 60."""
    hand = at("to_watch")
    hand.page.start()
    hand.enter().enter()
    return hand.type("130").enter().type("70").enter().enter()


def test_found_by_a_word_and_worked_out_with_keys_alone(start):
    """From the list of visits: Ctrl+B, a word, Enter, two numbers with Enter, the answer stands."""
    start.key(Qt.Key.Key_B, CTRL)
    assert isinstance(start.page, BenchPage)
    start.type("temperature rise furnace").enter()
    assert isinstance(start.page, SheetPage)
    assert start.page.entry.name == "heat_rise"
    assert start.verdict == "Still missing: supply, return air."
    start.type("120").enter().type("68").enter()
    assert start.verdict == "heat rise 52 °F"
    assert "heat rise = supply - return air = 120 - 68 = 52 °F" in words(start)
    assert "Source: " in words(start)
    assert start.page.next_button.hasFocus()
    start.key(ESCAPE)
    assert type(start.page).__name__ == "BenchPage"
    assert start.page.find.text() == "temperature rise furnace"
    assert start.page.entries[start.page.listed.currentRow()].name == "heat_rise"
    start.key(ESCAPE)
    assert type(start.page).__name__ == "StartPage"


def test_what_is_typed_stays_when_the_page_is_left(sheet):
    """Also what is not understood."""
    hand = sheet("heat_rise", supply="12o")
    hand.press("Back")
    hand = sheet("heat_rise")
    assert hand.page.fields[0].text == "12o"


def test_a_technician_types_amps(start):
    """The list holds what takes or gives amperes, and says how many."""
    start.key(Qt.Key.Key_B, CTRL).type("amps")
    names = [entry.name for entry in start.page.entries]
    assert {"capacitance", "motor_amps", "breaker_trip_window"} <= set(names)
    assert "heat_rise" not in names
    assert start.verdict == f"{len(names)} computations"
    start.key(Qt.Key.Key_A, CTRL).type("zzz")
    assert start.verdict.startswith("No computation")


def test_bad_text_is_told_beside_its_field_and_kept(sheet):
    """Not a number, a comma in doubt, out of range: a sentence each, nothing worked out, nothing changed."""
    hand = sheet("heat_rise", supply="1,200", return_air="900")
    first, second = hand.page.fields
    assert "1200 or 1.200" in first.echo.text()
    assert "outside what this can be (from -40 to 400 °F)" in second.echo.text()
    assert (first.text, second.text) == ("1,200", "900")
    assert not hand.page.worked.done
    assert not hand.page.print_way.isEnabled()


def test_the_unit_of_a_field_can_be_another(sheet):
    """A tap gives the next unit; what was typed stays and means another value."""
    hand = sheet("heat_rise", supply="50", return_air="68")
    hand.tap(hand.page.fields[0].unit_button)
    assert hand.page.fields[0].unit_button.text() == "°C"
    assert hand.page.fields[0].text == "50"
    assert hand.verdict == "heat rise 54 °F"


def test_units_in_si_and_back(sheet):
    """The same values in other units; what was typed comes back as it was typed."""
    hand = sheet("system_static", static=".50", airflow="1200", new_airflow="900")
    assert hand.verdict == "static 0.2812 in. w.c."
    hand.press("Units")
    assert [f.text for f in hand.page.fields[:3]] == ["124.544", "566.337", "424.753"]
    assert hand.verdict == "static 70.06 Pa"
    assert hand.page.plot.y.unit == "Pa"
    hand.press("Units")
    assert [f.text for f in hand.page.fields[:3]] == [".50", "1200", "900"]
    assert hand.verdict == "static 0.2812 in. w.c."


def test_a_list_of_ducts_draws_its_plot(sheet):
    """A comma separates the items; the answer in words and the picture's own words."""
    hand = sheet("duct_system", diameters="7, 7, 6", lengths="12,18,10", zones="1,1,2", wanted="1400")
    assert "this system can never move that much air" in words(hand)
    assert hand.page.picture_view.isVisible()
    assert "Blower and ducts" in hand.page.picture_view.accessibleName()
    hand.page.fields[1].write("12, 18")
    hand.rest()
    assert "'lengths' has 2 values and 'diameters' has 3" in hand.verdict
    assert not hand.page.picture_view.isVisible()


def test_fields_with_a_usual_value_stay_folded_until_asked_for(sheet):
    """Three fields less; they count all the same once typed."""
    hand = sheet("friction_rate", airflow="400", diameter="10")
    assert not hand.page.fields[2].title.isVisible()
    hand.press("Also")
    assert hand.page.fields[2].buttons[0].isVisible()
    before = hand.verdict
    hand.press("flexible")
    assert hand.verdict != before


def test_from_the_walks_own_computation_and_back(at):
    """Ctrl+B on the page after it: the inputs stand in the fields. Esc: the same question, nothing lost."""
    hand = after_rise(at)
    beneath = hand.page
    assert hand.button("On the workbench").isVisible()
    hand.key(Qt.Key.Key_B, CTRL)
    assert isinstance(hand.page, SheetPage)
    assert {f.argument.name: (f.text, f.unit) for f in hand.page.fields} == {
        "supply": ("130", "F"),
        "return_air": ("70", "F"),
    }
    assert hand.verdict == "heat rise 60 °F"
    assert "draws it: in range" in words(hand)
    hand.key(ESCAPE)
    assert hand.page is beneath


def test_a_result_goes_into_the_trail(at):
    """As an event with what was typed, its units, and what came out; the walk stands where it stood."""
    hand = at("to_volts").type("11")
    step = hand.step
    hand.key(Qt.Key.Key_B, CTRL).type("capacitance from amps").enter()
    hand.type("1.4").enter().type("375").enter()
    assert hand.page.keep_way.hasFocus()
    hand.key(Qt.Key.Key_Space)
    event = hand.driver.visit.events[-1]
    assert isinstance(event, WorkedOut)
    assert event.given == {"amps": "1.4 A", "volts": "375 V"}
    assert event.result == "capacitance 9.903 µF"
    assert hand.verdict.startswith("In the trail: capacitance 9.903")
    trail = next(path for path in hand.driver.folder.iterdir() if path.suffix == ".jsonl")
    assert "worked_out" in trail.read_text(encoding="utf-8").splitlines()[-1]
    hand.enter()
    assert hand.step == step
    assert hand.page.entry.text == "11"


def test_a_scale_waits_for_the_rating_plate_and_then_judges_by_it(sheet, desk):
    """Nothing is judged by a plate that nobody read: its values are asked for, and stay as typed."""
    desk.library = read_folder(trees_folder())
    hand = sheet("heat_rise", supply="116.6", return_air="67")
    plate = hand.page.result.plate
    assert sorted(plate.lines) == ["rise_max", "rise_min"]
    assert not any(scale.isVisible() for _, scale in hand.page.result.views)
    hand.tap(plate.lines["rise_min"]).type("35")
    assert not any(scale.isVisible() for _, scale in hand.page.result.views)
    hand.tap(plate.lines["rise_max"]).type("650")
    assert "No plate says so: highest temperature rise" in words(hand)
    hand.key(Qt.Key.Key_Backspace)
    scale = hand.page.result.views[0][1]
    assert scale.isVisible()
    assert "draws it: inside the plate's range" in words(hand)
    assert scale.drawn.numbers[1:] == ("35 °F", "65 °F")
    hand.press("Pad").tap(plate.lines["rise_max"]).tap(hand.page.pad.keys["⌫"]).tap(hand.page.pad.keys["5"])
    assert plate.lines["rise_max"].text() == "65"
    hand.key(ESCAPE)
    again = sheet("heat_rise").page.result.plate
    assert [again.lines[name].text() for name in ("rise_min", "rise_max")] == ["35", "65"]


def test_in_si_the_formula_the_scale_and_the_plate_are_in_si_too(sheet, desk):
    desk.library = read_folder(trees_folder())
    hand = sheet("heat_rise", supply="116.6", return_air="67")
    lines = hand.page.result.plate.lines
    lines["rise_min"].setText("36")
    lines["rise_max"].setText("63")
    hand.press("Units")
    assert "heat rise = supply - return air = 47 - 19.44 = 27.56 K" in words(hand)
    assert [lines[name].text() for name in ("rise_min", "rise_max")] == ["20", "35"]
    scale = hand.page.result.views[0][1]
    assert scale.drawn.numbers[1:] == ("20 K", "35 K")
    assert "35 K" in scale.accessibleName()
    hand.press("Units")
    assert scale.drawn.numbers[1:] == ("36 °F", "63 °F")


def test_a_formula_that_holds_in_us_units_alone_says_so(sheet):
    """1.08 is Btu/h for each cfm and °F: in SI the line says which units it is in, and what that is."""
    hand = sheet("airflow_from_rise", heat="64000", rise="60")
    hand.press("Units")
    assert "In US customary units: airflow = heat / (factor × rise) = 64000 / (1.08 × 60)" in words(hand)
    assert "which is 466.1 L/s" in words(hand)


def test_what_was_left_empty_is_printed_with_its_number(sheet):
    """The printed page holds everything that the result rests on."""
    hand = sheet("friction_rate", airflow="400", diameter="10")
    page = hand.page
    text = squeezed(pages(printed(page.entry, page.fields, page.worked, None, page.system, None))[0].text)
    assert "altitude0ft" in text
    assert "temperature70°F" in text
    assert "galvanized" in text


def test_one_page_of_paper(sheet, tmp_path, monkeypatch):
    """A PDF; a place that can't be written to gets a sentence."""
    hand = sheet("breaker_trip_window", amps="40", rating="20")
    place = tmp_path / "page.pdf"
    monkeypatch.setattr(files, "pick_file", lambda *_: place)
    hand.press("Print")
    assert place.read_bytes().startswith(b"%PDF")
    assert str(place) in hand.verdict
    monkeypatch.setattr(files, "pick_file", lambda *_: tmp_path / "no" / "page.pdf")
    hand.press("Print")
    assert "can't be written" in hand.verdict


def test_a_finger_alone_works_something_out(start):
    """From the list of visits by taps: the workbench, a row, the pad, two fields, the answer."""
    start.press("Workbench")
    page = start.page
    row = [entry.name for entry in page.entries].index("heat_rise")
    page.listed.setCurrentRow(row)
    start.press("Open it").press("Pad")
    for key in ("1", "2", "0", "Enter", "6", "8", "Enter"):
        start.tap(start.page.pad.keys[key])
    assert start.verdict == "heat rise 52 °F"
    assert start.page.fields[1].text == "68"
    start.tap(start.page.fields[0].line).tap(start.page.pad.keys["⌫"]).tap(start.page.pad.keys["5"])
    assert start.page.fields[0].text == "125"


def test_without_a_visit_nothing_offers_the_trail(sheet):
    hand = sheet("heat_rise", supply="120", return_air="68")
    assert not hand.page.keep_way.isVisible()


@pytest.mark.parametrize("name", ["heat_rise", "duct_system", "breaker_trip_window", "difference"])
@pytest.mark.parametrize("size", [(1024, 600), (512, 300), (1360, 820)], ids=["small", "tiny", "wide"])
def test_names_sizes_and_what_stays_in_sight(sheet, size, name):
    """Accessible names are unique and hold the visible words; field, result and the big button are in
    sight.
    """
    hand = sheet(name)
    hand.window.resize(*size)
    hand.rest()
    check(hand.window)
    first = hand.page.fields[0].first()
    first.setFocus()
    hand.page.scroll.ensureWidgetVisible(first, 0, 20)
    hand.rest()
    assert inside(hand.window, first)
    assert inside(hand.window, hand.page.next_button)
    assert inside(hand.window, hand.page.verdict)
    for button in hand.buttons():
        assert button.height() >= look.TARGET
        assert button.width() >= look.TARGET


@pytest.mark.parametrize("size", [(1024, 600), (512, 300)], ids=["small", "tiny"])
def test_the_list_has_names_and_keeps_its_button(start, size):
    start.window.resize(*size)
    start.key(Qt.Key.Key_B, CTRL)
    check(start.window)
    assert inside(start.window, start.page.next_button)
    assert inside(start.window, start.page.find)


def test_every_computation_has_a_page_that_works_its_example_out(qtbot, window, desk):
    """156 pages made from the registry, each with its own example typed into it; none says anything is
    wrong.
    """
    from assistant.trade.entry import example_text

    wrong = []
    for entry in REGISTRY.values():
        page = SheetPage(desk, None, entry.name)
        for field in page.fields:
            field.write(example_text(field.argument).partition("=")[2])
        if not page.worked.done:
            wrong.append(f"{entry.name}: {page.worked.problem or page.worked.missing}")
        page.deleteLater()
    assert wrong == []


def test_a_dark_page_draws_in_the_palettes_own_inks(sheet, qapp):
    """The plot's paper is the palette's, and its lines can be told from it."""
    dress(qapp, look.dark_palette())
    hand = sheet("friction_rate", airflow="400", diameter="10")
    picture = hand.page.picture_view.grab().toImage()
    ink = look.inks(QApplication.palette())
    spots = [(x, y) for x in range(0, picture.width(), 2) for y in range(0, 200, 2)]
    colours = {picture.pixelColor(x, y).name() for x, y in spots}
    assert ink.paper.name() in colours
    assert ink.accent.name() in colours
    assert "#ffffff" not in colours
