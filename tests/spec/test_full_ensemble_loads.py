"""One full ensemble after a fire: what goes together, what by hand, and what to do before.

Labels: hood and the helmet's ear and neck cover machine warm, gloves no machine. The policy puts
small soft parts and straps with the liners and washes the helmet's padding by hand. Preparation is
common practice, no published source.
"""

import json
from functools import cache

from sootline.core.care import Decision
from sootline.core.gear.kinds import WashMethod
from sootline.core.laundry.sorts import Sort
from sootline.files.jobs import to_job
from sootline.tasks.form_loads import Loads, form_loads
from sootline.wiring.rules import RULES

_WARM: dict[str, object] = {"wash": "machine", "wash_words": "warm"}
_LABELS: dict[str, dict[str, object]] = {
    "coat-shell": {},
    "coat-liner": {},
    "drag-device": {},
    "trouser-shell": {},
    "trouser-liner": {},
    "suspenders": {},
    "hood": _WARM,
    "gloves": {"forbids": ["machine-wash"]},
    "boots-leather": {},
    "helmet-shell": {},
    "helmet-padding": {},
    "ear-neck-cover": _WARM,
}


def _rule(topic: str, value: str, *traits: str) -> dict[str, object]:
    return {
        "topic": topic,
        "value": value,
        "traits": list(traits),
        "source": "guideline of an invented department",
        "confidence": "policy",
    }


def _document() -> dict[str, object]:
    return {
        "version": 1,
        "title": "one full ensemble",
        "now": "2026-02-03T04:20:00+00:00",
        "department": {
            "name": "an invented department",
            "edition": "nfpa-1851/2020",
            "policy": [
                _rule("wash.company", "liners", "soft"),
                _rule("wash.company", "liners", "strap"),
                _rule("wash.method", "hand", "padding"),
            ],
        },
        "members": [{"id": "M01"}],
        "components": [
            {"id": kind, "kind": kind, "owner": "M01", "label": {"care": care}}
            for kind, care in _LABELS.items()
        ],
        "calls": [
            {
                "id": "call-1",
                "at": "2026-02-03T01:10:00+00:00",
                "people": [{"member": "M01", "zones": ["inside"], "on_air": "yes", "smoke": "yes"}],
            }
        ],
        "wash_room": {
            "washers": [
                {
                    "id": "W1",
                    "limit": "42 lb",
                    "programmes": [
                        {
                            "id": "gear",
                            "bath_temp": "105 °F",
                            "extraction": "100 G",
                            "minutes": "60 min",
                        }
                    ],
                }
            ],
            "sinks": [
                {"id": "basin", "use": "gear"},
                {"id": "bench", "use": "gear", "bench": True},
            ],
            "drying": [{"id": "rack", "method": "rack", "places": 12}],
        },
    }


@cache
def loads() -> Loads:
    """Decide and sort, once."""
    return form_loads(RULES, to_job(json.dumps(_document())))


def sorts(method: WashMethod) -> list[Sort]:
    """List the sorts of one method."""
    return [sort for sort in loads().sorting.sorts if sort.method is method]


def steps(component: str) -> list[str]:
    """List what to do with a component before it is washed, in order."""
    decisions: dict[str, Decision] = {one.component: one for one in loads().decided.decisions}
    return [step.act for step in decisions[component].preparation]


def test_one_load_of_shells_and_one_of_liners_with_the_small_parts() -> None:
    """Exactly two loads: shells; liners with hood, cover, drag device and suspenders."""
    machine = {frozenset(sort.components) for sort in sorts(WashMethod.MACHINE)}

    assert machine == {
        frozenset({"coat-shell", "trouser-shell"}),
        frozenset(
            {"coat-liner", "trouser-liner", "hood", "ear-neck-cover", "drag-device", "suspenders"}
        ),
    }


def test_the_straps_are_bagged_and_nothing_else() -> None:
    """Drag device and suspenders go into closed mesh bags."""
    bagged = {name for sort in loads().sorting.sorts for name in sort.bagged}

    assert bagged == {"drag-device", "suspenders"}


def test_gloves_padding_and_boots_by_hand_and_the_helmet_with_a_soft_brush() -> None:
    """Everything else, and nothing more."""
    by_hand = {name for sort in sorts(WashMethod.HAND) for name in sort.components}
    brushed = {name for sort in sorts(WashMethod.BRUSH) for name in sort.components}

    assert by_hand == {"gloves", "helmet-padding", "boots-leather"}
    assert brushed == {"helmet-shell"}


def test_nothing_is_left_over() -> None:
    """All twelve components are placed; none is kept out or refused."""
    sorting = loads().sorting

    assert sorted(name for sort in sorting.sorts for name in sort.components) == sorted(_LABELS)
    assert (sorting.kept_out, sorting.refused) == ((), ())


def test_mild_detergent_throughout() -> None:
    """Every sort states the range of the detergent, pH 6.0 to 10.5 by the adopted edition.

    Source: articles on NFPA 1851, 2020 edition; medium to high confidence.
    """
    for sort in loads().sorting.sorts:
        said = {reason.message: reason.values for reason in sort.reasons}
        assert dict(said["laundry.limit.ph_low"])["limit"] == "at least pH 6.0"  # type: ignore[index]
        assert dict(said["laundry.limit.ph_high"])["limit"] == "at most pH 10.5"  # type: ignore[index]


def test_before_the_wash() -> None:
    """Pockets emptied, liner out, drag device out, suspenders off, everything fastened.

    Source: common practice, no published source.
    """
    wanted = [
        f"gear.prep.{step}" for step in ("pockets", "liner_out", "drag_device_out", "closures")
    ]
    assert [step for step in steps("coat-shell") if step in wanted] == wanted
    assert "gear.prep.suspenders_off" in steps("trouser-shell")
    assert "gear.prep.barrier_inward" in steps("coat-liner")
    assert "gear.prep.barrier_outward" not in steps("coat-liner")


def test_every_placing_has_a_reason_with_a_source() -> None:
    """Each component is named by a reason of its sort, and each reason cites something."""
    for sort in loads().sorting.sorts:
        named = {dict(reason.values).get("component") for reason in sort.reasons}
        assert named >= set(sort.components)
        assert all(reason.ground.source for reason in sort.reasons)
