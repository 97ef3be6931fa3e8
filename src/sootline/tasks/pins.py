"""Will this PIN do?"""

from collections.abc import Iterator
from itertools import pairwise

from sootline.core.basis import BadInputError, Fault, MessageId

LONGEST = 12


def check_pin(pin: str, *, least: int, known: str = "") -> None:
    """Refuse a PIN that is too short, no number, or the first that anybody would try.

    Args:
        least: the fewest digits.
        known: what stands on the person's locker: the member's number.

    Raises:
        BadInputError: with everything wrong.
    """
    faults = [
        Fault(place="pin", message=MessageId(message),
              values=(("least", str(least)), ("most", str(LONGEST))))
        for message in _wrong(pin, least, known)
    ]  # fmt: skip
    if faults:
        raise BadInputError(faults)


def _wrong(pin: str, least: int, known: str) -> Iterator[str]:
    if not (pin.isascii() and pin.isdigit()) or not least <= len(pin) <= LONGEST:
        yield "accounts.pin.length"
        return
    steps = {(int(after) - int(before)) % 10 for before, after in pairwise(pin)}
    # 000000, 123456, 987654; 121212; the number everybody knows, alone or over and over.
    simple = len(steps) == 1 and steps <= {0, 1, 9}
    again = pin == (pin[:2] * len(pin))[: len(pin)]
    digits = "".join(sign for sign in known if sign.isdigit())
    own = bool(digits) and not pin.replace(digits, "").strip("0")
    if simple or again or own:
        yield "accounts.pin.simple"
