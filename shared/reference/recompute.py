"""Recomputes the practitioner's tables and the distribution tables of this folder.

Run in this folder: python3 recompute.py
Needs SciPy 1.17.1, NumPy and mpmath 1.3.0; shares no code with the program. Each table is checked
against the practitioner's printed value before it is written; a value that does not agree to the
printed digits stops the script.
"""

import json
from fractions import Fraction

import mpmath as mp
import numpy as np
from scipy import integrate, optimize, stats

mp.mp.dps = 40
TABLES = "practitioner's tables, recomputed with SciPy 1.17.1"
IM1 = [.201, .198, .205, .196, .203, .200, .194, .207, .199, .202,
       .197, .204, .193, .200, .206, .198, .201, .195, .203, .199]


def agree(name, computed, printed, half_unit):
    if not abs(computed - printed) <= half_unit * 1.02:
        raise SystemExit(f"{name}: computed {computed}, printed {printed}")


def write(name, title, source, expression, tolerance, data, expected, printed=None, notes=""):
    body = {"id": name, "title": title, "source": source, "provenance": "computed by recompute.py",
            "expression": expression, "tolerance": tolerance, "data": data, "expected": expected}
    if printed is not None:
        body["printed"] = printed
    body["notes"] = notes
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def text(value, digits=20):
    return mp.nstr(mp.mpf(value), digits)


def duplicates():
    pairs = [[.182, .178], [.201, .206], [.165, .166], [.190, .181], [.212, .209],
             [.174, .178], [.188, .190], [.195, .183], [.169, .171], [.203, .200]]
    d = np.array([a - b for a, b in pairs])
    m = len(d)
    s = np.sqrt(np.sum(d * d) / (2 * m))
    r = stats.norm.ppf(.975) * np.sqrt(2) * s
    low, high = s * np.sqrt(m / stats.chi2.ppf([.975, .025], m))
    for n, c, p, h in [("sum", np.sum(d * d), .000309, 5e-7), ("s", s, .00393065, 5e-9),
                       ("r", r, .0108950, 5e-8), ("low", low, .0027464, 5e-8),
                       ("high", high, .0068980, 5e-8)]:
        agree(n, c, p, h)
    write("practitioner-duplicates", "Ten duplicate pairs: repeatability deviation, limit, interval",
          TABLES,
          "s = sqrt(sum d^2/(2m)); r = norm.ppf(.975)*sqrt(2)*s; s*sqrt(m/chi2.ppf([.975,.025],m)); "
          "range limit at 1 % = sqrt(2)*t.ppf(.995,m)*s",
          1e-12, {"pairs": pairs},
          {"deviation": s, "repeatabilityLimit": r, "lower95": low, "upper95": high,
           "rangeLimit1": np.sqrt(2) * stats.t.ppf(.995, m) * s},
          {"deviation": .00393065, "repeatabilityLimit": .0108950, "lower95": .0027464,
           "upper95": .0068980})


def individuals():
    x = np.array(IM1)
    n = len(x)
    mean, s = x.mean(), x.std(ddof=1)
    mr = np.abs(np.diff(x)).mean()
    sigma = mr * np.sqrt(np.pi) / 2
    d = x - mean
    lag1 = np.sum(d[1:] * d[:-1]) / np.sum(d * d)
    neumann = np.sum(np.diff(x) ** 2) / np.sum(d * d)
    z = np.sort(d / s)
    i = np.arange(1, n + 1)
    a2 = -n - np.sum((2 * i - 1) * (stats.norm.logcdf(z) + stats.norm.logsf(z[::-1]))) / n
    adj = a2 * (1 + .75 / n + 2.25 / n ** 2)
    p = 1 - np.exp(-13.436 + 101.14 * adj - 223.73 * adj ** 2)
    d4 = 1 + 3 * np.sqrt(1 - 2 / np.pi) / np.sqrt(2 / np.pi)
    new = [.206, .204, .208, .205, .209, .207]
    w, trace = .20005, []
    for v in new:
        w = .4 * v + .6 * w
        trace.append(w)
    upper = [.20005 + 3 * .00394001 * np.sqrt(.25 * (1 - .6 ** (2 * k))) for k in range(1, 7)]
    t_plain = abs(mean - .198) / np.sqrt(s * s / n)
    v = s * s / n
    t_with = abs(mean - .198) / np.sqrt(v + .002 ** 2)
    df_with = (v + .002 ** 2) ** 2 / (v * v / (n - 1))
    expected = {
        "mean": mean, "deviation": s, "meanMovingRange": mr, "movingRangeDeviation": sigma,
        "movingRangeLower": mean - 3 * sigma, "movingRangeUpper": mean + 3 * sigma,
        "sampleLower": mean - 3 * s, "sampleUpper": mean + 3 * s, "rangeUpper": d4 * mr,
        "lag1": lag1, "vonNeumannRatio": neumann, "andersonDarling": a2, "adjusted": adj,
        "chance": p, "weighted": trace, "weightedUpper": upper,
        "steadyUpper": .20005 + 1.5 * .00394001,
        "biasStatisticPlain": t_plain, "biasCritical": stats.t.ppf(.975, n - 1),
        "biasStatistic": t_with, "biasDegreesOfFreedom": df_with}
    printed = {
        "mean": (.20005, 5e-6), "deviation": (.00394001, 5e-9),
        "meanMovingRange": (.00652632, 5e-9), "movingRangeDeviation": (.00578379, 1e-8),
        "movingRangeLower": (.182699, 5e-7), "movingRangeUpper": (.217401, 5e-7),
        "sampleLower": (.188230, 5e-7), "sampleUpper": (.211870, 5e-7),
        "rangeUpper": (.0213184, 5e-8), "lag1": (-.6037, 5e-5), "vonNeumannRatio": (3.2005, 5e-5),
        "andersonDarling": (.11090, 5e-6), "adjusted": (.11568, 5e-6), "chance": (.9912, 5e-5),
        "steadyUpper": (.205960, 5e-7), "biasStatisticPlain": (2.32687, 5e-6),
        "biasCritical": (2.09302, 5e-6), "biasStatistic": (.93802, 5e-6)}
    for key, (value, half) in printed.items():
        agree(key, expected[key], value, half)
    for c, q in zip(trace, [.202430, .203058, .205035, .205021, .206613, .206768]):
        agree("weighted", c, q, 5e-7)
    agree("first upper", upper[0], .204778, 5e-7)
    write("practitioner-individuals", "Twenty control results and six new ones", TABLES,
          "mean, std(ddof=1); d2 = 2/sqrt(pi); D4 = 1+3*sqrt(1-2/pi)/sqrt(2/pi); "
          "A2 = -n-sum((2i-1)(logcdf(z_i)+logsf(z_{n+1-i})))/n; lambda .4, L 3, centre .20005, "
          "deviation .00394001; bias against .198 without and with u = .002",
          1e-11, {"values": IM1, "new": new, "centre": .20005, "deviation": .00394001,
                  "reference": .198, "referenceUncertainty": .002},
          expected, {k: v[0] for k, v in printed.items()},
          "The printed moving-range deviation is cut, not rounded, in its last digit. The sixth decimal of "
          "each printed weighted mean was checked too.")


def variance_ratio():
    f = (.0052 / .00394) ** 2
    p = stats.f.sf(f, 19, 19)
    agree("F", f, 1.74186, 5e-6)
    agree("p", p, .11776, 5e-6)
    rows = [[a, b, r, float(stats.f.sf(r, a, b))] for a, b in
            [(1, 1), (3, 7), (10, 10), (19, 14), (58, 41), (239, 239)] for r in (.3, 1., 2.5, 8.)]
    write("practitioner-variance-ratio", "Ratio of two variances", TABLES, "f.sf(ratio, a, b)",
          1e-11, {"deviations": [.0052, .00394], "degreesOfFreedom": [19, 19]},
          {"ratio": f, "upperTail": p, "rows": rows}, {"ratio": 1.74186, "upperTail": .11776})


def multipliers():
    rows = []
    for n, action, warning in [(5, 7.25, 3.04), (8, 4.81, 2.51), (10, 4.29, 2.37), (12, 4.01, 2.29),
                               (15, 3.755, 2.215), (20, 3.532, 2.145), (25, 3.41, 2.11),
                               (30, 3.335, 2.079), (60, 3.16, 2.02)]:
        a = stats.t.isf(stats.norm.sf(3), n - 1) * np.sqrt(1 + 1 / n)
        w = stats.t.ppf(.975, n - 1) * np.sqrt(1 + 1 / n)
        digits = 5e-4 if n in (15, 20, 30) else 6e-3 if n in (8, 25) else 5e-3
        agree(f"action {n}", a, action, digits)
        agree(f"warning {n}", w, warning, digits)
        rows.append([n, a, w, action, warning, digits])
    write("practitioner-prediction-multipliers", "Prediction limits in sample deviations", TABLES,
          "t.isf(norm.sf(3), n-1)*sqrt(1+1/n); t.ppf(.975, n-1)*sqrt(1+1/n)", 1e-10,
          {"columns": ["n", "action", "warning", "printed action", "printed warning",
                       "half unit of the printed"]}, {"rows": rows}, None,
          "The table prints 4.81 for n = 8 (4.8048) and 2.11 for n = 25 (2.1048): off by one in the "
          "last digit. The computed column is the target.")


def nct_cdf(t, df, delta):
    """Noncentral t by its incomplete-beta series (Guenther 1978; Lenth 1989), 40 digits."""
    t, df, delta = mp.mpf(t), mp.mpf(df), mp.mpf(delta)
    if t < 0:
        return 1 - nct_cdf(-t, df, -delta)
    total = mp.ncdf(-delta)
    if t == 0:
        return total
    x, h = t * t / (t * t + df), delta * delta / 2
    centre = int(h)
    width = int(12 * mp.sqrt(h + 1)) + 40
    acc = mp.mpf(0)
    for j in range(max(0, centre - width), centre + width):
        p = mp.exp(-h + j * mp.log(h) - mp.loggamma(j + 1)) if h else mp.mpf(j == 0)
        q = (delta / mp.sqrt(2) * mp.exp(-h + j * mp.log(h) - mp.loggamma(j + mp.mpf(3) / 2))
             if h else mp.mpf(0))
        acc += (p * mp.betainc(j + mp.mpf(1) / 2, df / 2, 0, x, regularized=True)
                + q * mp.betainc(j + 1, df / 2, 0, x, regularized=True))
    return total + acc / 2


def bound(index, n, level):
    """Lower bound of a performance index with SciPy's noncentral t."""
    t = 3 * np.sqrt(n) * index
    delta = optimize.brentq(lambda d: stats.nct.sf(t, n - 1, d) - (1 - level), -5, t + 5, xtol=1e-13)
    return delta / (3 * np.sqrt(n))


def capability():
    index = (.240 - .182) / (3 * .021)
    low = bound(index, 24, .95)
    agree("index", index, .92063, 5e-6)
    agree("bound", low, .66674, 5e-6)
    beyond = stats.norm.sf((.240 - .182) / .021) * 1e6
    agree("beyond", beyond, 2900, 50)
    rows = []
    for i, n, printed in [(1.33, 10, .777), (1.33, 20, .949), (1.33, 30, 1.022), (1.33, 50, 1.093),
                          (1.33, 100, 1.164), (1., 10, .567), (1., 20, .701), (1., 30, .758),
                          (1., 50, .814)]:
        b = bound(i, n, .95)
        agree(f"bound {i} {n}", b, printed, 5e-4)
        # the same bound again through the 40-digit series
        check = nct_cdf(3 * mp.sqrt(n) * mp.mpf(i), n - 1, b * 3 * np.sqrt(n))
        agree("series", float(check), .95, 1e-9)
        rows.append([i, n, b, printed])
    write("practitioner-capability", "Performance index and its one-sided 95 % lower bound", TABLES,
          "brentq over d of nct.sf(3*sqrt(n)*index, n-1, d) - .05, divided by 3*sqrt(n); "
          "norm.sf((U-mean)/s)*1e6", 1e-9,
          {"mean": .182, "deviation": .021, "upper": .240, "n": 24,
           "columns": ["index", "n", "lower bound", "printed"]},
          {"index": index, "lower95": low, "beyondPerMillion": beyond, "rows": rows},
          {"index": .92063, "lower95": .66674})


def drift_window():
    x = np.array([1, 8, 15, 22, 29.])
    y = np.array([-.005, -.002, .004, .005, .006])
    fit = stats.linregress(x, y)
    n = len(x)
    sxx = np.sum((x - x.mean()) ** 2)
    s = np.sqrt(np.sum((y - fit.intercept - fit.slope * x) ** 2) / (n - 2))
    agree("slope", fit.slope, 4.1429e-4, 5e-9)
    agree("se", fit.stderr, 7.868e-5, 5e-9)
    agree("p", fit.pvalue, .013, 5e-4)
    rows = []

    def above(value, scale, shared):
        """P(scale*T + shared*Z > value), T of Student's t with n - 2 degrees of freedom."""
        if shared == 0:
            return stats.t.sf(value / scale, n - 2)
        edges = sorted({-9., 9., float(np.clip(value / shared, -9, 9))})
        return sum(integrate.quad(
            lambda z: stats.norm.pdf(z) * stats.t.sf((value - shared * z) / scale, n - 2),
            low, high, epsabs=1e-15, epsrel=1e-12, limit=500)[0]
            for low, high in zip(edges, edges[1:]))

    for day, shared in [(0, 0), (15, 0), (30, 0), (35, .003), (15, .003), (30, .0005)]:
        line_var = s * s * (1 / n + (day - x.mean()) ** 2 / sxx)
        var = line_var + shared ** 2
        at, se, scale = fit.intercept + fit.slope * day, np.sqrt(var), np.sqrt(line_var)
        half = optimize.brentq(lambda h: above(h, scale, shared) - .025, 0, 1, xtol=1e-16)
        beyond = above(.012 - at, scale, shared) + above(.012 + at, scale, shared)
        rows.append([day, shared, at, se, at - half, at + half, beyond])
    t = stats.t.ppf(.975, n - 2)
    write("practitioner-drift-window", "Five control deviations in one calibration window", TABLES,
          "linregress; height s*sqrt(1/n+(x-mean)^2/Sxx)*T + u*Z, T of n-2 degrees of freedom and Z "
          "normal, the sum by quad over Z; interval by brentq", 1e-10,
          {"day": x.tolist(), "deviation": y.tolist(), "allowance": .012,
           "columns": ["day", "shared uncertainty", "height", "standard error", "lower 95",
                       "upper 95", "chance beyond"]},
          {"slope": fit.slope, "slopeError": fit.stderr, "p": fit.pvalue,
           "intercept": fit.intercept, "interceptError": fit.intercept_stderr,
           "slopeLower95": fit.slope - t * fit.stderr, "slopeUpper95": fit.slope + t * fit.stderr,
           "residualDeviation": s, "rows": rows},
          {"slope": 4.1429e-4, "slopeError": 7.868e-5, "p": .013})


def chain(width, weight, weighted_width, shift, m):
    """Run length by a Markov chain of m cells (Brook and Evans 1972)."""
    h = weighted_width * np.sqrt(weight / (2 - weight))
    edge = np.linspace(-h, h, m + 1)
    mid = (edge[1:] + edge[:-1]) / 2
    u = (edge[None, :] - (1 - weight) * mid[:, None]) / weight
    u = np.clip(u, -width, width) - shift
    q = np.diff(stats.norm.cdf(u), axis=1)
    return np.linalg.solve(np.eye(m) - q, np.ones(m))[m // 2]


def run_lengths():
    rows = []
    printed = {(3, .4, 3): [234.5, 55.6, 12.8, 5.4, 3.2, 1.7],
               (3, .2, 3): [243.5, 39.5, 10.3, 5.2, 3.4, 1.8],
               (50, .4, 3): [421, 63.6, 13.4, 5.6, 3.4, 2.0],
               (50, .4, 3.054): [500, 71.2, 14.3, 5.9, 3.5, 2.0],
               (50, .2, 2.962): [500, 41.8, 10.5, 5.5, 3.7, 2.4],
               (50, .1, 2.814): [500, 31.3, 10.3, 6.1, 4.4, 2.9],
               (50, .05, 2.615): [500, 28.8, 11.4, 7.1, 5.2, 3.5]}
    for (w, lam, ww), values in printed.items():
        for shift, p in zip([0, .5, 1, 1.5, 2, 3], values):
            a, b = chain(w, lam, ww, shift, 501), chain(w, lam, ww, shift, 1001)
            fine = b + (b - a) / 3
            agree(f"{w} {lam} {ww} {shift}", fine, p, .5 if p in (500, 421) else .05)
            rows.append([0 if w == 50 else w, lam, ww, shift, fine, p])
    write("practitioner-run-lengths", "Average run lengths: weighted mean alone and with individuals",
          TABLES,
          "Markov chain of 501 and 1001 cells with norm.cdf, extrapolated; width 0 stands for no "
          "individuals limit", 1e-5,
          {"columns": ["individuals width", "weight", "weighted width", "shift", "run length",
                       "printed"]}, {"rows": rows})


def noncentral_t():
    rows = []
    for df in (1, 2, 5, 10, 30, 100, 1000):
        for delta in (-40, -3, 0, .5, 2, 8, 25, 40):
            for q in (-3, -1, 0, 1.5, 4):
                t = round(float(delta + q * np.sqrt(1 + delta ** 2 / (2 * df))), 3)
                rows.append([t, df, delta, text(nct_cdf(t, df, delta))])
    for t, df, delta in [(0, 3, 1), (1000, 2, 3), (-5, 4, 30), (1e-3, 1, 0), (60, 1, 40)]:
        rows.append([t, df, delta, text(nct_cdf(t, df, delta))])
    write("noncentral-t", "Distribution function of the noncentral t",
          "computed with mpmath 1.3.0, 40 digits; agrees with SciPy 1.17.1 where that converges",
          "incomplete-beta series of Guenther (1978) and Lenth (1989, AS 243)", 1e-12,
          {"columns": ["t", "degrees of freedom", "delta", "cdf"]}, {"rows": rows})
    worst = max(abs(float(c) - stats.nct.cdf(t, df, d)) for t, df, d, c in rows)
    print("largest difference from scipy.stats.nct:", worst)


def student_tail(t, df):
    return mp.betainc(mp.mpf(df) / 2, mp.mpf(1) / 2, 0, mp.mpf(df) / (df + mp.mpf(t) ** 2),
                      regularized=True) / 2


def quantiles():
    normal = [[p, text(mp.sqrt(2) * mp.erfinv(2 * mp.mpf(p) - 1))]
              for p in (1e-9, .001, .025, .2, .5, .6, .9, .975, .99865, .9999999)]
    student = []
    for df in (1, 1.5, 2, 3, 5, 9.7, 10, 30, 200, 5000, 1e6, 3e7, 1e10):
        for p in (.6, .9, .975, .995, .99865, .99999):
            guess = float(stats.t.ppf(p, df))
            root = mp.findroot(lambda t: mp.log(student_tail(t, df) / (1 - mp.mpf(p))), guess)
            student.append([df, p, text(root)])
    chi = []
    for df in (1, 2, 3, 5, 10, 14, 59, 200, 2000):
        for p in (1e-4, .025, .05, .5, .95, .975, .9999):
            f = lambda x: mp.gammainc(mp.mpf(df) / 2, 0, x / 2, regularized=True) - mp.mpf(p)
            chi.append([df, p, text(mp.findroot(f, mp.mpf(float(stats.chi2.ppf(p, df)))))])
    write("quantiles", "Quantiles of the normal, Student's t and chi-square distributions",
          "computed with mpmath 1.3.0, 40 digits, started from SciPy 1.17.1",
          "roots of erfinv, betainc and gammainc", 1e-12,
          {"columns": "normal: p, z; student: df, p, t; chiSquare: df, p, x"},
          {"normal": normal, "student": student, "chiSquare": chi})


def two_sided_factor(n, content, confidence):
    """Integrates over the sample deviation; the program integrates over the sample mean."""
    nu, miss = n - 1, 1 - content

    def chance(k):
        def inner(s):
            r = k * s
            if 2 * stats.norm.sf(r) >= miss:
                return 0.
            f = lambda d: stats.norm.sf(r - d) + stats.norm.sf(r + d) - miss
            d = optimize.brentq(f, 0, r + 12, xtol=1e-14, rtol=1e-14)
            return stats.chi.pdf(s * np.sqrt(nu), nu) * np.sqrt(nu) * (
                1 - 2 * stats.norm.sf(np.sqrt(n) * d))
        low = stats.norm.isf(miss / 2) / k
        high = 1 + 12 / np.sqrt(2 * nu)
        mids = [m for m in (1 - 2 / np.sqrt(2 * nu), 1., 1 + 2 / np.sqrt(2 * nu)) if low < m < high]
        return integrate.quad(inner, low, high, points=mids or None, limit=400, epsabs=1e-12,
                              epsrel=1e-12)[0]
    guess = stats.norm.isf(miss / 2) * np.sqrt(nu * (1 + 1 / n) / stats.chi2.ppf(1 - confidence, nu))
    return optimize.brentq(lambda k: chance(k) - confidence, guess * .8, guess * 1.2, xtol=1e-11)


def tolerance():
    three, two = 1 - 2 * stats.norm.sf(3), 1 - 2 * stats.norm.sf(2)
    rows = [[n, c, g, two_sided_factor(n, c, g)] for n in (2, 3, 5, 10, 20, 43, 100)
            for c, g in ((three, .9), (two, .9), (.9, .99), (three, .95))]
    one = []
    for n in (2, 5, 6, 10, 20, 43, 100):
        for c, g in ((.9, .99), (.95, .95), (.99865, .9)):
            k = stats.nct.ppf(g, n - 1, stats.norm.ppf(c) * np.sqrt(n)) / np.sqrt(n)
            check = nct_cdf(k * np.sqrt(n), n - 1, stats.norm.ppf(c) * np.sqrt(n))
            agree("one-sided", float(check), g, 1e-8)
            one.append([n, c, g, k])
    write("tolerance-factors", "Exact normal tolerance factors",
          "computed with SciPy 1.17.1 (quad, brentq, nct.ppf); ISO 16269-6 form",
          "two-sided: confidence = integral over s of chi density times "
          "(1-2*norm.sf(sqrt(n)*d(s))), norm.sf(k*s-d)+norm.sf(k*s+d) = 1-content; "
          "one-sided: nct.ppf(confidence, n-1, norm.ppf(content)*sqrt(n))/sqrt(n)", 1e-8,
          {"columns": ["n", "content", "confidence", "factor"]}, {"twoSided": rows, "oneSided": one})


def binomial():
    rows = []
    for n, p in [(1, .3), (8, .0027), (20, .05), (60, .05), (60, .5), (200, .01), (1000, .9)]:
        pf = Fraction(p)
        for k in sorted({1, 2, n // 3, n // 2 + 1, n - 1, n} - {0}):
            term, tail = Fraction(1), Fraction(0)
            for j in range(n + 1):
                if j:
                    term = term * (n - j + 1) / j
                if j >= k:
                    tail += term * pf ** j * (1 - pf) ** (n - j)
            value = mp.mpf(tail.numerator) / tail.denominator
            rows.append([k, n, p, text(value)])
    write("binomial-tail", "Chance of at least k of n", "computed exactly with Python fractions",
          "sum over j from k to n of C(n,j) p^j (1-p)^(n-j)", 1e-12,
          {"columns": ["k", "n", "p", "tail"]}, {"rows": rows})


def acid_factors():
    weights = {"C": "12.0107", "H": "1.00794", "O": "15.9994", "K": "39.0983"}
    abridged = {"C": "12.011", "H": "1.008", "O": "15.999", "K": "39.098"}

    def factor(w, carbons, hydrogens):
        c, h, o, k = (Fraction(w[element]) for element in "CHOK")
        return 10 * (k + o + h) / (carbons * c + hydrogens * h + 2 * o)

    rows = []
    for acid, carbons, hydrogens, printed in [
            ("oleic", 18, 34, 1.9863), ("palmitic", 16, 32, 2.1880), ("lauric", 12, 24, 2.8008),
            ("stearic", 18, 36, 1.9722), ("linoleic", 18, 32, 2.0006)]:
        value = factor(weights, carbons, hydrogens)
        agree(acid, float(value), printed, 5e-5)
        other = float(factor(abridged, carbons, hydrogens))
        agree(acid, other / float(value), 1, 5e-5)
        rows.append({"acid": acid, "factor": text(mp.mpf(value.numerator) / value.denominator),
                     "abridged": other, "printed": printed})
    half_percent = .5 / float(factor(weights, 18, 34))
    agree("acid number 0.50 as oleic", half_percent, .2517, 5e-5)
    write("practitioner-acid-factors",
          "Acid number, in mg KOH/g, that one percent by mass of a fatty acid makes",
          "practitioner's tables, recomputed with exact fractions; IUPAC standard atomic weights of"
          " 1997 and their abridged values of today typed from memory",
          "10*(K+O+H)/(carbons*C+hydrogens*H+2*O)", 1e-15,
          {"weights": weights, "abridgedWeights": abridged, "halfUnitOfPrinted": 5e-5},
          {"rows": rows, "halfMilligramAsOleic": half_percent}, {"halfMilligramAsOleic": .2517},
          "The abridged weights move each factor by less than 5e-5 of itself, which changes the"
          " fourth decimal of some; the printed figures come from the older weights.")


def robust():
    sets = [[.182, .178, .201, .165, .19], [.182, .178, .201, .165, .19, 1.82],
            [2., 2., 2., 2., 7.], [float(np.log(v)) for v in (.18, .181, .179, 1.8, .018, .183, .177, .184,
             .176, .18, .182)], [float(k * k % 97) / 8 for k in range(1, 61)]]
    expected = [[float(np.median(v)), float(stats.median_abs_deviation(v, scale="normal"))] for v in sets]
    multiples = [[n, z, float(stats.t.isf(stats.norm.sf(z), .37 * n) * np.sqrt(1 + np.pi / 2 / n))]
                 for n in (5, 9, 20, 61, 400) for z in (1., 2., 4.)]
    write("robust-summary", "Median, scaled median absolute deviation and limits for one more value",
          "computed with SciPy 1.17.1",
          "median; median_abs_deviation(scale='normal'), before the factor for small samples; "
          "t.isf(norm.sf(z), .37 n) sqrt(1 + pi/2n)", 1e-12,
          {"sets": sets}, {"columns": ["median", "deviation"], "rows": expected,
          "multiples": {"columns": ["n", "normal", "multiple"], "rows": multiples}})


if __name__ == "__main__":
    acid_factors()
    duplicates()
    individuals()
    variance_ratio()
    multipliers()
    capability()
    drift_window()
    run_lengths()
    noncentral_t()
    quantiles()
    tolerance()
    binomial()
    robust()
