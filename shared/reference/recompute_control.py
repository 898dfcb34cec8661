"""Recomputes the cases of control charts of this folder.

Run in this folder: python3 recompute_control.py
Needs SciPy 1.17.1, NumPy and mpmath 1.3.0; shares no code with the program. Sums run in exact
fractions or 40 digits, distributions come from SciPy or mpmath, run rules are searched with code
that looks at every window afresh. Where a table of the practitioner prints a value, it is checked
before the file is written; a value that does not agree to the printed digits stops the script.
"""

import json
from fractions import Fraction
from math import comb, factorial

import mpmath as mp
import numpy as np
from scipy import integrate, stats

mp.mp.dps = 40
IM1 = [.201, .198, .205, .196, .203, .200, .194, .207, .199, .202,
       .197, .204, .193, .200, .206, .198, .201, .195, .203, .199]
NEW = [.206, .204, .208, .205, .209, .207]
CENTRE, DEVIATION = .20005, .00394001


def agree(name, computed, printed, half_unit):
    if not abs(float(computed) - printed) <= half_unit * 1.02:
        raise SystemExit(f"{name}: computed {computed}, printed {printed}")


def write(name, title, source, expression, tolerance, data, expected, notes=""):
    body = {"id": name, "title": title, "source": source,
            "provenance": "computed by recompute_control.py", "expression": expression,
            "tolerance": tolerance, "data": data, "expected": expected, "notes": notes}
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def f(x):
    return Fraction(str(x))


def m(x):
    return mp.mpf(str(x))


# --- subgroups -----------------------------------------------------------------------------------

def c4(n):
    n = mp.mpf(n)
    return mp.sqrt(2 / (n - 1)) * mp.gamma(n / 2) / mp.gamma((n - 1) / 2)


def d2_d3(n):
    """From the joint density of the smallest and the largest, not from the distribution function."""
    phi, cdf = stats.norm.pdf, stats.norm.cdf

    def moment(k):
        def joint(x, w):
            y = x + w
            return w ** k * n * (n - 1) * (cdf(y) - cdf(x)) ** (n - 2) * phi(x) * phi(y)
        value, _ = integrate.dblquad(joint, 0, 14, lambda w: -w / 2 - 8, lambda w: -w / 2 + 8,
                                     epsabs=1e-12, epsrel=1e-12)
        return value
    mean = moment(1)
    return mean, np.sqrt(moment(2) - mean ** 2)


def equivalent(relative_variance):
    def off(log_nu):
        c = c4(mp.exp(log_nu) + 1)
        return (1 - c * c) / (c * c) - relative_variance
    return float(mp.exp(mp.findroot(off, mp.log(1 / (2 * relative_variance)))))


GROUPS_EQUAL = [[10.3, 9.8, 10.1, 10.6], [9.9, 10.0, 10.4, 9.6], [10.2, 10.9, 10.0, 10.3],
                [9.7, 10.1, 9.8, 9.5], [10.0, 10.4, 10.7, 10.2], [9.9, 9.4, 10.3, 10.1]]
GROUPS_UNEQUAL = [[5.1, 4.9, 5.3], [5.0, 5.2], [4.8, 5.1, 5.4, 5.0, 4.7], [5.2, 5.2, 4.9, 5.5],
                  [4.6, 5.0, 5.1, 4.9, 5.3, 5.2, 4.8]]


def subgroups():
    sizes = [2, 3, 4, 5, 6, 7, 10, 15, 25]
    constants = {n: d2_d3(n) for n in sizes}
    for n, row in {2: (1.12838, .85250), 3: (1.69257, .88837), 4: (2.05875, .87981),
                   5: (2.32593, .86408), 6: (2.53441, .84804)}.items():
        agree(f"d2 {n}", constants[n][0], row[0], 5e-6)
        agree(f"d3 {n}", constants[n][1], row[1], 5e-6)
    tail = stats.norm.sf(3)
    rows = []
    for n in sizes:
        low, high = (stats.studentized_range.ppf(p, n, np.inf) for p in (tail, 1 - tail))
        rows.append([n, constants[n][0], constants[n][1], float(c4(n)), low, high])
    write("subgroup-constants",
          "Mean and deviation of the range, mean of the sample deviation, outer quantiles of the "
          "range, of n standard normal values",
          "joint density of the extremes (SciPy dblquad); gamma functions (mpmath); "
          "SciPy studentized_range with infinite degrees of freedom",
          "d2, d3 = moments of w under n(n-1)(Phi(x+w)-Phi(x))^(n-2) phi(x) phi(x+w); "
          "c4 = sqrt(2/(n-1)) gamma(n/2)/gamma((n-1)/2); quantiles at norm.sf(3) and 1-norm.sf(3)",
          1e-8, {"columns": ["n", "d2", "d3", "c4", "range at 0.135 %", "range at 99.865 %"]},
          {"rows": rows}, "d2 and d3 for n = 2..6 agree with the practitioner's five decimals.")

    def summary(groups):
        all_values = [f(x) for g in groups for x in g]
        centre = sum(all_values) / len(all_values)
        ranges = [max(f(x) for x in g) - min(f(x) for x in g) for g in groups]
        deviations = [mp.sqrt(m(np.float64(float(
            sum((f(x) - sum(map(f, g)) / len(g)) ** 2 for x in g)))) / (len(g) - 1)) for g in groups]
        ns = [len(g) for g in groups]
        cons = {n: constants.get(n) or d2_d3(n) for n in set(ns)}
        hr = [(cons[n][0] / cons[n][1]) ** 2 for n in ns]
        hs = [float(c4(n) ** 2 / (1 - c4(n) ** 2)) for n in ns]
        by_range = sum(h * float(r) / cons[n][0] for h, r, n in zip(hr, ranges, ns)) / sum(hr)
        by_deviation = sum(h * float(s / c4(n)) for h, s, n in zip(hs, deviations, ns)) / sum(hs)
        nu = sum(ns) - len(ns)
        pooled = mp.sqrt(sum((n - 1) * s * s for n, s in zip(ns, deviations)) / nu)
        return {"centre": float(centre), "meanRange": float(sum(ranges) / len(ranges)),
                "meanDeviation": float(sum(deviations) / len(deviations)),
                "deviationByRanges": by_range, "degreesByRanges": equivalent(1 / sum(hr)),
                "deviationByDeviations": by_deviation,
                "degreesByDeviations": equivalent(1 / sum(hs)),
                "deviationPooled": float(pooled / c4(nu + 1)), "degreesPooled": nu,
                "pooled": float(pooled)}

    def limits(expected, n):
        centre, sigma = expected["centre"], expected["deviationByDeviations"]
        d2, d3 = constants[n]
        c = float(c4(n))
        spread = np.sqrt(1 - c * c)
        tail = .0027 / 2
        low, high = (stats.studentized_range.ppf(p, n, np.inf) for p in (tail, 1 - tail))
        chi = np.sqrt(stats.chi2.ppf([tail, 1 - tail], n - 1) / (n - 1))
        z = stats.norm.isf(tail)
        return {"mean": [centre - 3 * sigma / np.sqrt(n), centre + 3 * sigma / np.sqrt(n)],
                "range": [max(0, d2 - 3 * d3) * sigma, d2 * sigma, (d2 + 3 * d3) * sigma],
                "deviation": [max(0, c - 3 * spread) * sigma, c * sigma, (c + 3 * spread) * sigma],
                "meanByChance": [centre - z * sigma / np.sqrt(n), centre + z * sigma / np.sqrt(n)],
                "rangeByChance": [low * sigma, high * sigma],
                "deviationByChance": [chi[0] * sigma, chi[1] * sigma]}

    equal, unequal = summary(GROUPS_EQUAL), summary(GROUPS_UNEQUAL)
    equal["limits"] = {"4": limits(equal, 4)}
    unequal["limits"] = {str(n): limits(unequal, n) for n in (2, 5, 7)}
    write("subgroup-limits", "Limits of means, ranges and deviations of equal and unequal subgroups",
          "formulas of ISO 7870-2 and of Burr (1969), J. Qual. Technol. 1, 163-167, with exact "
          "fractions, mpmath and SciPy",
          "weights (d2/d3)^2 and c4^2/(1-c4^2); limits at 3 deviations and at .00135 a side",
          1e-8, {"equal": GROUPS_EQUAL, "unequal": GROUPS_UNEQUAL},
          {"equal": equal, "unequal": unequal})


def range_degrees():
    printed = {2: {1: 1.0, 2: 1.9, 3: 2.8, 4: 3.7, 5: 4.6, 10: 9.0, 15: 13.4, 20: 17.8},
               3: {1: 2.0, 2: 3.8, 3: 5.7, 5: 9.3, 10: 18.4},
               5: {1: 3.8, 2: 7.5, 3: 11.1, 5: 18.4, 10: 36.5}}
    rows = []
    for n, row in printed.items():
        d2, d3 = d2_d3(n)
        for g, value in row.items():
            own = equivalent((d3 / d2) ** 2 / g)
            rows.append([g, n, value, own, abs(round(own, 1) - value)])
    bad = [r[:4] for r in rows if r[4] > .05]
    if bad:
        raise SystemExit(f"range degrees: {bad}")
    body = {"id": "range-degrees-of-freedom",
            "title": "Equivalent degrees of freedom of the mean range of g groups of n values",
            "source": "Table after Patnaik (1950), Biometrika 37, 78-87, and Duncan, Quality Control "
                      "and Industrial Statistics; also in handbooks of measurement-system analysis",
            "provenance": "from memory; computed again by recompute_control.py",
            "data": {"columns": ["g", "n", "degrees of freedom as recalled", "computed"]},
            "expected": {"rows": [r[:4] for r in rows]},
            "notes": "Computed by matching the coefficient of variation of the mean range to that of "
                     "a sample deviation. Recalled and computed agree to the printed digit."}
    with open("range-degrees-of-freedom.json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def precision_limits():
    cases = []
    for df, nu, chance in [(5, 125, .05), (3, 651, .01), (1, 9, .0027), (2, 14, .0027), (1, 1, .05),
                           (4, 30, .00135), (10, 6, .01)]:
        upper = mp.sqrt(m(stats.f.isf(chance, df, nu)))
        lower = mp.sqrt(m(stats.f.ppf(chance, df, nu)))
        cases.append([df, nu, chance, float(lower), float(upper)])
    write("precision-limits", "Limits of a new deviation over the pooled one", "SciPy f",
          "sqrt(f.ppf(chance, df, nu)), sqrt(f.isf(chance, df, nu))", 1e-10,
          {"columns": ["df", "pooled df", "chance a side", "lower", "upper"]}, {"rows": cases})


# --- counts --------------------------------------------------------------------------------------

def counts():
    rows = []
    for mean in (.5, 2, 4, 7.3, 16):
        half = 3 * np.sqrt(mean)
        low, high = max(0, mean - half), mean + half
        alarm = stats.poisson.sf(np.floor(high), mean)
        alarm += stats.poisson.cdf(np.ceil(low) - 1, mean) if low > 0 else 0
        rows.append([mean, low, high, alarm])
    shares = []
    for share, n in ((.1, 20), (.2313, 50), (.02, 100), (.5, 8), (.97, 60)):
        half = 3 * np.sqrt(share * (1 - share) / n)
        low, high = max(0, share - half), min(1, share + half)
        alarm = stats.binom.sf(np.floor(high * n + 1e-9), n, share)
        alarm += stats.binom.cdf(np.ceil(low * n - 1e-9) - 1, n, share) if low > 0 else 0
        shares.append([share, n, low, high, alarm])
    write("count-limits", "Three-deviation limits of counts and shares and their true false-alarm "
          "chance", "SciPy poisson and binom", "mean +/- 3 sqrt(mean); p +/- 3 sqrt(p(1-p)/n)",
          1e-11, {"counts": ["mean", "lower", "upper", "false alarm"],
                  "shares": ["share", "n", "lower", "upper", "false alarm"]},
          {"counts": rows, "shares": shares})


# --- cumulative sums -----------------------------------------------------------------------------

def cusum(values, centre, deviation, k, h, head=0, restarts=(), anew=False):
    """Exact fractions, restart by restart; the shift is the plain mean of what the sum holds."""
    k, h, head = f(k), f(h), f(head)
    out = []
    up = down = head
    ups, downs = [], []
    for i, x in enumerate(values):
        if i in restarts:
            up = down = head
            ups, downs = [], []
        u = (f(x) - f(centre)) / f(deviation)
        up, down = max(Fraction(0), up + u - k), max(Fraction(0), down - u - k)
        ups = ups + [u] if up > 0 else []
        downs = downs + [u] if down > 0 else []
        signal = up > h or down > h
        out.append([float(up), float(down), len(ups), len(downs),
                    float(f(deviation) * sum(ups) / len(ups)) if ups else None,
                    float(f(deviation) * sum(downs) / len(downs)) if downs else None, int(signal)])
        if signal and anew:
            up = down = head
            ups, downs = [], []
    return out


SERIES = [10.2, 9.7, 10.9, 11.4, 9.2, 8.8, 10.1, 10.6, 12.3, 11.8, 11.2, 12.9, 10.4, 9.9, 8.1,
          8.6, 9.0, 7.7, 10.3, 10.0, 11.1, 12.2, 11.7, 9.5]


def cumulative_sums():
    six = cusum(NEW, CENTRE, DEVIATION, .5, 5)
    for i, printed in enumerate([1.0101, 1.5127, 3.0304, 3.7868, 5.5584, 6.8223]):
        agree(f"six {i}", six[i][0], printed, 5e-5)
    if [row[6] for row in six] != [0, 0, 0, 0, 1, 1]:
        raise SystemExit("six: signal")
    cases = {"plain": dict(k=.5, h=4), "headStart": dict(k=.5, h=4, head=2),
             "restarts": dict(k=.25, h=3, head="1.5", restarts=(6, 14)),
             "startingAnew": dict(k=.5, h=3, head="1.5", anew=True)}
    expected = {"six": six}
    for name, case in cases.items():
        expected[name] = cusum(SERIES, 10, .8, **case)
    write("cumulative-sums", "Tabular cumulative sums with head start, restarts and after signals",
          "recursion of Page (1954) and Lucas and Crosier (1982) in exact fractions",
          "up = max(0, up + u - k), down = max(0, down - u - k), u = (x - centre)/deviation; shift = "
          "mean of x - centre over the values since the sum was last zero",
          1e-12,
          {"six": NEW, "sixCentre": CENTRE, "sixDeviation": DEVIATION, "series": SERIES,
           "centre": 10, "deviation": .8,
           "columns": ["up", "down", "values in up", "values in down", "shift up", "shift down",
                       "signal"],
           "cases": {n: {k: (list(v) if isinstance(v, tuple) else v if isinstance(v, bool)
                             else float(v)) for k, v in c.items()} for n, c in cases.items()}},
          expected, "The first six agree with the practitioner's table; signal at the fifth.")


def spread_scores():
    mean = mp.power(2, mp.mpf(1) / 4) * mp.gamma(mp.mpf(3) / 4) / mp.sqrt(mp.pi)
    numeric = 2 * mp.quad(lambda x: mp.sqrt(x) * mp.npdf(x), [0, 1, 4, 12])
    if abs(mean - numeric) > 1e-12:
        raise SystemExit("spread mean")
    deviation = mp.sqrt(mp.sqrt(2 / mp.pi) - mean ** 2)
    agree("Hawkins mean", mean, .822, 5e-4)
    agree("Hawkins deviation", deviation, .349, 5e-4)
    us = [0, .1, -.5, 1, -1.5, 2.5, -4]
    scores = [float((mp.sqrt(abs(m(u))) - mean) / deviation) for u in us]
    body = {"id": "spread-scores",
            "title": "Score of the spread: root of the size of a deviation, standardised",
            "source": "Hawkins (1981), A CUSUM for a scale parameter, J. Qual. Technol. 13, 228-231",
            "provenance": "from memory; computed again by recompute_control.py",
            "tolerance": 1e-13,
            "expression": "(sqrt|u| - E sqrt|Z|)/sd sqrt|Z|, E = 2^(1/4) gamma(3/4)/sqrt(pi), "
                          "variance = sqrt(2/pi) - E^2",
            "data": {"u": us, "constantsAsPrinted": [.822, .349]},
            "expected": {"mean": float(mean), "deviation": float(deviation), "scores": scores},
            "notes": "The paper rounds the two constants to 0.822 and 0.349."}
    with open("spread-scores.json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


# --- weighted means ------------------------------------------------------------------------------

def weighted_means():
    lam, width = f(.3), 3
    gaps = [1, 1, 2.5, .4, 7, 1, 1, 3, .25, 10, 1, 1]
    values = SERIES[:12]
    z, share = mp.mpf(0), mp.mpf(0)
    spaced = []
    for i, (x, gap) in enumerate(zip(values, gaps)):
        if i == 7:
            z, share = mp.mpf(0), mp.mpf(0)
        w = 1 - mp.power(1 - m(.3), m(gap))
        z = (1 - w) * z + w * (m(x) - 10)
        share = (1 - w) ** 2 * share + w ** 2
        half = width * m(.8) * mp.sqrt(share)
        spaced.append([float(10 + z), float(10 - half), float(10 + half)])
    z = Fraction(0)
    held = []
    wild = [10.2, 9.7, 19.0, 10.9, 11.4, 2.1, 9.2, 14.9, 14.8, 14.9, 15.1]
    for x in wild:
        step = f(x) - 10 - z
        most = 3 * f(.8)
        cut = max(-most, min(most, step))
        z += lam * cut
        held.append([float(10 + z), int(cut != step)])
    write("weighted-mean-options",
          "Exponentially weighted mean with uneven spacing, and with innovations held at three "
          "deviations", "recursions in 40 digits and in exact fractions",
          "w = 1-(1-.3)^gap, z = (1-w) z + w (x-10), share = (1-w)^2 share + w^2, limits 3*.8*sqrt("
          "share), restart before the eighth; z += .3*clip(x-10-z, -2.4, 2.4)",
          1e-12, {"values": values, "gaps": gaps, "restartBefore": 7, "wild": wild, "centre": 10,
                  "deviation": .8, "weight": .3, "width": 3},
          {"spaced": spaced, "held": held})


# --- start-up ------------------------------------------------------------------------------------

def t_cdf(t, nu):
    t, nu = mp.mpf(t), mp.mpf(nu)
    tail = mp.betainc(nu / 2, mp.mpf(1) / 2, 0, nu / (nu + t * t), regularized=True) / 2
    return tail, t > 0


def q_from_t(t, nu):
    tail, above = t_cdf(t, nu)
    z = mp.findroot(lambda x: mp.log(mp.erfc(x / mp.sqrt(2)) / 2) - mp.log(tail),
                    abs(stats.norm.isf(float(tail))))
    return z if above else -z


def q_statistics():
    x = [m(v) for v in IM1]
    centre, deviation = m(.2), m(.004)

    def case(known_centre, known_deviation):
        out = []
        for i in range(1, len(x) + 1):
            before, now = x[:i - 1], x[i - 1]
            if known_centre and known_deviation:
                out.append((now - centre) / deviation)
            elif known_deviation and i >= 2:
                mean = sum(before) / (i - 1)
                out.append(mp.sqrt(m(i - 1) / i) * (now - mean) / deviation)
            elif known_centre and i >= 2:
                s = mp.sqrt(sum((v - centre) ** 2 for v in before) / (i - 1))
                out.append(q_from_t((now - centre) / s, i - 1))
            elif not known_centre and not known_deviation and i >= 3:
                mean = sum(before) / (i - 1)
                s = mp.sqrt(sum((v - mean) ** 2 for v in before) / (i - 2))
                out.append(q_from_t(mp.sqrt(m(i - 1) / i) * (now - mean) / s, i - 2))
            else:
                out.append(None)
        return [None if q is None else float(q) for q in out]
    expected = {"known": case(True, True), "unknownCentre": case(False, True),
                "unknownDeviation": case(True, False), "unknown": case(False, False)}
    for got, printed in zip(expected["unknown"][2:8],
                            [1.0782, -.9965, .6092, -.1410, -1.5333, 1.5445]):
        agree("Q", got, printed, 5e-5)
    far = [[t, nu, float(q_from_t(t, nu))] for t, nu in ((40, 1), (-12, 3), (9, 10), (25, 4),
                                                         (1e-3, 2), (-30, 18))]
    write("q-statistics", "Q statistics of twenty values for known and unknown centre and deviation",
          "formulas of Quesenberry (1991), J. Qual. Technol. 23, 213-224, in 40 digits (mpmath)",
          "known: (x-c)/d; centre unknown: sqrt((i-1)/i)(x-mean)/d; deviation unknown: Phi^-1(T_(i-1)("
          "(x-c)/s0)); both: Phi^-1(T_(i-2)(sqrt((i-1)/i)(x-mean)/s)); mean, s0, s of the values before",
          1e-10, {"values": IM1, "centre": .2, "deviation": .004,
                  "farColumns": ["t", "degrees of freedom", "q"]},
          {**expected, "far": far},
          "Values 3 to 8 of the last case agree with the practitioner's four decimals.")


def predictive_limits():
    def update(prior, values):
        mu, kappa, nu, s = prior
        x = [m(v) for v in values]
        n = len(x)
        mean = sum(x) / n
        ss = sum((v - mean) ** 2 for v in x)
        kn, nn = kappa + n, nu + n
        return ((kappa * mu + n * mean) / kn, kn, nn,
                mp.sqrt((nu * s ** 2 + ss + kappa * n * (mean - mu) ** 2 / kn) / nn))

    def limits(state, chance):
        mu, kappa, nu, s = state
        half = mp.mpf(stats.t.isf(chance / 2, float(nu))) * s * mp.sqrt(1 + 1 / kappa)
        return [float(mu - half), float(mu + half)]
    prior = (m(.2), m(1), m(4), m(.006))
    after = update(prior, IM1[:5])
    agree("centre", after[0], .2005, 5e-5)
    agree("deviation", after[3], .004684, 5e-7)
    action = 2 * stats.norm.sf(3)
    agree("low", limits(after, action)[0], .1798, 5e-5)
    agree("high", limits(after, action)[1], .2212, 5e-5)
    agree("prior", limits(prior, action)[1] - .2, .0562, 5e-5)
    all20 = update(prior, IM1)
    vague = (m(0), m(0), m(-1), m(0))
    five = update(vague, IM1[:5])
    agree("without", limits(five, action)[0], .1742, 5e-5)
    agree("without", limits(five, action)[1], .2270, 5e-5)
    states = {"prior": prior, "five": after, "twenty": all20, "withoutPrior": five}
    write("predictive-limits", "Normal-inverse-gamma predictive limits from a prior and values",
          "Gelman et al., Bayesian Data Analysis, conjugate normal model, in 40 digits and SciPy t",
          "k = k0+n, v = v0+n, mu = (k0 mu0 + n mean)/k, v s^2 = v0 s0^2 + SS + k0 n (mean-mu0)^2/k; "
          "mu +/- t.isf(chance/2, v) s sqrt(1+1/k); chance 2*norm.sf(3), .05",
          1e-11, {"values": IM1, "prior": {"centre": .2, "weight": 1, "degreesOfFreedom": 4,
                                           "deviation": .006}},
          {n: {"centre": float(s[0]), "weight": float(s[1]), "degreesOfFreedom": float(s[2]),
               "deviation": float(s[3]), "action": limits(s, action), "warning": limits(s, .05)}
           for n, s in states.items()},
          "Prior alone, five values with and without prior agree with the practitioner's figures.")


# --- run rules -----------------------------------------------------------------------------------

def tail(zone):
    return mp.erfc(zone / mp.sqrt(2)) / 2


def beyond_chance(count, of, zone):
    p = tail(zone)
    return 2 * p * sum(comb(of - 1, j) * p ** j * (1 - p) ** (of - 1 - j)
                       for j in range(count - 1, of))


def either_chance(count, of, zone):
    p = 2 * tail(zone)
    return p * sum(comb(of - 1, j) * p ** j * (1 - p) ** (of - 1 - j) for j in range(count - 1, of))


def zigzag(n):
    """Alternating permutations that begin with a rise, by the triangle of Seidel."""
    row = [1]
    for _ in range(n):
        total, new = 0, [0]
        for v in reversed(row):
            total += v
            new.append(total)
        row = new
    return row[-1]


def run_rule_chances():
    rows = [["Beyond", 1, 1, 3, beyond_chance(1, 1, 3)], ["Beyond", 2, 3, 2, beyond_chance(2, 3, 2)],
            ["Beyond", 4, 5, 1, beyond_chance(4, 5, 1)], ["Beyond", 2, 2, 2, beyond_chance(2, 2, 2)],
            ["Beyond", 4, 4, 1, beyond_chance(4, 4, 1)], ["Beyond", 10, 11, 0, beyond_chance(10, 11, 0)],
            ["SameSide", 8, 8, 0, mp.mpf(2) ** -7], ["SameSide", 9, 9, 0, mp.mpf(2) ** -8],
            ["EitherSide", 2, 3, 2, either_chance(2, 3, 2)],
            ["Opposite", 2, 2, 2, 2 * tail(2) ** 2],
            ["Within", 15, 15, 1, (1 - 2 * tail(1)) ** 15], ["Outside", 8, 8, 1, (2 * tail(1)) ** 8]]
    permutations = [["Steady", n, 2, factorial(n)] for n in (3, 6, 7)]
    permutations += [["Alternating", n, 2 * zigzag(n), factorial(n)] for n in (4, 5, 6, 7, 14)]
    if [zigzag(n) for n in range(1, 8)] != [1, 1, 2, 5, 16, 61, 272]:
        raise SystemExit("zigzag")
    write("run-rule-chances", "Chance that a rule is met at a given value of an independent normal "
          "series with a full window behind it",
          "binomial sums of normal tails (mpmath); alternating permutations (Euler's zigzag numbers)",
          "p = tail(zone); k of m: 2p*sum C(m-1,j)p^j(1-p)^(m-1-j), j >= k-1; steady: 2/n!; "
          "alternating: 2 E_n/n!",
          1e-12, {"columns": ["rule", "count", "of", "zone", "chance"],
                  "permutationColumns": ["rule", "count", "permutations that meet it", "of all"]},
          {"rows": [[r[0], r[1], r[2], r[3], float(r[4])] for r in rows],
           "permutations": permutations})


def windows(series, starts, left_out):
    """For each counted place the counted places since the start, itself last."""
    for i in range(len(series)):
        if i in left_out:
            continue
        start = max([0] + [s for s in starts if s <= i])
        yield i, start, [j for j in range(start, i + 1) if j not in left_out]


def met(rule, series, places, start):
    kind, *p = rule
    u = [series[j] for j in places]
    if kind == "beyond":
        count, of, zone = p
        for sign in (1, -1):
            hit = [j for j in places[-of:] if sign * series[j] > zone]
            if len(hit) >= count and hit[-1] == places[-1]:
                return hit
        return None
    if kind == "either":
        count, of, zone = p
        hit = [j for j in places[-of:] if abs(series[j]) > zone]
        return hit if len(hit) >= count and hit[-1] == places[-1] else None
    if kind == "opposite":
        size, zone = p
        block = [j for j in places if (j - start) // size == (places[-1] - start) // size]
        last = series[places[-1]]
        far = [j for j in block[:-1] if abs(series[j]) > zone and series[j] * last < 0]
        return far + [places[-1]] if abs(last) > zone and far else None
    count = p[0]
    if len(u) < count:
        return None
    w = np.array(u[-count:])
    step = np.sign(np.diff(w))
    ok = {"same": lambda: abs(np.sign(w).sum()) == count,
          "steady": lambda: abs(step.sum()) == count - 1,
          "alternating": lambda: np.all(step != 0) and np.all(step[1:] == -step[:-1]),
          "within": lambda: np.all(np.abs(w) <= p[1]),
          "outside": lambda: np.all(np.abs(w) > p[1])}[kind]()
    return places[-count:] if ok else None


RULES = {"Beyond[count=1, of=1, zone=3.0]": ("beyond", 1, 1, 3),
         "Beyond[count=2, of=3, zone=2.0]": ("beyond", 2, 3, 2),
         "Beyond[count=4, of=5, zone=1.0]": ("beyond", 4, 5, 1),
         "Beyond[count=10, of=11, zone=0.0]": ("beyond", 10, 11, 0),
         "EitherSide[count=2, of=3, zone=2.0]": ("either", 2, 3, 2),
         "Opposite[set=2, zone=2.0]": ("opposite", 2, 2),
         "SameSide[count=8]": ("same", 8), "Steady[count=6]": ("steady", 6),
         "Alternating[count=8]": ("alternating", 8), "Within[count=7, zone=1.0]": ("within", 7, 1),
         "Outside[count=4, zone=1.0]": ("outside", 4, 1)}


def run_rule_series():
    rng = np.random.default_rng(20240611)
    x = rng.normal(size=240)
    x[20:40] += 1.3
    x[60:75] *= .3
    x[80:90] = np.linspace(-1.5, 2.2, 10)
    x[100:120] = .4 * (-1) ** np.arange(20) + .1
    x[140:160] *= 2.2
    x[170:190] -= .9
    series = [float(v) for v in np.round(x * 4) / 4]
    starts = sorted(int(v) for v in rng.choice(np.arange(1, 240), 6, replace=False))
    left_out = sorted(int(v) for v in rng.choice(240, 25, replace=False))
    rows = []
    for name, rule in RULES.items():
        for i, start, places in windows(series, starts, left_out):
            points = met(rule, series, places, start)
            if points:
                rows.append([name, i, points])
    seen = {name: sum(r[0] == name for r in rows) for name in RULES}
    if min(seen.values()) < 1:
        raise SystemExit("a rule is never met")
    write("run-rule-series", "Where eleven run rules are met in a long series with restarts and "
          "left-out values, and which values make the pattern",
          "search that looks at every window afresh (NumPy); the series is random, in quarters of a "
          "deviation so that ties with centre, zones and neighbours occur", "see run_rule_series()",
          1e-12, {"series": series, "starts": starts, "leftOut": left_out},
          {"rows": rows, "counts": seen})


def multirule_run_lengths():
    """Two independent values a set: average number of sets until a rejection, by simulation."""
    rng = np.random.default_rng(7)
    rows = []
    for shift in (0, .5, 1, 2, 3):
        trials = 40000 if shift else 20000
        alive = np.arange(trials)
        history = np.zeros((trials, 10))
        sets = np.zeros(trials)
        length = 0
        while alive.size:
            length += 1
            new = rng.normal(shift, 1, (alive.size, 2))
            rejected = (np.abs(new) > 3).any(1)
            rejected |= ((new > 2).any(1) & (new < -2).any(1))
            for column in (0, 1):
                history = np.column_stack([history[:, 1:], new[:, column]])
                for sign in (1, -1):
                    h = sign * history
                    rejected |= (h[:, -2:] > 2).all(1) | (h[:, -4:] > 1).all(1) | (h > 0).all(1)
            sets[alive[rejected]] = length
            alive, history = alive[~rejected], history[~rejected]
        mean, error = sets.mean(), sets.std() / np.sqrt(trials)
        rows.append([shift, float(mean), float(error)])
    write("multirule-run-lengths", "Average number of sets of two values until a multirule rejects",
          "simulation with NumPy; rules 1-3s, 2-2s, R-4s, 4-1s, 10-x of Westgard, Barry, Hunt and "
          "Groth (1981), Clin. Chem. 27, 493-501", "see multirule_run_lengths()", 1e-3,
          {"columns": ["shift in deviations", "average", "its standard error"]}, {"rows": rows},
          "Rules of successive values are looked at after each value, across sets and over both "
          "values of a set; R-4s within a set. A practitioner's simulation that does not say which "
          "windows it looks at gives 94, 27.1, 7.1, 1.95, 1.16; looking only at the end of each set "
          "gives 102, 28.6, 7.6, 1.97, 1.14.")


def step_changes():
    """The whole normal likelihood of every place and every mean, in exact fractions."""
    def likeliest(values, centre):
        best = None
        for k in range(len(values)):
            before, after = values[:k], values[k:]
            mean = sum(after) / len(after)
            misfit = sum((x - centre) ** 2 for x in before) + sum((x - mean) ** 2 for x in after)
            if best is None or misfit < best[0]:
                best = (misfit, k, mean)
        misfit, k, mean = best
        plain = sum((x - centre) ** 2 for x in values)
        return [k, len(values) - k, float(mean - centre), float(plain - misfit)]

    rng = np.random.default_rng(11)
    drawn = [round(float(x), 2) for x in
             np.concatenate([rng.normal(10, 1, 12), rng.normal(8.5, 1, 6)])]
    cases = {"imAndNew": [f(CENTRE), [f(x) for x in IM1 + NEW]], "one": [f(0), [f(2.5)]],
             "drawn": [f(10), [f(x) for x in drawn]],
             "rising": [f(0), [f(x) for x in (0.1, -0.2, 0.4, 1.1, 1.6, 2.9)]],
             "slip": [f(0), [f(x) for x in (0.3, -0.1, 0.2, 9.0)]]}
    write("step-changes", "Likeliest beginning of a step behind a signal",
          "likelihood of Samuel, Pignatiello and Calvin (1998), Quality Engineering 10(3), 521-527 "
          "(from memory), searched over all places in exact fractions",
          "place k and mean m that make sum of (x - centre)^2 before and (x - m)^2 from k on least; "
          "place from 0, count, shift, gain in sums of squares", 1e-12,
          {name: {"centre": float(c), "values": [float(x) for x in v]}
           for name, (c, v) in cases.items()},
          {name: likeliest(v, c) for name, (c, v) in cases.items()})


for part in (step_changes, subgroups, range_degrees, precision_limits, counts, cumulative_sums, spread_scores,
             weighted_means, q_statistics, predictive_limits, run_rule_chances, run_rule_series,
             multirule_run_lengths):
    part()
