"""Learning from jobs that are done: how a decorator's own way differs from the book's.

The ratio of what was used to what the book expected is taken as log-normal: its logarithm is normal about the
decorator's own mean with a known scatter from job to job, and that mean is normal about nought with the spread of the
book's own range.  The mean after so many jobs is then normal too, at the average of both weighted by their precisions
(normal data with known variance and a conjugate prior: Gelman and others, Bayesian Data Analysis, 2.5; from memory).
"""

import math
from collections.abc import Sequence

from rules.record import record

NINETY = 1.6448536269514722  # standard deviations on each side that hold nine tenths of a normal distribution


@record
class Done:
    """What one job used, and what the book without anything learned expected of it: typical, low and high (90 %).

    All above 0, in one unit.
    """

    used: float
    expected: float
    low: float
    high: float

    @property
    def log_ratio(self) -> float:
        """The logarithm of used to expected."""
        return math.log(self.used / self.expected)

    @property
    def spread(self) -> float:
        """The standard deviation of the logarithm that the book's range comes to."""
        return math.log(self.high / self.low) / (2 * NINETY)


@record
class Way:
    """What is known of a decorator's own way: mean and deviation of the logarithm, of `jobs` jobs.

    `prior` is the deviation before any job, `scatter` that of one job about the mean.
    """

    jobs: int
    mean: float
    deviation: float
    prior: float
    scatter: float
    jobs_mean: float = 0.0  # what the jobs alone come to

    @property
    def factor(self) -> float:
        """What the book's figure is multiplied by."""
        return math.exp(self.mean)

    @property
    def jobs_factor(self) -> float:
        """What the jobs alone would multiply it by."""
        return math.exp(self.jobs_mean)

    @property
    def left(self) -> float:
        """The part of the book's own spread that is left."""
        return self.deviation / self.prior if self.prior else 1.0

    @property
    def range(self) -> tuple[float, float]:
        """The factor's low and high, nine times in ten."""
        return self._about(self.deviation)

    def _about(self, deviation: float) -> tuple[float, float]:
        return math.exp(self.mean - NINETY * deviation), math.exp(self.mean + NINETY * deviation)

    @property
    def next_job(self) -> tuple[float, float]:
        """How the next job lies about the factor for its scatter alone, nine times in ten."""
        return self._about(self.scatter)

    def oddness(self, done: Done) -> float:
        """How many standard deviations a job lies from what was to be expected of it."""
        return abs(done.log_ratio - self.mean) / math.hypot(self.deviation, self.scatter)


def way_of(jobs: Sequence[Done], scatter: float, prior: float | None = None) -> Way:
    """What jobs, in any order, tell; `prior` is the spread before them (the middle one of the book's, where None).

    ValueError where scatter is not above 0, or where there is neither a job nor a prior.
    """
    if scatter <= 0:
        raise ValueError("The scatter must be above 0; write it as a part, such as 0.06.")
    if prior is None:
        if not jobs:
            raise ValueError("Without a job there is nothing to learn from.")
        spreads = sorted(job.spread for job in jobs)
        prior = spreads[len(spreads) // 2]
    n = len(jobs)
    total = sum(job.log_ratio for job in jobs)
    if prior <= 0:
        return Way(n, 0.0, 0.0, 0.0, scatter, total / n if n else 0.0)
    precision = 1 / prior**2 + n / scatter**2
    return Way(n, total / scatter**2 / precision, precision**-0.5, prior, scatter, total / n if n else 0.0)
