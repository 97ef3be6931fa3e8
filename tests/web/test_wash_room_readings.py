"""The drying room, the washers, the costs and a piece's record: read, weighed, asked about."""

import re

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import read, send, text_of
from tests.web.records import account

DRYING, MACHINES, COSTS = "/wash/drying/", "/wash/machines/", "/wash/costs/"
AIR = {
    "what": "air", "temp": "70", "humidity": "40", "degrees": "°F", "outside_temp": "40",
    "outside_humidity": "60", "volume": "8000 ft3", "changes": "2", "altitude": "5300 ft",
}  # fmt: skip
IN = {"what": "in", "place": "cabinet", "cloth": "shell", "dry": "20", "wet": "31", "mass": "lb",
      "at": "03:00"}  # fmt: skip
PRICES = {
    "dated": "2026-02-01", "currency": "$", "sets": "4", "used-water": "75", "price-water": "15",
    "used-labour": "0.75", "price-labour": "32", "yearly": "3000", "contract": "60",
    "sets_a_year": "150", "covers": ["inspection"],
}  # fmt: skip


def batch_of(page: str) -> str:
    """Return the name of the first batch that hangs."""
    found = re.search(r'name="batch" value="([^"]+)"', page)
    assert found
    return found[1]


def test_a_humid_night_names_the_room(demo: Client) -> None:
    """The screen and the wash room say what holds drying up, and what would change it."""
    page = text_of(read(demo, DRYING))

    assert "THE ROOM IS THE BOTTLENECK" in page
    assert "Opening up" in page
    assert "One more dehumidifier" in page
    assert "never by the clock" in page
    assert "THE ROOM IS THE BOTTLENECK" in text_of(read(demo, "/wash/"))


def test_drier_air_lifts_the_bottleneck(demo: Client) -> None:
    """A new reading changes what is said, and undoing it brings the old one back."""
    send(demo, DRYING, **(AIR | {"humidity": "25", "changes": "12"}))
    dry = text_of(read(demo, DRYING))
    send(demo, "/undo/", back=DRYING)

    assert "BOTTLENECK" not in dry
    assert "BOTTLENECK" in text_of(read(demo, DRYING))


@pytest.mark.parametrize(
    ("changed", "asked"),
    [
        ({"humidity": "140"}, "No air has a humidity of 140 %"),
        ({"humidity": "0"}, "No air has a humidity of 0 %"),
        ({"temp": "70", "degrees": "°C"}, "Is the air really 70 °C?"),
        ({"outside_humidity": ""}, "give both temperature and humidity, or neither"),
        ({"volume": "8000"}, "8000"),
        ({"volume": "-5 m3"}, "cannot be"),
        ({"changes": "-1"}, "cannot be"),
        ({"temp": ""}, "room, temperature"),
    ],
)
def test_air_that_no_room_has_is_asked_about(
    demo: Client, changed: dict[str, str], asked: str
) -> None:
    """A clear question, and nothing is stored."""
    before = text_of(read(demo, DRYING))
    answer = demo.post(DRYING, AIR | changed)

    assert answer.status_code == 422
    assert asked in text_of(answer.content.decode())
    assert text_of(read(demo, DRYING)) == before


@pytest.mark.parametrize(
    ("changed", "asked"),
    [
        ({"wet": "18"}, "Wet gear is heavier"),
        ({"dry": "-20"}, "-20"),
        ({"dry": "0"}, "Wet gear is heavier"),
        ({"wet": "90"}, "read in the other unit"),
        ({"place": "attic"}, "where"),
    ],
)
def test_weights_that_cannot_be_are_asked_about(
    demo: Client, changed: dict[str, str], asked: str
) -> None:
    """Wet lighter than dry, negative, or soaked beyond what cloth holds."""
    answer = demo.post(DRYING, IN | changed)

    assert answer.status_code == 422
    assert asked in text_of(answer.content.decode())
    assert 'name="batch"' not in read(demo, DRYING)


def test_a_weighed_batch_teaches_the_room(demo: Client) -> None:
    """Weighed in, weighed out and felt dry: one more logged load, shown against the model."""
    before = text_of(read(demo, DRYING))
    send(demo, DRYING, **IN)
    batch = batch_of(read(demo, DRYING))
    send(demo, DRYING, what="down", batch=batch, end="20.4", mass="lb", at="07:10", by="228",
         felt_dry="1")  # fmt: skip
    after = text_of(read(demo, DRYING))

    assert "cabinet, shell alone: loads logged here 6" in before
    assert "cabinet, shell alone: loads logged here 7" in after
    assert "250 min" in after
    assert "felt dry by 228" in after


def test_a_hand_alone_ends_drying_and_teaches_nothing(demo: Client) -> None:
    """Nobody weighed it: it is down, and the model learns nothing."""
    send(demo, DRYING, **IN)
    batch = batch_of(read(demo, DRYING))
    send(demo, DRYING, what="down", batch=batch, mass="lb", at="07:10", by="228", felt_dry="1")
    page = read(demo, DRYING)

    assert "hung" not in re.findall(r'name="batch" value="([^"]+)"', page)
    assert "cabinet, shell alone: loads logged here 6" in text_of(page)


@pytest.mark.parametrize(
    ("changed", "asked"),
    [
        ({"felt_dry": "", "end": ""}, "Only a weight or a named person's hand"),
        ({"end": "33"}, "Weigh again"),
        ({"by": ""}, "who"),
    ],
)
def test_nothing_comes_down_by_the_clock(demo: Client, changed: dict[str, str], asked: str) -> None:
    """Neither weight nor hand, heavier than when it was hung, or nobody: it hangs on."""
    send(demo, DRYING, **IN)
    batch = batch_of(read(demo, DRYING))
    given = {"what": "down", "batch": batch, "end": "20.4", "mass": "lb", "at": "07:10",
             "by": "228"}  # fmt: skip
    answer = demo.post(DRYING, given | changed, follow=True)

    assert asked in text_of(answer.content.decode())
    assert batch in read(demo, DRYING)


def test_a_fan_changes_what_is_expected(demo: Client) -> None:
    """A cabinet whose air leaves the building gives the room nothing."""
    send(demo, DRYING, what="fan", fan="cabinet", flow="900", flow_unit="cfm", vented="1")

    assert "900 cfm , its air leaves the building" in text_of(read(demo, DRYING))


def test_a_programme_beyond_a_limit_is_named(demo: Client) -> None:
    """Every finding of every programme, and the highest speed of each drum."""
    page = text_of(read(demo, MACHINES))

    assert "7 hot Beyond a limit: do not use it for gear" in page
    assert "bath 140 °F, at most 104 °F" in page
    assert "392 rpm" in page


def test_a_bath_read_too_hot_turns_its_programme(demo: Client) -> None:
    """A thermometer says more than the setting."""
    send(demo, MACHINES, what="bath", programme="drum 1 · 1 shells", bath="112", degrees="°F",
         ph="8")  # fmt: skip

    assert "1 shells Beyond a limit" in text_of(read(demo, MACHINES))


def test_a_drum_is_reckoned_without_keeping_anything(demo: Client) -> None:
    """36 in at 100 G: 442 rpm without margin, 424 with; 440 may be too fast."""
    page = text_of(read(demo, f"{MACHINES}?diameter=36+in&limit=100+G&speed=440"))

    assert "424 rpm" in page
    assert "442 rpm" in page
    assert "may go beyond the limit" in page
    assert "36" in text_of(read(demo, f"{MACHINES}?diameter=36&limit=100+G"))


def test_a_result_is_shown_as_it_was_reported(demo: Client) -> None:
    """On the machines and beside every piece's record; nothing is reckoned from it."""
    send(
        demo, MACHINES, what="result", on="2026-02-02", by="a laboratory", text="kit 12: 71 of 100"
    )

    assert "kit 12: 71 of 100" in text_of(read(demo, MACHINES))
    assert "kit 12: 71 of 100" in text_of(read(demo, "/pieces/0473/soil/"))


def test_costs_are_the_departments_own(demo: Client) -> None:
    """Nothing is shipped; what was entered is shown with its day, its gaps and the break-even."""
    assert "No prices are entered" in text_of(read(demo, COSTS))
    send(demo, COSTS, **PRICES)
    page = text_of(read(demo, COSTS))

    # 1.125 of water and 24 of labour; 6.28 a set, 3000 / (60 - 6.28) sets to break even.
    assert "25.12" in page or "25.13" in page
    assert "56" in page
    assert "2026-02-01" in page


@pytest.mark.parametrize("changed", [{"sets": "0"}, {"dated": ""}, {"used-water": "-1"}])
def test_costs_that_cannot_be_are_asked_about(demo: Client, changed: dict[str, str]) -> None:
    """No load without a set, no price without a day, nothing below zero."""
    assert demo.post(COSTS, PRICES | changed).status_code == 422
    assert "No prices are entered" in text_of(read(demo, COSTS))


def test_a_pieces_record_says_what_cannot_be_claimed(demo: Client) -> None:
    """On the same screen as what was done; figures of studies stand apart, a higher one too."""
    page = text_of(read(demo, "/pieces/0473/soil/"))

    assert "What none of this says" in page
    assert "lower by 56 to 81 %" in page
    assert "HIGHER by 42 %" in page
    assert demo.get("/pieces/nothing/soil/").status_code == 404


def test_a_wash_count_stands_beside_the_published_marker(demo: Client) -> None:
    """What was recorded, against the 40 of one published test; it speaks against no wash."""
    page = text_of(read(demo, "/pieces/0473/"))

    assert "within 40" in page
    assert "no reason to leave out a wash that is needed" in page


def test_the_record_keeps_readings(databases: Databases) -> None:
    """Air, a batch in and out, a bath and prices come back from the record; undo takes one back."""
    client = account(databases)
    assert "Nobody read the drying room" in text_of(read(client, DRYING))
    send(client, DRYING, **AIR)
    send(client, DRYING, **(IN | {"at": "00:00"}))
    batch = batch_of(read(client, DRYING))
    send(client, DRYING, what="down", batch=batch, end="20.4", mass="lb", at="00:00", by="118")
    send(client, MACHINES, what="bath", programme="drum 1 · 1 shells", bath="99", degrees="°F")
    send(client, COSTS, **PRICES)

    assert "8000 ft3" in text_of(read(client, DRYING))
    assert "20.4 lb" in text_of(read(client, DRYING))
    assert "25.1" in text_of(read(client, COSTS))
    send(client, "/undo/", back=COSTS)
    assert "No prices are entered" in text_of(read(client, COSTS))


def test_prices_are_the_gear_officers(databases: Databases) -> None:
    """A helper weighs and reads; prices are not for a helper."""
    client = account(databases, roles=("helper",))

    assert client.get(DRYING).status_code == 200
    assert client.post(COSTS, PRICES).status_code == 403


def test_a_bath_is_reckoned_without_keeping_anything(demo: Client) -> None:
    """100 L from 12.8 to 40.56 °C take 3.2 kWh and more with the cloth; hardness has its class."""
    asked = "water=100+L&load=14+kg&inlet=55+%C2%B0F&to=104+%C2%B0F&hardness=10+gpg"
    page = text_of(read(demo, f"{MACHINES}?{asked}"))

    assert "Heat for the bath: 3." in page
    assert "Water of 10 gpg: hard" in page
    assert "At least 2 rinses by the model" in page
    assert "At least 6 rinses" in text_of(read(demo, f"{MACHINES}?{asked}&unspun=1"))
    assert "100 apples" in text_of(read(demo, f"{MACHINES}?water=100+apples&load=1+kg"))
