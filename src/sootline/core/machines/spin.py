"""How many G does a drum reach at a speed, and at which speed does it stay within a limit?

G is the acceleration at the drum's wall over standard gravity. Cloth lies further in, so the wall
gives the most it may meet; gravity itself adds or takes one G in a horizontal drum, which is left
out. Source: circular motion, D/2 (2 pi n / 60)^2 / 9.80665. Valid for any rigid drum.
"""

import math

STANDARD_GRAVITY = 9.80665


def force_g(diameter_m: float, speed_rpm: float) -> float:
    """Return the G at the wall of a drum.

    Args:
        diameter_m: of the drum inside [m], above 0.
        speed_rpm: turns a minute, at least 0.
    """
    return diameter_m / 2 * (2 * math.pi * speed_rpm / 60) ** 2 / STANDARD_GRAVITY


def speed_rpm(diameter_m: float, g: float) -> float:
    """Return the speed at which the wall of a drum meets so many G [rpm]."""
    return 60 / (2 * math.pi) * math.sqrt(2 * g * STANDARD_GRAVITY / diameter_m)


def highest_speed_rpm(diameter_m: float, g: float) -> int:
    """Return the highest whole speed that stays within so many G; never rounded up [rpm]."""
    return math.floor(speed_rpm(diameter_m, g))


def spread_of_g(diameter_share: float, speed_share: float) -> float:
    """Return one standard deviation of G as a share of it.

    Args:
        diameter_share: one standard deviation of the diameter, as a share of it.
        speed_share: one standard deviation of the speed, as a share of it.

    Source: first-order propagation; the speed enters squared.
    """
    return math.sqrt(diameter_share**2 + 4 * speed_share**2)


def set_point_g(limit_g: float, spread: float) -> int:
    """Return the whole G to set so that two deviations above it are still within the limit."""
    return math.floor(limit_g / (1 + 2 * spread))
