"""Job documents are read strictly, every fault with its place, and written back the same."""

import json
from typing import Any

import jsonschema
import pytest

from sootline.core.basis import BadInputError, quantity
from sootline.core.job.codec import decode, encode, schema
from sootline.core.job.jobs import Job


def document(**changes: object) -> dict[str, Any]:
    """Return a small job document."""
    whole: dict[str, Any] = {
        "version": 1,
        "now": "2026-03-01T04:00:00-07:00",
        "department": {"name": "Sallowby", "edition": "nfpa-1851/2020"},
        "components": [{"id": "0412", "kind": "coat-shell", "size": {"chest": "46"}}],
    }
    return whole | changes


def faults_of(whole: object) -> dict[str, str]:
    """Return the faults of a document: place to message."""
    text = whole if isinstance(whole, str) else json.dumps(whole)
    with pytest.raises(BadInputError) as refused:
        decode(Job, text)
    return {fault.place: fault.message for fault in refused.value.faults}


def test_reads_values_kept_as_entered() -> None:
    """A label in °C stays in °C, a month stays a month."""
    component = {
        "id": "0412",
        "kind": "coat-shell",
        "mass": "4.2 lb",
        "made": "2019-05",
        "label": {"care": {"wash_temp": "40 °C"}},
    }

    job = decode(Job, json.dumps(document(components=[component])))

    read = job.components[0]
    assert read.mass == quantity("4.2 lb")
    assert str(read.made) == "2019-05"
    assert str(read.label.care.wash_temp) == "at most 40 °C"


def test_writes_back_what_it_read() -> None:
    """Encoding and decoding again gives the same job."""
    component = {
        "id": "0412",
        "kind": "coat-shell",
        "made": "2012-09..2015-07-10",
        "label": {"care": {"wash_temp": "105 °F / 40 °C", "dry_temp": None}},
    }
    job = decode(Job, json.dumps(document(components=[component])))

    again = decode(Job, encode(Job, job))

    assert again == job


def test_lists_every_fault_with_its_place() -> None:
    """One reading of a bad document names all that is wrong with it."""
    component = {"kind": 5, "made": "2019-13", "mass": "7 stone", "colour": "tan"}
    whole = document(now="2026-03-01T04:00:00", components=[component])
    del whole["department"]["name"]

    faults = faults_of(whole)

    assert faults == {
        "now": "basis.moment.no_offset",
        "department.name": "job.missing",
        "components[0].id": "job.missing",
        "components[0].kind": "job.not_fit",
        "components[0].made": "basis.span.no_such_day",
        "components[0].mass": "basis.quantity.unit",
        "components[0].colour": "job.unknown_field",
    }


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("{nope", "job.not_json"),
        ("[" * 100_000, "job.not_json"),
        ("null", "job.empty"),
        ("[]", "job.not_fit"),
        ('"x"', "job.not_fit"),
    ],
)
def test_refuses_what_is_no_document(text: str, message: str) -> None:
    """Text that is no job document is refused in one line."""
    assert faults_of(text) == {"document": message}


@pytest.mark.parametrize(
    ("field", "value", "message"),
    [
        ("version", "1", "job.not_fit"),
        ("version", 1.5, "job.not_fit"),
        ("version", True, "job.not_fit"),
        ("title", "x" * 500, None),
        ("members", {}, "job.not_fit"),
        ("components", [{"id": "a", "kind": "hood", "size": {"hand": [1]}}], "size"),
        ("components", [{"id": "a", "kind": "hood", "size": [1]}], "size"),
        ("components", [{"id": "a", "kind": "hood", "made": 2017}], "made"),
        ("components", [{"id": "a", "kind": "hood", "state": {"stage": "shiny"}}], "stage"),
    ],
)
def test_does_not_coerce(field: str, value: object, message: str | None) -> None:
    """A number in quotes is no number, a list is no mapping, a year as a number is no date."""
    if message is None:
        assert decode(Job, json.dumps(document(**{field: value})))
        return

    faults = faults_of(document(**{field: value}))

    assert [place for place, said in faults.items() if message in (said, place.split(".")[-1])]


def test_names_long_values_shortly() -> None:
    """A fault never repeats a megabyte of input."""
    with pytest.raises(BadInputError) as refused:
        decode(Job, json.dumps(document(version="9" * 1_000_000)))

    assert all(len(text) < 200 for _, text in refused.value.faults[0].values)


def test_schema_accepts_what_the_reader_accepts() -> None:
    """The published schema is a JSON Schema and takes a document the reader takes."""
    described = schema(Job)

    jsonschema.Draft202012Validator.check_schema(described)
    jsonschema.validate(document(), described)


def test_schema_refuses_unknown_fields() -> None:
    """The published schema is as strict about fields as the reader."""
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document(colour="tan"), schema(Job))


def test_faults_of_a_policy_row_keep_their_place() -> None:
    """A department's own rule is read like a row of a rule file, each fault at its field."""
    row = {"topic": "wash.bath_temp", "value": "very hot", "confidence": "policy"}
    department = {"name": "Sallowby", "edition": "nfpa-1851/2020", "policy": [row]}

    faults = faults_of(document(department=department))

    assert all(place.startswith("department.policy[0].") for place in faults)
    assert len(faults) == 2
