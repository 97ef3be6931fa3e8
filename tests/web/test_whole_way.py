"""The whole way: a call, its loads, its checks, everything put together and back on the hook."""

import re

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import points, read, send, text_of
from tests.web.records import account

CREW = ("211", "216", "217")


def wash(client: Client) -> list[str]:
    """Run every load of the plan to the rack, one of them after a stop; return its pieces."""
    pieces: list[str] = []
    for number in range(1, 30):
        if client.get(f"/wash/load/{number}/").status_code == 404:
            return pieces
        by_hand = "/by-hand/" in read(client, f"/wash/load/{number}/")
        deeds = ["by-hand", "hang"] if by_hand else ["start", "end", "hang"]
        if number == 1:
            deeds = ["start", "fail", *deeds]
        for deed in deeds:
            status, _, said = send(client, f"/wash/load/{number}/{deed}/")
            assert (status, len(said)) == (200, 1), said
        card = read(client, f"/wash/load/{number}/")
        pieces += re.findall(r'href="/pieces/(\w+)/"', card)
    raise AssertionError("a plan without end")


def check(client: Client, pieces: list[str]) -> None:
    """Feel every piece dry, point by point, and find nothing."""
    for piece in pieces:
        path = f"/check/piece/{piece}/"
        dry = dict.fromkeys(points(read(client, path)), "yes")
        assert send(client, path, by="118", **dry)[0] == 200


def put_together(client: Client) -> int:
    """Fit every coat and every pair of trousers together again; return how many there were."""
    keys = re.findall(r'href="(/check/build/[^"]+)"', read(client, "/check/"))
    for path in keys:
        parts = re.findall(r'name="parts" value="(\w+)"', read(client, path))
        status, _, said = send(client, path, by="118", routed_by="118", parts=parts)
        assert (status, len(said)) == (200, 1), said
    return len(keys)


def test_a_night_at_the_demonstration_ends_on_the_hook(demo: Client) -> None:
    """Whatever could be washed is back; what waits for a decision still waits."""
    pieces = wash(demo)
    check(demo, pieces)

    # The coat of 219 waits for a decision, so that it cannot be whole.
    assert put_together(demo) == 8
    for member in CREW:
        page = text_of(read(demo, f"/people/{member}/"))
        assert page.count("on the hook") == 12, member
        assert "can ride" in page
    assert "SEALED" in text_of(read(demo, "/people/214/"))


@pytest.fixture
def officer(databases: Databases) -> Client:
    """Sit at a record that holds one member's gear."""
    return account(databases, owners=("223",))


def test_a_call_on_the_record_ends_on_the_hook(officer: Client) -> None:
    """Every step becomes an entry, and the record adds up to gear on its hook."""
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    _, hazards, _ = send(officer, where, places=["inside"], smoke="yes", bag="31")
    send(officer, hazards, smoke="known")
    send(officer, "/wash/plan/", goal="all-done")
    pieces = wash(officer)
    check(officer, pieces)

    assert put_together(officer) == 2
    assert text_of(read(officer, "/people/223/")).count("on the hook") == 12


def soil(client: Client, *, bag: str = "") -> None:
    """Let 223 come back from a fire, with a bag or without."""
    _, where, _ = send(client, "/call/", title="car fire", began="00:01", rode=["223"])
    send(client, where, places=["inside"], smoke="yes", bag=bag)
    send(client, "/wash/plan/", goal="all-done")


def test_a_wearers_look_on_the_record(officer: Client) -> None:
    """At the pump in no smoke, a look by the wearer puts the gear back to rest."""
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    send(officer, where, places=["pump"], smoke="no")

    _, _, said = send(officer, "/people/223/looked/")

    assert len(said) == 1


def test_what_is_damp_or_torn_on_the_record_stays_in_the_wash_room(officer: Client) -> None:
    """A check that finds something is kept, and the piece is not on its hook."""
    soil(officer)
    piece = wash(officer)[0]
    path = f"/check/piece/{piece}/"
    dry = dict.fromkeys(points(read(officer, path)), "yes")

    assert send(officer, path, by="118", flaws=["torn"], place="left cuff", **dry)[0] == 200
    assert "needs check" in text_of(read(officer, f"/pieces/{piece}/"))
    send(officer, path, by="118", **dry)
    assert "needs check" not in text_of(read(officer, f"/pieces/{piece}/"))


def test_a_coat_without_its_drag_device_is_not_whole_on_the_record(officer: Client) -> None:
    """It is recorded as it is, and stays off the hook."""
    soil(officer)
    check(officer, wash(officer))
    path = "/check/build/223-coat/"
    parts = re.findall(r'name="parts" value="(\w+)"', read(officer, path))

    send(officer, path, by="118", parts=parts[:2])

    assert "on the hook" not in text_of(read(officer, f"/pieces/{parts[0]}/"))


def test_a_refusal_on_the_record_names_the_piece(officer: Client) -> None:
    """A drum that was never started cannot end; what is washed cannot be washed by hand again."""
    soil(officer)

    assert send(officer, "/wash/load/1/end/")[2][0] == "Nothing was written down:"
    send(officer, "/wash/load/1/start/")
    assert send(officer, "/wash/load/1/start/")[2][0] == "Nothing was written down:"
    assert send(officer, "/call/none/hazards/", smoke="known")[0] == 404


def test_gear_that_is_felt_before_it_was_written_down_as_hung(officer: Client) -> None:
    """A hand on the cloth counts, wherever it hung meanwhile."""
    soil(officer, bag="31")
    for deed in ("start", "end"):
        send(officer, f"/wash/load/1/{deed}/")
    (piece, *_) = re.findall(r'href="/pieces/(\w+)/"', read(officer, "/wash/load/1/"))
    path = f"/check/piece/{piece}/"

    _, _, said = send(officer, path, by="118", **dict.fromkeys(points(read(officer, path)), "yes"))

    assert len(said) == 1
    assert "checked" in text_of(read(officer, f"/pieces/{piece}/"))


def test_a_bag_told_twice_is_one_bagging(officer: Client) -> None:
    """What lies in its bag already stays there."""
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    for bag in ("31", "32"):
        assert send(officer, where, places=["inside"], bag=bag)[0] == 200

    assert read(officer, "/history/").count("bagged") == 12


def _soiled_still(client: Client, pieces: list[str]) -> str:
    path = f"/check/piece/{pieces[0]}/"
    dry = dict.fromkeys(points(read(client, path)), "yes")
    send(client, path, by="118", flaws=["soiled"], **dry)
    return text_of(read(client, f"/pieces/{pieces[0]}/"))


def test_what_is_soiled_still_needs_its_wash_again(demo: Client) -> None:
    """At the demonstration, dry and dirty goes back to the washer."""
    assert "needs wash" in _soiled_still(demo, wash(demo))


def test_what_is_soiled_still_needs_its_wash_again_on_the_record(officer: Client) -> None:
    """On the record, dry and dirty goes back to the washer."""
    soil(officer)

    assert "needs wash" in _soiled_still(officer, wash(officer))
