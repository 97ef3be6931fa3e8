"""The reference page of a component's states, from the one transition table."""

from collections.abc import Iterator
from pathlib import Path

from sootline.core.gear.events import EventKind
from sootline.core.gear.state import CareStage
from sootline.core.gear.table import ANY_STAGE, ANYWHERE, KEPT, NOT_RUNNING, TRANSITIONS, USED
from sootline.core.gear.table import Transition as Row
from sootline.words import name

PAGE = Path(__file__).parents[2] / "docs" / "reference" / "states.md"
HEAD = """# States of a component

Made from the program's own transition table by `make docs`; do not edit.

A state is five facts at once: where a component is, how far it has come from the call back to the
hook, its open holds, how it stands to its set, and whether it is in use at all. "On hold" and
"needs wash" are both true at the same time. An event changes only what its row says. What no row
permits is refused with the reason, and the report of it stays in the history.

Holds outlive every event: only their own decider or deputy, by name, ends one. That a component
was worn while on hold can always be recorded.
"""


def reference() -> dict[Path, bytes]:
    """Return the page: the care stages as a diagram, then every row of the table."""
    parts = [
        HEAD,
        "## From the call back to the hook\n",
        *_diagram(),
        "\n## Every event\n",
        *_table(),
    ]
    return {PAGE: ("\n".join(parts).rstrip() + "\n").encode()}


def _diagram() -> Iterator[str]:
    """Draw who leads from one care stage to another, leaving out what leads from anywhere."""
    yield "```mermaid"
    yield "stateDiagram-v2"
    for stage in CareStage:
        yield f"    {_id(stage)}: {name('care_stage', stage)}"
    for source, target, events in _moves():
        yield f"    {_id(source)} --> {_id(target)}: {', '.join(events)}"
    yield "```\n"
    anywhere = dict.fromkeys(
        f"*{name('event_kind', row.event)}* ({name('care_stage', row.stage)})"
        for row in TRANSITIONS
        if row.stage and row.stages in (ANY_STAGE, NOT_RUNNING)
    )
    yield "From nearly every stage: " + ", ".join(anywhere) + "."


def _moves() -> Iterator[tuple[CareStage, CareStage, list[str]]]:
    for source in CareStage:
        for target in CareStage:
            events = dict.fromkeys(
                name("event_kind", row.event)
                for row in TRANSITIONS
                if row.stage is target
                and source in row.stages
                and len(row.stages) < len(NOT_RUNNING) - 1
            )
            if events:
                yield source, target, list(events)


def _table() -> Iterator[str]:
    yield "| Event | From | Refused when | Afterwards |"
    yield "|---|---|---|---|"
    for event in EventKind:
        for row in TRANSITIONS:
            if row.event is event:
                cells = (name("event_kind", event), _from(row), _refused(row), _after(row))
                yield f"| {' | '.join(cells)} |"


def _from(row: Row) -> str:
    stages = _listed("care_stage", row.stages, {ANY_STAGE: "", NOT_RUNNING: "not in the washer"})
    places = _listed("custody", row.custodies, {ANYWHERE: "anywhere"})
    lives = _listed("life", row.lives, {USED: "", KEPT: "also when retired"})
    return "; ".join(part for part in (stages, places, lives) if part)


def _listed(category: str, values: frozenset[str], short: dict[frozenset[str], str]) -> str:
    if values in short:
        return short[values]
    return ", ".join(sorted(name(category, value) for value in values))


def _refused(row: Row) -> str:
    return "; ".join(name("obstacle", obstacle) for obstacle in row.obstacles)


def _after(row: Row) -> str:
    changed = (("care_stage", row.stage), ("custody", row.custody), ("life", row.life))
    return ", ".join(name(category, value) for category, value in changed if value)


def _id(stage: CareStage) -> str:
    return stage.name.lower()
