"""How does a rule look in a job document? As a row, in the form of a row of a rule file."""

from sootline.core.basis import Confidence, Schema, document_form
from sootline.core.rulebook.reading import read_rule
from sootline.core.rulebook.rules import Rule
from sootline.core.rulebook.topics import SCOPES, TOPICS, value_text


class RuleForm:
    """Marks a rule that stands in a document as a row."""

    @staticmethod
    def read(value: object) -> Rule:
        """Read the row.

        Raises:
            BadInputError: every fault of the row.
        """
        return value if isinstance(value, Rule) else read_rule(value, "")

    def __get_pydantic_core_schema__(self, _source: object, _handler: object) -> Schema:
        return document_form(self.read, write_rule)

    def __get_pydantic_json_schema__(self, _schema: object, _handler: object) -> Schema:
        text: Schema = {"type": "string"}
        words: Schema = {"type": "array", "items": text}
        properties: dict[str, Schema] = {
            "topic": {"enum": list(TOPICS)},
            "value": {"type": ["string", "array"], "items": text, "examples": ["105 °F / 40 °C"]},
            "unset": {"type": "boolean"},
            "question": text,
            "traits": {**words, "items": {"enum": sorted(SCOPES)}},
            "source": text,
            "confidence": {"enum": [confidence.value for confidence in Confidence]},
            "in_force": text,
            "decision": {**text, "examples": ["A. Name, 2026-02-01"]},
        }
        needed = ["topic", "source", "confidence"]
        return {
            "type": "object",
            "properties": properties,
            "required": needed,
            "additionalProperties": False,
        }


def write_rule(rule: Rule) -> dict[str, object]:
    """Return the row that reads as this rule."""
    row: dict[str, object] = {"topic": rule.topic}
    if rule.value is None:
        row |= {"unset": True, "question": rule.question}
    else:
        row["value"] = list(rule.value) if isinstance(rule.value, tuple) else value_text(rule)
    if rule.traits:
        row["traits"] = list(rule.traits)
    row |= {"source": rule.source, "confidence": rule.confidence.value}
    if rule.in_force:
        row["in_force"] = str(rule.in_force)
    return row | ({"decision": rule.decision} if rule.decision else {})
