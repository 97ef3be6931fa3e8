"""The shipped rule files and the `rules` command, as a reader meets them."""

import json
from pathlib import Path

import pytest
from babel.messages.pofile import read_po

from sootline.cli.main import main
from sootline.core.basis import BadInputError, EditionId
from sootline.core.rulebook import TOPICS
from sootline.core.rulebook.reading import duplicates
from sootline.files.rules import RuleFiles, read_policy
from sootline.words.catalogues import LOCALE

EDITIONS = ("iso-23616/2024", "nfpa-1850/2026", "nfpa-1851/2014", "nfpa-1851/2020")
LOOSE = """
[[rule]]
topic = "wash.bath_temp"
value = "60 °C"
source = "invented order 4"
confidence = "policy"
"""


@pytest.fixture
def policy(tmp_path: Path) -> Path:
    """Write a department's file that permits more than the edition."""
    path = tmp_path / "own.toml"
    path.write_text(LOOSE, encoding="utf-8")
    return path


def test_the_editions_there_are() -> None:
    """Four texts; common practice is not one to adopt."""
    assert RuleFiles().editions() == EDITIONS


@pytest.mark.parametrize("edition", EDITIONS)
def test_every_shipped_row_can_be_read_and_cited(edition: str) -> None:
    """Each has its source and date, and none speaks twice."""
    rules = RuleFiles().edition(EditionId(edition)).rules

    assert all(rule.source and rule.in_force is not None for rule in rules)
    assert duplicates(rules, edition) == ()


def test_common_practice_sets_no_limit_on_washing_or_drying() -> None:
    """Practice speaks on methods; a number of nobody's is no limit."""
    topics = {rule.topic for rule in RuleFiles().practice().rules}

    assert not topics & {"wash.bath_temp", "wash.extraction", "dry.air_temp", "retire.months"}


@pytest.mark.parametrize("lang", ["en", "es"])
def test_every_topic_has_its_name_and_every_unset_one_its_question(lang: str) -> None:
    """Nobody is asked for a value in words that are not there."""
    texts: set[str] = set()
    for domain in ("ask", "name"):
        with (LOCALE / lang / "LC_MESSAGES" / f"{domain}.po").open("rb") as file:
            texts |= {str(message.id) for message in read_po(file) if message.string}
    rules = [rule for each in EDITIONS for rule in RuleFiles().edition(EditionId(each)).rules]
    asked = {rule.question for rule in rules if rule.value is None}

    assert asked - texts == set()
    assert {f"name.topic.{topic}" for topic in TOPICS} - texts == set()


def test_an_edition_that_is_not_there_names_those_that_are() -> None:
    """A path is not an edition, whatever it points at."""
    with pytest.raises(BadInputError) as refusal:
        RuleFiles().edition(EditionId("../practice/common"))

    assert dict(refusal.value.faults[0].values)["known"] == ", ".join(EDITIONS)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("[[rule]", "rules.fault.toml"),
        ("a = 1\na = 2", "rules.fault.toml"),
        ("rule = " + "[" * 5000, "rules.fault.toml"),
        ("", "rules.fault.rows"),
        (LOOSE + LOOSE, "rules.fault.duplicate"),
    ],
)
def test_a_damaged_policy_file_is_refused(tmp_path: Path, text: str, message: str) -> None:
    """With what is wrong in it, never a traceback."""
    path = tmp_path / "own.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadInputError) as refusal:
        read_policy(path)

    assert message in {fault.message for fault in refusal.value.faults}


@pytest.mark.parametrize("lang", ["en", "es"])
@pytest.mark.parametrize(
    "typed",
    [
        ["rules", "show"],
        *(["rules", "show", edition] for edition in EDITIONS),
        ["rules", "compare", "nfpa-1851/2014", "nfpa-1850/2026"],
    ],
)
def test_everything_shown_has_its_words(
    typed: list[str], lang: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """No reader meets a bare id or a value nobody gave; every line fits."""
    code = main([*typed, "--lang", lang])
    shown = capsys.readouterr().out

    assert code == 0
    assert "[rules." not in shown
    assert "[ask." not in shown
    assert "?]" not in shown
    assert max(len(line) for line in shown.splitlines()) <= 100


def test_a_looser_policy_is_shown_with_both_values(
    policy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The officer sees what was asked for, what the edition says, and that it is not used."""
    main(["rules", "show", "nfpa-1851/2020", "--topic", "wash.bath_temp", "--policy", str(policy)])
    shown = " ".join(capsys.readouterr().out.split())

    assert "60 °C" in shown
    assert "105 °F / 40 °C" in shown
    assert "not used" in shown


def test_a_decision_is_shown_with_name_and_day(
    policy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whoever loosened the edition stands beside the value."""
    policy.write_text(LOOSE + 'decision = "A. Name, 2026-02-01"\n', encoding="utf-8")
    main(["rules", "show", "nfpa-1851/2020", "--topic", "wash.bath_temp",
          "--of", "coat-shell", "--policy", str(policy)])  # fmt: skip
    shown = " ".join(capsys.readouterr().out.split())

    assert "department policy: at most 60 °C" in shown
    assert "decided by A. Name, 2026-02-01" in shown


def test_a_comparison_as_json_names_each_change(capsys: pytest.CaptureFixture[str]) -> None:
    """Another program reads the same answer."""
    code = main(["rules", "compare", "nfpa-1851/2014", "nfpa-1851/2020", "--json"])
    document = json.loads(capsys.readouterr().out)
    changes = {one["topic"]: one["change"] for one in document["differences"]}

    assert code == 0
    assert changes["clean.advanced.count_in_12_months"] == "changed"
    assert changes["inspect.liner.first_months"] == "now-unset"
    assert "wash.bath_temp" not in changes


def test_a_comparison_over_a_job_names_the_pieces_reached(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """More than a dozen are counted, not all printed."""
    pieces = [{"id": f"C{number:02}", "kind": "coat-shell"} for number in range(13)]
    job = {
        "version": 1,
        "now": "2026-03-01T07:00:00+00:00",
        "department": {"name": "Invented", "edition": "nfpa-1851/2014"},
        "components": pieces,
    }
    path = tmp_path / "job.json"
    path.write_text(json.dumps(job), encoding="utf-8")
    code = main(["rules", "compare", "nfpa-1851/2014", "nfpa-1851/2020", "--job", str(path)])
    shown = " ".join(capsys.readouterr().out.split())

    assert code == 0
    assert "reaches 13 pieces: C00, C01" in shown
    assert "C11, ..." in shown


@pytest.mark.parametrize(
    "typed",
    [
        ["rules", "show", "nfpa-1851/2021"],
        ["rules", "show", "nfpa-1851/2020", "--topic", "washing"],
        ["rules", "show", "nfpa-1851/2020", "--of", "shall"],
        ["rules", "compare", "nfpa-1851/2020", "nowhere"],
        ["rules", "show", "nfpa-1851/2020", "--policy", "absent.toml"],
        ["rules"],
    ],
)
def test_what_is_not_there_ends_as_bad_input(
    typed: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 2 and a sentence, no traceback."""
    assert main(typed) == 2
    assert "Traceback" not in capsys.readouterr().err
