"""Is this password good enough, and if not, what is wrong with it?

Source: NIST SP 800-63B-4, section 3.1.1.2: at least 15 signs where a password is the only factor,
no rules on its make-up, a list of what is too common, words of the service and its people.
"""

import re
from typing import TYPE_CHECKING

from django.conf import settings
from django.core.exceptions import ValidationError

if TYPE_CHECKING:
    from sootline.storage.models import User

ALONE = 15
LONGEST = 200
_ALWAYS = ("sootline", "password", "firefighter", "fire", "department", "station", "rescue",
           "bunker", "turnout", "captain", "chief", "engine", "ladder", "truck")  # fmt: skip
_OTHER_SIGNS = re.compile(r"[\W\d_]+")


class LongEnough:
    """Holds a password to its least and greatest length."""

    def validate(self, password: str, user: "User | None" = None) -> None:  # noqa: ARG002
        """Refuse one too short or too long.

        Raises:
            ValidationError: with the limit.
        """
        if not ALONE <= len(password) <= LONGEST:
            raise ValidationError(
                "accounts.password.length",
                code="length",
                params={"least": ALONE, "most": LONGEST, "length": len(password)},
            )

    def get_help_text(self) -> str:
        """Return the message that says the rule."""
        return "accounts.password.length"


class NotOurWords:
    """Refuses passwords that are nothing but words known in the house, and digits."""

    def validate(self, password: str, user: "User | None" = None) -> None:
        """Refuse a password that leaves less than half its length once known words are out.

        Raises:
            ValidationError: it is made of the department's or the person's own words.
        """
        rest = password.casefold()
        for word in sorted(_words(user), key=len, reverse=True):
            rest = rest.replace(word, "")
        rest = _OTHER_SIGNS.sub("", rest)
        # One sign over and over is as good as known.
        if len(rest) * 2 < min(len(password), ALONE) or len(set(rest)) < len(rest) / 4:
            raise ValidationError("accounts.password.words", code="words")

    def get_help_text(self) -> str:
        """Return the message that says the rule."""
        return "accounts.password.words"


def _words(user: "User | None") -> set[str]:
    given = [*_ALWAYS, *settings.DEPARTMENT_WORDS]
    if user is not None:
        given += [user.name, user.member, user.station]
    return {part.casefold() for word in given for part in _OTHER_SIGNS.split(word) if len(part) > 2}
