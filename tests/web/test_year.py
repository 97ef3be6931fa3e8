"""The year between calls on the demonstration: what is sent is kept, or refused with its reason."""

import io
import re

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image
from tests.web.pages import read, send, text_of
from tests.web.year import inspect, looked

DAY = "/inspect/day/advanced/2026-03-11/"


def test_a_shell_with_nothing_found_is_due_again_in_a_year(demo: Client) -> None:
    """Every point looked at by somebody entitled: the next one is counted from today.

    Source: NFPA 1851, 2020 edition, advanced inspection every 12 months (topic; value from memory).
    """
    said = inspect(demo, "/inspect/advanced/0497/", by="206")

    assert said == ("Coat shell 0497, looked at by 206: nothing found. Next 2027-03-11.",)
    assert "next 2027-03-11" in text_of(read(demo, DAY))


def test_a_point_nobody_answered_leaves_a_piece_due(demo: Client) -> None:
    """A list that was ticked in part is no inspection."""
    given = looked(read(demo, "/inspect/advanced/0497/"), but=("p3",))
    _, _, said = send(demo, "/inspect/advanced/0497/", by="206", **given)

    assert said == ("Coat shell 0497, looked at by 206: stays due.",)


def test_somebody_not_entitled_leaves_a_piece_due(demo: Client) -> None:
    """Whoever is on no class list may look, but it does not count."""
    said = inspect(demo, "/inspect/advanced/0497/", by="214")

    assert said == ("Coat shell 0497, looked at by 214: stays due.",)
    assert "214 is not known to be entitled" in text_of(read(demo, DAY))


def test_light_through_a_liner_holds_it(demo: Client) -> None:
    """Something came through: held until the liner is opened (common practice)."""
    path = "/inspect/advanced/0498/"
    said = inspect(demo, path, by="206", **{"t-light": "no", "t-light-place": "left shoulder"})

    assert said == ("Coat liner 0498, looked at by 206: held for complete liner inspection.",)
    assert "waiting for a decision" in text_of(read(demo, "/pieces/0498/"))
    assert "can ride in spare" in text_of(read(demo, "/people/223/"))


def test_what_was_found_needs_its_name(demo: Client) -> None:
    """A finding without its kind is asked back, and nothing is kept."""
    status, _, _ = send(demo, "/inspect/routine/0497/", by="206", p0="found")

    assert status == 422


def test_a_finding_has_its_place(demo: Client) -> None:
    """The place comes from a list, in the reader's language."""
    given = looked(read(demo, "/inspect/advanced/0497/")) | {
        "p6": "found", "p6-flaw": "trim-lifted", "p6-place": "coat-front/left-sleeve",
    }  # fmt: skip
    _, _, said = send(demo, "/inspect/advanced/0497/", by="206", **given)

    assert said[0].startswith("Coat shell 0497, looked at by 206: advanced repair")
    assert "Trim lifted, left sleeve: advanced repair" in text_of(read(demo, DAY))
    assert "manga izquierda" in text_of(read(demo, DAY, "es"))


def test_a_photo_stands_beside_what_was_found(demo: Client) -> None:
    """What is kept can be seen from the day; what is no picture is refused."""
    picture = io.BytesIO()
    Image.new("RGB", (40, 30)).save(picture, "JPEG")
    path, html = "/inspect/advanced/0497/", read(demo, "/inspect/advanced/0497/")
    photo = SimpleUploadedFile("coat.jpg", picture.getvalue(), "image/jpeg")
    send(demo, path, by="206", photo=photo, **looked(html))
    shown = re.findall(r'href="(/photo[^"]+)"', read(demo, DAY))
    refused, _, _ = send(demo, path, by="206", photo=SimpleUploadedFile("x.jpg", b"none"),
                         **looked(html))  # fmt: skip

    assert demo.get(shown[0])["Content-Type"] == "image/jpeg"
    assert refused == 422


@pytest.mark.parametrize("path", [DAY, "/inspect/", "/inspect/advanced/0497/"])
def test_nothing_passes_many_points_or_pieces_at_once(demo: Client, path: str) -> None:
    """No form on these pages names more than one piece, and no button answers for a list."""
    forms = re.findall(r'<form method="post".*?</form>', read(demo, path), re.DOTALL)

    assert all(len(re.findall(r'name="piece"', one)) <= 1 for one in forms)
    assert not re.findall(r'name="(?:all|pieces)"', read(demo, path))


def test_a_piece_that_is_not_there_stays_due(demo: Client) -> None:
    """Who is on leave keeps the date; the day says why."""
    _, where, said = send(demo, DAY, piece="0521", why="226 at a course")

    assert where == DAY
    assert said == ("Coat shell 0521 is not here (226 at a course). It stays due.",)
    assert "not here (226 at a course): stays due" in text_of(read(demo, DAY))


def test_a_number_leads_to_its_piece(demo: Client) -> None:
    """Scanned or typed, in capitals or not; an unknown one is named."""
    assert demo.get(DAY, {"q": "0498"})["Location"] == "/inspect/advanced/0498/"
    assert "No piece has the number 9999" in text_of(read(demo, DAY + "?q=9999"))


def test_a_ticked_sheet_is_typed_in_row_by_row(demo: Client) -> None:
    """Each row becomes an inspection of its own; a row that is not on the sheet is refused."""
    points = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    kinds = len(set(re.findall(r'name="(p\d+)"', read(demo, "/inspect/advanced/0497/"))))
    path = DAY + "typed/"
    _, where, said = send(demo, path, by="206", rows=f"1 {points[:kinds]}\n2 absent at the laundry")
    refused, _, _ = send(demo, path, by="206", rows="99 ABC")

    assert where == DAY
    assert len(said) == 2
    assert any("nothing found. Next 2027-03-11" in one for one in said)
    assert refused == 422


def test_a_day_is_planned_of_whose_gear_and_what(demo: Client) -> None:
    """Pieces without that inspection are left out; of nothing no day is made."""
    given = {"kind": "liner", "owners": ["223", "224"], "elements": ["coat"]}
    _, where, said = send(demo, "/inspect/day/", **given)
    _, _, none = send(demo, "/inspect/day/", **given | {"elements": ["helmet"]})

    assert where == "/inspect/day/liner/2026-03-11/"
    assert said == ("Complete liner inspection, today: 2 pieces listed.",)
    assert none == ("None of this gear has that inspection.",)


def test_a_repair_goes_from_quote_to_result(demo: Client) -> None:
    """Begun, quoted, decided by a person, sent, back: the piece then waits for its check."""
    send(demo, "/repairs/", piece="0533", works=["trim"])
    path = "/repairs/0533/"
    send(demo, path, step="quote", provider="Aldmere Gear Care", quote="950", new="1900",
         currency="usd", source="quote 320")  # fmt: skip
    page = text_of(read(demo, path))
    send(demo, path, step="decide", choice="repair", by="206", why="eight years left")
    send(demo, path, step="sent", due_back="2026-04-01")
    away = text_of(read(demo, "/pieces/0533/"))
    _, _, said = send(demo, path, step="back", result="trim renewed")

    # Half the price is not above half: the rule says above.
    assert "The repair is 50.0 % of a new one, within 50 %" in page
    assert "at repair" in away
    assert said == ("0533: back from repair. It needs its check before the hook.",)
    assert "0533" in text_of(read(demo, "/check/"))


def test_a_decision_to_retire_takes_the_piece_out(demo: Client) -> None:
    """A named person gives it up; the program only showed the figures."""
    send(demo, "/repairs/0485/", step="decide", choice="retire", by="206", why="over half")

    assert "GEAR OUT" in text_of(read(demo, "/pieces/0485/")).upper()


def test_a_repair_of_nothing_is_refused(demo: Client) -> None:
    """An unknown number, no work, a price without currency: each is said."""
    _, _, said = send(demo, "/repairs/", piece="none", works=["trim"])
    no_work, _, _ = send(demo, "/repairs/", piece="0533")
    no_price, _, _ = send(demo, "/repairs/0509/", step="quote", provider="x", quote="1",
                          currency="12$")  # fmt: skip

    assert said == ("No piece has the number none. Look at the label again.",)
    assert (no_work, no_price) == (422, 422)


def test_a_shipment_goes_out_and_comes_back_by_identity(demo: Client) -> None:
    """What is back is checked next; a like number waits for a person; the foreign one stays out.

    Source: common practice, no published source.
    """
    path = "/contractor/26-01/"
    send(demo, path, numbers="0574\nO575\n0576", by="206")
    send(demo, path, marked="Quillmere", kind="coat-shell", by="206")
    page = text_of(read(demo, path))

    assert "4 sent, 2 back, 2 not back" in page
    assert "may be ours: O575" in page
    assert "somebody else's: no number" in page
    assert "Set spare 4 is not whole without 0575, 0577" in page
    assert "0575" not in text_of(read(demo, "/check/"))

    _, _, said = send(demo, path + "which/", receipt="2", line="1", component="0575", by="206")
    assert said == ("0575 is back, says 206.",)
    assert "4 sent, 3 back, 1 not back" in text_of(read(demo, path))
    assert "0575" in text_of(read(demo, "/check/"))


def test_a_delivery_of_nothing_is_refused(demo: Client) -> None:
    """A receipt names what came."""
    assert send(demo, "/contractor/26-01/", by="206")[0] == 422


def test_a_shipment_leaves_with_what_its_people_must_know(demo: Client) -> None:
    """Each piece is away from then on; the manifest is a sheet."""
    _, where, said = send(demo, "/contractor/send/", provider="Aldmere Gear Care", by="206",
                          pieces="0551, 0552", services=["advanced-cleaning"],
                          contaminant="smoke", present="yes", promised="2026-03-30")  # fmt: skip

    assert where == "/contractor/26-02/"
    assert said == ("26-02: 2 pieces to Aldmere Gear Care. Print the manifest.",)
    assert "at contractor" in text_of(read(demo, "/pieces/0551/"))
    assert demo.get("/contractor/26-02/manifest.pdf").content.startswith(b"%PDF")


def test_held_gear_does_not_leave(demo: Client) -> None:
    """A piece that waits for a decision is named, and nothing of the shipment is kept."""
    inspect(demo, "/inspect/advanced/0498/", by="206", **{"t-light": "no"})
    _, _, said = send(demo, "/contractor/send/", provider="Aldmere Gear Care", by="206",
                      pieces="0497 0498", services=["advanced-cleaning"])  # fmt: skip

    assert said[0] == "Nothing was written down:"
    assert demo.get("/contractor/26-02/").status_code == 404


def test_an_invoice_is_held_against_the_shipment(demo: Client) -> None:
    """What was not ordered and what is not back is asked about; a line that is none is refused."""
    path = "/contractor/26-01/invoice/"
    send(demo, path, number="A-1", total="76.00", currency="USD",
         charges="0574 1 38.00\n0574 4 38.00")  # fmt: skip
    page = text_of(read(demo, path))

    assert "76.00 USD to be asked about" in page
    assert "0574, complete liner inspection, 38.00 USD: this work was not ordered." in page
    assert send(demo, path, number="A", total="1", currency="USD", charges="0574 9 1")[0] == 422


def test_a_recall_stays_open_until_every_possible_was_read(demo: Client) -> None:
    """Two to be read, one to be dealt with; only then can a person close it."""
    path = "/recalls/26-02/"
    _, _, early = send(demo, path + "close/", by="206")
    send(demo, path + "seen/", component="0414", affected="no", read="R7-L 2105-A", by="206")
    send(demo, path + "seen/", component="0426", affected="unknown", by="206")
    still = text_of(read(demo, path))
    send(demo, path + "seen/", component="0426", affected="yes", read="2103-C", by="206")
    for piece in ("0426", "0575"):
        send(demo, path + "done/", component=piece, step="pulled", by="206")
    _, _, said = send(demo, path + "close/", by="206")

    assert early[0] == "Nothing was written down:"
    assert "Open: one possible component still to be read" in still
    assert said == ("Notice 26-02 closed by 206.",)
    assert "Closed by 206" in text_of(read(demo, path))
    assert "Is it one of those the notice means" in text_of(read(demo, "/needs/"))


def test_a_notice_is_typed_in_with_lots_and_exceptions(demo: Client) -> None:
    """Styles, days of making and lots make the list; what is not meant is shown with why."""
    _, where, _ = send(demo, "/recalls/new/", name="26-03", issuer="Aldmere", title="hoods",
                       kinds=["coat-liner"], styles="R7-L", made_from="2021-03",
                       made_to="2021-03", lots="2103*\n2104*", except_lots="2103-C")  # fmt: skip
    page = text_of(read(demo, where + "?others=1"))

    assert where == "/recalls/26-03/"
    assert "0578: Not meant by this notice" in page


def test_a_notice_with_an_impossible_span_is_refused(demo: Client) -> None:
    """Lots that run backwards and a making that ends before it begins."""
    status, _, _ = send(demo, "/recalls/new/", name="x", issuer="x", title="x", kinds=["hood"],
                        lots="2108..2103", made_from="2022", made_to="2021")  # fmt: skip

    assert status == 422


def test_the_calendar_opens_by_its_own_address_alone(demo: Client) -> None:
    """The address on the page answers; another does not."""
    address = re.findall(r'href="http://localhost(/due/calendar/[^"]+)"', read(demo, "/due/today/"))
    feed = demo.get(address[0])

    assert feed["Content-Type"].startswith("text/calendar")
    assert feed.content.startswith(b"BEGIN:VCALENDAR\r\n")
    assert b"UID:0455.advanced-cleaning" in feed.content
    assert demo.get("/due/calendar/demo:wrong/gear.ics").status_code == 404


@pytest.mark.parametrize("path", ["/due/month.pdf", "/recalls/26-02/list.pdf", DAY + "sheet.pdf"])
def test_sheets_of_the_year_are_pdfs(demo: Client, path: str) -> None:
    """The table for the chief, a recall's list, the day to tick."""
    assert demo.get(path).content.startswith(b"%PDF")


def test_the_shelf_is_counted_and_the_machine_logged(demo: Client) -> None:
    """A count takes the place of the last; a temperature over the limit is said."""
    send(demo, "/stores/", what="count", supply="soap-a", count="6", by="228")
    send(demo, "/stores/", what="new", name="brushes", count="2", minimum="1", by="228")
    send(demo, "/stores/", what="log", machine="drum 1", chore="temperature-taken",
         reading="118 °F", by="228")  # fmt: skip
    page = text_of(read(demo, "/stores/"))

    assert "gear soap: 1" not in page
    assert "6 can of 5 L" in page
    assert "brushes" in page.casefold()
    assert "118 °F measured, above the limit" in page


@pytest.mark.parametrize(
    "given",
    [{"what": "count", "supply": "soap-a", "count": "-1", "by": "228"},
     {"what": "log", "machine": "drum 1", "chore": "flush", "by": ""},
     {"what": "log", "machine": "drum 1", "chore": "temperature-taken", "reading": "hot",
      "by": "228"}],
)  # fmt: skip
def test_a_count_or_a_line_without_sense_is_refused(demo: Client, given: dict[str, str]) -> None:
    """Below nothing, by nobody, no temperature: the form comes back."""
    assert send(demo, "/stores/", **given)[0] == 422


def test_measures_are_taken_and_changes_reported(demo: Client) -> None:
    """Whoever was measured leaves the list; whoever changed comes onto it."""
    send(demo, "/fit/226/", by="206", **{"d-chest": "52"})
    after = text_of(read(demo, "/fit/"))
    send(demo, "/fit/", member="211", change="body")

    assert "Measure 226" not in after
    assert "211 Last measured 2025-10-14" in text_of(read(demo, "/fit/"))


@pytest.mark.parametrize(
    "path",
    ["/inspect/routine/none/", "/inspect/liner/0497/", "/inspect/none/0497/", "/repairs/none/",
     "/inspect/day/liner/2020-01-01/", "/contractor/none/", "/recalls/none/", "/fit/none/"],
)  # fmt: skip
def test_what_is_not_there_is_a_page_of_its_own(demo: Client, path: str) -> None:
    """An unknown piece, day, shipment, notice or member."""
    assert demo.get(path).status_code == 404


def test_the_newest_report_of_the_year_is_taken_back(demo: Client) -> None:
    """Undo, rather than "are you sure": the piece is where it was."""
    send(demo, "/contractor/26-01/", numbers="0574", by="206")
    _, _, said = send(demo, "/undo/")

    assert said == ("Taken back: 26-01: one piece taken in.",)
    assert "4 sent, 0 back, 4 not back" in text_of(read(demo, "/contractor/26-01/"))
