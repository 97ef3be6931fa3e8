"""What does a row of a rule file say, field by field, and what is wrong with it?"""

from collections.abc import Collection, Mapping

from sootline.core.basis import DateSpan, Fault, MessageId, UnreadableValueError

LONGEST_TEXT = 500


class Fields:
    """Takes one mapping apart and keeps every fault it meets; a faulty field reads as empty.

    Args:
        mapping: a table of a TOML file or an object of a JSON document, already parsed.
        place: how faults point at it.
    """

    def __init__(self, mapping: object, place: str) -> None:
        self.place = place
        self.faults: list[Fault] = []
        self._rest: dict[str, object] = {}
        if isinstance(mapping, Mapping):
            self._rest = {str(name): value for name, value in mapping.items()}
        else:
            self.fault("row", "rules.fault.no_table", found=_shown(mapping))
        self._lost = bool(self.faults)

    def fault(self, field: str, message: str, /, **values: str) -> None:
        """Note one fault, at a field or, with an empty name, at the whole row."""
        place = ".".join(part for part in (self.place, field) if part)
        named = tuple(values.items())
        self.faults.append(Fault(place=place, message=MessageId(message), values=named))

    def has(self, field: str) -> bool:
        """Whether the field is there and was not read yet."""
        return field in self._rest

    def take(self, field: str) -> object:
        """Hand out a field as it stands; None is absent."""
        return self._rest.pop(field, None)

    def text(self, field: str, *, needed: bool = True) -> str:
        """Read a text; an absent one is a fault when it is needed."""
        value = self.take(field)
        if value is None:
            if needed and not self._lost:
                self.fault(field, "rules.fault.missing", field=field)
            return ""
        if not isinstance(value, str) or not value.strip() or not value.isprintable():
            self.fault(field, "rules.fault.text", field=field, found=_shown(value))
            return ""
        if len(value) > LONGEST_TEXT:
            limit = str(LONGEST_TEXT)
            self.fault(field, "rules.fault.long", field=field, n=str(len(value)), limit=limit)
            return ""
        return value.strip()

    def word(self, field: str, words: Collection[str], *, needed: bool = True) -> str:
        """Read one word out of those known."""
        value = self.text(field, needed=needed)
        if value and value not in words:
            self.fault(field, "rules.fault.word", found=_shown(value), known=_listed(words))
            return ""
        return value

    def words(self, field: str, words: Collection[str], *, empty: bool = True) -> tuple[str, ...]:
        """Read a list of known words, none of them twice.

        Args:
            empty: whether a list without words says anything.
        """
        value = self.take(field)
        if value is None:
            return ()
        if not isinstance(value, list | tuple):
            self.fault(field, "rules.fault.list", field=field, found=_shown(value))
            return ()
        if not value and not empty:
            self.fault(field, "rules.fault.empty", field=field)
        for index, word in enumerate(value):
            if not isinstance(word, str) or word not in words:
                known = _listed(words)
                self.fault(f"{field}[{index}]", "rules.fault.word", found=_shown(word), known=known)
            elif word in value[:index]:
                self.fault(f"{field}[{index}]", "rules.fault.twice", found=word)
        return tuple(word for word in value if isinstance(word, str) and word in words)

    def names(self, field: str) -> tuple[str, ...]:
        """Read a list of texts that no list of words confines (message ids)."""
        value = self.take(field)
        if value is None:
            return ()
        if not isinstance(value, list | tuple) or not all(isinstance(name, str) for name in value):
            self.fault(field, "rules.fault.list", field=field, found=_shown(value))
            return ()
        return tuple(str(name) for name in value)

    def flag(self, field: str) -> bool:
        """Read a yes or no; absent is no."""
        value = self.take(field)
        if value is not None and not isinstance(value, bool):
            self.fault(field, "rules.fault.flag", field=field, found=_shown(value))
        return value is True

    def number(self, field: str, *, usual: int, lowest: int, highest: int) -> int:
        """Read a whole number within bounds; absent is the usual one."""
        value = self.take(field)
        if value is None:
            return usual
        if isinstance(value, bool) or not isinstance(value, int) or not lowest <= value <= highest:
            found, limit = _shown(value), f"{lowest}..{highest}"
            self.fault(field, "rules.fault.number", field=field, found=found, limit=limit)
            return usual
        return value

    def date(self, field: str) -> DateSpan | None:
        """Read a date or span; absent or unreadable is None."""
        text = self.text(field, needed=False)
        try:
            return DateSpan.parse(text) if text else None
        except UnreadableValueError as error:
            self.unreadable(field, error)
            return None

    def unreadable(self, field: str, error: UnreadableValueError) -> None:
        """Note a value that could not be read, in the words of whoever tried."""
        self.fault(field, error.message, **dict(error.values))

    def finish(self) -> tuple[Fault, ...]:
        """Return every fault, fields that nobody asked for among them."""
        for field in self._rest:
            self.fault(_shown(field), "rules.fault.unknown_field", field=_shown(field))
        self._rest = {}
        return tuple(self.faults)


def _shown(value: object) -> str:
    text = value if isinstance(value, str) else repr(value)[:200]
    return text if len(text) <= 60 else f"{text[:60]}..."


def _listed(words: Collection[str]) -> str:
    return ", ".join(words if isinstance(words, list | tuple) else sorted(words))
