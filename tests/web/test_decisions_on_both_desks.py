"""Holds, surveys, disinfection, guests, washed elsewhere, rulings, handover: on both desks."""

import re

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.desks import call_of, held
from tests.web.pages import points, read, send, text_of
from tests.web.records import account
from tests.web.test_whole_way import check, soil, wash


@pytest.fixture(params=["demonstration", "record"])
def desk(request: pytest.FixtureRequest, databases: Databases) -> Client:
    """Sit at a desk as one who may do everything."""
    if request.param == "demonstration":
        client: Client = request.getfixturevalue("demo")
        return client
    roles = ("gear-officer", "safety-officer", "infection-officer")
    return account(databases, owners=("223", "226"), roles=roles)


def _cause(client: Client, topic: str, call: str) -> str:
    found: list[str] = re.findall(r'href="/holds/([^"]+)/"', read(client, "/needs/"))
    return next(one for one in found if one.startswith(topic) and one.endswith(call))


def _pieces(html: str) -> list[str]:
    return sorted(set(re.findall(r'name="pieces" value="([^"]+)"', html)))


def test_a_hold_is_ended_by_its_office_with_a_reason(desk: Client) -> None:
    """The rule is shown; without words or office nothing ends; then the gear needs its wash."""
    call = held(desk)
    path = f"/holds/{_cause(desk, 'asbestos', call)}/"
    page = read(desk, path)
    pieces = _pieces(page)

    assert "common practice" in text_of(page) or "<cite>" in page
    assert send(desk, path, pieces=pieces, by="112", office="safety-officer", said="")[0] == 422
    assert send(desk, path, pieces=pieces, by="112", office="investigator", said="x")[0] == 422
    _, where, said = send(
        desk, path, pieces=pieces, by="112", office="safety-officer", said="owner showed papers"
    )
    assert where == "/needs/"
    assert said == (f"{len(pieces)} pieces: hold ended by 112 (safety officer).",)
    assert desk.get(path).status_code == 404


def test_an_ended_hold_comes_back_with_undo(desk: Client) -> None:
    """Undo instead of "are you sure": the gear waits again."""
    call = held(desk)
    path = f"/holds/{_cause(desk, 'asbestos', call)}/"
    pieces = _pieces(read(desk, path))
    send(desk, path, pieces=pieces, by="112", office="safety-officer", said="papers")
    send(desk, "/undo/")

    assert desk.get(path).status_code == 200


def test_an_account_without_the_office_is_told_who_may(databases: Databases) -> None:
    """The gear officer sees the hold and its rule, and cannot end the safety officer's."""
    client = account(databases, owners=("223",), roles=("gear-officer",))
    call = held_by_gear_officer(client, databases)
    path = f"/holds/{call}/"
    page = text_of(read(client, path))

    assert "Only the safety officer or the deputy" in page
    answer = client.post(path, {"pieces": ["0500"], "by": "118", "office": "safety-officer",
                                "said": "x"})  # fmt: skip
    assert answer.status_code == 403


def held_by_gear_officer(client: Client, databases: Databases) -> str:
    """Let a safety officer write the call down, then look again as the gear officer."""
    # Only once the framework is set up.
    from sootline.storage.models import User  # noqa: PLC0415

    assert databases
    other = User.objects.make("112", None, ("safety-officer", "gear-officer"), member="112")
    second = Client(SERVER_NAME="localhost")
    second.force_login(other, backend="django.contrib.auth.backends.ModelBackend")
    return _cause(client, "asbestos", held(second))


def test_a_survey_that_finds_nothing_answers_the_suspicion(desk: Client) -> None:
    """Signed by a name, it ends the hold by rule; the gear still needs its wash."""
    call = held(desk)
    cause = _cause(desk, "asbestos", call)

    assert send(desk, f"/holds/{cause}/survey/", found="absent", by="")[0] == 422
    _, _, said = send(desk, f"/holds/{cause}/survey/", found="absent", by="Dr Ames")

    assert "signed by Dr Ames" in said[0]
    assert desk.get(f"/holds/{cause}/").status_code == 404


def test_disinfection_needs_its_whole_contact_time(desk: Client) -> None:
    """A product at hand, the time of its label, a name; infection control then ends the hold."""
    call = held(desk, hazard="blood")
    cause = _cause(desk, "blood.disinfect", call)
    path = f"/holds/{cause}/"
    page = read(desk, path)
    pieces = _pieces(page)
    product, minutes = re.findall(r'name="product" value="([^"]+)".*?label: (\d+) min', page)[0]

    short = send(desk, f"{path}disinfected/", pieces=pieces, product=product, minutes="1", by="9")
    assert any("Do it again, for the whole time" in one for one in short[2])
    wrong = send(desk, f"{path}disinfected/", pieces=pieces, product="soap", minutes="9", by="9")
    assert any("not among the products" in one for one in wrong[2])
    _, _, said = send(
        desk, f"{path}disinfected/", pieces=pieces, product=product, minutes=minutes, by="131"
    )
    assert f"disinfected with {product}, {minutes} min" in said[0]
    assert f"{product}, {minutes} min · 131" in text_of(read(desk, path))
    assert "disinfected" in text_of(read(desk, f"/pieces/{pieces[0]}/"))


def test_guests_gear_is_noted_and_handed_back_and_never_rides(desk: Client) -> None:
    """It stands in the needs of the call, not in our seats, and is gone once somebody took it."""
    call = call_of(desk, "223")
    path = f"/call/{call}/guests/"

    assert send(desk, path, department="Ostrey", kinds=[])[0] == 422
    _, _, said = send(desk, path, department="Ostrey", wearer="12", bag="44",
                      kinds=["coat-shell", "coat-liner"])  # fmt: skip
    pieces = _pieces(read(desk, "/guests/"))

    assert said == ("2 pieces of Ostrey: noted.",)
    assert len(pieces) == 2
    assert all(one not in text_of(read(desk, "/")) for one in pieces)
    assert "Ostrey 12" not in text_of(read(desk, "/"))
    assert "needs wash" in text_of(read(desk, f"/pieces/{pieces[0]}/"))
    _, _, said = send(desk, "/guests/", pieces=pieces, to="Lt Ames, Ostrey", by="118")
    assert said == ("2 pieces handed back to Lt Ames, Ostrey.",)
    assert "No other department" in text_of(read(desk, "/guests/"))


def test_washed_at_home_is_asked_about_without_blame(desk: Client) -> None:
    """The pieces wait for the gear officer; nothing is counted as a wash."""
    path = "/people/223/elsewhere/"
    piece = _pieces(read(desk, path))[0]

    assert "Nobody is blamed" in text_of(read(desk, path))
    assert send(desk, path, pieces=[], by="223")[0] == 422
    _, _, said = send(desk, path, pieces=[piece], by="223", said="40 degrees, alone")

    assert said == ("223: 1 pieces washed elsewhere; they wait for the gear officer.",)
    needs = text_of(read(desk, "/needs/"))
    assert "40 degrees, alone" in needs or "Washed at home or elsewhere" in needs
    assert "waiting for a decision" in text_of(read(desk, f"/pieces/{piece}/")).casefold()


@pytest.mark.parametrize(
    ("ruling", "mark"),
    [("wash-again", "needs wash"), ("repair", "repair"), ("hold", "waiting for a decision"),
     ("out", "gear out"), ("dry-on", "drying")],
)  # fmt: skip
def test_a_person_decides_after_a_check_and_it_goes_on_the_record(
    desk: Client, ruling: str, mark: str
) -> None:
    """Whatever is decided changes where the piece stands; no name or reason, no decision."""
    soil(desk)
    piece = _hung(desk)
    path = f"/check/piece/{piece}/"
    dry = dict.fromkeys(points(read(desk, path)), "yes")
    send(desk, path, by="118", flaws=["torn"], place="left cuff", **dry)
    then = f"/check/then/{piece}/"

    assert send(desk, then, next=ruling, by="", said="")[0] == 422
    _, _, said = send(desk, then, next=ruling, by="118", said="seam shop")

    assert "decided by 118" in said[0]
    assert mark in text_of(read(desk, f"/pieces/{piece}/")).casefold()


def _hung(client: Client) -> str:
    for number in range(1, 30):
        page = client.get(f"/wash/load/{number}/").content.decode()
        if "/start/" in page:
            for deed in ("start", "end", "hang"):
                send(client, f"/wash/load/{number}/{deed}/")
            return str(re.findall(r'href="/pieces/(\w+)/"', page)[0])
    raise AssertionError("no load for a drum")


def test_charred_gear_waits_for_a_decision_by_itself(desk: Client) -> None:
    """What may have lost strength is held when it is found; nobody need decide that first."""
    soil(desk)
    piece = _hung(desk)
    path = f"/check/piece/{piece}/"
    dry = dict.fromkeys(points(read(desk, path)), "yes")
    send(desk, path, by="118", flaws=["charred"], **dry)

    assert "waiting for a decision" in text_of(read(desk, f"/pieces/{piece}/")).casefold()


def test_a_shift_hands_over_by_two_names(desk: Client) -> None:
    """Giver and taker, never the same; what was not as usual is kept with them."""
    assert send(desk, "/handover/", giver="118", taker="118")[0] == 422
    assert send(desk, "/handover/", giver="118", taker="")[0] == 422
    _, _, said = send(desk, "/handover/", giver="118", taker="131", said="drum 2 is slow")

    assert said[0].startswith("118 handed over to 131:")
    assert "118 handed over to 131" in text_of(read(desk, "/handover/"))


def test_a_plan_on_the_record_outlives_the_program(databases: Databases) -> None:
    """The cards are the same when nothing is kept in memory; undo brings back no plan."""
    # Only once the framework is set up.
    from sootline.wiring import store_desk  # noqa: PLC0415

    client = account(databases, owners=("223",))
    soil(client)
    before = read(client, "/wash/load/1/")
    store_desk._plans.clear()

    def card(html: str) -> str:
        return text_of(html).split("Loaded and started")[0]

    assert card(read(client, "/wash/load/1/")) == card(before)
    check(client, wash(client))
