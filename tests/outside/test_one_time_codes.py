"""Codes of an authenticator against the values the standards print."""

import base64
import datetime as dt
from urllib.parse import parse_qs, urlsplit

import pytest

from sootline.tasks.second_factor import Algorithm, address_of, code_at, find_step, step_at

_SECRETS: dict[Algorithm, bytes] = {
    "sha1": b"12345678901234567890",
    "sha256": b"12345678901234567890123456789012",
    "sha512": b"1234567890123456789012345678901234567890123456789012345678901234",
}
# RFC 6238, appendix B: seconds since 1970, then the eight-digit code by each hash.
_TIMES = [
    (59, "94287082", "46119246", "90693936"),
    (1111111109, "07081804", "68084774", "25091201"),
    (1111111111, "14050471", "67062674", "99943326"),
    (1234567890, "89005924", "91819424", "93441116"),
    (2000000000, "69279037", "90698825", "38618901"),
    (20000000000, "65353130", "77737706", "47863826"),
]
# RFC 4226, appendix D: the six-digit codes of the counters 0 to 9.
_COUNTERS = ["755224", "287082", "359152", "969429", "338314",
             "254676", "287922", "162583", "399871", "520489"]  # fmt: skip


@pytest.mark.parametrize(("second", "sha1", "sha256", "sha512"), _TIMES)
def test_codes_of_a_time(second: int, sha1: str, sha256: str, sha512: str) -> None:
    """Every row of the standard's table, by every hash."""
    step = step_at(dt.datetime.fromtimestamp(second, tz=dt.UTC))
    found = [code_at(key, step, digits=8, algorithm=name) for name, key in _SECRETS.items()]

    assert found == [sha1, sha256, sha512]


@pytest.mark.parametrize(("counter", "code"), list(enumerate(_COUNTERS)))
def test_codes_of_a_counter(counter: int, code: str) -> None:
    """The six digits an authenticator shows."""
    assert code_at(_SECRETS["sha1"], counter) == code


def test_a_code_counts_once_and_a_step_early_or_late() -> None:
    """One step of drift either way is taken, two are not, and no code twice.

    Source: RFC 6238, section 5.2 (at most one step for the time a code travels; a second use of
    one code must not be taken).
    """
    secret, now = _SECRETS["sha1"], dt.datetime(2026, 3, 1, 3, 40, tzinfo=dt.UTC)
    here = step_at(now)
    found = [find_step(secret, code_at(secret, here + off), now, last=0) for off in range(-2, 3)]

    assert found == [None, here - 1, here, here + 1, None]
    assert find_step(secret, code_at(secret, here), now, last=here) is None
    assert find_step(secret, code_at(secret, here - 1), now, last=here) is None


@pytest.mark.parametrize("typed", ["", "12345", "1234567", "abcdef", "١٢٣٤٥٦", "-12345"])
def test_what_is_no_code(typed: str) -> None:
    """Anything but six plain digits is none."""
    now = dt.datetime(2026, 3, 1, tzinfo=dt.UTC)

    assert find_step(_SECRETS["sha1"], typed, now, last=0) is None


def test_a_code_may_be_typed_with_a_blank_between() -> None:
    """Authenticators show "123 456"."""
    secret, now = _SECRETS["sha1"], dt.datetime(2026, 3, 1, tzinfo=dt.UTC)
    code = code_at(secret, step_at(now))

    assert find_step(secret, f"{code[:3]} {code[3:]}", now, last=0) == step_at(now)


def test_the_address_of_a_code_picture() -> None:
    """It names issuer and account, and its secret is base 32 without padding.

    Source: the key address form that authenticators read, as their makers document it; value from
    memory.
    """
    address = urlsplit(address_of(_SECRETS["sha1"], "maren lund", "Sootline"))
    asked = parse_qs(address.query)

    assert (address.scheme, address.netloc) == ("otpauth", "totp")
    assert address.path == "/Sootline%3Amaren%20lund"
    assert asked["issuer"] == ["Sootline"]
    assert base64.b32decode(asked["secret"][0]) == _SECRETS["sha1"]
