"""On what can a text speak, and in which shape?

What a topic measures and on which side of its value the permitted readings lie are facts of the
topic; what the value is, is a fact of the text that states it and stands in the rule files.
"""

from dataclasses import dataclass

from sootline.core.basis import Limit, Side
from sootline.core.rulebook.contaminants import Level
from sootline.core.rulebook.rules import Rule, RuleKind

ACTS = (
    "machine-wash", "hand-wash", "any-wash", "disinfect", "chlorine-bleach", "oxygen-bleach",
    "softener", "starch", "solvent", "dry-clean", "power-washer", "top-loader", "tumble-dry",
    "heated-dry", "machine-dry", "sun-dry", "iron",
)  # fmt: skip

SCOPES = frozenset(
    (
        # elements of the ensemble
        "coat", "trousers", "coverall", "hood", "gloves", "boots", "helmet", "escape", "mask",
        "other-wear",
        # kinds that are neither an element nor a layer
        "coat-shell", "coat-liner", "drag-device", "wristlets", "name-panel", "mic-strap",
        "trouser-shell", "trouser-liner", "suspenders", "knee-pads", "coverall-shell",
        "coverall-liner", "hood-particulate", "boots-leather", "boots-rubber", "insoles",
        "escape-belt", "escape-kit", "helmet-shell", "helmet-padding", "ear-neck-cover",
        "chin-strap", "face-shield", "goggles", "front-piece",
        "station-wear", "wildland-wear", "rescue-wear",
        # layers: the company a component keeps
        "shell", "liner", "soft", "strap", "pad", "padding", "glove", "boot", "hard", "kit",
        # traits that set a component apart from its kind
        "aluminised", "leather", "rubber", "particulate-blocking", "cbrn",
    )
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Topic:
    """One topic: the shape of its value, and which of two values is the stricter.

    Args:
        unit: of a limit its dimension ("temperature"); of a count what is counted ("cleanings").
        side: where the permitted readings of a number lie; None has no stricter side.
        words: of a list or a choice the words it may use.
        ordered: whether the words of a choice stand in order, the strictest last.
    """

    id: str
    kind: RuleKind
    unit: str = ""
    side: Side | None = None
    words: tuple[str, ...] = ()
    ordered: bool = False


def _limit(topic: str, dimension: str, side: Side) -> Topic:
    return Topic(id=topic, kind=RuleKind.LIMIT, unit=dimension, side=side)


def _months(topic: str) -> Topic:
    return Topic(id=topic, kind=RuleKind.INTERVAL, unit="months", side=Side.AT_MOST)


def _count(topic: str, unit: str, side: Side | None = None) -> Topic:
    return Topic(id=topic, kind=RuleKind.COUNT, unit=unit, side=side)


def _list(topic: str, *words: str) -> Topic:
    return Topic(id=topic, kind=RuleKind.LIST, words=words)


def _choice(topic: str, *words: str, ordered: bool = False) -> Topic:
    return Topic(id=topic, kind=RuleKind.CHOICE, words=words, ordered=ordered)


_MICROBE_WORDS = ("sanitise", "disinfect")
_WHO = ("wearer", "trained", "verified")
_WORKS = (
    "shell-patch", "shell-stitch", "hardware", "liner-reclose", "structural-seam", "barrier",
    "trim", "closure", "liner", "cuff", "part",
)  # fmt: skip

TOPICS: dict[str, Topic] = {
    topic.id: topic
    for topic in (
        _limit("wash.bath_temp", "temperature", Side.AT_MOST),
        _limit("wash.extraction", "acceleration", Side.AT_MOST),
        _limit("wash.ph_low", "acidity", Side.AT_LEAST),
        _limit("wash.ph_high", "acidity", Side.AT_MOST),
        _list("wash.forbidden", *ACTS),
        _choice("wash.method", "machine", "hand", "brush", "wipe", "none"),
        _choice("wash.company", "shells", "liners", "own"),
        _count("wash.marker_cycles", "cycles"),
        _limit("dry.air_temp", "temperature", Side.AT_MOST),
        _list("dry.forbidden", *ACTS),
        _count("clean.advanced.count_in_12_months", "cleanings", Side.AT_LEAST),
        _months("clean.advanced.months"),
        _months("clean.advanced.warn_months"),
        _list(
            "clean.advanced.trigger",
            "soiled", "contaminated", "combustion-products", "air-required-inside",
        ),
        _choice("clean.smoke_level", *(level.value for level in Level), ordered=True),
        _choice("blood.soft_word", *_MICROBE_WORDS),
        _choice("blood.hard_word", *_MICROBE_WORDS),
        _list("inspect.routine.when", "after-use", "on-receipt", "start-of-shift"),
        _months("inspect.advanced.months"),
        _choice("inspect.routine.who", *_WHO, ordered=True),
        _choice("inspect.advanced.who", *_WHO, ordered=True),
        _choice("inspect.liner.who", *_WHO, ordered=True),
        _list("inspect.advanced.tests", "light", "leakage"),
        _list("inspect.liner.tests", "light", "leakage", "hydrostatic"),
        _months("inspect.liner.first_months"),
        _months("inspect.liner.repeat_months"),
        _limit("inspect.hydrostatic.pressure", "pressure", Side.AT_LEAST),
        _limit("inspect.hydrostatic.hold_time", "time", Side.AT_LEAST),
        _count("inspect.leakage.water_parts", "parts"),
        _limit("inspect.leakage.hold_time", "time", Side.AT_LEAST),
        _limit("verification.removal", "share", Side.AT_LEAST),
        _count("verification.microbial_log", "log-steps", Side.AT_LEAST),
        _months("verification.repeat_months"),
        _months("retire.months"),
        _months("retire.reflective_months"),
        _limit("repair.percent", "share", Side.AT_MOST),
        _list("repair.basic", *_WORKS),
        _list("repair.advanced", *_WORKS),
        _choice("repair.basic.who", *_WHO, ordered=True),
        _choice("repair.advanced.who", *_WHO, ordered=True),
        _months("people.refit_months"),
        _limit("storage.temp_low", "temperature", Side.AT_LEAST),
        _limit("storage.temp_high", "temperature", Side.AT_MOST),
        _list(
            "storage.keep_from",
            "sunlight", "fluorescent-light", "damp", "fuel", "solvent", "oil", "sharp-tool",
            "living-quarters", "airtight-container",
        ),
        _count("record.items", "items", Side.AT_LEAST),
        _list(
            "record.fields",
            "holder", "issued", "maker-and-model", "serial-or-lot", "made", "advanced-inspection",
            "advanced-cleaning", "cleaning-reason-and-who", "repair", "retired", "disposed",
        ),
    )
}  # fmt: skip


def value_text(rule: Rule) -> str | None:
    """Return a rule's value with its unit as text; None is unset."""
    if rule.value is None:
        return None
    if isinstance(rule.value, tuple):
        return ", ".join(rule.value)
    if isinstance(rule.value, int):
        return f"{rule.value} {TOPICS[rule.topic].unit}"
    return rule.value.numbers if isinstance(rule.value, Limit) else rule.value


def looser(rule: Rule, than: Rule) -> bool:
    """Whether a rule permits what another on the same topic does not.

    A list only ever adds. A choice without order that differs contradicts, which counts as looser.
    """
    topic = TOPICS[rule.topic]
    match rule.value, than.value:
        case Limit() as mine, Limit() as other:
            return other.stricter(mine)
        case int(mine_number), int(other_number):
            sign = {Side.AT_MOST: 1, Side.AT_LEAST: -1, None: 0}[topic.side]
            return (mine_number - other_number) * sign > 0
        case str(mine_word), str(other_word):
            if topic.ordered:
                return topic.words.index(mine_word) < topic.words.index(other_word)
            return mine_word != other_word
        case _:
            return False
