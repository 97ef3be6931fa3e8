"""Both desks under one roof: a form must do the same at the demonstration and on the record."""

from collections.abc import Callable

from django.test import Client
from tests.web.pages import send

Opened = Callable[[], Client]


def call_of(client: Client, *members: str, title: str = "car fire") -> str:
    """Let some members ride to a call; return its number."""
    _, where, _ = send(client, "/call/", title=title, began="00:01", rode=list(members))
    return where.split("/")[2]


def held(client: Client, member: str = "223", *, hazard: str = "asbestos") -> str:
    """Let somebody come back from where something was suspected; return the call's number."""
    call = call_of(client, member)
    send(client, f"/call/{call}/who/{member}/", places=["inside-on-air"], smoke="yes", bag="31")
    send(client, f"/call/{call}/hazards/", **{hazard: "suspected"})
    return call
