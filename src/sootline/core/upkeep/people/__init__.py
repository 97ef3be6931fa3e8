"""People: refits, a new member's first day, what to order in which size."""

from sootline.core.upkeep.people.facts import Change, Changed, LeadTime, Measured
from sootline.core.upkeep.people.fitting import Offer, Refit, list_refits, offer_first_day
from sootline.core.upkeep.people.orders import Order, list_orders

__all__ = [
    "Change",
    "Changed",
    "LeadTime",
    "Measured",
    "Offer",
    "Order",
    "Refit",
    "list_orders",
    "list_refits",
    "offer_first_day",
]
