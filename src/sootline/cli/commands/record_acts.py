"""Which acts can be recorded from a terminal, with which words, and which task does each?"""

import argparse
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    DateSpan,
    Fault,
    Finding,
    MemberId,
    MessageId,
    UnreadableValueError,
)
from sootline.core.job.codec import decode
from sootline.core.ledger import Appended, Established, Second, kind_of, name_of, parse_item
from sootline.core.ledger.acts import Act
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.items import ItemKind
from sootline.tasks.correct_entry import correct, erase
from sootline.tasks.hand_out_gear import issue, lend, return_soiled, return_to_rack, take_back
from sootline.tasks.recording import Book
from sootline.tasks.register_all import Things, register_all
from sootline.tasks.register_gear import change_facts
from sootline.tasks.register_things import change_thing
from sootline.tasks.retire_gear import dispose, mark_for_training, retire
from sootline.tasks.secure_member import secure_member
from sootline.tasks.train_helper import Training, Work, record_training, warn_untrained
from sootline.tasks.transfer_gear import accept, decline, offer
from sootline.wiring.jobs import read_text


@dataclass(frozen=True, kw_only=True)
class Done:
    """What came of an act: entries, or warnings alone."""

    entries: tuple[Appended, ...] = ()
    warnings: tuple[Finding, ...] = ()


_Do = Callable[[Book, Act, argparse.Namespace], tuple[Appended, ...] | Done]


@dataclass(frozen=True)
class Words:
    """What is typed for an act.

    Args:
        one, some: words that stand by their place.
        needed, maybe: words that stand by their name.
    """

    act: _Do
    one: tuple[str, ...] = ()
    some: tuple[str, ...] = ()
    needed: tuple[str, ...] = ()
    maybe: tuple[str, ...] = ()

    def do(self, book: Book, act: Act, options: argparse.Namespace) -> Done:
        """Carry the act out; faults as its task raises them."""
        done = self.act(book, act, options)
        return done if isinstance(done, Done) else Done(entries=done)


def _register(book: Book, act: Act, said: argparse.Namespace) -> tuple[Appended, ...]:
    things = decode(Things, read_text(Path(said.file)))
    return register_all(book, act, things, station=said.station, grant=said.grant)


def _change(book: Book, act: Act, said: argparse.Namespace) -> tuple[Appended, ...]:
    changes = dict(_pair(text) for text in said.facts)
    thing = parse_item(said.item if ":" in said.item else f"component:{said.item}")
    if kind_of(thing) is ItemKind.COMPONENT:
        return change_facts(book, act, ComponentId(name_of(thing)), changes, by=said.by)
    return change_thing(book, act, kind_of(thing), name_of(thing), changes, by=said.by)


def _pair(text: str) -> tuple[str, Json]:
    name, mark, value = text.partition("=")
    if not mark:
        raise _refused("facts", "store.record.pair", text=text)
    # A text need not be quoted; numbers of pieces and people are texts.
    if value not in ("null", "true", "false") and not value.startswith(("{", "[", '"')):
        return name, value
    try:
        return name, json.loads(value)
    except ValueError:
        raise _refused("facts", "store.record.pair", text=text) from None


def _pieces(said: argparse.Namespace) -> list[ComponentId]:
    return [ComponentId(one) for one in said.pieces]


def _trained(book: Book, act: Act, said: argparse.Namespace) -> tuple[Appended, ...]:
    on, until = _span("--on", said.on), _span("--until", said.until)
    training = Training(
        member=MemberId(said.member), work=_work(said.work), on=on, by=said.trainer, until=until,
        source=said.source,
    )  # fmt: skip
    return record_training(book, act, training)


def _assigned(book: Book, act: Act, said: argparse.Namespace) -> Done:
    """Only warn: who assigns a helper decides."""
    helpers = [MemberId(one) for one in said.helpers]
    day = act.occurred.latest.date()
    return Done(warnings=warn_untrained(book.register, helpers, _work(said.work), on=day))


def _secure(book: Book, act: Act, said: argparse.Namespace) -> tuple[Appended, ...]:
    also = [ComponentId(one) for one in said.also.split(",") if one.strip()]
    member = MemberId(said.member)
    return secure_member(book, act, member, by=said.by, reason=said.reason, also=also)


def _erase(book: Book, act: Act, said: argparse.Namespace) -> tuple[Appended, ...]:
    second = Second(person=MemberId(said.second), established=Established.VOUCHED)
    return erase(book, act, _seq(said.entry), second=second, reason=said.reason)


def _seq(text: str) -> int:
    if not text.isdecimal():
        raise _refused("entry", "store.record.entry", text=text)
    return int(text)


def _work(text: str) -> Work:
    if text not in set(Work):
        raise _refused("--work", "store.record.work", text=text, known=", ".join(Work))
    return Work(text)


def _span(place: str, text: str) -> DateSpan:
    try:
        return DateSpan.parse(text or "unknown")
    except UnreadableValueError as error:
        raise BadInputError(
            [Fault(place=place, message=error.message, values=error.values)]
        ) from None


def _refused(place: str, message: str, **values: str) -> BadInputError:
    fault = Fault(place=place, message=MessageId(message), values=tuple(values.items()))
    return BadInputError([fault])


_P = ("pieces",)
ACTS: Mapping[str, Words] = MappingProxyType(
    {
        "register": Words(_register, one=("file",), maybe=("station", "grant")),
        "change": Words(_change, one=("item",), some=("facts",)),
        "issue": Words(
            lambda book, act, said: issue(book, act, _pieces(said), holder=MemberId(said.to)),
            some=_P, needed=("to",),
        ),
        "return": Words(
            lambda book, act, said: return_to_rack(
                book, act, _pieces(said), by=said.by, place=said.rack
            )
            if said.rack
            else return_soiled(book, act, _pieces(said), by=said.by),
            some=_P, maybe=("rack",),
        ),
        "lend": Words(
            lambda book, act, said: lend(book, act, _pieces(said), holder=said.to, by=said.by),
            some=_P, needed=("to",),
        ),
        "take-back": Words(
            lambda book, act, said: take_back(book, act, _pieces(said), by=said.by), some=_P
        ),
        "offer": Words(
            lambda book, act, said: offer(
                book, act, ComponentId(said.piece), to=said.station, by=said.by
            ),
            one=("piece",), needed=("station",),
        ),
        "accept": Words(
            lambda book, act, said: accept(
                book, act, ComponentId(said.piece), station=said.station, by=said.by
            ),
            one=("piece",), needed=("station",),
        ),
        "decline": Words(
            lambda book, act, said: decline(
                book, act, ComponentId(said.piece), by=said.by, said=said.reason
            ),
            one=("piece",), needed=("reason",),
        ),
        "training-only": Words(
            lambda book, act, said: mark_for_training(
                book, act, ComponentId(said.piece), by=said.by, reason=said.reason
            ),
            one=("piece",), needed=("reason",),
        ),
        "retire": Words(
            lambda book, act, said: retire(
                book, act, ComponentId(said.piece), by=said.by, reason=said.reason
            ),
            one=("piece",), needed=("reason",),
        ),
        "dispose": Words(
            lambda book, act, said: dispose(
                book, act, ComponentId(said.piece), by=said.by, method=said.method,
                witness=said.witness,
            ),
            one=("piece",), needed=("method", "witness"),
        ),
        "secure": Words(_secure, one=("member",), needed=("reason",), maybe=("also",)),
        "trained": Words(
            _trained, one=("member",), needed=("work", "trainer"), maybe=("on", "until", "source")
        ),
        "assigned": Words(_assigned, some=("helpers",), needed=("work",)),
        "withdraw": Words(
            lambda book, act, said: correct(
                book, act, _seq(said.entry), reason=said.reason, withdrawn=True
            ),
            one=("entry",), needed=("reason",),
        ),
        "erase": Words(_erase, one=("entry",), needed=("second", "reason")),
    }
)  # fmt: skip
