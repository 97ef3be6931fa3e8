"""The year between calls on the record: every act stands in it, and undo withdraws all of it."""

import re

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import read, send, text_of
from tests.web.records import account, act
from tests.web.year import OFFICER, inspect

from sootline.core.job.things import DepartmentFacts
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.qualified import Grade, Qualified, Scope
from sootline.tasks.register_things import describe_department
from sootline.wiring.demo import demo_job

PROVIDER = "Aldmere Gear Care"


@pytest.fixture
def officer(databases: Databases) -> Client:
    """Sit at a record of two members' gear, as somebody trained to inspect it."""
    # Only once the framework is set up.
    from sootline.wiring.store import open_book  # noqa: PLC0415

    client, job = account(databases, owners=("223", "224")), demo_job()
    trained = Qualified(who=OFFICER, grade=Grade.TRAINED, scopes=tuple(Scope))
    facts = DepartmentFacts(
        department=job.department,
        guides=job.guides,
        wash_room=job.wash_room,
        riding=job.riding,
        upkeep=UpkeepFacts(
            qualified=(trained,),
            routines=job.upkeep.routines,
            work_today=job.upkeep.work_today,
        ),
    )
    describe_department(open_book(), act("trained"), facts)
    return client


def test_an_inspection_moves_the_next_one_and_undo_moves_it_back(officer: Client) -> None:
    """It stands in the piece's history; taken back, the piece is due as before."""
    said = inspect(officer, "/inspect/advanced/0497/", by=OFFICER)
    history = text_of(read(officer, "/history/"))
    _, _, undone = send(officer, "/undo/")

    assert "nothing found. Next" in said[0]
    assert "advanced inspection" in history.casefold()
    assert undone[0].startswith("Taken back")
    assert "0497" not in re.findall(r"Latest.*", text_of(read(officer, "/inspect/")))


def test_light_through_a_liner_holds_it_in_the_record(officer: Client) -> None:
    """The hold is an entry; undo withdraws both."""
    inspect(officer, "/inspect/advanced/0498/", by=OFFICER, **{"t-light": "no"})
    held = text_of(read(officer, "/pieces/0498/"))
    send(officer, "/undo/")

    assert "waiting for a decision" in held
    assert "waiting for a decision" not in text_of(read(officer, "/pieces/0498/"))


def test_a_day_is_kept_with_what_is_not_there(officer: Client) -> None:
    """Planned, one looked at, one absent: the rest stays to do."""
    _, where, _ = send(officer, "/inspect/day/", kind="advanced", owners=["223"],
                       elements=["coat"])  # fmt: skip
    inspect(officer, "/inspect/advanced/0497/", by=OFFICER)
    send(officer, where, piece="0498", why="at the laundry")
    page = text_of(read(officer, where))

    assert "1 to look at, 1 looked at." in page
    assert "not here (at the laundry): stays due" in page


def test_a_shipment_goes_out_and_back_in_the_record(officer: Client) -> None:
    """Away until it is back by its number or a person's word, then to its check."""
    _, where, _ = send(officer, "/contractor/send/", provider=PROVIDER, by=OFFICER,
                       pieces="0497 0498", services=["advanced-cleaning"])  # fmt: skip
    away = text_of(read(officer, "/pieces/0497/"))
    send(officer, where, numbers="0497\nO498", by=OFFICER)
    send(officer, where + "which/", receipt="0", line="1", component="0498", by=OFFICER)

    assert "at contractor" in away
    assert "2 sent, 2 back, 0 not back" in text_of(read(officer, where))
    assert "0498" in text_of(read(officer, "/check/"))


def test_a_word_on_a_delivery_that_was_taken_back_does_no_harm(officer: Client) -> None:
    """The desk still opens when what a fact speaks of is gone."""
    _, where, _ = send(officer, "/contractor/send/", provider=PROVIDER, by=OFFICER,
                       pieces="0497", services=["advanced-cleaning"])  # fmt: skip
    send(officer, "/undo/")

    assert officer.get(where).status_code == 404
    assert text_of(read(officer, "/contractor/")).count("Nothing was ever sent out.") == 1


def test_a_recall_is_closed_in_the_record(officer: Client) -> None:
    """Typed in, read by eye, closed by name."""
    send(officer, "/recalls/new/", name="26-9", issuer="Aldmere", title="tape",
         kinds=["coat-liner"], styles="R4-L", lots="2103*", stop_use="on")  # fmt: skip
    path = "/recalls/26-9/"
    for piece in re.findall(r'name="component" value="(\w+)"', read(officer, path)):
        send(officer, path + "seen/", component=piece, affected="no", read="2111", by=OFFICER)
    _, _, said = send(officer, path + "close/", by=OFFICER)

    assert said == (f"Notice 26-9 closed by {OFFICER}.",)


def test_a_repair_goes_and_comes_in_the_record(officer: Client) -> None:
    """Sent and back are entries of the piece."""
    send(officer, "/repairs/", piece="0497", works=["trim"])
    path = "/repairs/0497/"
    send(officer, path, step="decide", choice="repair", by=OFFICER)
    send(officer, path, step="sent")
    away = text_of(read(officer, "/pieces/0497/"))
    send(officer, path, step="back", result="trim renewed")

    assert "at repair" in away
    assert "trim renewed" in text_of(read(officer, path))


def test_shelf_machines_and_measures_are_kept(officer: Client) -> None:
    """A count, a line of the log, measures: each is there on the next look."""
    send(officer, "/stores/", what="new", name="brushes", count="2", minimum="4", by=OFFICER)
    send(officer, "/stores/", what="count", supply="s1", count="3", by=OFFICER)
    send(officer, "/stores/", what="log", machine="drum 1", chore="flush", by=OFFICER)
    send(officer, "/fit/223/", by=OFFICER, **{"d-chest": "48"})
    page = text_of(read(officer, "/stores/"))

    assert "brushes: 3" in page.casefold()
    assert "drum 1: empty flush · 118" in page
    assert "48" in text_of(read(officer, "/people/"))


def test_a_calendar_is_private_to_its_account(officer: Client) -> None:
    """The address works without a sign-in, until the password is another."""
    # Only once the framework is set up.
    from sootline.storage.models import User  # noqa: PLC0415

    html = read(officer, "/due/today/")
    address = re.findall(r'href="http://localhost(/due/calendar/[^"]+)"', html)[0]
    stranger = Client(SERVER_NAME="localhost")

    assert stranger.get(address).status_code == 200
    assert stranger.get("/due/calendar/demo:x/gear.ics").status_code == 404
    user = User.objects.get(name="118")
    user.set_password("another long one")
    user.save()
    assert stranger.get(address).status_code == 404


@pytest.mark.parametrize("path", ["/between/", "/inspect/", "/repairs/", "/contractor/",
                                  "/contractor/send/", "/recalls/", "/recalls/new/",
                                  "/due/today/", "/due/month/", "/stores/", "/fit/"])  # fmt: skip
def test_an_empty_department_has_pages_of_the_year(databases: Databases, path: str) -> None:
    """With nobody in it and nothing written down, every screen says so and none fails."""
    assert account(databases, owners=()).get(path).status_code == 200


@pytest.mark.parametrize(
    ("path", "role", "status"),
    [("/inspect/advanced/0497/", "inspector", 200), ("/inspect/advanced/0497/", "member", 403),
     ("/recalls/new/", "officer", 200), ("/repairs/", "auditor", 200)],
)  # fmt: skip
def test_who_may_see_what_of_the_year(
    databases: Databases, path: str, role: str, status: int
) -> None:
    """The table of routes decides."""
    assert account(databases, owners=("223",), roles=(role,)).get(path).status_code == status


@pytest.mark.parametrize(
    ("path", "role"),
    [("/recalls/new/", "officer"), ("/contractor/send/", "inspector"), ("/fit/", "helper"),
     ("/inspect/advanced/0497/", "helper"), ("/stores/", "inspector")],
)  # fmt: skip
def test_who_may_not_send(databases: Databases, path: str, role: str) -> None:
    """Looking is not writing."""
    client = account(databases, owners=("223",), roles=(role,))

    assert client.post(path, {"by": "118"}).status_code == 403
