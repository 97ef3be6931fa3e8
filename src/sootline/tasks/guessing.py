"""How long must somebody wait who guesses at a code, a PIN or a password, and when is it over?

Source: NIST SP 800-63B-4, section 3.2.2: no more than 100 failures in a row for one account, with
growing waits between them; the figures of the waits are common practice, no published source.
"""

import datetime as dt

FREE = 5
MOST = 100
_FIRST_WAIT_S = 15
_LONGEST_WAIT_S = 900


def wait_after(failures: int) -> dt.timedelta:
    """Return how long to wait after so many failures in a row: nothing, then ever longer."""
    if failures < FREE:
        return dt.timedelta()
    doubled = _FIRST_WAIT_S * 2 ** min(failures - FREE, 20)
    return dt.timedelta(seconds=min(doubled, _LONGEST_WAIT_S))


def may_guess(failures: int, last: dt.datetime, now: dt.datetime) -> bool:
    """Whether another guess is looked at.

    Args:
        last: when the last one was made.
    """
    return failures < MOST and now >= last + wait_after(failures)
