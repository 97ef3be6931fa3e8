"""Whether source and catalogues agree: every id has its text, every text its use."""

import ast
import enum
import importlib
import pkgutil
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.docs import message_ids, words
from tests.docs.message_ids import Used, entries, python_trees, used

import sootline.core
from sootline.words import languages, name
from sootline.words.saying import PLACEHOLDER

# Enumerations whose members are compared by code and never said to a person. Only what core
# holds as an enumeration is asked for; ids from rule files (contaminants) are named by hand.
NEVER_SAID = {
    "laundry.rooms.Hanging": "how a drying place counts its units; the place's own name is said",
    "rulebook.rules.RuleKind": "the shape of a rule's value; the value itself is said",
    "exposure.code_table.Question": "each question is a message of its own",
    "exposure.codes.CodeForm": "how a code was read; the code itself is said",
    "washplan.items.Stage": "an order of events inside the simulation of a plan",
    "basis.quantities.Standing": "the result of a comparison; the finding says it",
    "upkeep.contractor.receipts.Arrival": "each arrival is a message of its own",
    "washplan.kernel.arrays.Part": "a place in the arrays of the compiled search",
    "washplan.rules.HandRule": "named in tables of figures only",
    "washplan.follow.StepKind": "a key of the simulation; the sheets say the steps",
}


@pytest.fixture(scope="module")
def in_use() -> Used:
    """Every message id and pattern of ids in the source."""
    return used()


def test_every_message_id_has_an_english_text(in_use: Used) -> None:
    """No reader ever meets a bare id."""
    texts = entries("en")
    lacking = [f"{i} ({where})" for i, where in in_use.ids.items() if i not in texts]

    assert not lacking, "no text for:\n" + "\n".join(sorted(lacking))


def test_every_pattern_of_ids_has_an_english_text(in_use: Used) -> None:
    """An id put together from parts comes out at texts that are there."""
    texts = entries("en")
    lacking = [
        f"{pattern} ({where})"
        for pattern, where in in_use.patterns.items()
        if not any(re.fullmatch(pattern, i) for i in texts)
    ]

    assert not lacking, "no text for:\n" + "\n".join(sorted(lacking))


@pytest.mark.parametrize("lang", languages())
def test_no_catalogue_has_a_text_nobody_uses(lang: str, in_use: Used) -> None:
    """A dead text is deleted, so that translators never work for nothing."""
    texts = [entry for entry in entries(lang).values() if entry.domain != "name"]

    assert [e.message_id for e in texts if not in_use.covers(e.message_id)] == []


@pytest.mark.parametrize("lang", languages())
def test_every_named_id_occurs_in_the_source(lang: str) -> None:
    """A name belongs to an id the source, or its data, spells out."""
    said = {entry.message_id.split(".", 2)[2] for entry in entries(lang).values()
            if entry.domain == "name"}  # fmt: skip

    assert said - _spelled_out() == set()


@pytest.mark.parametrize("lang", languages())
def test_texts_stand_in_the_catalogue_of_their_domain(lang: str) -> None:
    """A text is found only in the catalogue named by the first part of its id."""
    assert [e for e in entries(lang).values() if e.message_id.split(".")[0] != e.domain] == []


@pytest.mark.parametrize("lang", languages())
def test_no_text_is_written_twice(lang: str) -> None:
    """Two texts for one id would leave it to chance which is said."""
    for path in sorted(words.LOCALE.glob(f"{lang}/*/*.po")):
        ids = re.findall(r'^msgid "(.+)"$', path.read_text(encoding="utf-8"), re.MULTILINE)

        assert len(ids) == len(set(ids)), path.name


@pytest.mark.parametrize("lang", [lang for lang in languages() if lang != "en"])
def test_a_translation_names_the_same_values(lang: str) -> None:
    """A translator neither loses a limit nor names a value that is not there."""
    english = entries("en")

    assert {
        i: _placeholders(entry.forms)
        for i, entry in entries(lang).items()
        if i not in english or _placeholders(entry.forms) != _placeholders(english[i].forms)
    } == {}


def test_texts_name_only_values_they_are_given() -> None:
    """Wherever the source spells out a message's values, the text asks for no others."""
    texts = entries("en")
    lacking = {
        message: _placeholders(texts[message].forms) - given
        for message, given in _values_given()
        if message in texts
    }

    assert {message: names for message, names in lacking.items() if names} == {}


def test_compiled_catalogues_are_up_to_date() -> None:
    """What is shipped is what people edited; `make words` compiles."""
    stale = [path.name for path, content in words.compiled().items()
             if path.read_bytes() != content]  # fmt: skip

    assert stale == []


def test_every_member_of_an_enumeration_has_a_name() -> None:
    """What a decision may say of stage, place, method or person is said in words."""
    names = entries("en")
    nameless = [
        f"name.{_category(kind)}.{member.value} ({kind.__module__})"
        for kind in _enumerations()
        if f"{kind.__module__.removeprefix('sootline.core.')}.{kind.__name__}" not in NEVER_SAID
        for member in kind
        if f"name.{_category(kind)}.{member.value}" not in names
    ]

    assert not nameless, "no name for:\n" + "\n".join(nameless)


def test_a_name_need_not_differ_from_the_id() -> None:
    """A plain word may be its own name."""
    assert name("bearing", "limits") == "limit"


def test_the_scan_finds_ids_in_each_form(tmp_path: Path) -> None:
    """Ids spelled out, completed by a function, and put together are all found."""
    (tmp_path / "stage.py").write_text(
        "def fault(place, message):\n    return MessageId(f'basis.{message}')\n"
        "fault('p', 'one.two')\nfault('p', f'{step}.once')\n"
        "A = MessageId('fresh.domain.id')\nB = 'fresh.other.id'\nC = f'files.{kind}.gone'\n"
        "D = 'files.json'\nE = 'wash.bath_temp'\n"
    )
    found = message_ids.used(tmp_path)

    assert set(found.ids) == {"basis.one.two", "fresh.domain.id", "fresh.other.id"}
    assert found.covers("basis.dry.once")
    assert found.covers("files.a.gone")
    assert not found.covers("basis.dry.twice")


def _placeholders(forms: tuple[str, ...]) -> set[str]:
    return {match[1] for form in forms for match in PLACEHOLDER.finditer(form)}


def _values_given() -> Iterator[tuple[str, set[str]]]:
    """Messages whose values stand as keywords of the same call, with the names of those."""
    for tree in python_trees().values():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in (
                "finding", "UnreadableValueError", "UsageError",
            ):  # fmt: skip
                names = {word.arg for word in node.keywords}
                for argument in node.args:
                    if isinstance(argument, ast.Constant) and None not in names:
                        yield str(argument.value), {name for name in names if name}


def _spelled_out() -> set[str]:
    """Every string constant of the source, and every text and table name of its data."""
    found: set[str] = set()
    for tree in python_trees().values():
        found |= {str(n.value) for n in ast.walk(tree) if isinstance(n, ast.Constant)}
    for path in message_ids.SOURCE.rglob("*.toml"):
        found |= set(re.findall(r"[A-Za-z0-9_/.-]+", path.read_text(encoding="utf-8")))
    return found


def _enumerations() -> list[type[enum.Enum]]:
    found = []
    for module in pkgutil.walk_packages(sootline.core.__path__, "sootline.core."):
        for thing in vars(importlib.import_module(module.name)).values():
            if (
                isinstance(thing, type)
                and issubclass(thing, enum.Enum)
                and thing.__module__ == module.name
            ):
                found.append(thing)
    return found


def _category(kind: type[enum.Enum]) -> str:
    """Return the name category of an enumeration: CareStage is care_stage."""
    return re.sub(r"(?<!^)(?=[A-Z])", "_", kind.__name__).lower()
