"""Which files are read, which are refused, and what a refusal tells."""

import json
import tracemalloc
from pathlib import Path

import pytest

from sootline.core.basis import BadInputError, Fault
from sootline.files.reading import (
    MAX_DEPTH,
    MAX_FAULTS,
    MAX_VALUES,
    parse_json,
    read_json,
    read_text,
)


def faults_of(text: str) -> tuple[Fault, ...]:
    """Return what is wrong with a JSON text."""
    with pytest.raises(BadInputError) as caught:
        parse_json(text, name="job.json")
    return caught.value.faults


def places_of(text: str) -> list[tuple[str, str]]:
    """Return places and messages of what is wrong with a JSON text."""
    return [(fault.place, fault.message) for fault in faults_of(text)]


def refusal_of(path: Path) -> Fault:
    """Return why a file is not read."""
    with pytest.raises(BadInputError) as caught:
        read_json(path)
    (fault,) = caught.value.faults
    return fault


def test_a_good_file_is_read_whole(tmp_path: Path) -> None:
    """Text, whole and decimal numbers, lists and objects arrive as written."""
    document = {"é": [1, -2.5, True, None, {"a": "b"}]}
    (tmp_path / "job.json").write_text(json.dumps(document), encoding="utf-8")

    assert read_json(tmp_path / "job.json") == document


def test_a_byte_order_mark_is_dropped(tmp_path: Path) -> None:
    """Spreadsheet programs put one there."""
    (tmp_path / "job.json").write_bytes(b"\xef\xbb\xbf{}")

    assert read_json(tmp_path / "job.json") == {}


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    """The place is the path as it was given."""
    fault = refusal_of(tmp_path / "gone.json")

    assert fault.message == "files.read.missing"
    assert fault.place == str(tmp_path / "gone.json")


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    """A folder is refused as one."""
    assert refusal_of(tmp_path).message == "files.read.folder"


def test_a_name_no_file_can_have_is_refused() -> None:
    """A name with a zero byte does not reach the system."""
    assert refusal_of(Path("a\0b")).message == "files.read.failed"


def test_a_name_longer_than_the_system_allows_is_refused(tmp_path: Path) -> None:
    """What the system says is passed on."""
    assert refusal_of(tmp_path / ("x" * 5000)).message == "files.read.failed"


def test_a_file_over_the_limit_is_refused_without_reading_it_all(tmp_path: Path) -> None:
    """A sparse file of a gigabyte costs no more memory than the limit."""
    with (tmp_path / "huge.json").open("wb") as file:
        file.truncate(1024**3)
    tracemalloc.start()
    fault = refusal_of(tmp_path / "huge.json")
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()

    assert dict(fault.values)["limit"] == "20 MiB"
    assert peak < 64 * 1024**2


def test_a_file_at_the_limit_is_read(tmp_path: Path) -> None:
    """One byte more is refused."""
    (tmp_path / "a.txt").write_bytes(b"12345")

    assert read_text(tmp_path / "a.txt", max_bytes=5) == "12345"
    with pytest.raises(BadInputError):
        read_text(tmp_path / "a.txt", max_bytes=4)


@pytest.mark.parametrize("content", [b'{\n"a": "\xff"}', "{\n}é".encode("latin-1")])
def test_bytes_that_are_no_utf8_are_placed(content: bytes, tmp_path: Path) -> None:
    """The line and the byte are given."""
    (tmp_path / "job.json").write_bytes(content)
    fault = refusal_of(tmp_path / "job.json")

    assert fault.message == "files.read.not_utf8"
    assert fault.place == "job.json:2"


@pytest.mark.parametrize(
    ("text", "place"),
    [('{"a": 1,}', "job.json:1:9"), ("[1,\n2", "job.json:2:2"), ("nonsense", "job.json:1:1")],
)
def test_broken_json_is_placed_by_line_and_column(text: str, place: str) -> None:
    """The place is where reading stopped."""
    assert places_of(text) == [(place, "files.json.syntax")]


@pytest.mark.parametrize("text", ["", " \n"])
def test_an_empty_file_is_said_to_be_empty(text: str) -> None:
    """Nothing is no document."""
    assert places_of(text) == [("job.json", "files.json.empty")]


def test_a_name_twice_in_one_object_is_refused() -> None:
    """Which of two values counts is never left to the reader's luck."""
    assert places_of('{"a": [{"b": 1, "b": 2}]}') == [("job.json: a[0]", "files.json.duplicate")]


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e999", "9" * 5000])
def test_a_number_nobody_can_count_with_is_refused(number: str) -> None:
    """No endless number and none of absurd length gets in."""
    assert places_of(f'{{"a": {number}}}') == [("job.json: a", "files.json.number")]


def test_half_a_character_is_refused() -> None:
    """A text that could not be written again does not get in, as a value or as a name."""
    assert places_of('{"\\ud800": "\\udfff"}')[0][1] == "files.json.half_character"
    assert places_of('["\\ud83d"]') == [("job.json: [0]", "files.json.half_character")]
    assert parse_json('["\\ud83d\\ude92"]', name="x") == ["\U0001f692"]


def test_the_deepest_admitted_nesting_is_read() -> None:
    """At the limit it is read, one deeper it is refused."""
    parse_json("[" * MAX_DEPTH + "]" * MAX_DEPTH, name="x")

    assert places_of("[" * (MAX_DEPTH + 1) + "]" * (MAX_DEPTH + 1))[0][1] == "files.json.depth"


def test_absurd_nesting_is_refused_and_breaks_nothing() -> None:
    """A hundred thousand brackets are one plain fault."""
    assert places_of("[" * 100_000) == [("job.json", "files.json.depth")]


def test_too_many_values_are_refused_before_they_fill_memory() -> None:
    """Millions of little lists are not built."""
    assert places_of("[" + "[]," * MAX_VALUES)[0][1] == "files.json.too_many"


def test_all_faults_of_values_are_listed_in_order() -> None:
    """A reader mends a file once, not fault by fault."""
    assert places_of('{"a": NaN, "b": [1, {"c": 1, "c": 1}, 1e999]}') == [
        ("job.json: a", "files.json.number"),
        ("job.json: b[1]", "files.json.duplicate"),
        ("job.json: b[2]", "files.json.number"),
    ]


def test_the_list_of_faults_is_bounded() -> None:
    """A hostile file does not fill memory with its own faults."""
    assert len(faults_of("[" + "NaN," * (MAX_FAULTS + 10) + "1]")) == MAX_FAULTS


def test_a_long_name_is_shortened_in_a_fault() -> None:
    """A name of a megabyte is not repeated in every fault."""
    (fault,) = faults_of(json.dumps({"k" * 10**6: 1})[:-1] + ', "v": NaN, "v": 1}')[:1]

    assert len(fault.place) < 100


def test_repeating_one_name_many_times_costs_no_more_than_reading() -> None:
    """Doubled names are counted once over, not each against all."""
    text = "{" + ",".join(f'"{n}": 1, "{n}": 2' for n in range(50_000)) + "}"

    assert len(faults_of(text)) == MAX_FAULTS
