"""Guesses, PINs, recovery codes, and the department's policy on people."""

import datetime as dt

import pytest

from sootline.core.basis import BadInputError
from sootline.tasks.guessing import FREE, MOST, may_guess, wait_after
from sootline.tasks.people_policy import PolicyLine, PolicyTable, settle_policy
from sootline.tasks.pins import check_pin
from sootline.tasks.second_factor import draw_recovery_codes, read_recovery_code

_NOW = dt.datetime(2026, 3, 1, 3, 40, tzinfo=dt.UTC)


def _said(pin: str, known: str = "218") -> list[str]:
    try:
        check_pin(pin, least=6, known=known)
    except BadInputError as error:
        return [fault.message for fault in error.faults]
    return []


def test_the_first_few_guesses_are_free() -> None:
    """A glove slips; nobody waits for that."""
    assert {wait_after(failures) for failures in range(FREE)} == {dt.timedelta()}


def test_waits_grow_and_end() -> None:
    """From a quarter of a minute to a quarter of an hour, and never longer."""
    waits = [wait_after(failures) for failures in range(FREE, MOST)]

    assert waits == sorted(waits)
    assert (waits[0].total_seconds(), waits[-1].total_seconds()) == (15, 900)


def test_a_guess_too_early_is_not_looked_at() -> None:
    """And a second later it is."""
    wait = wait_after(8)

    assert not may_guess(8, _NOW, _NOW + wait - dt.timedelta(seconds=1))
    assert may_guess(8, _NOW, _NOW + wait)


def test_a_hundred_failures_in_a_row_are_the_end() -> None:
    """Source: NIST SP 800-63B-4, 3.2.2: no more than 100 in a row for one account."""
    late = _NOW + dt.timedelta(days=3650)

    assert may_guess(99, _NOW, late)
    assert not may_guess(100, _NOW, late)


@pytest.mark.parametrize("pin", ["", "12345", "1" * 13, "12345a", "١٢٣٤٥٦", " 12345"])
def test_what_is_no_pin(pin: str) -> None:
    """Too short, too long, or no plain digits."""
    assert _said(pin) == ["accounts.pin.length"]


@pytest.mark.parametrize(
    "pin", ["000000", "123456", "987654", "890123", "121212", "218218", "000218"]
)
def test_pins_that_anybody_would_try(pin: str) -> None:
    """A repeat, a run, two digits over and over, the number on the locker."""
    assert _said(pin) == ["accounts.pin.simple"]


@pytest.mark.parametrize(("pin", "known"), [("480913", "218"), ("112358", ""), ("218904", "218")])
def test_pins_that_will_do(pin: str, known: str) -> None:
    """Anything else of six digits."""
    assert _said(pin, known) == []


def test_recovery_codes_differ_and_are_read_however_typed() -> None:
    """In capitals, with blanks, without the dashes between groups."""
    codes = draw_recovery_codes()
    third = codes[2]
    number, _, rest = third.text.partition("-")
    typed = f" {number}-{rest.replace('-', ' ').upper()} "

    assert len({code.text.partition("-")[2] for code in codes}) == 10
    assert read_recovery_code(third.text) == third
    assert read_recovery_code(typed) == third


@pytest.mark.parametrize(
    "typed", ["", "3", "3-", "3-abcd", "x-abcd-efgh-ijkm", "123-abcd-efgh-ijkm", "123456"]
)
def test_what_is_no_recovery_code(typed: str) -> None:
    """Nothing else has the form of one."""
    assert read_recovery_code(typed) is None


def _table(**values: int) -> PolicyTable:
    names = {"idle": "device.idle_min", "digits": "pin.digits", "own": "entry.own_h",
             "session": "session.whole_h"}  # fmt: skip
    return PolicyTable(
        line=tuple(
            PolicyLine(id=names[name], value=value, least=1, most=48)
            for name, value in values.items()
        )
    )


_SHIPPED = _table(idle=3, digits=6, own=24, session=12)


def test_a_department_has_its_own_values() -> None:
    """What it does not name stays as shipped."""
    policy = settle_policy(_SHIPPED, _table(idle=10))

    assert (policy.idle, policy.pin_digits) == (dt.timedelta(minutes=10), 6)
    assert (policy.own_entry, policy.session) == (dt.timedelta(hours=24), dt.timedelta(hours=12))


def test_every_fault_of_a_policy_is_listed() -> None:
    """A value out of its range and a line nobody knows, each by its name."""
    own = PolicyTable(line=(PolicyLine(id="pin.digits", value=60), PolicyLine(id="x", value=1)))
    with pytest.raises(BadInputError) as refused:
        settle_policy(_SHIPPED, own)

    assert [(fault.place, fault.message) for fault in refused.value.faults] == [
        ("pin.digits", "accounts.policy.range"), ("x", "accounts.policy.unknown"),
    ]  # fmt: skip
