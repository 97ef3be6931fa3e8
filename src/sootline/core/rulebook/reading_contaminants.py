"""What does a file ask for each contaminant, and what is wrong with it?"""

import re

from sootline.core.basis import BadInputError, Confidence, ContaminantId, MessageId
from sootline.core.rulebook.contaminants import ContaminantRule, Decider, Knowledge, Level
from sootline.core.rulebook.fields import Fields

_ID = re.compile(r"[a-z]{2,20}(-[a-z]{2,20}){0,3}", re.ASCII)
_CAUTION = re.compile(r"hazard\.caution\.[a-z_]{2,60}", re.ASCII)
_UNKNOWN = re.compile(r"hazard\.unknown\.[a-z_]{2,60}", re.ASCII)
MOST_ROWS = 500
_LONGEST_HOLD_H = 24 * 14


def read_contaminants(mapping: object, place: str) -> tuple[ContaminantRule, ...]:
    """Read the rows of a file of contaminants.

    Args:
        mapping: the file, already parsed.
        place: how faults point at it.

    Raises:
        BadInputError: every fault of the file.
    """
    fields = Fields(mapping, place)
    rows = fields.take("contaminant")
    if not isinstance(rows, list) or not 0 < len(rows) <= MOST_ROWS:
        fields.fault("contaminant", "rules.fault.rows", limit=str(MOST_ROWS))
        rows = []
    rules: list[ContaminantRule] = []
    for index, row in enumerate(rows):
        inside = Fields(row, f"{place}: contaminant[{index}]")
        rule = _contaminant(inside)
        if rule and any(other.id == rule.id for other in rules):
            inside.fault("id", "rules.fault.twice", found=rule.id)
        elif rule:
            rules.append(rule)
        fields.faults.extend(inside.faults)
    faults = fields.finish()
    if faults:
        raise BadInputError(faults)
    return tuple(rules)


def _contaminant(fields: Fields) -> ContaminantRule | None:
    identity = fields.text("id")
    if identity and not _ID.fullmatch(identity):
        fields.fault("id", "rules.fault.contaminant_id", found=identity[:60])
    known, suspected = fields.word("known", tuple(Level)), fields.word("suspected", tuple(Level))
    if known and suspected and Level(suspected).rank > Level(known).rank:
        fields.fault("suspected", "rules.fault.levels", known=known, suspected=suspected)
    disinfect, own_load = fields.flag("disinfect"), fields.flag("own_load")
    alone, seal = fields.flag("alone"), fields.flag("seal")
    holds_when = fields.words("holds_when", tuple(Knowledge))
    if Knowledge.ABSENT in holds_when:
        fields.fault("holds_when", "rules.fault.holds_absent")
    decider = fields.word("decider", tuple(Decider), needed=False) or Decider.SAFETY_OFFICER
    deputy = fields.word("deputy", tuple(Decider), needed=False) or Decider.CHIEF
    if decider == deputy:
        fields.fault("deputy", "rules.fault.deputy", found=deputy)
    hours = fields.number("escalate_after_h", usual=12, lowest=1, highest=_LONGEST_HOLD_H)
    cautions, not_known = (
        _messages(fields, "cautions", _CAUTION),
        _messages(fields, "not_known", _UNKNOWN),
    )
    source = fields.text("source")
    confidence = fields.word("confidence", tuple(Confidence))
    if fields.finish():
        return None
    return ContaminantRule(
        id=ContaminantId(identity),
        known=Level(known),
        suspected=Level(suspected),
        disinfect=disinfect,
        holds_when=tuple(Knowledge(word) for word in holds_when),
        decider=Decider(decider),
        deputy=Decider(deputy),
        escalate_after_h=hours,
        own_load=own_load,
        alone=alone,
        seal=seal,
        cautions=cautions,
        not_known=not_known,
        source=source,
        confidence=Confidence(confidence),
    )


def _messages(fields: Fields, field: str, form: re.Pattern[str]) -> tuple[MessageId, ...]:
    names = fields.names(field)
    for index, name in enumerate(names):
        if not form.fullmatch(name):
            fields.fault(f"{field}[{index}]", "rules.fault.message", found=name[:60])
    return tuple(MessageId(name) for name in names)
