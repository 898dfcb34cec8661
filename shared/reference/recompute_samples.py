"""Computes the reference cases of sample statistics: quantiles, robust estimates, weighted means.

Run in this folder: python3 recompute_samples.py
Needs SciPy 1.17.1, NumPy 2.4 and mpmath 1.3.0; shares no code with the program. Robust estimates are
found by solving their equations, where the program repeats rounds or walks along corners; the Q
method is evaluated from its definition in exact fractions.
"""

import json
from fractions import Fraction as Q
from itertools import combinations

import mpmath as mp
import numpy as np
from scipy import optimize, stats

mp.mp.dps = 40
SCRIPT = "computed by recompute_samples.py"
COPPER = [2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77,
          3.4, 2.2, 3.5, 3.6, 3.7, 3.7]
CONTROL = [.201, .198, .205, .196, .203, .200, .194, .207, .199, .202, .197, .204, .193, .200, .206, .198,
           .201, .195, .203, .199]
SMALL = [.182, .178, .201, .165, .19, 1.82]
SPREAD = [float(k * k % 97) / 8 for k in range(1, 42)]
FIVE = [10.1, 9.7, 12.4, 10.9, 8.8]
TIED = [5.0, 5.0, 5.0, 5.1, 5.2, 5.0, 4.9, 5.3, 5.0]


def write(name, title, source, expression, tolerance, data, expected, notes="", **more):
    body = {"id": name, "title": title, "source": source, "provenance": SCRIPT,
            "expression": expression, "tolerance": tolerance, "data": data, "expected": expected}
    body.update(more)
    body["notes"] = notes
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def text(value, digits=20):
    return mp.nstr(mp.mpf(value), digits)


def quantiles():
    sets = [CONTROL, SMALL, SPREAD, FIVE, [7.5], [1., 2.]]
    methods = {"MEAN_PLACE": "weibull", "ENDS_INCLUDED": "linear", "MEDIAN_UNBIASED": "median_unbiased"}
    rows = []
    for i, values in enumerate(sets):
        for p in (0, .01, .1, .25, .5, .6, .75, .9, .975, 1):
            rows.append([i, p] + [float(np.quantile(values, p, method=m)) for m in methods.values()])
    write("quantile-definitions", "Quantiles by three definitions", "computed with NumPy 2.4",
          "numpy.quantile(values, p, method='weibull' / 'linear' / 'median_unbiased'), types 6, 7 and 8 of "
          "Hyndman and Fan (1996)", 1e-13, {"sets": sets},
          {"columns": ["set", "p"] + list(methods), "rows": rows})


def proposal_two(values, correction=None):
    """Huber's proposal 2 by a root finder in the mean inside a root finder in the deviation."""
    x = np.array(values)
    n = len(x)
    tail = 2 * stats.norm.sf(1.5)
    beta = 1 - tail - 3 * stats.norm.pdf(1.5) + 2.25 * tail
    factor = 1 / beta if correction is None else correction ** 2

    def mean(s):
        return optimize.brentq(lambda m: np.sum(np.clip((x - m) / s, -1.5, 1.5)), x.min(), x.max(), xtol=1e-16)

    def excess(log_s):
        s = np.exp(log_s)
        m = mean(s)
        w = np.clip(x, m - 1.5 * s, m + 1.5 * s)
        return np.sum((w - w.mean()) ** 2) * factor / (n - 1) / s ** 2 - 1

    start = np.log(stats.median_abs_deviation(x, scale="normal") or x.std())
    s = np.exp(optimize.brentq(excess, start - 3, start + 3, xtol=1e-15))
    m = mean(s)
    return m, s, int(np.sum(np.abs(x - m) > 1.5 * s))


def algorithm_a():
    tail = mp.erfc(mp.mpf(3) / 2 / mp.sqrt(2))
    exact = 1 / mp.sqrt(1 - tail - 3 * mp.npdf(mp.mpf(3) / 2) + mp.mpf(9) / 4 * tail)
    sets = [COPPER, CONTROL, SMALL, SPREAD, FIVE]
    rows = [[*proposal_two(v), *proposal_two(v, 1.134)[:2]] for v in sets]
    write("algorithm-a", "Algorithm A: mean, deviation, values drawn in, and both with the printed constant",
          "computed with SciPy 1.17.1", "brentq in the deviation around brentq in the mean of the two equations "
          "of Huber's proposal 2, k = 1.5; exact factor 1/beta, printed factor 1.134^2", 1e-10,
          {"sets": sets}, {"correction": text(exact), "columns": ["mean", "deviation", "drawn in",
                                                                  "mean as printed", "deviation as printed"],
                           "rows": rows})


def decimal(v):
    return Q(str(v))


def q_deviation(weighted, share, normal):
    """From pairs of size and weight, in exact fractions up to the last two steps."""
    sizes = sorted({s for s, _ in weighted})
    h = lambda x: sum((w for s, w in weighted if s <= x), Q(0))
    zero = h(Q(0))
    points = [(Q(0), Q(0))]
    before = zero
    for x in sizes:
        if x == 0:
            continue
        points.append((x, (h(x) + before) / 2))
        before = h(x)
    wanted = share + (1 - share) * zero
    for (x0, g0), (x1, g1) in zip(points, points[1:]):
        if g1 >= wanted:
            at = x0 + (x1 - x0) * (wanted - g0) / (g1 - g0)
            break
    p = normal + (1 - normal) * zero
    z = mp.sqrt(2) * mp.erfinv(2 * mp.mpf(p.numerator) / p.denominator - 1)
    return mp.mpf(at.numerator) / at.denominator / (mp.sqrt(2) * z)


def between(groups):
    p = len(groups)
    weighted = [(abs(a - b), Q(2, p * (p - 1)) / (len(one) * len(two)))
                for one, two in combinations(groups, 2) for a in one for b in two]
    return q_deviation(weighted, Q(1, 4), Q(5, 8))


def within(groups):
    several = [g for g in groups if len(g) > 1]
    weighted = [(abs(a - b), Q(2, len(g) * (len(g) - 1)) / len(several))
                for g in several for a, b in combinations(g, 2)]
    return q_deviation(weighted, Q(1, 2), Q(3, 4))


def psi(q):
    a = np.abs(q)
    return np.sign(q) * np.where(a <= 1.5, a, np.where(a <= 3, 1.5, np.where(a <= 4.5, 4.5 - a, 0)))


def hampel(values, s):
    """The zero nearest to the median, from a fine grid and brentq."""
    x = np.array(values, dtype=float)
    f = lambda m: float(np.sum(psi((x - m) / s)))
    grid = np.linspace(x.min() - .001 * s, x.max() + .001 * s, 40001)
    sums = np.array([f(m) for m in grid])
    at = np.where(sums[:-1] * sums[1:] < 0)[0]
    zeros = [optimize.brentq(f, grid[i], grid[i + 1], xtol=1e-15) for i in at] + list(grid[sums == 0])
    return min(zeros, key=lambda z: abs(z - np.median(x)))


def q_method():
    sets = [COPPER, CONTROL, SMALL, FIVE, TIED, [1., 2.]]
    rows = []
    for v in sets:
        s = between([[decimal(a)] for a in v])
        rows.append([text(s), hampel(v, float(s))])
    groups = [[[10.1, 10.3], [9.7, 9.9, 9.8], [12.4, 12.1], [10.9], [8.8, 9.0]],
              [[5.2, 5.3], [5.1, 5.1], [5.4, 5.2], [9.9, 9.1], [5.3, 5.3], [5.0, 5.2]],
              [[.1, .2, .4], [.3, .3, .5], [.2, .6, .1]]]
    nested = []
    for g in groups:
        exact = [[decimal(a) for a in one] for one in g]
        s = between(exact)
        nested.append([text(s), text(within(exact)), hampel([np.mean(one) for one in g], float(s))])
    write("q-method", "Q method and Hampel's mean", "computed with exact fractions, mpmath 1.3.0 and SciPy 1.17.1",
          "G inverse of 0.25+0.75 H(0) over sqrt(2) norm quantile of 0.625+0.375 H(0), in fractions; within "
          "groups 0.5+0.5 H(0) and 0.75+0.25 H(0); Hampel's mean by grid and brentq", 1e-11,
          {"sets": sets, "groups": groups},
          {"columns": ["deviation", "mean"], "rows": rows,
           "groupColumns": ["deviation between", "deviation within", "mean"], "groups": nested},
          "The formulas of ISO 13528:2015 C.5 are from memory; the evaluation is independent.")


def qn():
    rows = []
    sets = [COPPER, CONTROL, SMALL, SPREAD, FIVE, TIED]
    for v in sets:
        n = len(v)
        h = n // 2 + 1
        d = sorted(abs(decimal(a) - decimal(b)) for a, b in combinations(v, 2))[h * (h - 1) // 2 - 1]
        small = {5: .844, 6: .611, 9: .872}
        c = small.get(n) or n / (n + (1.4 if n % 2 else 3.8))
        z = mp.sqrt(2) * mp.sqrt(2) * mp.erfinv(mp.mpf(1) / 4)
        rows.append(text(mp.mpf(c) * d.numerator / d.denominator / z))
    write("pairwise-deviation", "Qn of Rousseeuw and Croux", "computed with exact fractions and mpmath 1.3.0",
          "c(n) times the h(h-1)/2-th smallest difference over sqrt(2) norm quantile of 5/8", 1e-12,
          {"sets": sets}, {"rows": rows}, "c(n) from memory: .844, .611, .872 for 5, 6 and 9 values; "
          "n/(n+1.4), n/(n+3.8) from 10 on.")


def weighted():
    cases = [{"values": [10.1, 10.4, 9.9, 10.2], "uncertainties": [.1, .2, .1, .05]},
             {"values": [1000000.21, 1000000.18, 1000000.25], "uncertainties": [.01, .02, .015]},
             {"values": [.201, .198, .205, .196, .230], "uncertainties": [.002, .002, .004, .003, .003]},
             {"values": [3.5], "uncertainties": [.7]}]
    rows = []
    for case in cases:
        x = [decimal(v) for v in case["values"]]
        w = [1 / decimal(u) ** 2 for u in case["uncertainties"]]
        mean = sum(a * b for a, b in zip(w, x)) / sum(w)
        chi = sum(a * (b - mean) ** 2 for a, b in zip(w, x))
        f = lambda q: mp.mpf(q.numerator) / q.denominator
        internal = 1 / mp.sqrt(f(sum(w)))
        n = len(x)
        birge = mp.sqrt(f(chi) / (n - 1)) if n > 1 else mp.mpf(1)
        chance = mp.gammainc(mp.mpf(n - 1) / 2, f(chi) / 2, mp.inf, regularized=True) if n > 1 else 1
        rows.append([text(v) for v in (f(mean), internal, f(chi), birge, internal * birge, chance)])
    write("weighted-average", "Inverse-variance weighted mean", "computed with exact fractions and mpmath 1.3.0",
          "sum wx/sum w, 1/sqrt(sum w), sum w(x-mean)^2, sqrt(chi2/(n-1)), gammainc", 1e-9,
          {"cases": cases}, {"columns": ["mean", "internal", "chi-square", "birge", "external", "chance"],
                             "rows": rows}, "Values near a million with two decimals are not exact as doubles; "
          "that leaves nine digits of their chi-square.")


def pairs():
    d = [.004, -.005, -.001, .009, .003, -.004, -.002, .012, -.002, .003]
    write("pair-diagnosis", "Ten pairs: other estimates of their deviation",
          "practitioner's tables, recomputed with mpmath 1.3.0",
          "mean|d| sqrt(pi)/2; median|d| / (sqrt(2) norm quantile of 3/4)", 1e-12,
          {"differences": d},
          {"byRange": text(mp.mpf("0.0045") * mp.sqrt(mp.pi) / 2),
           "byMedian": text(mp.mpf("0.0035") / (2 * mp.erfinv(mp.mpf(1) / 2)))},
          printed={"byRange": .00398802})
    rows = []
    for df in (5, 10, 14, 20, 30, 59, 7.5):
        rows.append([df, *(np.sqrt(df / stats.chi2.ppf([.975, .025, .05], df)).tolist())])
    write("deviation-interval", "Multipliers of a deviation: 95 % interval and one-sided 95 % bound",
          "practitioner's tables, recomputed with SciPy 1.17.1", "sqrt(df/chi2.ppf([.975, .025, .05], df))", 1e-12,
          {"columns": ["df", "lower", "upper", "one-sided upper"]}, {"rows": rows},
          printed={"5": [.624, 2.453], "10": [.699, 1.755, 1.593], "14": [.732, 1.577], "20": [.765, 1.444, 1.358],
                   "30": [.799, 1.337, 1.274], "59": [.848, 1.220]})
    printed = {5: [.624, 2.453], 10: [.699, 1.755, 1.593], 14: [.732, 1.577], 20: [.765, 1.444, 1.358],
               30: [.799, 1.337, 1.274], 59: [.848, 1.220]}
    for row in rows:
        for got, want in zip(row[1:], printed.get(row[0], [])):
            assert abs(got - want) <= 5.1e-4, (row, want)


def accuracy_sets():
    """The two univariate sets that come without a stored file; their definition and answers are known."""
    for number, first, title in [(3, 1000000, "NumAcc3"), (4, 10000000, "NumAcc4")]:
        values = [Q(first * 10 + 2, 10)] + [Q(first * 10 + (1 if i % 2 == 0 else 3), 10) for i in range(1000)]
        mean = sum(values) / 1001
        squares = sum((v - mean) ** 2 for v in values)
        lag = sum((a - mean) * (b - mean) for a, b in zip(values, values[1:])) / squares
        assert mean == Q(first * 10 + 2, 10) and squares == 10 and lag == Q(-999, 1000)
        with open(f"numacc{number}-by-definition.json", "w", encoding="utf-8") as out:
            json.dump({"id": f"numacc{number}-by-definition", "title": f"NIST StRD univariate: {title}",
                       "source": "NIST Statistical Reference Datasets, univariate summary statistics; the set "
                       "made from its definition, the certified values typed from memory",
                       "provenance": "from memory",
                       "data": {"first": f"{first}.2", "then": [f"{first}.1", f"{first}.3"], "times": 500},
                       "expected": {"n": 1001, "mean": f"{first}.2", "sd_n_minus_1": "0.1",
                                    "lag1_autocorrelation": "-0.999"},
                       "crosscheck": {"method": "exact fractions", "own": {"mean": str(mean),
                                      "squares": str(squares), "lag1": str(lag)}, "result": "agree"},
                       "notes": ""}, out, indent=1)
            out.write("\n")


def truncated():
    """Normal samples of which only values within limits were kept, and one that keeps them anyway."""
    random = np.random.default_rng(20261127)
    cases = []
    for name, n, mean, deviation, lower, upper in [
            ("cut at the middle", 60, .24, .02, None, .24), ("cut one deviation above", 40, .22, .02, None, .24),
            ("far from its limit", 30, .18, .01, None, .24), ("cut on both sides", 80, 5.0, 1.0, 4.2, 5.8),
            ("cut below", 50, 10.0, 2.0, 10.5, None)]:
        low, high = -np.inf if lower is None else lower, np.inf if upper is None else upper
        x = []
        while len(x) < n:
            v = round(float(random.normal(mean, deviation)), 5)
            if low <= v <= high:
                x.append(v)
        x = np.array(x)
        m, s = x.mean(), x.std(ddof=1)

        def cost(p):
            mu, sd = m + s * p[0], s * np.exp(p[1])
            a, b = (low - mu) / sd, (high - mu) / sd
            return -stats.truncnorm.logpdf(x, a, b, mu, sd).sum()

        best = min((optimize.minimize(cost, start, method="Nelder-Mead",
                                      options={"xatol": 1e-11, "fatol": 1e-12, "maxiter": 20000})
                    for start in ([0, 0], [1, .5], [-1, .5], [0, .7])), key=lambda r: r.fun)
        assert abs(best.x[0]) < 9.9 and np.exp(best.x[1]) < 9.9, name
        plain = stats.norm.logpdf(x, m, x.std()).sum()
        cases.append({"name": name, "values": x.tolist(), "lower": lower, "upper": upper,
                      "expected": [float(m + s * best.x[0]), float(s * np.exp(best.x[1])),
                                   float(-best.fun - plain)]})
        print(name, cases[-1]["expected"])
    write("truncated-normal", "Truncated normal samples: population and gain over the plain normal",
          "Cohen (1950); truncnorm of SciPy 1.17.1; data drawn with a fixed seed, no real bench",
          "largest of sum(truncnorm.logpdf) by Nelder-Mead from four starts; less norm.logpdf at mean"
          " and root mean square", 1e-6, {"cases": [{k: c[k] for k in ("name", "values", "lower", "upper")}
                                                    for c in cases]},
          {"columns": ["mean", "deviation", "gain"], "rows": [c["expected"] for c in cases]})


if __name__ == "__main__":
    quantiles()
    algorithm_a()
    q_method()
    qn()
    weighted()
    pairs()
    accuracy_sets()
    truncated()
