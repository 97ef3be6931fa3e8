"""New member, first day, try-on, exchange, leaving: the same at both desks."""

import re

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import read, send, text_of
from tests.web.records import account


@pytest.fixture(params=["demonstration", "record"])
def desk(request: pytest.FixtureRequest, databases: Databases) -> Client:
    """Sit at a desk as the gear officer."""
    if request.param == "demonstration":
        client: Client = request.getfixturevalue("demo")
        return client
    return account(databases)


def _pieces(html: str) -> list[str]:
    return sorted(set(re.findall(r'name="pieces" value="([^"]+)"', html)))


def _new(client: Client, number: str = "240", **measures: str) -> str:
    given = {f"d-{one}": size for one, size in measures.items()}
    _, where, _ = send(client, "/people/new/", number=number, crew="Engine 1", **given)
    return where


def test_a_new_member_without_measures_is_offered_no_guess(desk: Client) -> None:
    """What is not measured is named; sizes in inches are not "close enough"."""
    where = _new(desk)
    page = text_of(read(desk, where))

    assert where == "/people/240/first-day/"
    assert "Not measured yet" in page
    assert "Missing" in page
    assert send(desk, "/people/new/", number="")[0] == 422


def test_a_number_is_given_once(desk: Client) -> None:
    """A second member of the same number is refused, by name."""
    _, _, said = send(desk, "/people/new/", number="223", crew="Engine 1")

    assert said[0] == "Nothing was written down:"
    assert any("223" in one for one in said)


def test_gear_is_given_tried_on_and_signed(desk: Client) -> None:
    """What fits goes out, is not for inside until somebody signs, then stands as signed."""
    sizes = _measures_of_a_spare(desk)
    where = _new(desk, **sizes)
    units = _pieces(read(desk, where))
    assert units
    _, tried, said = send(desk, where, pieces=units, by="118")
    pieces = _pieces(read(desk, tried))

    assert tried == "/people/240/tried/"
    assert "still to be tried on" in said[0]
    assert all(one in text_of(read(desk, "/people/240/")) for one in pieces)
    assert send(desk, tried, pieces=pieces, by="118")[0] == 422
    _, _, said = send(desk, tried, pieces=pieces[:1], fits="no", by="118", said="sleeves short")
    assert "do not fit" in said[0]
    _, _, said = send(desk, tried, pieces=pieces, fits="yes", by="118")
    assert "signed by 118" in said[0]
    assert "Nothing waits to be tried on" in text_of(read(desk, tried))


def _measures_of_a_spare(client: Client) -> dict[str, str]:
    """Read the fit limits' dimensions, and take the sizes of what is on the spare rack."""
    # Only once the framework is set up.
    from sootline.wiring.demo import demo_job  # noqa: PLC0415

    assert client
    job = demo_job()
    wanted = {rule.dimension for rule in job.riding.fit}
    found: dict[str, str] = {}
    for piece in job.components:
        if piece.owner is None and piece.guest is None and piece.state.holder is None:
            for dimension, size in piece.size:
                if dimension in wanted:
                    found.setdefault(dimension, size)
    return found


def _exchangeable(client: Client) -> tuple[str, str, str]:
    """Find a member's piece of which a spare of its kind is on the rack."""
    for member in ("223", "226", "218", "228"):
        own = re.findall(r'name="returns" value="([^"]+)"',
                         read(client, f"/people/{member}/exchange/"))  # fmt: skip
        for piece in own:
            page = read(client, f"/people/{member}/exchange/?returns={piece}")
            takes = re.findall(r'name="takes" value="([^"]+)"', page)
            if takes:
                return member, piece, takes[0]
    raise AssertionError("no spare for anybody")


def test_an_exchange_is_both_moves_or_neither(desk: Client) -> None:
    """The returned piece goes to the wash room, the other to the member, to be tried on."""
    member, returns, takes = _exchangeable(desk)
    path = f"/people/{member}/exchange/"

    assert send(desk, path, returns=returns, takes="none", then="wash", by="118")[0] == 422
    _, where, said = send(desk, path, returns=returns, takes=takes, then="wash", by="118")

    assert where == f"/people/{member}/tried/"
    assert said == (f"{member}: {returns} came back, {takes} went out.",)
    assert takes in text_of(read(desk, f"/people/{member}/"))
    assert "needs wash" in text_of(read(desk, f"/pieces/{returns}/"))


def test_what_was_worn_since_its_wash_does_not_go_on_the_rack(desk: Client) -> None:
    """Neither move is made; the reason is said."""
    member, returns, takes = _exchangeable(desk)
    path = f"/people/{member}/exchange/"
    _, _, said = send(desk, path, returns=returns, takes=takes, then="rack", by="118")

    assert said[0] == "Nothing was written down:"
    assert takes not in text_of(read(desk, f"/people/{member}/")).split("Exchange")[0]


def test_a_leaver_gives_back_what_came_back(desk: Client) -> None:
    """What is still out keeps the name; once everything is back, the name is off the list."""
    path = "/people/228/leaves/"
    pieces = _pieces(read(desk, path))
    _, _, said = send(desk, path, pieces=pieces[1:], by="118")

    assert said == (f"228 left: {len(pieces) - 1} pieces came back, 1 are still out.",)
    assert "needs wash" in text_of(read(desk, f"/pieces/{pieces[1]}/"))
    assert _pieces(read(desk, path)) == pieces[:1]
    send(desk, path, pieces=pieces[:1], by="118")
    assert desk.get("/people/228/").status_code == 404


def test_undo_brings_a_leaver_back(desk: Client) -> None:
    """One act, taken back as a whole."""
    path = "/people/228/leaves/"
    pieces = _pieces(read(desk, path))
    send(desk, path, pieces=pieces, by="118")
    send(desk, "/undo/")

    assert _pieces(read(desk, path)) == pieces
