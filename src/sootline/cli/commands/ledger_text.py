"""How are a verification, a piece's life and a whole replay told on a terminal?"""

import datetime as dt
from collections.abc import Iterator

from sootline.cli.output import finding_lines, printable
from sootline.core.gear.state import State
from sootline.core.ledger import Verification, name_of
from sootline.core.ledger.correcting import Amended
from sootline.core.ledger.lives import Effect, Folded, Line, PieceLife, SuspectClock
from sootline.core.ledger.record_items import list_record_items
from sootline.words import say


def verified_lines(result: Verification, given: int, lang: str) -> Iterator[str]:
    """Say what is damaged, what was erased, and what cannot be known without an anchor.

    Args:
        given: how many anchors were handed in.
    """
    counts = {"n": str(result.entries), "foreign": str(result.foreign)}
    yield say("ledger.verified.read", counts, lang=lang)
    yield say("ledger.verified.head", {"hash": result.head, "root": result.root}, lang=lang)
    for damage in result.damages:
        values = {
            "seq": str(damage.seq),
            "kind": damage.kind.value,
            "said": printable(damage.said) or "-",
            "found": printable(damage.found) or "-",
        }
        yield say("ledger.verified.damage", values, lang=lang)
    if result.more:
        yield say("ledger.verified.more", {"n": str(result.more)}, lang=lang)
    if result.intact:
        yield say("ledger.verified.no_damage", lang=lang)
    for one in result.erased:
        first, second = map(printable, one.people)
        values = {"seq": str(one.seq), "under": str(one.under), "first": first, "second": second}
        yield say("ledger.verified.erased", values, lang=lang)
    for seq, under in result.not_carried_out:
        values = {"seq": str(seq), "under": str(under)}
        yield say("ledger.verified.not_erased", values, lang=lang)
    for anchor in result.anchors:
        values = {"n": str(anchor.n), "at": anchor.at.isoformat(timespec="minutes")}
        yield say("ledger.verified.anchor", values, lang=lang)
    yield say("ledger.verified.limit" if given else "ledger.verified.no_anchor", lang=lang)


def life_lines(life: PieceLife, lang: str) -> Iterator[str]:
    """Tell a piece's history line by line, then its state and what must be answered."""
    yield say("ledger.life.heading", {"item": printable(name_of(life.item))}, lang=lang)
    for line in life.history:
        yield from _line(line, lang)
    yield ""
    yield _state(life.state, lang)
    washes = {"washes": str(life.washes), "count": _known(life.wash_count)}
    yield say("ledger.life.washes", washes, lang=lang)
    yield ""
    for one in list_record_items(life):
        values = {"item": one.record_item.value, "standing": one.standing.value}
        yield say("ledger.life.record", values, lang=lang)
    for question in life.questions:
        yield from finding_lines([question.finding], lang=lang)


def replay_lines(folded: Folded, lang: str) -> Iterator[str]:
    """Tell every piece's state in a line, then clocks and questions."""
    for piece in folded.pieces:
        yield f"{printable(name_of(piece.item))}: {_state(piece.state, lang)}"
    for clock in folded.clocks:
        yield _clock(clock, lang)
    yield from finding_lines([question.finding for question in folded.questions], lang=lang)
    counts = {"n": str(len(folded.pieces)), "questions": str(len(folded.questions))}
    yield say("ledger.replayed", counts, lang=lang)


def _line(line: Line, lang: str) -> Iterator[str]:
    """Say what an entry reports, by whom and on what device, with the time as it was stated."""
    fact = line.settled.fact
    values = {
        "seq": str(line.seq),
        "when": _when(fact.occurred.earliest, fact.occurred.latest),
        "kind": fact.kind.value,
        "device": printable(fact.device),
        "actor": printable(fact.actor),
    }
    yield say("ledger.life.line", values, lang=lang)
    if fact.occurred.suspect:
        true = {"when": _when(fact.occurred.true_earliest, fact.occurred.true_latest)}
        yield say("ledger.life.true_time", true, lang=lang)
    if fact.flags:
        flags = {"flags": ", ".join(fact.flags), "when": _when(fact.earliest, fact.latest)}
        yield say("ledger.life.flagged", flags, lang=lang)
    if line.settled.amended is not Amended.NO:
        by = ", ".join(map(str, line.settled.by))
        values = {"amended": line.settled.amended.value, "by": by}
        yield say("ledger.life.amended", values, lang=lang)
    if fact.erased:
        yield say("ledger.life.erased", lang=lang)
    if line.effect in (Effect.REFUSED, Effect.DEPENDS):
        yield say("ledger.life.effect", {"effect": line.effect.value}, lang=lang)
    if line.reason is not None:
        yield from finding_lines([line.reason], lang=lang)


def _when(earliest: dt.datetime, latest: dt.datetime) -> str:
    first = earliest.isoformat(sep=" ", timespec="minutes")
    last = latest.isoformat(sep=" ", timespec="minutes")
    return first if first == last else f"{first} .. {last}"


def _state(state: State, lang: str) -> str:
    values = {
        "stage": state.stage.value,
        "custody": state.custody.value,
        "life": state.life.value,
        "assembly": state.assembly.value,
        "n": str(len(state.open_holds)),
        "causes": ", ".join(printable(hold.cause) for hold in state.open_holds) or "-",
        "deciders": ", ".join(dict.fromkeys(hold.decider.value for hold in state.open_holds)),
    }
    held = "ledger.life.state.held" if state.open_holds else "ledger.life.state"
    return say(held, values, lang=lang)


def _clock(clock: SuspectClock, lang: str) -> str:
    entries = ", ".join(map(str, clock.entries))
    values = {"device": printable(clock.device), "entries": entries}
    if clock.offset_s is None:
        return say("ledger.clock.flagged", values, lang=lang)
    values["minutes"] = f"{abs(clock.offset_s) / 60:g}"
    message = "ledger.clock.slow" if clock.offset_s < 0 else "ledger.clock.fast"
    return say(message, values, lang=lang)


def _known(count: int | None) -> str:
    return "?" if count is None else str(count)
