"""Does this code come from the secret that somebody's authenticator holds, and is it new?

Source: RFC 4226 (the code of a counter), RFC 6238 (the counter is the time in steps of 30 s).
"""

import base64
import datetime as dt
import hmac
import secrets
from dataclasses import dataclass
from typing import Literal
from urllib.parse import quote, urlencode

STEP_S = 30
DIGITS = 6
SECRET_BYTES = 20  # RFC 4226, section 4, R6: 160 bits are recommended
# One step either way: RFC 6238, section 5.2, recommends at most one for the time a code travels.
DRIFT_STEPS = 1
RECOVERY_CODES = 10
_RECOVERY_SIGNS = "23456789abcdefghjkmnpqrstuvwxyz"
_GROUPS, _GROUP = 3, 4

Algorithm = Literal["sha1", "sha256", "sha512"]


@dataclass(frozen=True, kw_only=True)
class RecoveryCode:
    """A code on paper, good once, for when the authenticator is lost.

    Args:
        number: tells the codes of one list apart, from 1.
        text: as printed and typed, the number in front ("3-k7wq-m4xd-9bt2").
    """

    number: int
    text: str


def code_at(
    secret: bytes, step: int, *, digits: int = DIGITS, algorithm: Algorithm = "sha1"
) -> str:
    """Return the code of one step.

    Args:
        step: steps of 30 s since the beginning of 1970 in UTC.
    """
    digest = hmac.digest(secret, step.to_bytes(8, "big"), algorithm)
    at = digest[-1] & 0x0F
    number = int.from_bytes(digest[at : at + 4], "big") & 0x7FFF_FFFF
    return str(number % 10**digits).zfill(digits)


def step_at(moment: dt.datetime) -> int:
    """Return the step a moment lies in."""
    return int(moment.timestamp()) // STEP_S


def find_step(secret: bytes, typed: str, now: dt.datetime, *, last: int) -> int | None:
    """Return the step whose code was typed; None where it is none, or one that was used before.

    Args:
        last: the last step a code of which was taken; it and all before it are spent.
    """
    given, here = "".join(typed.split()), step_at(now)
    if len(given) != DIGITS or not (given.isascii() and given.isdigit()):
        return None
    found = None
    # Every step is compared, so that the time taken tells nothing.
    for step in range(here - DRIFT_STEPS, here + DRIFT_STEPS + 1):
        if hmac.compare_digest(code_at(secret, step), given) and step > last:
            found = step
    return found


def shown_secret(secret: bytes) -> str:
    """Return a secret as it is typed by hand, in groups of four."""
    text = base64.b32encode(secret).decode("ascii").rstrip("=")
    return " ".join(text[at : at + 4] for at in range(0, len(text), 4))


def address_of(secret: bytes, account: str, issuer: str) -> str:
    """Return the address an authenticator reads from a code picture."""
    label = quote(f"{issuer}:{account}", safe="")
    asked = {"secret": shown_secret(secret).replace(" ", ""), "issuer": issuer}
    return f"otpauth://totp/{label}?{urlencode(asked, quote_via=quote)}"


def draw_recovery_codes() -> tuple[RecoveryCode, ...]:
    """Draw a list of recovery codes by chance; each holds some 59 bits."""
    return tuple(
        RecoveryCode(number=number, text="-".join((str(number), *_drawn())))
        for number in range(1, RECOVERY_CODES + 1)
    )


def read_recovery_code(typed: str) -> RecoveryCode | None:
    """Read a recovery code as somebody types it; None where it has not the form of one."""
    number, dash, _ = "".join(typed.split()).lower().partition("-")
    signs = "".join(typed.split()).lower().removeprefix(number).replace("-", "")
    if not dash or not number.isdigit() or len(number) > 2 or len(signs) != _GROUPS * _GROUP:
        return None
    groups = (signs[at : at + _GROUP] for at in range(0, len(signs), _GROUP))
    return RecoveryCode(number=int(number), text="-".join((str(int(number)), *groups)))


def _drawn() -> list[str]:
    return ["".join(secrets.choice(_RECOVERY_SIGNS) for _ in range(_GROUP)) for _ in range(_GROUPS)]
