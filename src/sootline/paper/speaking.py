"""How does a sheet say a thing in one language or two?

A said thing is a list of one or two texts. Two equal texts (a number, a name without translation)
are one.
"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sootline.core.basis import Finding
from sootline.paper.page import Page
from sootline.words import name, say

Said = list[str]
Value = str | int | Said


@dataclass(frozen=True, kw_only=True)
class Speaker:
    """Says messages, names and moments in the languages of a page."""

    page: Page

    def say(self, message: str, **values: Value) -> Said:
        """Say a message; a value that was said itself is put in language by language."""
        return _once(
            say(message, {key: _text(value, i) for key, value in values.items()}, lang=lang)
            for i, lang in enumerate(self.page.languages)
        )

    def tell(self, finding: Finding) -> Said:
        """Say the sentence of a finding."""
        return self.say(finding.message, **dict(finding.values))

    def name(self, category: str, identity: str) -> Said:
        """Name an id, or show it where it has no name."""
        return _once(name(category, identity, lang=lang) for lang in self.page.languages)

    def names(self, category: str, identities: Iterable[str]) -> Said:
        """Name several ids in a row."""
        listed = tuple(identities)
        return _once(
            ", ".join(name(category, one, lang=lang) for one in listed)
            for lang in self.page.languages
        )

    def moment(self, moment: dt.datetime) -> Said:
        """Say a moment on the department's clocks, with the month in letters."""
        local = self.page.local(moment)
        return self.say(
            "paper.moment",
            weekday=self.name("weekday", str(local.isoweekday())),
            day=local.day,
            month=self.name("month", str(local.month)),
            year=local.year,
            time=f"{local:%H:%M}",
        )

    def day(self, day: dt.date) -> str:
        """Name a day shortly, in the page's first language."""
        return f"{self.name('weekday', str(day.isoweekday()))[0]} {day.day}"

    def time(self, moment: dt.datetime) -> Said:
        """Say the time of day, with its day where that is not the day of printing."""
        local = self.page.local(moment)
        if local.date() == self.page.local(self.page.printed_at).date():
            return [f"{local:%H:%M}"]
        weekday = self.name("weekday", str(local.isoweekday()))
        return self.say("paper.time_on", weekday=weekday, day=local.day, time=f"{local:%H:%M}")


def _text(value: Value, index: int) -> str:
    if isinstance(value, list):
        return value[min(index, len(value) - 1)] if value else ""
    return str(value)


def _once(texts: Iterable[str]) -> Said:
    return list(dict.fromkeys(texts))


def joined(parts: Sequence[Said], between: str = ", ") -> Said:
    """Put several said things into one, language by language; nothing from nothing."""
    wide = max((len(part) for part in parts), default=0)
    return _once(between.join(_text(part, i) for part in parts) for i in range(wide))
