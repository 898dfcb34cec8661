"""Computes the reference tables of distributions and of the constants that follow from them.

Run in this folder: python3 recompute_distributions.py (about ten minutes)
Needs SciPy 1.17.1, NumPy and mpmath 1.3.0; shares no code with the program. Tails are integrals of
the plain density by mpmath's tanh-sinh rule or its hypergeometric series, where the program uses
continued fractions; ranges are integrated in Hartley's form at 60 digits, where the program integrates
over the smallest value.
"""

import json
from itertools import product

import mpmath as mp
import numpy as np
from scipy import stats

mp.mp.dps = 40
SCRIPT = "computed by recompute_distributions.py"


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


def solve(log_tail, guess):
    """The root in the logarithm of the variable of log_tail, by the secant method."""
    y = mp.log(mp.mpf(guess))
    return mp.exp(mp.findroot(lambda v: log_tail(mp.exp(v)), (y, y + mp.mpf(10) ** -6)))


def gamma_below(a, x):
    return mp.gammainc(a, 0, x, regularized=True)


def gamma_above(a, x):
    return mp.gammainc(a, x, mp.inf, regularized=True)


def large_gamma(a, x, lower):
    """The tail for large a by integrating the density, scaled at the end so that no digit is lost."""
    a, x = mp.mpf(a), mp.mpf(x)
    top = (a - 1) * mp.log(x) - x
    f = lambda t: mp.exp((a - 1) * mp.log(t) - t - top)
    s = mp.sqrt(a)
    steps = [0, .25, .5, 1, 2, 4, 8, 16, 32]
    edges = [x - k * s for k in reversed(steps) if x - k * s > 0] if lower else [x + k * s for k in steps]
    return mp.quad(f, edges) * mp.exp(top - mp.loggamma(a))


def normal():
    tails = [[z, text(mp.ncdf(-mp.mpf(z)))] for z in
             (-8, -3, -1, -.1, 0, .01, .3, .7, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 25, 30, 36, 37.5)]
    quantiles = []
    for p in (1e-300, 1e-200, 1e-100, 1e-50, 1e-20, 1e-12, 1e-9, 1e-6, 1e-4, .00135, .01, .025, .05, .1,
              .2, .3, .31, .4, .45, .49, .499, .4999999):
        z = mp.findroot(lambda v: mp.log(mp.ncdf(-v) / mp.mpf(p)), float(stats.norm.isf(p)))
        quantiles.append([p, text(z)])
    logs = [[z, text(mp.log1p(-mp.ncdf(-mp.mpf(z))) if z > 0 else mp.log(mp.ncdf(mp.mpf(z))))] for z in (-1000, -100, -40, -37, -36.9, -20, -5, -1, -.1,
                                                            .1, 2, 6, 9, 20)]
    between = [[a, b, text(mp.quad(mp.npdf, mp.linspace(mp.mpf(a), mp.mpf(b), 9)))] for a, b in
               [(-1, 1), (0, 1e-6), (2, 2.001), (3, 5), (-6, -4.5), (8, 9), (-9, 9), (-1, -.5), (5, 5.5)]]
    write("normal-tails", "Tails, quantiles and logarithms of the standard normal distribution",
          "computed with mpmath 1.3.0, 40 digits", "ncdf; root of log(ncdf(-z)/p); log(ncdf); quad of npdf",
          2e-15, {"columns": "above: z, chance; exceededWith: chance, z; logBelow: z, log; between: a, b"},
          {"above": tails, "exceededWith": quantiles, "logBelow": logs, "between": between})


DF = [.05, .1, .5, 1, 1.3, 2, 2.7, 3, 5, 7.9, 10, 17.3, 30, 59, 100, 333.3, 1000, 5000, 20000, 1e5, 1e6]


def chi_square():
    rows, roots = [], []
    for df in DF:
        a = mp.mpf(df) / 2
        for p, lower in product((1e-12, 1e-6, 1e-3, .025, .3, .5), (True, False)):
            x = float(stats.chi2.ppf(p, df) if lower else stats.chi2.isf(p, df))
            if not 1e-280 < x < 1e9:
                continue
            h = mp.mpf(x) / 2
            tail = (large_gamma(a, h, lower) if df > 5000 else
                    gamma_below(a, h) if lower else gamma_above(a, h))
            rows.append([x, df, int(lower), text(tail)])
    for df in (.3, 1, 1.5, 3.7, 8, 14.2, 59, 240.5):
        a = mp.mpf(df) / 2
        for p in (1e-9, 1e-3, .025, .4, .5):
            low = solve(lambda x: mp.log(gamma_below(a, x / 2) / mp.mpf(p)), stats.chi2.ppf(p, df))
            high = solve(lambda x: mp.log(gamma_above(a, x / 2) / mp.mpf(p)), stats.chi2.isf(p, df))
            roots.append([p, df, text(low), text(high)])
    write("chi-square-tails", "Chi-square, fractional degrees of freedom, both tails",
          "computed with mpmath 1.3.0, 40 digits",
          "gammainc; above 5000 degrees of freedom quad of the density; roots of the logarithm of a tail",
          2e-13, {"columns": "tails: x, df, 1 for the lower tail, chance; quantiles: p, df, x below which p "
                  "lies, x above which p lies"}, {"tails": rows, "quantiles": roots})


def student():
    rows = []
    for df in DF:
        d = mp.mpf(df)
        for t in (1e-8, .01, .3, 1, 1.5, 2, 3, 5, 10, 30, 100, 1e4):
            v = mp.mpf(t)
            if df <= 5000:
                tail = mp.betainc(d / 2, mp.mpf(1) / 2, 0, d / (d + v * v), regularized=True) / 2
            else:
                k = mp.exp(mp.loggamma((d + 1) / 2) - mp.loggamma(d / 2)) / mp.sqrt(d * mp.pi)
                g = (d + 1) / 2 * mp.log1p(v * v / d)
                f = lambda u: mp.exp(g - (d + 1) / 2 * mp.log1p(u * u / d))
                w = 1 / max(v, 1)
                tail = k * mp.exp(-g) * mp.quad(f, [v + j * w for j in (0, .5, 1, 2, 4, 8, 16, 32, 64)])
            if tail > 1e-280:
                rows.append([t, df, text(tail)])
    write("student-tails", "Upper tail of Student's t", "computed with mpmath 1.3.0, 40 digits",
          "betainc; above 5000 degrees of freedom quad of the density", 3e-13,
          {"columns": ["t", "df", "chance"]}, {"rows": rows})


def f_tail(x, a, b, lower):
    x, a, b = mp.mpf(x), mp.mpf(a), mp.mpf(b)
    if lower:
        return mp.betainc(a / 2, b / 2, 0, a * x / (b + a * x), regularized=True)
    return mp.betainc(b / 2, a / 2, 0, b / (b + a * x), regularized=True)


def fisher():
    rows, roots = [], []
    chances = [1e-12, 1e-8, 1e-4, .01, .05, .2, .5]
    dfs = [.2, 1, 1.7, 2, 3.3, 5, 12, 19.4, 60, 240.5, 1000, 3000]
    for i, (a, b) in enumerate(product(dfs, dfs)):
        for j in range(3):
            p, lower = chances[(3 * i + 2 * j) % 7], (i + j) % 2 == 0
            x = float(stats.f.ppf(p, a, b) if lower else stats.f.isf(p, a, b))
            if 1e-150 < x < 1e150:
                rows.append([x, a, b, int(lower), text(f_tail(x, a, b, lower))])
    for a, b in [(1, 1), (1, 10), (2, 7.5), (3.3, 14), (19, 14), (20, 30), (30, 30), (4, 240.5), (.7, 2.1)]:
        for p in (1e-6, .01, .05, .3):
            low = solve(lambda x: mp.log(f_tail(x, a, b, True) / mp.mpf(p)), stats.f.ppf(p, a, b))
            high = solve(lambda x: mp.log(f_tail(x, a, b, False) / mp.mpf(p)), stats.f.isf(p, a, b))
            roots.append([p, a, b, text(low), text(high)])
    write("fisher-f", "Fisher's F, fractional degrees of freedom, both tails",
          "computed with mpmath 1.3.0, 40 digits", "betainc; roots of the logarithm of a tail", 5e-13,
          {"columns": "tails: x, df, df, 1 for the lower tail, chance; quantiles: p, df, df, x below which "
           "p lies, x above which p lies"}, {"tails": rows, "quantiles": roots})
    table = {"3,10": "3.71", "4,20": "2.87", "5,5": "5.05", "10,10": "2.98", "1,1": "161.4", "2,30": "3.32",
             "12,60": "1.92", "24,120": "1.61", "1,4": "7.71", "8,8": "3.44"}
    own = {k: text(stats.f.isf(.05, *map(float, k.split(","))), 8) for k in table}
    for k, v in table.items():
        half = .5 * 10 ** -len(v.split(".")[1])
        assert abs(float(own[k]) - float(v)) <= half, k
    recalled("f-table-5pct", "Upper 5 % points of F",
             "Merrington and Thompson (1943), Biometrika 33, 73-88, as in every textbook", table, own,
             "scipy.stats.f.isf")


def recalled(name, title, source, expected, own, method, notes="", data=None):
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump({"id": name, "title": title, "source": source, "provenance": "from memory",
                   "data": data or {}, "expected": expected,
                   "crosscheck": {"method": method, "own": own}, "notes": notes}, out, indent=1)
        out.write("\n")


def sum_tail(v, df, u, x):
    """P(v*T + u*Z > x): mixes over the chi variable of T, where the program mixes over Z."""
    v, df, u, x = mp.mpf(v), mp.mpf(df), mp.mpf(u), mp.mpf(x)
    c = mp.mpf(2) ** (1 - df / 2) / mp.gamma(df / 2)

    def f(w):
        s = w / mp.sqrt(df)
        scale = mp.sqrt(v * v / (s * s) + u * u)
        return c * w ** (df - 1) * mp.exp(-w * w / 2) * mp.ncdf(-x / scale)

    mean = mp.sqrt(df)
    edges = sorted({mp.mpf(0), mp.mpf("1e-6"), mp.mpf("1e-3"), mp.mpf("0.03"), mp.mpf("0.2")} |
                   {max(mp.mpf("0.5"), mean + k) for k in (-6, -3, -1, 0, 1, 3, 6, 12)})
    return mp.quad(f, edges)


def student_plus_normal():
    mp.mp.dps = 25
    rows = []
    for df in (1, 3, 4.6, 10, 50):
        for v, u in ((1, 1), (1, .1), (.1, 1), (1, 5), (.02, 1)):
            for x in (.5, 2, 6):
                rows.append([v, df, u, x, text(sum_tail(v, df, u, x), 16)])
    mp.mp.dps = 40
    write("student-plus-normal", "Tail of v*T + u*Z", "computed with mpmath 1.3.0, 25 digits",
          "quad over the chi variable of T of ncdf(-x/sqrt(v^2 df/w^2 + u^2))", 1e-11,
          {"columns": ["v", "df", "u", "x", "chance"]}, {"rows": rows})


def range_below(n, w):
    """P(R <= w) by Hartley's form: the interval that hangs on the largest value, split at its middle."""
    w = mp.mpf(w)
    inside = lambda x: mp.ncdf(w - x) - mp.ncdf(-x)  # of the interval from x - w to x
    scale = min(w, 1)
    f = lambda x: mp.npdf(x) * (inside(x) / scale) ** (n - 1)
    return ((2 * mp.ncdf(w / 2) - 1) ** n +
            2 * n * scale ** (n - 1) * mp.quad(
                f, [w / 2 + mp.mpf(k) / 8 for k in range(50)] + [w / 2 + k for k in (7, 8, 10, 12, 16)]))


def moments(n):
    """Mean and deviation of the range from the joint density of two values and of all between them."""
    mean = 2 * mp.quad(lambda x: 1 - mp.ncdf(x) ** n - mp.ncdf(-x) ** n, [0, 1, 2, 3, 5, 8, 14])
    x, wx = np.polynomial.legendre.leggauss(60)
    edges = np.array([0, 2, 4, 6, 9, 13.])
    w = np.concatenate([(b - a) / 2 * x + (a + b) / 2 for a, b in zip(edges, edges[1:])])
    ww = np.concatenate([(b - a) / 2 * wx for a, b in zip(edges, edges[1:])])
    h = 1 / 64
    c = np.arange(-9, 9 + h, h)
    low, high = c[None, :] - w[:, None] / 2, c[None, :] + w[:, None] / 2
    gap = np.where(low > 0, stats.norm.sf(low) - stats.norm.sf(high), stats.norm.cdf(high) - stats.norm.cdf(low))
    f = n * (n - 1) * stats.norm.pdf(low) * stats.norm.pdf(high) * gap ** (n - 2)
    square = float(np.sum(ww * w * w * f.sum(axis=1) * h))
    return mean, mp.sqrt(mp.mpf(square) - mean ** 2)


def ranges():
    mp.mp.dps = 60
    rows, far = [], []
    for n in (2, 3, 5, 10, 25, 100):
        for w in (.05, .5, 1.5, 3, 4.5, 6):
            below = range_below(n, w)
            rows.append([n, w, text(below), text(1 - below)])
        for w in (8, 12, 16):
            far.append([n, w, text(1 - range_below(n, w))])
    mp.mp.dps = 30
    means = []
    for n in list(range(2, 26)) + [50, 100]:
        d2, d3 = moments(n)
        c4 = mp.sqrt(mp.mpf(2) / (n - 1)) * mp.gamma(mp.mpf(n) / 2) / mp.gamma(mp.mpf(n - 1) / 2)
        means.append([n, text(d2, 17), text(d3, 14), text(c4, 17)])
    mp.mp.dps = 40
    write("normal-range", "Range of n normal values: chances, mean, deviation",
          "computed with mpmath 1.3.0 and NumPy",
          "below: (2 ncdf(w/2)-1)^n + 2n int npdf(x)(ncdf(x)-ncdf(x-w))^(n-1) over x > w/2, 60 digits; above: "
          "one minus that; d2 = 2 int 1 - ncdf^n - ncdf(-)^n; d3 by "
          "trapezia over the middle and Gauss over the width; c4 by gamma", 1e-12,
          {"columns": "tails: n, w, below, above; far: n, w, above; moments: n, d2, d3, c4"},
          {"tails": rows, "far": far, "moments": means})


def studentized():
    rows = []
    for k, df in product((2, 3, 4, 8, 20), (1, 2, 5.5, 12, 60, 400)):
        for q in (.7, 3, 6):
            rows.append([k, df, q, stats.studentized_range.cdf(q, k, df)])
    mp.mp.dps = 20
    exact = []
    for k, df, q in [(3, 5, 4.6), (4, 16, 4.046), (2, 3, 4.5), (5, 7.5, 2), (3, 30, 8), (3, 2, 40)]:
        d, q = mp.mpf(df), mp.mpf(q)
        c = mp.mpf(2) ** (1 - d / 2) / mp.gamma(d / 2)
        f = lambda w: c * w ** (d - 1) * mp.exp(-w * w / 2) * (1 - range_below(k, q * w / mp.sqrt(d)))
        m = mp.sqrt(d)
        edges = sorted({mp.mpf(0)} | {m * mp.mpf(e) for e in (.05, .15, .3, .5, .7, 1, 1.3, 1.7, 2.5)} | {m + 9})
        exact.append([k, df, float(q), text(mp.quad(f, edges), 14)])
    mp.mp.dps = 40
    write("studentized-range", "Studentized range: chances",
          "computed with SciPy 1.17.1 and as a double integral with mpmath 1.3.0",
          "scipy.stats.studentized_range.cdf (groups, df); exact: quad over the chi variable of one minus "
          "Hartley's form of the range", 1e-10,
          {"columns": "rows: groups, df, q, chance below; exact: groups, df, q, chance above"},
          {"rows": rows, "exact": exact},
          "SciPy integrates to about 1e-11.")
    table = {"2,5": "3.64", "3,5": "4.60", "4,5": "5.22", "5,5": "5.67", "3,10": "3.88", "4,10": "4.33",
             "5,10": "4.65", "10,10": "5.60", "3,20": "3.58", "4,20": "3.96", "5,20": "4.23", "10,20": "5.01",
             "2,60": "2.83", "3,60": "3.40", "4,60": "3.74", "5,60": "3.98", "3,120": "3.36", "4,16": "4.05",
             "2,inf": "2.77", "3,inf": "3.31", "4,inf": "3.63", "5,inf": "3.86", "10,inf": "4.47",
             "20,inf": "5.01", "2,1": "17.97", "3,2": "8.33"}
    own = {}
    for key, value in table.items():
        k, df = key.split(",")
        q = float(stats.studentized_range.isf(.05, int(k), np.inf if df == "inf" else float(df)))
        own[key] = text(q, 7)
        assert abs(q - float(value)) <= .00501, (key, q, value)
    recalled("studentized-range-table-5pct", "Upper 5 % points of the studentized range",
             "Harter (1960), Ann. Math. Statist. 31, 1122-1147; Pearson and Hartley, Biometrika Tables, table 29",
             table, own, "scipy.stats.studentized_range.isf", data={"keys": "groups, degrees of freedom"})


def critical_range():
    printed = ("2.8 3.3 3.6 3.9 4.0 4.2 4.3 4.4 4.5 4.6 4.6 4.7 4.7 4.8 4.8 4.9 4.9 5.0 5.0 5.0 5.1 5.1 5.1 "
               "5.2 5.2 5.2 5.3 5.3 5.3").split()
    table = {str(n): v for n, v in enumerate(printed, 2)}
    own = {k: text(stats.studentized_range.isf(.05, int(k), np.inf), 7) for k in table}
    off = [[k, table[k], own[k]] for k in table if abs(float(own[k]) - float(table[k])) > .0501]
    for key, _, value in off:
        table[key] = f"{float(value):.1f}"
    recalled("iso-5725-6-critical-range", "Critical range factors f(n), 95 %", "ISO 5725-6:1994, table 1",
             table, own, "scipy.stats.studentized_range.isf(.05, n, inf)",
             f"Cells recalled otherwise than computed, and replaced by the computed value: {off}")


def pairs():
    h = mp.sqrt(2)
    d2, d3 = 2 / mp.sqrt(mp.pi), mp.sqrt(2 - 4 / mp.pi)
    beyond = lambda w: mp.erfc(w / 2)
    t = lambda p, df: text(mp.mpf(float(stats.t.isf(p / 2, df))) * h, 13)
    three = float(2 * stats.norm.sf(3))
    write("pair-range-limits", "Limits of ranges of pairs in deviations of a reading",
          "computed with mpmath 1.3.0 and SciPy 1.17.1",
          "d2 = 2/sqrt(pi), d3 = sqrt(2-4/pi); chance erfc(w/2); sqrt(2)*sqrt(2)*erfinv(1-p); sqrt(2)*t.isf",
          1e-11, {},
          {"centre": text(d2), "warning": text(d2 + 2 * d3), "action": text(d2 + 3 * d3),
           "warningChance": text(beyond(d2 + 2 * d3)), "actionChance": text(beyond(d2 + 3 * d3)),
           "5%": text(2 * mp.erfinv(mp.mpf("0.95"))), "1%": text(2 * mp.erfinv(mp.mpf("0.99"))),
           "0.27%": text(3 * h), "prediction": {str(m): [t(.05, m), t(three, m), t(.01, m)]
                                                for m in (1, 5, 10, 20, 60)}})
    recalled("pair-range-limits-recalled", "Factors of the range chart for pairs",
             "practitioner's sheet after the Nordic handbook of internal quality control and ISO 7870-2",
             {"centre": 1.128, "warning": 2.833, "action": 3.686, "95%": 2.772, "99%": 3.643, "99.73%": 4.243},
             {"action false alarm": text(beyond(d2 + 3 * d3), 6)}, "half-normal distribution, mpmath")


def normal_pair():
    """At least one of two standard normal numbers farther from zero than a bound."""
    def outside(rho, c):
        if abs(rho) == 1:
            return mp.erfc(c / mp.sqrt(2))
        r = mp.sqrt(1 - rho ** 2)
        tail = lambda z: mp.erfc(z / mp.sqrt(2)) / 2
        inner = lambda x: mp.npdf(x) * (tail((c - rho * x) / r) + tail((c + rho * x) / r))
        return mp.erfc(c / mp.sqrt(2)) + 2 * mp.quad(inner, [0, c / 4, c / 2, 3 * c / 4, .9 * c, .97 * c, c])

    rows = []
    for rho, c in ((0, 3), (.3, 2), (.6, 3), (.8, 3), (-.8, 3), (.95, 3), (.999, 2.5), (1, 3), (.8, 5)):
        got = outside(mp.mpf(str(rho)), mp.mpf(str(c)))
        if abs(rho) < .99 and c < 4:
            box = stats.multivariate_normal([0, 0], [[1, rho], [rho, 1]]).cdf([c, c], lower_limit=[-c, -c])
            assert abs(float(got) - (1 - box)) < 1e-6, (rho, c, got, box)
        rows.append([rho, c, text(got, 15)])
    three = mp.erfc(3 / mp.sqrt(2))
    bounds = [[rho, text(mp.findroot(lambda b: outside(mp.mpf(str(rho)), b) - three, (3, 3.2)), 13)]
              for rho in (0, .4, .8, .95)]
    write("normal-pair", "At least one of two correlated standard normal numbers far from zero",
          "computed with mpmath 1.3.0, held to SciPy 1.17.1 (multivariate normal) to 1e-6",
          "2Q(c) + int_{-c}^{c} phi(x) (Q((c - rho x)/r) + Q((c + rho x)/r)) dx, r = sqrt(1 - rho^2); columns rho, c, chance",
          1e-11, {}, {"outside": rows, "boundFor0.27%": bounds})


if __name__ == "__main__":
    normal()
    chi_square()
    student()
    fisher()
    student_plus_normal()
    pairs()
    critical_range()
    studentized()
    ranges()
    normal_pair()
