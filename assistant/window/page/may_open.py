"""What this shop's people may open: asked once, where shop.yaml does not say it, and written down there."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.trail.error import TrailError
from assistant.trail.shop_file import say_may
from assistant.walk.ask import Ask
from assistant.walk.event import ShopMay
from assistant.window import look
from assistant.window.desk import Desk
from assistant.window.page.base import Page
from assistant.window.session import Driver
from assistant.window.text import label

YES, NO = "yes, we may", "no, not ours"


class MayOpenPage(Page):
    """One button for each thing, which says yes or no; a digit turns it over. Next keeps the answer for every
    visit to come."""

    next_words = "&Keep this"

    def __init__(self, driver: Driver, desk: Desk, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        openings = driver.vocabulary.openings
        asked = ask.untold[0]
        self.column.addWidget(label("What may your shop's people open?", look.QUESTION))
        self.column.addWidget(label(
            f"The next step opens {openings.get(asked, asked)}. Asked once; shop.yaml keeps it. Local codes "
            "and licences decide. Where it is not yours, the walk takes another way.", look.LEAD))
        self.buttons: dict[str, QPushButton] = {}
        for number, (name, title) in enumerate(openings.items(), 1):
            button = QPushButton()
            button.setCheckable(True)
            button.setFont(look.font(look.LEAD))
            button.setMinimumHeight(look.TARGET)
            button.toggled.connect(lambda _=False, name=name: self._word(name))
            button.setProperty("title", f"{number}  {title[0].upper()}{title[1:]}")
            self.buttons[name] = button
            self.column.addWidget(button)
            self._word(name)
        self.column.addStretch(1)

    def first_focus(self) -> QWidget:
        return next(iter(self.buttons.values()), self.next_button)

    def choose(self, digit: int) -> None:
        if digit <= len(self.buttons):
            list(self.buttons.values())[digit - 1].toggle()

    def enter(self) -> None:
        may = {name: "yes" if button.isChecked() else "no" for name, button in self.buttons.items()}
        if not self.record(ShopMay(self.driver.now(), may)):
            return
        try:
            say_may(self.desk.shop_path, [name for name, said in may.items() if said == "yes"])
            self.desk.forget_shop()
        except TrailError:  # this visit knows it; the next one asks again
            pass
        self.left.emit()

    def _word(self, name: str) -> None:
        button = self.buttons[name]
        words = f"{button.property('title')}: {YES if button.isChecked() else NO}"
        button.setText(words)
        button.setAccessibleName(words)
