"""How messages are said: placeholders, names of ids, plurals, languages, and what is missing."""

import subprocess
import sys

from sootline.words import languages, name, say


def test_values_are_put_into_the_sentence() -> None:
    """A sentence carries the value it was given."""
    assert '"12 furlongs"' in say("basis.quantity.unit", {"text": "12 furlongs", "unit": "fur"})


def test_values_may_come_as_pairs() -> None:
    """Findings hold pairs; a mapping and pairs say the same."""
    pairs = (("text", "2019-13"),)

    assert say("basis.span.no_such_day", dict(pairs)) == say("basis.span.no_such_day", pairs)


def test_braces_in_a_value_are_left_alone() -> None:
    """A value from outside cannot call for other values."""
    said = say("basis.quantity.unit", {"text": "{unit}", "unit": "secret"})

    assert '"{unit}"' in said


def test_an_id_is_called_by_its_name() -> None:
    """A value that is an id is said in words, in the reader's language."""
    values = {"edition": "label", "rule": "label.wash_temp", "source": "s", "confidence": "stated"}

    assert "the label" in say("cli.ground.line", values)
    assert "la etiqueta" in say("cli.ground.line", values, lang="es")


def test_ids_in_a_list_are_named_one_by_one() -> None:
    """A comma-separated list of ids is a list of names."""
    values = {"edition": "label, guide", "rule": "r", "source": "s", "confidence": "high"}

    assert "the label, the maker's guide" in say("cli.ground.line", values)


def test_an_id_without_a_name_stays_as_it_is() -> None:
    """A code nobody named is shown, not hidden."""
    assert name("kind", "no-such-kind") == "no-such-kind"


def test_n_chooses_the_plural() -> None:
    """One fault is one thing; several are counted."""
    assert "One thing" in say("cli.faults.heading", {"n": "1"})
    assert "3 things" in say("cli.faults.heading", {"n": "3"})


def test_an_n_that_is_no_whole_number_counts_as_many() -> None:
    """An interval or an unknown number does not read as one."""
    assert "1-2 things" in say("cli.faults.heading", {"n": "1-2"})


def test_a_missing_value_is_visible() -> None:
    """A forgotten value shows as a gap with its name."""
    assert "[unit?]" in say("basis.quantity.unit", {"text": "5 x"})


def test_a_missing_message_is_shown_with_its_values() -> None:
    """A message without text still tells which it is and what it would have named."""
    said = say("care.no_such.message", {"limit": "105 °F", "piece": "C1"})

    assert said == "[care.no_such.message] limit = 105 °F; piece = C1"


def test_no_id_reaches_outside_the_catalogues() -> None:
    """A hostile id or language finds no file and raises nothing."""
    assert say("../../etc/passwd.x").startswith("[../../etc/passwd.x]")
    assert say("basis.limit.mixed", {"text": "x"}, lang="../en") == say(
        "basis.limit.mixed", {"text": "x"}
    )


def test_a_country_falls_back_to_its_language() -> None:
    """Spanish of a country is Spanish where no text of that country exists."""
    said = say("cli.help.version", lang="es_MX")

    assert said == say("cli.help.version", lang="es") != say("cli.help.version")


def test_an_absent_language_falls_back_to_english() -> None:
    """What no catalogue of the language has is said in English."""
    assert say("cli.help.version", lang="nl") == say("cli.help.version", lang="en")


def test_english_comes_first_among_the_languages() -> None:
    """The list of languages begins with the one that has every text."""
    assert languages()[0] == "en"
    assert "es" in languages()


def test_importing_words_opens_no_catalogue() -> None:
    """A catalogue is opened when its first message is asked for."""
    script = (
        "import sys; opened = [];"
        "sys.addaudithook(lambda e, a: opened.append(str(a[0])) if e == 'open' else None);"
        "import sootline.words; print(sum(p.endswith('.mo') for p in opened));"
        "sootline.words.say('cli.help.version'); print(sum(p.endswith('.mo') for p in opened))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )

    assert done.stdout.split() == ["0", "1"]
