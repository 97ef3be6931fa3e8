"""A department's policy inside a job document."""

import json

import pytest
from jsonschema import Draft202012Validator

from sootline.core.basis import BadInputError
from sootline.core.job.codec import decode, encode, schema
from sootline.core.job.jobs import Department

ROW: dict[str, object] = {
    "topic": "wash.company",
    "value": "liners",
    "traits": ["soft"],
    "source": "invented order 4",
    "confidence": "policy",
    "in_force": "2025-01",
    "decision": "A. Name, 2025-01-15",
}
UNSET: dict[str, object] = {
    "topic": "dry.air_temp",
    "unset": True,
    "question": "ask.dry.air_temp",
    "source": "invented order 4",
    "confidence": "policy",
}


def department(*rows: dict[str, object]) -> dict[str, object]:
    """Make a department's document with these policy rows."""
    return {"name": "Invented", "edition": "nfpa-1851/2020", "policy": list(rows)}


def test_a_policy_is_written_as_it_was_read() -> None:
    """A row has the same form in a job as in a rule file."""
    document = department(ROW, UNSET)
    read = decode(Department, json.dumps(document))

    assert json.loads(encode(Department, read)) == document


def test_the_schema_accepts_the_rows_the_reader_accepts() -> None:
    """Whoever checks a job against the schema first is not misled."""
    validator = Draft202012Validator(schema(Department))

    assert validator.is_valid(department(ROW, UNSET))
    assert not validator.is_valid(department({**ROW, "side": "at least"}))
    assert not validator.is_valid(department({**ROW, "traits": ["soff"]}))


def test_every_fault_of_every_row_has_its_place() -> None:
    """The place leads to the row and the field."""
    rows = department({**ROW, "value": "boots"}, {**UNSET, "question": "ask.x"})
    with pytest.raises(BadInputError) as refusal:
        decode(Department, json.dumps(rows))

    assert {(fault.place, fault.message) for fault in refusal.value.faults} == {
        ("policy[0].value", "rules.fault.word"),
        ("policy[1].question", "rules.fault.question"),
    }
