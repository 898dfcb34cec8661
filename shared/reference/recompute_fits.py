"""Computes the cases of compared methods, censored samples, powers, capability and conformance.

Run in this folder: python3 recompute_fits.py
Needs SciPy 1.17.1, NumPy and mpmath 1.3.0; shares no code with the program. Published figures typed
from memory are checked before they are written: one that does not agree stops the script.
"""

import itertools
import json
import warnings
from fractions import Fraction

import mpmath as mp
import numpy as np
from recompute import nct_cdf
from scipy import integrate, optimize, special, stats

mp.mp.dps = 40
MC1X = ".112 .145 .160 .178 .191 .205 .214 .228 .240 .262 .281 .305".split()
MC1Y = ".118 .149 .158 .187 .196 .204 .223 .231 .252 .266 .292 .310".split()
PEARSON = ("0 .9 1.8 2.6 3.3 4.4 5.2 6.1 6.5 7.4".split(),
           "5.9 5.4 4.4 4.6 3.5 3.7 2.8 2.8 2.4 1.5".split())
SKEWED = [12.3, 8.1, 15.9, 22.4, 9.7, 11.2, 31.6, 7.4, 13.8, 18.5, 10.4, 26.1, 9.1, 14.6, 40.2, 8.8]
IM1 = [.201, .198, .205, .196, .203, .200, .194, .207, .199, .202,
       .197, .204, .193, .200, .206, .198, .201, .195, .203, .199]


def agree(name, computed, printed, half_unit):
    if not abs(float(computed) - printed) <= half_unit * 1.02:
        raise SystemExit(f"{name}: computed {computed}, printed {printed}")


def write(name, title, source, expression, tolerance, data, expected, notes="",
          provenance="computed by recompute_fits.py", crosscheck=None):
    body = {"id": name, "title": title, "source": source, "provenance": provenance,
            "expression": expression}
    if tolerance is not None:
        body["tolerance"] = tolerance
    body.update({"data": data, "expected": expected})
    if crosscheck is not None:
        body["crosscheck"] = crosscheck
    body["notes"] = notes
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1, ensure_ascii=False, allow_nan=False)
        out.write("\n")


def num(value):
    return float(mp.mpf(value)) if not isinstance(value, Fraction) else float(value)


# ---- lines with errors in both ----

def deming(x, y, ratio):
    """Slope from the quadratic b^2 Sxy + b(r Sxx - Syy) - r Sxy = 0 in 40 digits."""
    n = len(x)
    mx, my = sum(x) / n, sum(y) / n
    sxx = sum((v - mx) ** 2 for v in x)
    syy = sum((v - my) ** 2 for v in y)
    sxy = sum((v - mx) * (w - my) for v, w in zip(x, y))
    d = syy - ratio * sxx
    b = (d + mp.sqrt(d * d + 4 * ratio * sxy * sxy)) / (2 * sxy)
    return b, my - b * mx, mx, my


def deming_case(xs, ys, ratio, at):
    x = [mp.mpf(float(v)) if len(v) > 8 else mp.mpf(v) for v in xs]
    y = [mp.mpf(v) for v in ys]
    r, n = mp.mpf(ratio), len(xs)
    b, a, mx, my = deming(x, y, r)
    lines = [deming(x[:i] + x[i + 1:], y[:i] + y[i + 1:], r)[:2] for i in range(n)]

    def error(f):
        pseudo = [n * f(b, a) - (n - 1) * f(q, p) for q, p in lines]
        m = sum(pseudo) / n
        return mp.sqrt(sum((p - m) ** 2 for p in pseudo) / (n * (n - 1)))

    t = mp.mpf(stats.t.ppf(.975, n - 2))
    place = mp.mpf(float(at))
    out = {"slope": b, "intercept": a, "slopeError": error(lambda q, p: q),
           "interceptError": error(lambda q, p: p), "heightError": error(lambda q, p: p + q * place),
           "height": a + b * place,
           "deviationOfX": mp.sqrt(sum((w - a - b * v) ** 2 for v, w in zip(x, y))
                                   / ((n - 2) * (r + b * b)))}
    out["slopeLower95"], out["slopeUpper95"] = b - t * out["slopeError"], b + t * out["slopeError"]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from scipy import odr
        xf, yf = np.array([float(v - mx) for v in x]), np.array([float(v - my) for v in y])
        unit = float(out["deviationOfX"])
        fit = odr.ODR(odr.RealData(xf, yf, sx=unit, sy=unit * float(mp.sqrt(r))), odr.unilinear,
                      beta0=[float(b) * 1.05, unit], sstol=1e-12, partol=1e-12, maxit=1000).run()
    agree("orthogonal distance regression", fit.beta[0], float(b), 5e-6 * abs(float(b)))
    agree("its residual", fit.sum_square / (n - 2), 1, 1e-5)
    out["slopeOfDistanceRegression"] = float(fit.beta[0])
    return {k: num(v) for k, v in out.items()}


def deming_lines():
    rng = np.random.default_rng(1943)
    level = np.round(np.linspace(3, 90, 17), 1)
    rx = [f"{v:.2f}" for v in level + rng.normal(0, 1.5, 17)]
    ry = [f"{v:.2f}" for v in 1.1 * level - 2 + rng.normal(0, 3, 17)]
    cases = [("practitioner", MC1X, MC1Y, 1, "0.24"), ("pearson", *PEARSON, 1, "5"),
             ("unequal errors", rx, ry, 4, "50"), ("small ratio", rx, ry, "0.25", "0"),
             ("exchanged", ry, rx, "0.25", "50"),
             ("offset", ["1000000." + v[1:] for v in MC1X], MC1Y, 1, "1000000.2")]
    out = []
    for name, x, y, ratio, at in cases:
        out.append(dict({"name": name, "x": [float(v) for v in x], "y": [float(v) for v in y],
                         "ratio": float(ratio), "at": float(at)}, **deming_case(x, y, ratio, at)))
    agree("MC-1 slope", out[0]["slope"], 1.0245483, 5e-8)
    agree("MC-1 intercept", out[0]["intercept"], .00025948, 5e-9)
    agree("Pearson slope", out[1]["slope"], -.545561, 5e-7)
    agree("Pearson intercept", out[1]["intercept"], 5.784044, 5e-7)
    write("deming-lines", "Lines with errors in x and y: coefficients and jackknife errors",
          "computed with mpmath 1.3.0 at 40 digits; each slope and residual also with SciPy 1.17.1 ODR",
          "root of b^2*Sxy + b*(r*Sxx - Syy) - r*Sxy = 0; sd of pseudo-values n*f - (n-1)*f(i) over"
          " sqrt(n); t.ppf(.975, n-2); sqrt(sum (y-a-b*x)^2/((n-2)(r+b^2)))", 1e-10,
          {"practitioner": "lab comparison, slope 1.0245483 and intercept .00025948 printed"},
          {"cases": out},
          "The x of the offset case are taken as the doubles they become, all else as decimals.")


# ---- shifted median of slopes ----

def pb_case(xs, ys):
    x, y = [Fraction(v) for v in xs], [Fraction(v) for v in ys]
    n = len(x)
    finite, vertical = [], 0
    for i, j in itertools.combinations(range(n), 2):
        if x[i] == x[j]:
            vertical += y[i] != y[j]
        else:
            s = (y[i] - y[j]) / (x[i] - x[j])
            if s != -1:
                finite.append(s)
    k = sum(s < -1 for s in finite)
    ranks = sorted(finite) + [None] * vertical
    total = len(ranks)

    def rank(r):  # the paper's shift: rank r moved up by K, beyond the end from the start again
        return ranks[(r - 1 + k) % total]

    if total % 2:
        b = rank((total + 1) // 2)
        b = mp.mpf(b.numerator) / b.denominator
    else:
        lo, hi = rank(total // 2), rank(total // 2 + 1)
        b = (lo + hi) / 2
        b = mp.mpf(b.numerator) / b.denominator
    left = sorted(mp.mpf(w.numerator) / w.denominator - b * mp.mpf(v.numerator) / v.denominator
                  for v, w in zip(x, y))

    def median(v):
        v = sorted(v)
        h = len(v) // 2
        return v[h] if len(v) % 2 else (v[h - 1] + v[h]) / 2
    a = median(left)
    c = mp.mpf(stats.norm.ppf(.975)) * mp.sqrt(mp.mpf(n * (n - 1) * (2 * n + 5)) / 18)
    m1 = int(mp.floor((total - c) / 2 + mp.mpf(1) / 2))
    lower, upper = rank(m1), rank(total - m1 + 1)
    res = [w - b * v - a for v, w in zip([mp.mpf(q.numerator) / q.denominator for q in x],
                                         [mp.mpf(q.numerator) / q.denominator for q in y])]
    sign = [0 if abs(r) < mp.mpf(10) ** -25 else int(mp.sign(r)) for r in res]
    up, down = sign.count(1), sign.count(-1)
    order = sorted(range(n), key=lambda i: (mp.mpf(x[i].numerator) / x[i].denominator
                                            + b * mp.mpf(y[i].numerator) / y[i].denominator))
    run = np.cumsum([np.sqrt(down / up) if sign[i] > 0 else -np.sqrt(up / down) if sign[i] < 0 else 0
                     for i in order])
    h = np.abs(run).max() / np.sqrt((up + down) / 2 + 1)

    def inter(s):
        q = mp.mpf(s.numerator) / s.denominator
        return median([mp.mpf(w.numerator) / w.denominator - q * mp.mpf(v.numerator) / v.denominator
                       for v, w in zip(x, y)])
    return {"x": [float(v) for v in xs], "y": [float(v) for v in ys], "slope": num(b),
            "intercept": num(a), "slopes": total, "shift": k, "slopeLower95": float(lower),
            "slopeUpper95": float(upper), "interceptLower95": num(inter(upper)),
            "interceptUpper95": num(inter(lower)), "above": up, "below": down, "statistic": h,
            "chance": float(stats.kstwobign.sf(h))}


def passing_bablok():
    rng = np.random.default_rng(1983)
    cases = [dict({"name": "practitioner"}, **pb_case(MC1X, MC1Y))]
    for name, n, noise, digits in [("thirty points", 30, 2., 1), ("coarse with ties", 25, 1.6, 0),
                                   ("nine points", 9, 4., 1), ("noisy, negative slopes", 14, 14., 1)]:
        level = np.linspace(5, 60, n)
        x = [f"{v:.{digits}f}" for v in level + rng.normal(0, noise, n)]
        y = [f"{v:.{digits}f}" for v in .95 * level + 1 + rng.normal(0, noise, n)]
        cases.append(dict({"name": name}, **pb_case(x, y)))
    bent = [f"{v:.1f}" for v in np.linspace(1, 40, 40)]
    curve = [f"{float(v) ** 2 / 40 + (.7 if i % 2 else -.7):.2f}" for i, v in enumerate(bent)]
    cases.append(dict({"name": "bent"}, **pb_case(bent, curve)))
    mc = cases[0]
    for key, printed, half in [("slope", 1.0246149, 5e-8), ("intercept", .00036469, 5e-9),
                               ("slopeLower95", .974138, 5e-7), ("slopeUpper95", 1.073529, 5e-7)]:
        agree(key, mc[key], printed, half)
    assert (mc["slopes"], mc["shift"]) == (66, 0)
    tail = [[t, float(stats.kstwobign.sf(t))] for t in (.2, .4, .6, .8, .999, 1.0, 1.001, 1.3581, 1.6276, 2.5)]
    write("passing-bablok", "Shifted median of the slopes of all pairs",
          "computed with exact fractions and mpmath 1.3.0; Kolmogorov's tail with SciPy 1.17.1",
          "ranks of sorted slopes moved by K = #(slopes < -1), slopes of -1 left out, vertical ones"
          " last; mean of the middle two; M1 = round((N - z*sqrt(n(n-1)(2n+5)/18))/2);"
          " max|cusum|/sqrt((l+L)/2+1); kstwobign.sf", 1e-11, {"practitioner": "lab comparison"},
          {"cases": cases, "kolmogorov": {"columns": ["t", "tail"], "rows": tail}},
          "The practitioner's slope, intercept and slope interval agree with the printed ones. The"
          " paper was not at hand.")


# ---- agreement ----

def tolerance_one(n, p, conf):
    d = np.sqrt(n) * stats.norm.ppf(p)
    return stats.nct.ppf(conf, n - 1, d) / np.sqrt(n)


def agreement():
    x, y = np.array(MC1X, float), np.array(MC1Y, float)

    def case(name, d, m):
        n, mean, s = len(d), d.mean(), d.std(ddof=1)
        t, z = stats.t.ppf(.975, n - 1), stats.norm.ppf(.975)
        fit = stats.linregress(m, d)
        tt = stats.t.ppf(.975, n - 2)
        lo, hi = tolerance_one(n, .975, .025), tolerance_one(n, .975, .975)
        return {"name": name, "mean": mean, "deviation": s, "meanLower95": mean - t * s / n ** .5,
                "meanUpper95": mean + t * s / n ** .5, "lower": mean - z * s, "upper": mean + z * s,
                "lowerLower95": mean - hi * s, "lowerUpper95": mean - lo * s,
                "upperLower95": mean + lo * s, "upperUpper95": mean + hi * s,
                "approximateError": s * np.sqrt(1 / n + z * z / (2 * (n - 1))), "slope": fit.slope,
                "slopeLower95": fit.slope - tt * fit.stderr, "slopeUpper95": fit.slope + tt * fit.stderr}

    cases = [case("differences", y - x, (x + y) / 2), case("relative", 2 * (y - x) / (x + y), (x + y) / 2)]
    for key, printed, half in [("mean", .0054167, 5e-8), ("deviation", .0043371, 5e-8),
                               ("meanLower95", .002661, 5e-7), ("meanUpper95", .008172, 5e-7),
                               ("lower", -.003084, 5e-7), ("upper", .013917, 5e-7),
                               ("slope", .0242199, 5e-8)]:
        agree(key, cases[0][key], printed, half)
    write("limits-of-agreement", "Mean difference, limits of agreement and their intervals",
          "practitioner's lab comparison, recomputed with SciPy 1.17.1",
          "mean, std(ddof=1), t.ppf; norm.ppf(.975)*s; nct.ppf(.025 and .975, n-1,"
          " sqrt(n)*norm.ppf(.975))/sqrt(n); linregress of difference on mean", 1e-8,
          {"x": x.tolist(), "y": y.tolist()}, {"cases": cases},
          "Agrees with the printed mean .0054167 (.002661 to .008172), deviation .0043371, limits"
          " -.003084 and .013917, slope .0242199. Tolerance set by SciPy's noncentral t.")


def pefr():
    large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
    mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
    d = np.array(large) - np.array(mini)
    n, mean, s = len(d), d.mean(), d.std(ddof=1)
    t, e = stats.t.ppf(.975, n - 1), np.sqrt(3 * s * s / n)
    own = {"mean": mean, "deviation": s, "meanLower95": mean - t * s / n ** .5,
           "meanUpper95": mean + t * s / n ** .5, "lower": mean - 2 * s, "upper": mean + 2 * s,
           "limitError": e}
    printed = {"mean": -2.1, "deviation": 38.8, "meanLower95": -22.0, "meanUpper95": 17.8,
               "lower": -79.7, "upper": 75.5, "limitError": 16.3}
    for key, value in printed.items():
        agree(key, own[key], value, .1 if key in ("lower", "upper") else .05)
    write("bland-altman-1986-pefr", "Peak expiratory flow by two meters, 17 subjects, first readings",
          "Bland and Altman (1986), Lancet 327, 307-310", "mean -/+ 2 s; s*sqrt(3/n)", None,
          {"large": large, "mini": mini}, printed,
          "Data and results typed from memory. The paper takes the limits from the rounded mean and"
          " deviation (-2.1 -/+ 2*38.8); unrounded they are -79.65 and 75.41.",
          provenance="from memory",
          crosscheck={"method": "NumPy and SciPy", "own": {k: float(v) for k, v in own.items()},
                      "result": "agree"})


def scores():
    x, big_x, sigma, ux, u = .231, .214, .012, .004, .010
    d = x - big_x
    values = {"z": d / sigma, "zPrime": d / np.hypot(sigma, ux), "zeta": d / np.hypot(u, ux),
              "en": d / np.hypot(2 * u, 2 * ux)}
    for (key, value), printed in zip(values.items(), [1.4167, 1.3440, 1.5784, .7892]):
        agree(key, value, printed, 5e-5)
    values["combined"] = (1.1 + .7 + 1.6 - .2) / 2
    write("comparison-scores", "Scores of one result of a proficiency round",
          "practitioner's tables, recomputed with NumPy",
          "(x-X)/sigma; with hypot(sigma, uX); with hypot(u, uX); with hypot(2u, 2uX); sum/sqrt(4)",
          1e-12, {"result": x, "assigned": big_x, "sigma": sigma, "assignedUncertainty": ux,
                  "uncertainty": u, "scores": [1.1, .7, 1.6, -.2]}, values,
          "Agrees with the printed 1.417, 1.344, 1.578, .789.")


# ---- conformance ----

def conformance():
    u, limit, m, s = .010, .240, .182, .0185

    def risks(m, s, u, low, high, alow, ahigh):
        def taken(v):
            return stats.norm.cdf((ahigh - v) / u) - stats.norm.cdf((alow - v) / u)

        def left(v):
            return stats.norm.sf((ahigh - v) / u) + stats.norm.cdf((alow - v) / u)

        def over(f, a, b):
            points = [p for p in np.sort(np.concatenate([
                m + s * np.linspace(-10, 10, 21), [q + u * k for q in (alow, ahigh)
                                                    if np.isfinite(q) for k in range(-9, 10)]]))
                if a < p < b]
            edges = [a] + points + [b]
            return sum(integrate.quad(lambda v: f(v) * stats.norm.pdf(v, m, s), p, q,
                                      epsabs=1e-17, epsrel=1e-12)[0] for p, q in zip(edges, edges[1:]))
        a, b = m - 10 * s, m + 10 * s
        consumer = (over(taken, a, low) if low > a else 0) + (over(taken, high, b) if high < b else 0)
        return [consumer, over(left, max(low, a), min(high, b))]

    guard = stats.norm.ppf(.95) * u
    post_var = 1 / (1 / u ** 2 + 1 / s ** 2)
    post_mean = post_var * (.235 / u ** 2 + m / s ** 2)
    inf = np.inf
    rows = []
    for args in [(m, s, u, -inf, limit, -inf, limit), (m, s, u, -inf, limit, -inf, limit - guard),
                 (1500., .12, .04, 1499.8, 1500.2, 1499.8, 1500.2),
                 (1500., .12, .04, 1499.8, 1500.2, 1499.88, 1500.12),
                 (.3, .02, .1, 0., .5, .1, .4), (5., 2., .1, 3., 1e9, 3.2, inf)]:
        rows.append([float(v) if np.isfinite(v) else None for v in args] + risks(*args))
    agree("consumer", rows[0][7], .00028, 5e-6)
    agree("producer", rows[0][8], .0023, 5e-5)
    agree("consumer with guard", rows[1][7], .00002, 5e-6)
    agree("producer with guard", rows[1][8], .0233, 5.5e-5)
    agree("chance", stats.norm.cdf((limit - .225) / u), .93319, 5e-6)
    agree("acceptance", limit - guard, .22355, 5e-6)
    two = []
    for half, uu, conf in [(.2, .04, .95), (.2, .1, .95), (1., .3, .99), (.2, .102, .95)]:
        def out(d):
            return stats.norm.sf((half - d) / uu) + stats.norm.sf((half + d) / uu)
        two.append([half, uu, conf, optimize.brentq(lambda d: out(d) - (1 - conf), 0, 3 * half, xtol=1e-15)])
    write("conformance", "Chance of conformance, guard band, global risks",
          "practitioner's tables, recomputed with SciPy 1.17.1",
          "norm.cdf((U-y)/u); precision-weighted mean; norm.ppf(.95)*u; quad of pdf times chance;"
          " brentq of norm.sf((h-d)/u)+norm.sf((h+d)/u)-(1-confidence)", 1e-9,
          {"limit": limit, "uncertainty": u, "mean": m, "deviation": s, "result": .225,
           "secondResult": .235,
           "riskColumns": ["mean", "deviation", "uncertainty", "lower", "upper", "accepted from",
                           "accepted to", "consumer's", "producer's"],
           "twoSidedColumns": ["half width", "uncertainty", "confidence", "accepted half width"]},
          {"chance": stats.norm.cdf((limit - .225) / u),
           "chanceBeyond": stats.norm.sf((limit - .225) / u), "guard": guard,
           "acceptance": limit - guard, "posteriorMean": post_mean,
           "posteriorDeviation": post_var ** .5,
           "posteriorChance": stats.norm.cdf((limit - post_mean) / post_var ** .5),
           "plainChance": stats.norm.cdf((limit - .235) / u), "risks": rows, "twoSided": two},
          "Agrees with the printed .93319, .22355, .2230, .0088, .973, .691 and risks .00028, .0023,"
          " .00002, .0233, the last one with the acceptance limit rounded to .22355. null is no limit.")
    agree("posterior", post_mean, .2230, 5e-5)
    agree("posterior deviation", post_var ** .5, .0088, 5e-5)


# ---- censored samples ----

def censored_ll(mu, sigma, ex, lo, hi):
    z = mp.mpf
    total = sum(mp.log(mp.npdf((z(v) - mu) / sigma) / sigma) for v in ex)
    total += sum(mp.log(mp.ncdf((z(v) - mu) / sigma)) for v in lo)
    return total + sum(mp.log(mp.ncdf((mu - z(v)) / sigma)) for v in hi)


def censored_case(name, ex, lo, hi, log):
    mp.mp.dps = 25
    raw = [list(map(mp.mpf, v)) for v in (ex, lo, hi)]
    work = [[mp.log(v) for v in part] if log else part for part in raw]
    e, b, a = work
    n = len(e) + len(b) + len(a)

    def ll(m, s):
        return censored_ll(m, s, e, b, a)

    def nll(p):
        m, s = p[0], np.exp(p[1])
        return -(stats.norm.logpdf(ef, m, s).sum() + stats.norm.logcdf(bf, m, s).sum()
                 + stats.norm.logsf(af, m, s).sum())
    ef, bf, af = (np.array([float(v) for v in part]) for part in work)
    start = optimize.minimize(nll, [ef.mean(), np.log(ef.std())], method="Nelder-Mead",
                              options={"xatol": 1e-9, "fatol": 1e-13, "maxiter": 4000}).x
    m, s = mp.findroot([lambda m, s: mp.diff(ll, (m, s), (1, 0)), lambda m, s: mp.diff(ll, (m, s), (0, 1))],
                       (start[0], np.exp(start[1])), tol=1e-30)
    hess = mp.matrix(2, 2)
    for i, j, o in [(0, 0, (2, 0)), (0, 1, (1, 1)), (1, 0, (1, 1)), (1, 1, (0, 2))]:
        hess[i, j] = -mp.diff(ll, (m, s), o)
    cov = hess ** -1
    top = ll(m, s)
    # SciPy's own fit of censored data
    data = stats.CensoredData(uncensored=ef, left=bf, right=af)
    loc, scale = stats.norm.fit(data, optimizer=lambda f, x0, args=(), disp=0: optimize.fmin(
        f, x0, args=args, disp=disp, xtol=1e-10, ftol=1e-12))
    agree(name + " location", loc, float(m), 1e-6 * float(s))
    agree(name + " scale", scale, float(s), 1e-6 * float(s))
    t = stats.t.ppf(.975, n - 1)
    fall = n / 2 * np.log1p(t * t / (n - 1))
    topf = -nll([float(m), np.log(float(s))])

    def profile_quantile(q, z):
        r = optimize.minimize_scalar(lambda ls: nll([q - z * np.exp(ls), ls]),
                                     bracket=(np.log(float(s)) - .1, np.log(float(s)) + .1), tol=1e-12)
        return -r.fun

    def profile_scale(ls):
        r = optimize.minimize_scalar(lambda mm: nll([mm, ls]),
                                     bracket=(float(m) - .1 * float(s), float(m) + .1 * float(s)), tol=1e-12)
        return -r.fun

    def ends(f, at, step):
        out = []
        for direction in (-1, 1):
            far = at + direction * step
            while f(far) - topf + fall > 0:
                far += direction * step
            out.append(optimize.brentq(lambda v: f(v) - topf + fall, at, far, xtol=1e-13))
        return out
    z95 = stats.norm.ppf(.95)
    width = float(s) / len(ef) ** .5
    location = ends(lambda q: profile_quantile(q, 0), float(m), width)
    quantile = ends(lambda q: profile_quantile(q, z95), float(m) + z95 * float(s), 2 * width)
    scale_ends = [np.exp(v) for v in ends(profile_scale, np.log(float(s)), .3)]
    mp.mp.dps = 40
    out = (lambda v: np.exp(v)) if log else (lambda v: v)
    return {"name": name, "shape": "LOGNORMAL" if log else "NORMAL", "exact": [float(v) for v in ex],
            "below": [float(v) for v in lo], "above": [float(v) for v in hi], "location": float(m),
            "scale": float(s), "locationError": float(mp.sqrt(cov[0, 0])),
            "scaleError": float(mp.sqrt(cov[1, 1])), "errorCovariance": float(cov[0, 1]),
            "logLikelihood": float(top), "locationLower95": location[0], "locationUpper95": location[1],
            "scaleLower95": scale_ends[0], "scaleUpper95": scale_ends[1],
            "quantile95": float(out(float(m + mp.mpf(z95) * s))),
            "quantileLower95": float(out(quantile[0])), "quantileUpper95": float(out(quantile[1]))}


def censored():
    cn1 = ".061 .074 .052 .090 .068 .081 .057 .066".split()
    cases = [censored_case("practitioner", cn1, [".05"] * 4, [], False),
             censored_case("the same, lognormal", cn1, [".05"] * 4, [], True),
             censored_case("several limits below", "3.1 4.7 5.2 6.0 2.4 7.9 4.1".split(),
                           "2 2 3 3.5".split(), [], False),
             censored_case("both sides", "12 15 17 21 24 30 33".split(), ["10", "10"],
                           "40 40 35".split(), False),
             censored_case("above, lognormal", "110 150 175 240 320 410".split(), [],
                           "500 500 500 300".split(), True),
             censored_case("none censored", cn1, [], [], False)]
    agree("CN-1 location", cases[0]["location"], .058495, 5e-7)
    agree("CN-1 scale", cases[0]["scale"], .018115, 5e-7)
    plain = cases[-1]
    v = np.array(plain["exact"])
    half = stats.t.ppf(.975, 7) * v.std(ddof=1) / 8 ** .5
    agree("Student's interval", plain["locationUpper95"], v.mean() + half, 1e-10)
    write("censored-fits", "Normal and lognormal populations from censored samples",
          "computed with mpmath 1.3.0 at 25 digits (estimates, errors) and SciPy 1.17.1 (profiles; each"
          " fit also by norm.fit of CensoredData)",
          "findroot of the gradient of sum ln(phi(z)/s) + sum ln Phi + sum ln(1-Phi); inverse of minus"
          " the Hessian; profile within n/2*ln(1 + t^2/(n-1)) of the top", 1e-6,
          {"practitioner": "eight values and four below .05"}, {"cases": cases},
          "The practitioner's .058495 and .018115 agree. The tolerance is that of the profile ends;"
          " estimates and errors are good to 1e-12.")


def conformance_student():
    """Chances and guard bands where the uncertainty has few degrees of freedom."""
    rows = []
    for lower, upper, u, df, y in [
            (None, .240, .010, 9.0, .225), (None, .240, .010, 3.0, .235), (None, .240, .0051, 158.0, .2345),
            (None, .240, .010, 4.7, .260), (490., None, 8.6, 5.0, 509.7), (1499.8, 1500.2, .12, 6.0, 1500.09),
            (1499.8, 1500.2, .12, 2.5, 1500.0), (None, -5.4, .05, 12.0, -5.47), (0., 1., 1e-3, 30.0, .995)]:
        beyond = 0.0
        if lower is not None:
            beyond += stats.t.sf((y - lower) / u, df)
        if upper is not None:
            beyond += stats.t.sf((upper - y) / u, df)
        rows.append([lower, upper, u, df, y, float(beyond), float(u * stats.t.ppf(.95, df)),
                     float(u * stats.t.ppf(.8, df))])
    write("conformance-student", "Chance of not conforming and guard band by Student's t",
          "JCGM 106:2012, clauses 7 and 8, with t for the normal as JCGM 100:2008, G.3; SciPy 1.17.1",
          "t.sf((y-L)/u)+t.sf((U-y)/u); u*t.ppf(confidence)", 1e-9,
          {"columns": ["lower", "upper", "uncertainty", "degrees of freedom", "result", "beyond",
                       "guard band 95 %", "guard band 80 %"], "rows": [r[:5] for r in rows]},
          {"rows": [r[5:] for r in rows]}, "")


def censored_index():
    """Index and share beyond an upper limit, by the profile of the score on which the limit lies."""
    rng = np.random.default_rng(20261127)
    cases = []
    for n, below_share, limit, log in [(12, 0, 2.2, False), (24, .25, 2.5, False), (15, .4, 1.2, False),
                                       (40, .1, 12.0, True), (20, .3, 3.0, True), (60, .2, 4.4, False)]:
        x = np.sort(np.round(rng.normal(0, 1, n), 3))
        work = 1.0 if log else 0.0
        k = int(below_share * n)
        bound = float(np.round((x[k - 1] + x[k]) / 2, 4)) if k else None
        exact = x[k:]
        if log:
            exact = np.round(np.exp(.6 * exact + .2), 4)
            bound = float(np.round(np.exp(.6 * bound + .2), 4)) if k else None
        w = np.log(exact) if log else exact
        b = None if bound is None else (np.log(bound) if log else bound)
        u = np.log(limit) if log else limit

        def ll(mu, s):
            value = stats.norm.logpdf(w, mu, s).sum()
            return value + (k * stats.norm.logcdf(b, mu, s) if k else 0.0)

        def top(f, start):
            fit = optimize.minimize(lambda q: -f(q), start, method="Nelder-Mead",
                                    options={"xatol": 1e-13, "fatol": 1e-15, "maxiter": 20000})
            return fit.x, -fit.fun
        (mu, logs), height = top(lambda q: ll(q[0], np.exp(q[1])), [w.mean(), np.log(w.std())])
        sigma = np.exp(logs)

        def profile(z):
            fit = optimize.minimize_scalar(lambda q: -ll(u - z * np.exp(q), np.exp(q)),
                                           bounds=(logs - 4, logs + 4), method="bounded",
                                           options={"xatol": 1e-13})
            return -fit.fun

        index = (u - mu) / (3 * sigma * np.sqrt(n / (n - 1)))
        best = (u - mu) / sigma
        t = 3 * index * np.sqrt(n)

        def complete(z):
            """Fall of the profile of n values of mean 0 and ML deviation 1 with the limit at best."""
            fit = optimize.minimize_scalar(
                lambda q: n * q + n * (1 + (best - z * np.exp(q)) ** 2) / (2 * np.exp(2 * q)),
                bounds=(-4, 4), method="bounded", options={"xatol": 1e-13})
            return fit.fun - n / 2

        def distance(chance):
            exact = optimize.brentq(lambda d: stats.nct.cdf(t, n - 1, d) - chance, -20, 60) / np.sqrt(n)
            fall = complete(exact)
            far = best - 8 if exact < best else best + 12
            return optimize.brentq(lambda z: height - profile(z) - fall, *sorted((far, best)), xtol=1e-12)
        cases.append({"shape": "LOGNORMAL" if log else "NORMAL", "exact": [float(v) for v in exact],
                      "below": [bound] * k, "limit": limit, "index": float(index),
                      "shareBeyond": float(stats.norm.sf(3 * index)),
                      "lowerBound95": float(distance(.95) / 3),
                      "beyondLower95": float(stats.norm.sf(distance(.025))), "beyondUpper95": float(stats.norm.sf(distance(.975)))})
    write("censored-index", "Performance index of values of which some are only bounds",
          "SciPy 1.17.1: maximum likelihood and the profile of (U - mu)/sigma",
          "(U - mu)/(3 s sqrt(n/(n-1))); profile of the score fallen as far as that of n values without"
          " bounds at the exact bound by nct", 1e-6,
          {"seed": 20261127}, {"cases": cases}, "")


def cohen():
    columns = [".10", ".15", ".20", ".25", ".30", ".40", ".50"]
    printed = {".05": [".11431", ".17935", ".25033", ".32793", ".4130", ".6101", ".8540"],
               ".10": [".11804", ".18479", ".25741", ".33662", ".4233", ".6234", ".8703"],
               ".20": [".12469", ".19460", ".27031", ".35255", ".4422", ".6483", ".9012"],
               ".50": [".14090", ".21882", ".30253", ".39276", ".4904", ".7129", ".9826"],
               "1.00": [".16170", ".25022", ".34471", ".44592", ".5548", ".8005", "1.095"]}
    own = {}
    for gamma, row in printed.items():
        own[gamma] = []
        for h, text in zip(columns, row):
            g, hf = float(gamma), float(h)

            def nll(p):
                mu, s = p[0], np.exp(p[1])
                return (1 - hf) * (p[1] + (g + (1 - mu) ** 2) / (2 * s * s)) - hf * stats.norm.logcdf(-mu / s)
            fit = optimize.minimize(nll, [1, -.5], method="Nelder-Mead",
                                    options={"xatol": 1e-12, "fatol": 1e-15, "maxiter": 9999})
            value = 1 - fit.x[0]
            agree(f"Cohen {gamma} {h}", value, float(text), .5 * 10.0 ** -len(text.split(".")[1]))
            own[gamma].append(value)
    write("cohen-1961-censored", "Factor of the maximum-likelihood mean of singly censored normal samples",
          "Cohen (1961), Tables for maximum likelihood estimates: singly truncated and singly censored"
          " samples, Technometrics 3, 535-541", "mean = m - lambda*(m - L)", None,
          {"shareCensored": columns, "columns": "one a share h", "rows": "gamma = s^2/(m - L)^2, s^2 with"
           " divisor k, m the mean of the k values known, L the limit"}, printed,
          "Typed from memory, figures as text for their digits.", provenance="from memory",
          crosscheck={"method": "Nelder-Mead on the likelihood, SciPy", "own": own, "result": "agree"})


def helsel():
    exact = [.5, .5, .5, .6, .7, .7, .9, 1.5, 1.7, 2.8, 3.2]
    below = [.9] + [1] * 4 + [2] * 8

    def nll(p):
        return -(stats.norm.logpdf(np.log(exact), p[0], np.exp(p[1])).sum()
                 + stats.norm.logcdf(np.log(below), p[0], np.exp(p[1])).sum())
    m, s = optimize.minimize(nll, [0, 0], method="Nelder-Mead",
                             options={"xatol": 1e-10, "fatol": 1e-14}).x
    s = np.exp(s)
    mean = np.exp(m + s * s / 2)
    own = {"mean": mean, "deviation": mean * np.sqrt(np.exp(s * s) - 1), "median": np.exp(m)}
    printed = {"mean": .945, "deviation": .656, "median": .777}
    for key, value in printed.items():
        agree(key, own[key], value, 5e-4)
    write("helsel-oahu-arsenic", "Arsenic in a stream of Oahu, 24 results of which 13 lie below a limit",
          "Helsel (2012), Statistics for Censored Environmental Data, 2nd edition, chapter 6; data also"
          " in Tomlinson (2003)", "lognormal maximum likelihood", None,
          {"exact": exact, "below": below}, printed, "Data and results typed from memory, ug/L.",
          provenance="from memory",
          crosscheck={"method": "Nelder-Mead on the likelihood, SciPy",
                      "own": {k: float(v) for k, v in own.items()}, "result": "agree"})


# ---- powers ----

def box_cox():
    sets = {"skewed": SKEWED, "nearly normal": IM1, "far from one": [1e-3, 2e-3, 5e-3, 4e-2, .3, 7., 90.],
            "reciprocal": [round(1 / float(v), 6) for v in np.linspace(.9, 2.1, 15)],
            "left tail": [81., 88., 90., 91., 91.5, 92., 92.4, 92.7, 93.], "three": [1., 2., 5.]}
    cases = []
    for name, x in sets.items():
        xs = [mp.mpf(repr(v)) for v in x]
        n = len(xs)
        logs = sum(mp.log(v) for v in xs)

        def llf(lam):
            t = [mp.log(v) if lam == 0 else (v ** lam - 1) / lam for v in xs]
            m = sum(t) / n
            return (lam - 1) * logs - mp.mpf(n) / 2 * mp.log(sum((v - m) ** 2 for v in t) / n)
        rough, ends = stats.boxcox(np.array(x), alpha=.05)[1:]
        lam = mp.findroot(lambda v: mp.diff(llf, v), (rough, rough + 1e-3), tol=1e-25)
        agree(name + " power", rough, float(lam), 1e-5 * max(1, abs(float(lam))))
        drop = mp.mpf(stats.chi2.ppf(.95, 1)) / 2
        low, high = (mp.findroot(lambda v: llf(v) - llf(lam) + drop, (float(e), float(e) + 1e-4), tol=1e-20)
                     for e in ends)
        agree(name + " lower", ends[0], float(low), 1e-5 * max(1, abs(float(low))))
        agree(name + " upper", ends[1], float(high), 1e-5 * max(1, abs(float(high))))
        heights = [[lm, float(llf(mp.mpf(lm))), float(stats.boxcox_llf(lm, np.array(x)))]
                   for lm in (-2., -.5, 0., 1e-9, .3, 1., 2.5)]
        for lm, exact, library in heights:
            agree(f"{name} llf {lm}", library, exact, 1e-6 * abs(exact))
        cases.append({"name": name, "values": x, "power": float(lam), "lower95": float(low),
                      "upper95": float(high), "logLikelihood": [h[:2] for h in heights]})
    write("box-cox", "Power of greatest profile likelihood, its interval, and the likelihood",
          "computed with mpmath 1.3.0 at 40 digits; each also with SciPy 1.17.1 boxcox and boxcox_llf",
          "findroot of the derivative of (l-1)*sum ln x - n/2*ln(var(x^l/l)); within chi2.ppf(.95,1)/2 of"
          " the top", 1e-9, {"note": "values are with each case"}, {"cases": cases},
          "For 1e-9 SciPy's own likelihood loses six digits; its figures served as a check only.")


# ---- capability ----

def noncentrality(t, df, level):
    """Where the series of recompute.py has a level; SciPy's nct.cdf gives NaN for some of these."""
    start = t - stats.norm.ppf(level) * np.sqrt(1 + t * t / (2 * df))
    return float(mp.findroot(lambda d: nct_cdf(t, df, d) - level, (start, start + .05), tol=1e-15))


def nct_broken(t, df, delta):
    """Distribution of the noncentral t for any df by mpmath quadrature over the chi density."""
    t, df, delta = mp.mpf(t), mp.mpf(df), mp.mpf(delta)
    const = 2 * (df / 2) ** (df / 2) / mp.gamma(df / 2)
    spread = 1 / mp.sqrt(2 * df)
    edges = sorted({mp.mpf(0), *(max(mp.mpf(0), 1 + k * spread) for k in range(-8, 17)),
                    *(max(mp.mpf(0), min(1 + 16 * spread, (delta + k) / t)) for k in (-6, -2, 0, 2, 6))})
    return mp.quad(lambda u: const * u ** (df - 1) * mp.exp(-df * u * u / 2) * mp.ncdf(t * u - delta),
                   edges + [1 + 40 * spread])


def capability():
    mp.mp.dps = 20
    ppk = []
    for index, n in [(1.33, 5), (1.33, 20), (.9, 8), (2., 12), (0., 10), (-.3, 15), (1., 50)]:
        t = 3 * np.sqrt(n) * index
        low, high = noncentrality(t, n - 1, .975), noncentrality(t, n - 1, .025)
        ppk.append([index, n, low / (3 * n ** .5), high / (3 * n ** .5),
                    stats.norm.sf(high / n ** .5), stats.norm.sf(low / n ** .5)])
    cpk = []
    for index, n, df in [(1.33, 20, 15), (1.33, 20, 11.92), (1., 12, 7.07), (.6, 5, 2.81), (1.67, 100, 80)]:
        t = 3 * np.sqrt(n) * index
        cpk.append([index, n, df] + [noncentrality(t, df, p) / (3 * n ** .5) for p in (.95, .975, .025)])
    spread = [[i, df] + [i * np.sqrt(stats.chi2.ppf(p, df) / df) for p in (.05, .025, .975)]
              for i, df in [(1.33, 19), (1., 4), (2.5, 11.92), (1.67, 80)]]
    broken = []
    mp.mp.dps = 25
    for t, df, delta in [(3., 1.5, 2.), (10., 2.812, 7.), (17.8, 11.92, 14.), (-2., 7.07, -3.), (.5, 3.3, 1.),
                         (40., 57.3, 35.), (0., 2.5, .7)]:
        value = nct_broken(t, df, delta) if t else mp.ncdf(-mp.mpf(delta))
        agree("broken", nct_cdf(t, df, delta), float(value), 1e-12)
        broken.append([t, df, delta, float(value)])
    mp.mp.dps = 40
    moving = []
    for m in (2, 4, 9, 19, 29, 99):
        # E|X||Y| of two differences that share a value, by quadrature over the angle
        cov = mp.quad(lambda a: abs(mp.cos(a) * mp.cos(a + 2 * mp.pi / 3)),
                      [0, mp.pi / 2, 5 * mp.pi / 6, 3 * mp.pi / 2, 11 * mp.pi / 6, 2 * mp.pi]) / mp.pi * 2
        mean2 = 4 / mp.pi
        variation = (m * (2 - mean2) + 2 * (m - 1) * (cov - mean2)) / (m * m * mean2)
        df = mp.findroot(lambda v: v / 2 * (mp.gamma(v / 2) / mp.gamma((v + 1) / 2)) ** 2 - 1 - variation,
                         .6 * m + .3)
        moving.append([m + 1, float(df)])
    groups = [[9.8, 10.1, 10.3], [10.0, 9.7], [10.6, 10.2, 10.4, 10.1], [9.9]]
    pooled = np.sqrt(sum(np.sum((np.array(g) - np.mean(g)) ** 2) for g in groups) / 6)
    write("capability-bounds", "Bounds of capability and performance indices",
          "computed with SciPy 1.17.1 and mpmath 1.3.0",
          "root over the noncentrality of the incomplete-beta series; norm.sf; chi2.ppf; quad of the chi density for broken"
          " degrees of freedom; variance of the mean moving range by quadrature and matching sqrt(chi2)",
          1e-9, {"groups": groups,
                 "ppkColumns": ["index", "n", "lower95", "upper95", "share lower95", "share upper95"],
                 "cpkColumns": ["index", "n", "df", "one-sided lower95", "lower95", "upper95"],
                 "spreadColumns": ["index", "df", "one-sided lower95", "lower95", "upper95"],
                 "noncentralColumns": ["t", "df", "delta", "cdf"], "movingColumns": ["n", "df"]},
          {"ppk": ppk, "cpk": cpk, "spread": spread, "noncentral": broken, "moving": moving,
           "pooled": pooled})
    cp = 24 / (6 * 1.75)
    agree("Cp", cp, 2.29, .005)
    agree("Cp lower", cp * np.sqrt(stats.chi2.ppf(.025, 19) / 19), 1.57, .01)
    agree("Cp upper", cp * np.sqrt(stats.chi2.ppf(.975, 19) / 19), 3.01, .01)
    write("cp-interval-montgomery", "Confidence interval of Cp",
          "Montgomery, Introduction to Statistical Quality Control, chapter on process capability: n = 20,"
          " s = 1.75, limits 38 and 62", "Cp*sqrt(chi2/(n-1))", None,
          {"n": 20, "deviation": 1.75, "lower": 38, "upper": 62},
          {"index": 2.29, "lower95": 1.57, "upper95": 3.01}, "Typed from memory; the book multiplies the"
          " rounded 2.29, so the upper end is 3.0056 unrounded.", provenance="from memory",
          crosscheck={"method": "SciPy", "own": {"index": cp,
                      "lower95": cp * float(np.sqrt(stats.chi2.ppf(.025, 19) / 19)),
                      "upper95": cp * float(np.sqrt(stats.chi2.ppf(.975, 19) / 19))}, "result": "agree"})


def percentile():
    x = np.array(SKEWED)
    logs = np.log(x)
    m, s = logs.mean(), logs.std(ddof=1)
    low, mid, high = stats.lognorm.ppf([stats.norm.cdf(-3), .5, stats.norm.cdf(3)], s, scale=np.exp(m))
    left = np.round(50 * (3.5 + stats.norm.ppf((np.arange(1, 61) - .5) / 60)) ** .25, 3)
    lam = stats.boxcox(left)[1]
    lam = optimize.brentq(lambda v: (stats.boxcox_llf(v + 1e-4, left) - stats.boxcox_llf(v - 1e-4, left)),
                          lam - 2, lam + 2, xtol=1e-12)
    t = special.boxcox(left, lam)
    pm, ps = t.mean(), t.std(ddof=1)
    plow, pmid, phigh = special.inv_boxcox(np.array([pm - 3 * ps, pm, pm + 3 * ps]), lam)
    grid = stats.gamma.ppf((np.arange(1, 3001) - .5) / 3000, 3.)
    elow, emid, ehigh = np.quantile(grid, [stats.norm.sf(3), .5, stats.norm.cdf(3)], method="median_unbiased")
    write("percentile-index", "Index by the median and the 0.135 % points", "computed with SciPy 1.17.1",
          "lognorm.ppf; boxcox and inv_boxcox; numpy.quantile median_unbiased of gamma.ppf((i-.5)/3000, 3)",
          1e-7, {"skewed": SKEWED, "left": left.tolist(), "gammaShape": 3, "gammaValues": grid.tolist(),
                 "upper": 60, "lower": 2, "leftLower": 35, "gammaUpper": 12},
          {"lognormal": {"low": low, "median": mid, "high": high,
                         "upperIndex": (60 - mid) / (high - mid),
                         "lowerIndex": (mid - 2) / (mid - low)},
           "power": {"power": lam, "low": plow, "median": pmid, "high": phigh,
                     "lowerIndex": (pmid - 35) / (pmid - plow)},
           "empirical": {"low": elow, "median": emid, "high": ehigh,
                         "upperIndex": (12 - emid) / (ehigh - emid)}},
          "The power of the left-tailed values lies far above 1, so that no plain power is allowed.")


# ---- bootstrap ----

def bca():
    """The complete bootstrap: every one of the n^n samples, no random numbers."""
    cases = []
    for name, x, f in [("mean of five", [4.1, 5.6, 3.2, 9.9, 6.0], np.mean),
                       ("deviation of six", [2., 3.5, 7.1, 4.4, 9., 5.2], lambda v: np.std(v, ddof=1)),
                       ("mean of seven", [.4, 2.2, 1.1, .9, 5.3, .7, 1.6], np.mean)]:
        n = len(x)
        arr = np.array(x)
        drawn = np.sort([f(arr[list(c)]) for c in itertools.product(range(n), repeat=n)])
        theta = f(arr)
        below = np.mean(drawn < theta - 1e-12) + .5 * np.mean(np.abs(drawn - theta) <= 1e-12)
        jack = np.array([f(np.delete(arr, i)) for i in range(n)])
        d = jack.mean() - jack
        a = np.sum(d ** 3) / (6 * np.sum(d ** 2) ** 1.5)
        z0 = stats.norm.ppf(below)
        ends = []
        for z in stats.norm.ppf([.025, .975]):
            p = stats.norm.cdf(z0 + (z0 + z) / (1 - a * (z0 + z)))
            ends.append(float(np.quantile(drawn, p)))
        library = stats.bootstrap((arr,), f, method="BCa", n_resamples=40000, vectorized=False,
                                  rng=np.random.default_rng(7)).confidence_interval if n < 7 else None
        if library is not None:
            agree(name + " lower", library.low, ends[0], .02 * abs(ends[1] - ends[0]))
            agree(name + " upper", library.high, ends[1], .02 * abs(ends[1] - ends[0]))
        cases.append({"name": name, "values": x, "statistic": float(theta), "acceleration": float(a),
                      "shareBelow": float(below), "lower95": ends[0], "upper95": ends[1]})
    write("bootstrap-complete", "BCa intervals from all n^n samples", "computed with NumPy and SciPy 1.17.1;"
          " the first two also with scipy.stats.bootstrap (BCa)",
          "all products of n places; norm.ppf of the share below (ties half); a from the jackknife;"
          " quantile at norm.cdf(z0+(z0+z)/(1-a(z0+z)))", 1e-12, {"note": "values are with each case"},
          {"cases": cases}, "Statistic and acceleration are exact; share and ends are those of infinitely"
          " many samples and are met within their chance.")


if __name__ == "__main__":
    deming_lines()
    passing_bablok()
    agreement()
    pefr()
    scores()
    conformance()
    conformance_student()
    censored_index()
    cohen()
    helsel()
    box_cox()
    capability()
    percentile()
    bca()
    censored()
