"""The record against a plain list: whatever is asked of it in whatever order, they agree."""

import datetime as dt

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from tests.ledger_cases import TARN_HOLLOW, at, draft

from sootline.core.basis import BadInputError, MemberId
from sootline.core.ledger import (
    Draft,
    Entry,
    EntryKind,
    Established,
    Head,
    KeyReusedError,
    OvertakenError,
    Second,
    append,
    begin,
    component,
    head_after,
    take_anchor,
    verify_chain,
)

K = EntryKind
KEYS = st.integers(0, 12).map(lambda n: f"k{n}")
THINGS = st.integers(0, 3).map(lambda n: component(f"{n:04}"))
WORDS = st.sampled_from(("dry", "wet", "e\u0301"))
JUMPS = st.sampled_from((0, 0, 0, 1, 60, -3600, -86_400, 315_360_000, -315_360_000))


class RecordMachine(RuleBasedStateMachine):
    """Append, retry, overtake, correct and erase under clocks that jump."""

    @initialize()
    def start(self) -> None:
        """Begin with an empty record and an empty list."""
        self.head: Head = begin(TARN_HOLLOW)
        self.kept: list[Entry] = []
        self.by_key: dict[str, tuple[Draft, int]] = {}
        self.last: dict[str, int] = {}
        self.gone: set[int] = set()
        self.now = at("08:00")
        self.anchors: list[tuple[int, str]] = []

    @rule(seconds=JUMPS)
    def jump(self, seconds: int) -> None:
        """Let the clock go on, back, or far ahead."""
        year = (self.now + dt.timedelta(seconds=seconds)).year
        if 1960 < year < 2100:
            self.now += dt.timedelta(seconds=seconds)

    @rule(key=KEYS, thing=THINGS, said=WORDS, behind=st.integers(0, 2))
    def write(self, key: str, thing: str, said: str, behind: int) -> None:
        """Write something under a key that may be known, having seen all or not."""
        last = self.last.get(thing, 0)
        number = component(thing.partition(":")[2])
        one = draft(K.NOTED, "04:00", thing=number, key=key, said=said, after=max(0, last - behind))
        if key in self.by_key:
            self._again(one, key)
        elif last > max(0, last - behind):
            self._overtaken(one, last)
        else:
            self._done(one)

    @precondition(lambda self: self.kept)
    @rule(data=st.data())
    def repeat(self, data: st.DataObject) -> None:
        """Ask again what was asked, after a lost answer."""
        key = data.draw(st.sampled_from(sorted(self.by_key)))
        before = self.head
        one, seq = self.by_key[key]
        done = append(self.head, one, now=self.now, salt=bytes(16), same_key=self.kept[seq - 1])
        assert (done.repeated, done.entry, done.head) == (True, self.kept[seq - 1], before)

    @precondition(lambda self: self.kept)
    @rule(data=st.data(), erase=st.booleans())
    def amend(self, data: st.DataObject, erase: bool) -> None:
        """Correct or erase an entry, also one for which that is refused."""
        target = self.kept[data.draw(st.integers(0, len(self.kept) - 1))]
        header = target.read_header()
        key = f"amend-{len(self.kept)}"
        if erase:
            second = Second(person=MemberId("118"), established=Established.PIN)
            one = draft(K.ERASED, "05:00", thing=header.item, key=key, erases=target.seq,
                        second=second, reason="order")  # fmt: skip
        else:
            one = draft(K.CORRECTED, "05:00", thing=header.item, key=key, corrects=target.seq,
                        reason="typing", withdrawn=True)  # fmt: skip
        if header.kind is K.ERASED or (erase and target.seq in self.gone):
            self._refused(one, target)
            return
        self._done(one, target)
        if erase:
            self.gone.add(target.seq)
            kept = self.kept[target.seq - 1]
            self.kept[target.seq - 1] = Entry(seq=kept.seq, header=kept.header, hash=kept.hash,
                                              salt=None, payload=None)  # fmt: skip

    def _again(self, one: Draft, key: str) -> None:
        first, seq = self.by_key[key]
        entry = self.kept[seq - 1]
        same = (first.item, first.occurred) == (one.item, one.occurred) and (
            entry.erased or first.payload == one.payload
        )
        try:
            done = append(self.head, one, now=self.now, salt=bytes(16), same_key=entry)
        except KeyReusedError:
            assert not same
        else:
            assert same
            assert done.repeated

    def _overtaken(self, one: Draft, last: int) -> None:
        newest = self.kept[last - 1]
        with pytest.raises(OvertakenError) as error:
            append(self.head, one, now=self.now, salt=bytes(16), last_of_item=newest)
        assert error.value.entry == newest

    def _refused(self, one: Draft, target: Entry) -> None:
        with pytest.raises(BadInputError):
            append(self.head, one, now=self.now, salt=bytes(16), target=target)

    def _done(self, one: Draft, target: Entry | None = None) -> None:
        done = append(self.head, one, now=self.now, salt=len(self.kept).to_bytes(16, "big"),
                      target=target)  # fmt: skip
        self.head = done.head
        self.kept.append(done.entry)
        self.last[one.item] = done.entry.seq
        self.by_key[one.idem] = (one, done.entry.seq)

    @rule()
    def anchor(self) -> None:
        """Hand an anchor out."""
        if self.kept:
            self.anchors.append((len(self.kept), self.kept[-1].hash))

    @invariant()
    def the_record_is_whole(self) -> None:
        """Verify it, with every erasure told, and everything that was anchored still there."""
        taken = [
            take_anchor(TARN_HOLLOW, (entry.hash for entry in self.kept[:n]), at("09:00"))
            for n, _ in self.anchors[-1:]
        ]
        result = verify_chain(self.kept, [one for one in taken if one is not None])
        assert result.intact
        assert result.entries == self.head.seq == len(self.kept)
        assert {one.seq for one in result.erased} == self.gone
        assert all(self.kept[n - 1].hash == hash_ for n, hash_ in self.anchors)

    @invariant()
    def the_head_follows_from_the_entries(self) -> None:
        """Whoever reads the entries anew comes to the same end."""
        head = begin(TARN_HOLLOW)
        for entry in self.kept:
            head = head_after(head, entry)
        assert head == self.head


TestRecord = RecordMachine.TestCase
TestRecord.settings = settings(max_examples=60, stateful_step_count=30, deadline=None)
