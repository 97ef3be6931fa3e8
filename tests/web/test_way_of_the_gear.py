"""From the call back to the hook, form by form, in the demonstration."""

from django.test import Client
from tests.web.pages import points, read, send, text_of


def _call(demo: Client) -> str:
    _, where, _ = send(demo, "/call/", title="car fire, Mill Road", began="04:00", back="04:15",
                       rode=["223", "226"], opened="no")  # fmt: skip
    return where


def test_a_call_leads_from_person_to_person_to_hazards_to_needs(demo: Client) -> None:
    """Each step is kept by itself and leads on to the next."""
    first = _call(demo)
    _, second, _ = send(demo, first, places=["inside-on-air"], smoke="yes", done="part",
                        reason="cold", bag="31")  # fmt: skip
    _, third, said = send(demo, second, places=["unknown"])
    _, last, _ = send(demo, third, **{"battery-smoke": "suspected"})

    assert [first[-9:], second[-9:], last] == ["/who/223/", "/who/226/", "/needs/"]
    assert third.endswith("/hazards/")
    assert said == ("226: kept.",)
    assert "223 needs wash" in text_of(read(demo, "/needs/"))


def test_a_call_without_a_title_or_people_is_not_kept(demo: Client) -> None:
    """Every field that lacks something is named, and nothing is kept."""
    status, _, _ = send(demo, "/call/", title="", began="25:99")

    assert status == 422
    assert "Mill Road" not in read(demo, "/call/")


def test_where_somebody_was_must_be_said_or_not_known(demo: Client) -> None:
    """No place at all is no answer; "don't know" is one."""
    path = "/call/26-0311/who/218/"

    assert send(demo, path, smoke="yes")[0] == 422
    assert send(demo, path, places=["moon"])[0] == 422
    assert send(demo, path, places=["unknown"])[0] == 200


def test_what_was_said_of_a_person_stands_ticked_again(demo: Client) -> None:
    """Coming back to a person shows what is known, bag and reason included."""
    page = read(demo, "/call/26-0311/who/218/")

    assert 'value="inside-on-air" checked' in page
    assert 'value="hose line frozen"' in page
    assert 'value="15"' in page


def test_a_load_goes_from_the_drum_to_the_rack(demo: Client) -> None:
    """Started, ended, hung: each is said, and the pieces' marks follow."""
    for deed, mark in (("start", "in washer"), ("end", "washed, wet"), ("hang", "drying")):
        status, _, said = send(demo, f"/wash/load/1/{deed}/")

        assert status == 200
        assert said
        assert mark in text_of(read(demo, "/pieces/0402/"))


def test_a_load_cannot_end_before_it_began(demo: Client) -> None:
    """A refusal names each piece, and nothing is written down."""
    _, _, said = send(demo, "/wash/load/1/end/")

    assert said[0] == "Nothing was written down:"
    assert any(line.startswith("0402") for line in said)
    assert "Nothing was reported yet" in read(demo, "/history/")


def test_a_load_that_stopped_needs_its_wash_again(demo: Client) -> None:
    """Its card offers to start it anew."""
    send(demo, "/wash/load/1/start/")
    send(demo, "/wash/load/1/fail/")

    assert "/wash/load/1/start/" in read(demo, "/wash/load/1/")


def _hang(demo: Client) -> None:
    for deed in ("start", "end", "hang"):
        send(demo, f"/wash/load/1/{deed}/")


def test_nothing_is_back_before_a_named_hand_felt_it_dry(demo: Client) -> None:
    """Without a name it is not kept; with a damp point it stays; with all dry it is checked."""
    _hang(demo)
    path = "/check/piece/0402/"
    felt = points(read(demo, path))
    dry = dict.fromkeys(felt, "yes")

    assert send(demo, path, by="", **dry)[0] == 422
    send(demo, path, by="118", **{**dry, felt[0]: "no"})
    assert "needs check" in text_of(read(demo, "/pieces/0402/"))
    send(demo, path, by="118", **dry)
    assert "taken apart" in text_of(read(demo, "/pieces/0402/"))


def test_an_element_is_back_on_the_hook_once_it_is_whole(demo: Client) -> None:
    """A coat with its liner alone is not whole, and says what it lacks."""
    _hang(demo)
    path = "/check/piece/0405/"
    send(demo, path, by="118", **dict.fromkeys(points(read(demo, path)), "yes"))
    build = "/check/build/211-trousers/"

    assert send(demo, build, by="118")[0] == 422
    send(demo, build, by="118", parts=["0405"])
    assert "trouser shell" in text_of(read(demo, build))


def test_a_wearers_look_puts_gear_back_to_rest(demo: Client) -> None:
    """The driver stayed at the pump; a look by the wearer is enough."""
    _, _, said = send(demo, "/people/213/looked/")

    assert said == ("213 looked over 12 pieces.",)
    assert "needs a look" not in text_of(read(demo, "/people/213/"))
    assert demo.post("/people/213/looked/").status_code == 404


def test_the_newest_report_is_taken_back(demo: Client) -> None:
    """Undo instead of "are you sure"; with nothing left it says so."""
    send(demo, "/wash/load/1/start/")

    assert send(demo, "/undo/", back="/wash/")[2] == ("Taken back: Load 1 is in the washer.",)
    assert send(demo, "/undo/")[2] == ("There is nothing to take back.",)


def test_a_form_sent_twice_is_one_report(demo: Client) -> None:
    """The second sending of the same form changes nothing."""
    for _ in range(2):
        send(demo, "/people/228/looked/", key="k1")
        send(demo, "/wash/load/1/start/", key="k2")

    assert read(demo, "/history/").count("is in the washer") == 1


def test_a_plan_is_made_for_the_goal_that_was_asked_for(demo: Client) -> None:
    """A deadline needs its time; any other goal none."""
    assert send(demo, "/wash/plan/", goal="deadline", by="")[0] == 422
    assert send(demo, "/wash/plan/", goal="none")[0] == 422
    assert send(demo, "/wash/plan/", goal="all-done")[1] == "/wash/"
    assert "All of it done as soon as possible" in text_of(read(demo, "/wash/"))


def test_the_history_is_searched(demo: Client) -> None:
    """A piece's number finds what was reported of it."""
    send(demo, "/wash/load/1/start/")

    assert "Load 1 is in the washer" in read(demo, "/history/?q=0402")
    assert "Load 1 is in the washer" not in read(demo, "/history/?q=0404")


def test_the_wash_room_says_why_loads_come_in_this_order(demo: Client) -> None:
    """By what would happen the other way round, member by member."""
    assert "the other way round" in read(demo, "/wash/")
