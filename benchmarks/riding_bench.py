"""How long does the question "who can ride" take, and how close is its bound?"""

import time

from tests.riding_large import large_department

from sootline.core.riding import timeline, who_rides

SEEDS = range(5)
NIGHTS = (
    ("one house fire", 0.05, 0.5, 2),
    ("a night of fires", 0.2, 0.4, 4),
    ("half the department", 0.5, 0.3, 0),
    ("half the department, loans", 0.5, 0.3, 20),
)


def main() -> None:
    """Print, per night of 600 members: longest time, who rides, the bound, how often proven."""
    print("600 members                      s (most)   ride now    at most   proven now/later")
    for name, soiled, spares, loans in NIGHTS:
        took, riding, most, now, later = [], [], [], 0, 0
        for seed in SEEDS:
            floor = large_department(600, seed, soiled=soiled, spares=spares, loans=loans)
            start = time.perf_counter()
            answer = who_rides(floor)
            took.append(time.perf_counter() - start)
            riding.append(len(answer.now.can))
            most.append(answer.most_now)
            now += answer.best_now
            later += answer.best_later
        print(
            f"{name:32} {max(took):8.2f} {sum(riding) / len(SEEDS):10.1f}"
            f" {sum(most) / len(SEEDS):10.1f}   {now}/{later} of {len(SEEDS)}"
        )
    floor = large_department(60, 1, soiled=0.3, spares=0.4, loans=2)
    start = time.perf_counter()
    steps = timeline(floor)
    print(f"24 hours of 60 members: {time.perf_counter() - start:.2f} s, {len(steps)} steps")


if __name__ == "__main__":
    main()
