"""The reference of the rulebook: the form of a row, every topic, what each shipped text says."""

import csv
import io
from pathlib import Path

from sootline.core.rulebook import SCOPES, TOPICS, Edition, Rule, RuleKind, Topic, value_text
from sootline.files.rules import RuleFiles
from sootline.words import name

REFERENCE = Path(__file__).parents[2] / "docs" / "reference"
PAGE = """# Rules

Made from the program itself by `make docs`; do not edit.

`rules.csv` beside this page lists every topic a rule can speak on, the form of its value, and what
each shipped text says. "ask" is a value nobody here has read: read it in your own licensed copy and
enter it as department policy. A dash is silence. `sootline rules show EDITION` prints each value
with its source and how well it is known. Check every value against your own licensed copy; label
and maker's guide count where they are stricter.

## A row

A rule file holds `[[rule]]` rows; a job's `department.policy` holds the same rows as JSON objects.

| Field | Meaning |
|---|---|
| `topic` | one of the topics in `rules.csv` |
| `value` | the number with its unit (`"105 °F / 40 °C"`, `"10 years"`), a word, or a list |
| `unset`, `question` | instead of a value: `true`, and `"ask."` with the topic |
| `traits` | what the row is confined to, any one of them; left out, it is every component |
| `source` | where the value was read, as a citation in your own words |
| `confidence` | `high`, `medium`, `low`, `memory`, `practice`, `policy` or `stated` |
| `in_force` | since when; left out, since the edition is |
| `decision` | in a policy looser than the edition: who decided and on which day |

A decision is written `"A. Name, 2026-02-01"`. A row may be confined to:
{scopes}.
"""


def reference() -> dict[Path, bytes]:
    """Return the page and the table."""
    scopes = ",\n".join(f"`{scope}`" for scope in sorted(SCOPES))
    return {
        REFERENCE / "rules.md": PAGE.format(scopes=scopes).encode(),
        REFERENCE / "rules.csv": _table().encode(),
    }


def _table() -> str:
    files = RuleFiles()
    texts = [*map(files.edition, files.editions()), files.practice()]
    table = io.StringIO()
    writer = csv.writer(table, lineterminator="\n")
    writer.writerow(["topic", "about", "form", *(text.id for text in texts)])
    for topic in TOPICS.values():
        said = (_said(text, topic) for text in texts)
        writer.writerow([topic.id, name("topic", topic.id), _form(topic), *said])
    return table.getvalue()


def _form(topic: Topic) -> str:
    words, side = ", ".join(topic.words), f"{topic.side.value} " if topic.side else ""
    return {
        RuleKind.LIMIT: f"{side}({topic.unit})",
        RuleKind.INTERVAL: f"{side}(months or years)",
        RuleKind.COUNT: f"{side}(number of {topic.unit})",
        RuleKind.LIST: f"any of: {words}",
        RuleKind.CHOICE: f"one of: {words}",
    }[topic.kind]


def _said(text: Edition, topic: Topic) -> str:
    return "; ".join(_value(rule) for rule in text.rules if rule.topic == topic.id) or "-"


def _value(rule: Rule) -> str:
    confined = f" ({', '.join(rule.traits)})" if rule.traits else ""
    return f"{value_text(rule) or 'ask'}{confined}"
