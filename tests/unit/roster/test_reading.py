"""What does a list become: pieces, wearers, notes, and what is refused?"""

import datetime as dt

import pytest
from tests.unit.roster.lists import TODAY, read, refused, table

from sootline.core.basis import BadInputError, DateSpan
from sootline.core.gear.records import Deed
from sootline.core.gear.state import Custody, Life
from sootline.core.roster import Mapping, Row, Table, read_list
from sootline.core.roster.reading import MOST_FAULTS, MOST_PIECES


def test_a_piece_comes_in_with_what_the_line_says() -> None:
    """Every column lands where it belongs."""
    (hood,) = read(
        "serial|kind|assigned to|crew|rank|station|set|size|made|in service|advanced cleaning"
        "|maker|model|lot|standard|weight (lb)|wash count|status",
        "H-1|hood|M01|Engine 2|captain|Station 1|S1|one size|2020-05|2020-06-01|2025-11-02"
        "|Cormorant|K4|2103-A|2018|0.25|7|in service",
    ).components

    assert (hood.id, hood.owner, hood.set, hood.wash_count) == ("H-1", "M01", "S1", 7)
    assert (hood.label.maker, hood.label.style, hood.label.lot) == ("Cormorant", "K4", "2103-A")
    assert (str(hood.made), str(hood.mass), hood.state.place) == ("2020-05", "0.25 lb", "Station 1")
    assert [record.deed for record in hood.records] == [Deed.ADVANCED_CLEANING]


def test_wearers_come_with_it_once() -> None:
    """A member named on many lines is one wearer; spare is nobody."""
    got = read("kind|member|crew|rank", "hood|M1||", "gloves|M1|E2|cpt", "hood|spare||", "hood|||")

    (wearer,) = got.wearers
    assert (wearer.id, wearer.crew, wearer.role) == ("M1", "E2", "cpt")
    assert got.components[2].state.custody is Custody.SPARE_RACK


def test_a_whole_coat_becomes_shell_and_liner() -> None:
    """Both get the line's dates; the serial is the shell's, the liner's label waits to be read."""
    shell, liner = read("serial|kind|made|weight lb", "SN-1|coat|2019-05|8").components

    assert (shell.id, liner.id) == ("SN-1", "SN-1/coat-liner")
    assert shell.made == liner.made == DateSpan.parse("2019-05")
    assert liner.label.serial is None
    assert shell.mass is None


def test_whole_coats_are_said() -> None:
    """The officer learns that parts were told apart, and that their weight was not."""
    messages = [note.message for note in read("kind|weight lb", "coat|8").findings]

    assert messages == ["roster.note.whole", "roster.note.whole_mass", "roster.note.no_lifetime"]


def test_one_line_per_person_becomes_one_piece_per_kind() -> None:
    """Columns that begin with a kind speak of that piece; empty ones of none."""
    got = read(
        "member|coat shell serial|coat shell dom|hood serial|hood size",
        "M1|C1|2019|H1|one size",
        "M2|C2|2020||",
    )

    assert [(piece.id, piece.owner, piece.kind) for piece in got.components] == [
        ("C1", "M1", "coat-shell"),
        ("H1", "M1", "hood"),
        ("C2", "M2", "coat-shell"),
    ]


def test_a_kind_in_a_heading_that_must_be_settled_is_refused_once() -> None:
    """Every line would say the same; the heading says it."""
    assert refused("member|boots serial|boots size", "M1|B1|10", "M2|B2|11") == [
        ("list.csv:1:boots serial", "roster.kind.several")
    ]


def test_a_size_of_a_wide_list_is_refused_at_its_cell() -> None:
    """The fault stands where the size stands."""
    assert refused("member|hood serial|coat size", "M1|H1|big") == [
        ("list.csv:2:coat size", "roster.size.garment")
    ]


def test_a_wide_line_about_nothing_names_its_row() -> None:
    """A person without any piece is said, not passed over."""
    assert refused("member|hood serial", "M1|") == [("list.csv:2", "roster.kind.missing")]


def test_a_line_without_kind_is_refused() -> None:
    """Whatever the serial says."""
    assert refused("serial|kind", "A|", "B|?") == [
        ("list.csv:2:kind", "roster.kind.missing"),
        ("list.csv:3:kind", "roster.kind.missing"),
    ]


def test_all_faults_are_listed_and_nothing_comes_in() -> None:
    """Eight bad dates are eight faults, in the order of the rows."""
    bad = ["2021-02-30", "0000-00-00", "03/04/21", "44287", "2021-03-01T25:00", "1899-12-31"]

    faults = refused("serial|kind|made", *(f"D{n}|hood|{date}" for n, date in enumerate(bad)))

    assert [place for place, _ in faults] == [f"list.csv:{row}:made" for row in range(2, 8)]


def test_impossible_orders_are_refused() -> None:
    """In service before made, ahead of today, retired before it was cleaned, retired yet in use."""
    assert refused(
        "kind|made|in service|advanced cleaning|retired|status",
        "hood|2022|2021|||",
        "hood|2031||||",
        "hood|2015|2016|2020-05-01|2019|",
        "hood|2015|2016|2015|2019|in service",
    ) == [
        ("list.csv:2:in service", "roster.order.before_made"),
        ("list.csv:3:made", "roster.order.future"),
        ("list.csv:4:retired", "roster.order.retired_before"),
        ("list.csv:5:advanced cleaning", "roster.order.before_in_service"),
        ("list.csv:5:retired", "roster.order.retired_in_use"),
    ]


def test_a_possible_order_is_not_refused() -> None:
    """A year may hide a possible order: what any reading allows is taken."""
    assert refused("kind|made|in service", "hood|2021|2021-01-05", "hood|2026|2026-03-01") == []


def test_undated_gear_is_bounded_by_its_invoice() -> None:
    """What was paid for in 2015 was not made later.

    Source: common practice, no published source (an invoice bounds a missing date).
    """
    (piece,) = read("kind|made|purchased", "hood||2015-07-10").components

    assert piece.made == DateSpan(latest=dt.date(2015, 7, 10))


def test_retired_and_disposed_pieces_come_in_as_such() -> None:
    """A day of retirement, or the word, ends the life in use."""
    got = read("kind|status|retired", "hood|retired|", "hood||2020", "hood|disposed|2020")

    lives = [piece.state.life for piece in got.components]
    assert lives == [Life.RETIRED, Life.RETIRED, Life.DISPOSED]


def test_out_of_service_is_a_hold_with_a_question() -> None:
    """The safest reading, until somebody answers."""
    (hold,) = read("kind|status", "hood|out of service").components[0].state.open_holds

    assert hold.question == "roster.ask.out_of_service"


def test_likely_duplicates_are_suggested_and_kept_apart() -> None:
    """Seven ways of writing a serial are seven pieces and one suggestion."""
    written = ["SN-10", "sn-10", " SN-10 ", "SN\u201110", "\u0405N-10", "SN-\uff110", "SN-10\u200b"]

    got = read("serial|kind", *(f"{serial}|hood" for serial in written))

    (group,) = got.duplicates
    assert len({piece.id for piece in got.components}) == len(group.pieces) == 7
    assert "roster.note.unseen" in [note.message for note in got.findings]


def test_one_serial_on_two_kinds_is_no_duplicate() -> None:
    """Many departments number sets; the ids are told apart."""
    got = read("serial|kind", "7|coat shell", "7|trouser shell", "7|coat shell")

    assert [piece.id for piece in got.components] == ["7", "7 trouser-shell", "7 coat-shell"]
    assert [group.pieces for group in got.duplicates] == [("7", "7 coat-shell")]


def test_a_third_of_a_name_is_told_apart_by_its_row() -> None:
    """However often a serial stands there, each piece has its own id."""
    got = read("serial|kind", "7|hood", "7|hood", "7|hood")

    assert [piece.id for piece in got.components] == ["7", "7 hood", "7 hood #4"]


def test_recorded_gear_is_suggested_too() -> None:
    """A piece that is recorded already is suggested with the new one, and keeps its id."""
    before = read("serial|kind", "SN-1|hood", "X|hood", "x|hood").components

    got = read_list(table("serial|kind", "sn-1|hood"), Mapping(), today=TODAY, known=before)

    assert [group.pieces for group in got.duplicates] == [("SN-1", "sn-1")]


def test_an_id_of_ours_names_one_piece() -> None:
    """A number given as id is not told apart: it is refused."""
    assert refused("id|kind", "7|hood", "7|gloves") == [("list.csv:3:id", "roster.id.twice")]


def test_members_that_look_alike_are_asked_about() -> None:
    """M01 and m01 may be one person; nobody is merged."""
    got = read("kind|member", "hood|M01", "hood|m01")

    assert "roster.note.members_alike" in [note.message for note in got.findings]
    assert len(got.wearers) == 2


def test_a_serial_the_spreadsheet_spoilt_is_refused() -> None:
    """Shortened numbers and dates made of serials are not what the label says."""
    spoilt = Table(
        name="list.xlsx",
        sheet="Gear",
        header=("serial", "kind"),
        letters=("A", "C"),
        rows=(
            Row(number=2, cells=("1.23E+15", "hood")),
            Row(number=3, cells=("2026-01-02", "hood"), dated=(0,)),
        ),
    )

    with pytest.raises(BadInputError) as error:
        read_list(spoilt, Mapping(), today=TODAY)

    assert [(fault.place, fault.message) for fault in error.value.faults] == [
        ("list.xlsx:Gear!A2", "roster.cell.digits_lost"),
        ("list.xlsx:Gear!A3", "roster.cell.became_date"),
    ]


def test_overlong_texts_are_refused() -> None:
    """A serial of 101 characters is none."""
    assert refused("serial|kind|maker", f"{'S' * 101}|hood|{'x' * 401}") == [
        ("list.csv:2:serial", "roster.text.long"),
        ("list.csv:2:maker", "roster.text.long"),
    ]


@pytest.mark.parametrize("cell", ["2021-02-30", "2031"])
def test_faults_without_end_are_cut(cell: str) -> None:
    """After a thousand, the rest is not read."""
    faults = refused("kind|made", *[f"hood|{cell}"] * (MOST_FAULTS + 500))

    assert len(faults) == MOST_FAULTS + 1
    assert faults[-1] == ("list.csv", "roster.too_many_faults")


def test_pieces_without_end_are_refused() -> None:
    """A list beyond any department is split."""
    assert refused("kind", *["hood"] * (MOST_PIECES + 1)) == [
        (f"list.csv:{MOST_PIECES + 2}", "roster.too_many_pieces")
    ]


def test_an_empty_list_comes_in_as_nothing() -> None:
    """No rows, no pieces."""
    assert read("serial|kind").components == ()


def test_many_places_are_shortened() -> None:
    """Twenty are named, then the number speaks."""
    got = read("serial|kind", *(f"S{n}\u200b|hood" for n in range(30)))

    note = next(note for note in got.findings if note.message == "roster.note.unseen")
    assert note.value("n") == "30"
    assert note.value("places").endswith(", ...")
