"""An account sees the record's desk, and what it reports becomes entries."""

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import points, read, send, text_of
from tests.web.records import account, act

from sootline.core.basis import BadInputError, CallId
from sootline.tasks.deeds import HazardsSaid
from sootline.tasks.write_reports import write
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES


@pytest.fixture
def officer(databases: Databases) -> Client:
    """Sit at a record with a department, its people and its gear, as one who may do everything."""
    return account(databases)


def test_a_call_becomes_entries_and_its_gear_needs_a_wash(officer: Client) -> None:
    """Who rode, where each was, what was there: all of it is read back from the record."""
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    _, hazards, said = send(officer, where, places=["inside-on-air"], smoke="yes", done="done",
                            method="wet-soap", bag="31")  # fmt: skip
    send(officer, hazards, smoke="known")

    assert said == ("223: kept.",)
    assert "223 needs wash" in text_of(read(officer, "/needs/"))
    assert "bagged" in text_of(read(officer, "/history/")).casefold()


def test_gear_goes_from_the_call_back_to_the_hook(officer: Client) -> None:
    """Planned, washed, hung, felt, put together: each step stands in the record."""
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    send(officer, where, places=["inside"], smoke="yes", bag="31")
    send(officer, "/wash/plan/", goal="all-done")
    liner = "0501"
    number = _load_of(officer, liner)
    for deed in ("start", "end", "hang"):
        assert len(send(officer, f"/wash/load/{number}/{deed}/")[2]) == 1
    path = f"/check/piece/{liner}/"
    _, _, said = send(officer, path, by="118", **dict.fromkeys(points(read(officer, path)), "yes"))

    assert said == (f"Trouser liner {liner}: felt and looked over by 118.",)
    assert "taken apart" in text_of(read(officer, f"/pieces/{liner}/"))


def _load_of(client: Client, piece: str) -> int:
    for number in range(1, 12):
        if piece in text_of(read(client, f"/wash/load/{number}/")):
            return number
    raise AssertionError(piece)


def test_the_newest_act_is_withdrawn_as_a_whole(officer: Client) -> None:
    """Undo corrects every entry of the act; the entries themselves stay in the record."""
    send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    _, _, said = send(officer, "/undo/")

    assert said[0].startswith("Taken back")
    assert "/call/" in read(officer, "/history/")
    assert "car fire" not in text_of(read(officer, "/call/"))


@pytest.mark.parametrize("path", ["/", "/call/", "/needs/", "/wash/", "/check/", "/pieces/?q=x",
                                  "/people/", "/due/", "/handover/", "/paper/", "/rules/",
                                  "/history/"])  # fmt: skip
def test_an_empty_department_has_pages(databases: Databases, path: str) -> None:
    """With a department and nobody in it, every screen says so and none fails."""
    client = account(databases, owners=())

    assert client.get(path).status_code == 200


def test_without_a_department_the_page_says_what_is_missing(databases: Databases) -> None:
    """A record that was never described makes no job; the page names it."""
    answer = account(databases, described=False, owners=()).get("/")

    assert answer.status_code == 503
    assert "department" in answer.content.decode()


def test_signed_out_leads_to_the_sign_in(databases: Databases) -> None:
    """Nothing of a record is shown to nobody."""
    databases.fresh("sqlite")
    answer = Client(SERVER_NAME="localhost").get("/wash/")

    assert answer.status_code == 302
    assert answer["Location"].startswith("/sign-in/")


def test_an_office_without_the_right_is_told_so(databases: Databases) -> None:
    """A member sees who can ride, and not where somebody was at a call."""
    client = account(databases, roles=("member",))

    assert client.get("/").status_code == 200
    assert client.get("/call/").status_code == 403
    assert "This is for others" in client.get("/call/").content.decode()


def test_nothing_is_said_of_a_call_that_is_not_recorded(officer: Client) -> None:
    """A call's number that the record does not know is refused by its place."""
    # Only once the framework is set up.
    from sootline.wiring.store import open_book  # noqa: PLC0415

    assert officer.session
    deed = HazardsSaid(call=CallId("none"), hazards=())
    with pytest.raises(BadInputError) as refused:
        write(RULES, open_book(), act("late"), demo_job(), deed)

    assert [one.place for one in refused.value.faults] == ["call"]
