"""Recomputes the cases of limits from small baselines and from groups of this folder.

Run in this folder: python3 recompute_limits.py
Needs SciPy 1.17.1, NumPy 2.4 and mpmath 1.3.0; shares no code with the program. Chances over
baselines are integrals over the errors of mean and deviation, not Student's t; Wald's limits come
from dense generalised least squares; delays from a seeded simulation of whole arrays.
"""

import json

import mpmath as mp
import numpy as np
from scipy import integrate, optimize, special, stats

mp.mp.dps = 30


def write(name, title, source, expression, tolerance, data, expected, notes=""):
    body = {"id": name, "title": title, "source": source,
            "provenance": "computed by recompute_limits.py", "expression": expression,
            "tolerance": tolerance, "data": data, "expected": expected, "notes": notes}
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


# --- degrees of freedom of the mean moving range -------------------------------------------------

def c4(nu):
    return mp.sqrt(2 / nu) * mp.gamma((nu + 1) / 2) / mp.gamma(nu / 2)


def range_moments():
    """Mean, variance and covariance of |x2 - x1| and |x3 - x2|, by integration over x2."""
    def size(y):
        return mp.quad(lambda x: abs(x - y) * mp.npdf(x), [-12, y, 12])
    mean = mp.quad(lambda y: size(y) * mp.npdf(y), [-12, -4, 0, 4, 12])
    product = mp.quad(lambda y: size(y) ** 2 * mp.npdf(y), [-12, -4, 0, 4, 12])
    return mean, 2 - mean ** 2, product - mean ** 2


def freedoms():
    mean, variance, covariance = range_moments()
    found = {}
    for n in (3, 4, 5, 8, 12, 15, 20, 30, 60, 200, 600):
        m = mp.mpf(n - 1)
        relative = (m * variance + 2 * (m - 1) * covariance) / m ** 2 / mean ** 2
        start = mp.log(0.6 * m)
        found[n] = mp.exp(mp.findroot(lambda l: 1 / c4(mp.exp(l)) ** 2 - 1 - relative,
                                      (start, start + 0.1), solver="secant"))
    write("moving-range-freedom",
          "Degrees of freedom at which a deviation by chi-square varies as much as the mean moving "
          "range of n normal values",
          "mpmath: moments of neighbouring ranges by quadrature, gamma functions, secant search",
          "1/c4(nu)^2 - 1 = (m v + 2 (m - 1) c)/(m mean)^2, m = n - 1",
          1e-8, {"columns": ["n", "degrees of freedom"]},
          {"rows": [[n, float(v)] for n, v in found.items()]})
    return {n: float(v) for n, v in found.items()}


# --- chances of signals --------------------------------------------------------------------------

def over_deviation(nu, correction, chance):
    """The mean of chance(c w) over w = sqrt(chi2(nu)/nu)."""
    low, high = (np.sqrt(stats.chi2.ppf(p, nu) / nu) for p in (1e-15, 1 - 1e-15))
    points = np.sqrt(stats.chi2.ppf([.01, .1, .3, .5, .7, .9, .99], nu) / nu)
    value, _ = integrate.quad(
        lambda w: stats.chi2.pdf(nu * w * w, nu) * 2 * nu * w * chance(w * correction),
        low, high, points=points, epsabs=1e-15, epsrel=1e-11, limit=400)
    return value


def pattern(count, window, zone, off):
    total = 0
    for side in (1, -1):
        p = stats.norm.sf(zone + side * off)
        total += p * stats.binom.sf(count - 2, window - 1, p) if window > 1 else p
    return total


NODES, WEIGHTS = np.polynomial.hermite_e.hermegauss(60)
WEIGHTS = WEIGHTS / WEIGHTS.sum()


def chances(freedom):
    plain = {n: (n - 1.0, 1.0) for n in (3, 5, 10, 20, 60)}
    moving = {n: (freedom[n], 1 / float(c4(mp.mpf(freedom[n])))) for n in (5, 20, 60)}
    rows = []
    for basis, table in (("sample", plain), ("moving", moving)):
        for n, (nu, c) in table.items():
            for width in (2.0, 3.0, 4.3):
                spread = np.sqrt(1 + 1 / n)
                rows.append([basis, n, width, 1, 1,
                             over_deviation(nu, c, lambda w: 2 * stats.norm.sf(width * w / spread)),
                             own(nu, c, basis, width, 1 - 1 / n)])
            for weight, since in ((.4, 1), (.4, 3), (.4, 40), (.1, 5), (.2, 300)):
                values = weight * (1 - weight) ** np.arange(since)
                variance, carried = (values ** 2).sum(), values.sum()
                spread = np.sqrt(1 + carried ** 2 / variance / n)
                share = 1 - carried ** 2 / variance / n
                rows.append([basis, n, 3.0, weight, since,
                             over_deviation(nu, c, lambda w: 2 * stats.norm.sf(3 * w / spread)),
                             own(nu, c, basis, 3.0, share)])
    patterns = []
    for basis, table in (("sample", {n: plain[n] for n in (5, 20, 60)}), ("moving", moving)):
        for n, (nu, c) in table.items():
            for count, of, zone, since in ((1, 1, 3.0, 1), (2, 3, 2.0, 2), (2, 3, 2.0, 9),
                                           (4, 5, 1.0, 4), (4, 5, 1.0, 5), (8, 8, 0.0, 8),
                                           (2, 3, 2.5, 3)):
                window = min(since, of)
                offs = NODES / np.sqrt(n)
                patterns.append([basis, n, count, of, zone, since, over_deviation(
                    nu, c, lambda w: float(
                        (WEIGHTS * pattern(count, window, zone * w, offs)).sum()))])
    ranges = []
    for basis, table in (("sample", plain), ("moving", moving)):
        for n, (nu, c) in table.items():
            for width in (2.5, 3.686):
                ranges.append([basis, n, width, over_deviation(
                    nu, c, lambda w: 2 * stats.norm.sf(width * w / np.sqrt(2)))])
    write("signal-chance",
          "Chances of signals in control, on average over baselines of n normal values",
          "SciPy quad over chi-square, 60-point Gauss-Hermite over the mean; incomplete beta "
          "function for values of the baseline itself",
          "next: E 2 norm.sf(K w/sqrt(1 + S^2/(V n))), w^2 nu = c^2 chi2(nu), c = 1/c4(nu) for moving ranges; "
          "own: P(Beta(1/2, (nu-1)/2) > K^2/(nu share)), share = 1 - S^2/(V n), for moving ranges "
          "2 norm.sf(K) by convention; V, S = sums of "
          "squared weights and of weights; patterns: sum over sides of p P(Binomial >= k-1)",
          1e-7,
          {"columns": ["basis", "n", "width", "weight", "since", "next", "own"],
           "patternColumns": ["basis", "n", "count", "of", "zone", "since", "chance"],
           "rangeColumns": ["basis", "n", "width", "chance"]},
          {"rows": rows, "patterns": patterns, "ranges": ranges})


def own(nu, c, basis, width, share):
    if basis == "moving":
        return 2 * float(stats.norm.sf(width))
    if share <= 1e-12 or (c * width) ** 2 / share >= nu:
        return 0.0
    return float(special.betainc((nu - 1) / 2, 0.5, 1 - (c * width) ** 2 / share / nu))


# --- a weighted mean of values that share an error -----------------------------------------------

def shared_means():
    rng = np.random.default_rng(20261101)
    values = np.round(10 + rng.normal(size=14), 2)
    starts = [0, 5, 6, 11]
    centre, sigma, tau, weight, width = 10.0, 0.9, 0.6, 0.3, 3.2
    rows = []
    for i in range(len(values)):
        since = i - max(s for s in starts if s <= i) + 1
        w = weight * (1 - weight) ** np.arange(since)[::-1]
        cov = sigma ** 2 * np.eye(since) + tau ** 2 * np.ones((since, since))
        half = width * np.sqrt(w @ cov @ w)
        mean = centre + w @ (values[i - since + 1:i + 1] - centre)
        rows.append([mean, centre - half, centre + half])
    write("weighted-mean-shared", "Weighted mean of values that share an error since each start",
          "NumPy: dense covariance matrix", "half = L sqrt(w'(s^2 I + t^2 J)w)", 1e-13,
          {"values": values.tolist(), "starts": starts, "centre": centre, "deviation": sigma,
           "shared": tau, "weight": weight, "width": width}, {"rows": rows})


# --- Wald's limits of the ratio of variances -----------------------------------------------------

UNEQUAL = [[6.9, 5.4, 5.8, 4.6, 4.0], [8.3, 6.8, 7.8], [8.0, 10.5, 8.1, 6.9], [5.8]]
DYESTUFF = [[1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495],
            [1595, 1550, 1605, 1510, 1560], [1445, 1440, 1595, 1465, 1545],
            [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445]]
# invented: three groups whose means hardly differ
ALIKE = [[5.0, 5.4, 4.6], [5.1, 4.8], [4.8, 5.2, 5.3, 4.9]]


def wald(groups):
    y = np.array([v for g in groups for v in g])
    label = np.array([i for i, g in enumerate(groups) for _ in g])
    z = (label[:, None] == np.arange(len(groups))).astype(float)
    one = np.ones(len(y))
    fitted = z @ np.linalg.lstsq(z, y, rcond=None)[0]
    inside = ((y - fitted) ** 2).sum()
    a, df = len(groups), len(y) - len(groups)

    def statistic(rho):
        inverse = np.linalg.inv(np.eye(len(y)) + rho * z @ z.T)
        mean = one @ inverse @ y / (one @ inverse @ one)
        r = y - mean
        return (r @ inverse @ r - inside) / (a - 1) / (inside / df)

    bounds = []
    for chance in (.995, .975, .95, .5, .05, .025, .005):
        wanted = stats.f.isf(chance, a - 1, df)
        if statistic(0) <= wanted:
            bounds.append([chance, 0.0])
        else:
            log = optimize.brentq(lambda l: statistic(np.exp(l)) - wanted, -20, 14, xtol=1e-13)
            bounds.append([chance, float(np.exp(log))])
    return {"chance": float(stats.f.sf(statistic(0), a - 1, df)), "within": float(inside / df),
            "bounds": bounds}


def ratios():
    write("group-ratio", "Limits of the ratio of variances between and within unequal groups",
          "Wald (1940), Ann. Math. Statist. 11, 96-100; dense generalised least squares (NumPy), "
          "F of SciPy; Davies (1947), dyestuff, and the groups of one-way-unequal-groups",
          "(y-m)'(I + rho ZZ')^-1 (y-m) - SSW over (a-1) s^2 = f.isf(chance, a-1, N-a)", 1e-8,
          {"unequal": UNEQUAL, "dyestuff": DYESTUFF, "alike": ALIKE},
          {"unequal": wald(UNEQUAL), "dyestuff": wald(DYESTUFF), "alike": wald(ALIKE)})


# --- limits of grouped values, balanced ----------------------------------------------------------

def grouped(groups):
    y = np.array(groups, float)
    a, n = y.shape
    between = n * y.mean(axis=1).var(ddof=1)
    within = y.var(axis=1, ddof=1).mean()
    tau2 = (between - within) / n
    variance = (1 + 1 / a) * tau2 + (1 + 1 / (a * n)) * within
    c1, c2 = (1 + 1 / a) / n, 1 - 1 / n
    assert abs(c1 * between + c2 * within - variance) < 1e-9 * variance
    nu = variance ** 2 / ((c1 * between) ** 2 / (a - 1) + (c2 * within) ** 2 / (a * (n - 1)))
    root = np.sqrt(variance)
    action, warning = stats.t.isf(stats.norm.sf(3), nu) * root, stats.t.isf(.025, nu) * root
    return {"centre": y.mean(), "between": np.sqrt(tau2), "within": np.sqrt(within),
            "action": [y.mean() - action, y.mean() + action],
            "warning": [y.mean() - warning, y.mean() + warning]}


def limits_of_groups():
    write("grouped-limits", "Limits for a value of a new group, six batches of five",
          "Davies (1947), dyestuff; mean squares (NumPy), Satterthwaite's degrees of freedom, t of "
          "SciPy: in balanced data with a positive component the same as Kenward and Roger's",
          "V = (1+1/a)/n MSA + (1-1/n) MSW, nu = V^2/sum((c MS)^2/df), mean +/- t sqrt(V)", 1e-7,
          {"groups": DYESTUFF}, grouped(DYESTUFF))


# --- delays --------------------------------------------------------------------------------------

def delays():
    """Single values and weighted mean (0.4) with growing limits, started anew every four."""
    rng = np.random.default_rng(20261102)
    benches, n, between, longest = 400_000, 20, 4, 40
    rows = []
    for basis, width in (("moving", 3.0), ("sample", 3.0), ("sample", 3.6)):
        for shift in (1.0, 2.0):
            x = rng.normal(size=(benches, n))
            centre = x.mean(axis=1)
            deviation = (np.abs(np.diff(x, axis=1)).mean(axis=1) * np.sqrt(np.pi) / 2
                         if basis == "moving" else x.std(axis=1, ddof=1))
            mean, since = np.zeros(benches), np.zeros(benches, int)
            place = np.zeros(benches, int)
            already = np.arange(benches) % between

            def step(mu, active):
                u = (rng.normal(size=benches) + mu - centre) / deviation
                after = .4 * u + .6 * mean
                half = width * np.sqrt(.25 * (1 - .36 ** (since + 1.0)))
                signal = active & ((np.abs(u) > width) | (np.abs(after) > half))
                mean[active] = after[active]
                since[active] += 1
                place[active] += 1
                return signal

            for t in range(between - 1):
                false = step(0.0, already > t)
                mean[false] = 0
                since[false] = 0
            seen = np.full(benches, longest + 1)
            for t in range(1, longest + 1):
                anew = place == between
                mean[anew], since[anew], place[anew] = 0, 0, 0
                signal = step(shift, np.ones(benches, bool))
                seen[signal & (seen > longest)] = t
            rows.append([basis, width, shift] + [float((seen <= t).mean()) for t in (1, 4, 12, 40)])
    write("shift-delay",
          "Share of benches that saw a shift within 1, 4, 12 and 40 values: baseline of 20, charts "
          "started anew every 4 values",
          "simulated with NumPy, 400000 benches, seed 20261102",
          "single values beyond K deviations or weighted mean (0.4) beyond its growing limits; "
          "standard error at most 0.0008", 0.02,
          {"n": n, "between": between,
           "columns": ["basis", "width", "shift", "1", "4", "12", "40"]}, {"rows": rows})


if __name__ == "__main__":
    FREEDOM = freedoms()
    chances(FREEDOM)
    shared_means()
    ratios()
    limits_of_groups()
    delays()
