"""Which pages decide, hand over, fit and change something in the demonstration?"""

PAGES = (
    "/holds/blood.disinfect/26-0311/", "/holds/building.asbestos/26-0311/",
    "/holds/torn/26-0311/", "/call/26-0311/guests/", "/guests/", "/wash/changed/",
    "/check/then/0402/", "/people/new/", "/people/228/first-day/", "/people/228/tried/",
    "/people/228/exchange/", "/people/228/exchange/?returns=0533", "/people/228/leaves/",
    "/people/228/elsewhere/", "/history/verify/",
)  # fmt: skip
SCREENS = {
    "decide-a-hold": "/holds/building.asbestos/26-0311/",
    "disinfection": "/holds/blood.disinfect/26-0311/",
    "guests-gear": "/call/26-0311/guests/",
    "something-changed": "/wash/changed/",
    "what-comes-next": "/check/then/0402/",
    "new-member": "/people/new/",
    "first-day": "/people/228/first-day/",
    "exchange": "/people/228/exchange/?returns=0533",
    "leaves": "/people/228/leaves/",
    "washed-at-home": "/people/228/elsewhere/",
    "is-the-record-whole": "/history/verify/",
}
