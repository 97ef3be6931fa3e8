"""Is a moment unmistakable? Only with its offset from UTC."""

import datetime as dt
from collections.abc import Callable
from typing import Annotated, Any

from sootline.core.basis.errors import UnreadableValueError
from sootline.core.basis.text import Schema


def require_offset(*moments: dt.datetime | None) -> None:
    """Refuse moments without an offset: 02:30 happens twice on the night the clocks go back.

    Raises:
        UnreadableValueError: a moment is given without its offset.
    """
    for moment in moments:
        if moment is not None and moment.utcoffset() is None:
            raise UnreadableValueError("basis.moment.no_offset", text=moment.isoformat())


class MomentForm:
    """Marks a moment that a document must give with its offset from UTC."""

    @staticmethod
    def check(moment: dt.datetime) -> dt.datetime:
        """Return the moment if it carries its offset.

        Raises:
            UnreadableValueError: it does not.
        """
        require_offset(moment)
        return moment

    def __get_pydantic_core_schema__(self, source: Any, handler: Callable[[Any], Schema]) -> Schema:  # noqa: ANN401
        after = {"type": "no-info", "function": self.check}
        return {"type": "function-after", "function": after, "schema": handler(source)}


Moment = Annotated[dt.datetime, MomentForm()]
