"""Computes the run-length cases of this folder.

Run in this folder: python3 recompute_runlength.py
Needs SciPy 1.17.1, NumPy 2.4 and mpmath 1.3.0; shares no code with the program, and as little of the
algorithms as possible: densities on one global Gauss rule or on cells, the two-sided sum from the
one-sided ones, rules by naive histories, comparisons by exact polynomials, baselines by integrating
over the deviation first, and simulation. About five minutes.
"""

import json
from fractions import Fraction

import mpmath as mp
import numpy as np
from scipy import optimize, sparse, special, stats

mp.mp.dps = 40
N = stats.norm


def write(name, title, expression, tolerance, data, expected, notes="",
          source="computed with NumPy 2.4 and SciPy 1.17.1"):
    body = {"id": name, "title": title, "source": source,
            "provenance": "computed by recompute_runlength.py", "expression": expression,
            "tolerance": tolerance, "data": data, "expected": expected, "notes": notes}
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def describe(pmf_tail):
    """From survival S(0), S(1), ... with a geometric tail: average, deviation, quantiles, chances."""
    s = np.array(pmf_tail)
    if s[-1] > 1e-14:
        r = s[-1] / s[-2]
        more = int(np.log(1e-14 / s[-1]) / np.log(r)) + 2
        s = np.concatenate([s, s[-1] * r ** np.arange(1, more)])
    n = np.arange(len(s))
    average = s.sum()
    second = ((2 * n + 1) * s).sum()
    q = [int(np.argmax(1 - s >= p)) for p in (.1, .5, .9, .99)]
    return [float(average), float(np.sqrt(second - average ** 2)), *q,
            float(1 - s[min(4, len(s) - 1)]), float(1 - s[min(20, len(s) - 1)])]


COLUMNS = ["average", "deviation", "quantile .1", "median", "quantile .9", "quantile .99",
           "chance within 4", "chance within 20"]


# --- weighted mean: the density on one global Gauss-Legendre rule, scaled to the limits ----------

def ewma_survival(lam, width, mean, growing, steps, nodes=240, floor=1e-15):
    u, w = np.polynomial.legendre.leggauss(nodes)
    steady = width * np.sqrt(lam / (2 - lam))

    def limit(t):
        return steady * np.sqrt(1 - (1 - lam) ** (2 * t)) if growing else steady

    h = limit(1)
    f = N.pdf(h * u / lam - mean(1)) / lam
    survival = [1., float(h * w @ f)]
    kernel, at = None, None
    for t in range(2, steps):
        new = limit(t)
        key = (h, new, mean(t))
        if key != at:
            kernel = N.pdf((new * u[:, None] - (1 - lam) * h * u[None, :]) / lam - mean(t)) / lam
            at = key
        f = kernel @ (h * w * f)
        h = new
        survival.append(float(h * w @ f))
        if survival[-1] < floor:
            break
    return survival


def ewma():
    rows = []
    for lam, width in [(.4, 3.054), (.25, 2.998), (.2, 2.962), (.1, 2.814), (.05, 2.615), (.75, 3)]:
        for growing in (0, 1):
            for shift in (0, .5, 1, 2, 3):
                s = ewma_survival(lam, width, lambda t: shift, growing, 1500)
                rows.append([lam, width, growing, shift, 0, *describe(s)])
        for drift in (.01, .05, .2):
            s = ewma_survival(lam, width, lambda t: drift * t, 0, 2000)
            rows.append([lam, width, 0, 0, drift, *describe(s)])
    write("run-length-weighted-mean", "Run length of the weighted mean",
          "density of the mean among runs without a signal, one Gauss-Legendre rule of 240 points over"
          " the limits, value by value", 1e-8,
          {"columns": ["weight", "width", "growing limits", "shift", "drift per value", *COLUMNS]},
          {"rows": rows})


def ewma_settled():
    rows = []
    for lam, width in [(.4, 3.054), (.2, 2.962), (.1, 2.814)]:
        u, w = np.polynomial.legendre.leggauss(200)
        h = width * np.sqrt(lam / (2 - lam))
        for shift in (.5, 1, 2):
            def k(m):
                return N.pdf((h * u[None, :] - (1 - lam) * h * u[:, None]) / lam - m) / lam * h * w
            values, vectors = np.linalg.eig(k(0).T)
            start = np.real(vectors[:, np.argmax(values.real)])
            start /= start.sum()
            rows.append([lam, width, shift,
                         float(start @ np.linalg.solve(np.eye(200) - k(shift), np.ones(200)))])
    write("run-length-settled", "Average run length of a settled weighted mean (steady state)",
          "left eigenvector of the in-control kernel times the solution of the integral equation",
          1e-8, {"columns": ["weight", "width", "shift", "average"]}, {"rows": rows})


# --- cumulative sums: one side on one global Gauss-Legendre rule, both sides from the one-sided ----

def cusum_survival(k, h, start, means, nodes=120, width=np.inf):
    """Survival of the upper sum; means is the list of the means of the values."""
    u, w = np.polynomial.legendre.leggauss(nodes)
    y, w = (u + 1) * h / 2, w * h / 2

    def reach(z, mean):
        return N.cdf(k - z - mean) , N.pdf(y - z + k - mean)
    atom, f = reach(start, means[0])
    survival = [1., float(atom + w @ f)]
    matrix = at = None
    for mean in means[1:]:
        if mean != at:
            matrix = N.pdf(y[:, None] - y[None, :] + k - mean) * w[None, :]
            to_atom = N.cdf(k - y - mean) * w
            at = mean
        new_atom = atom * N.cdf(k - mean) + to_atom @ f
        f = matrix @ f + atom * N.pdf(y + k - mean)
        atom = new_atom
        survival.append(float(atom + w @ f))
    return np.array(survival)


def cusum_both(k, h, start, means):
    """The first of two sums to signal, from the laws of each alone: when one signals the other is at
    zero, so that it begins anew there (Lucas and Crosier 1982, for whole distributions)."""
    n = len(means)
    means = np.array(means)
    constant = np.all(means == means[0])

    def pmf(sign, begin, z):
        return -np.diff(cusum_survival(k, h, z, list(sign * means[begin:])))
    up, down = pmf(1, 0, start), pmf(-1, 0, start)
    if constant:
        fresh_up, fresh_down = pmf(1, 0, 0), pmf(-1, 0, 0)
    else:
        later_up = [pmf(1, t, 0) for t in range(n)]
        later_down = [pmf(-1, t, 0) for t in range(n)]
    a, b = np.zeros(n), np.zeros(n)
    for i in range(n):
        if constant:
            a[i] = up[i] - b[:i] @ fresh_up[:i][::-1]
            b[i] = down[i] - a[:i] @ fresh_down[:i][::-1]
        else:
            a[i] = up[i] - sum(b[t] * later_up[t + 1][i - t - 1] for t in range(i))
            b[i] = down[i] - sum(a[t] * later_down[t + 1][i - t - 1] for t in range(i))
    return 1 - np.concatenate([[0], np.cumsum(a + b)])


def cusum():
    one, both = [], []
    for k, h in [(.5, 3), (.5, 4), (.5, 5), (.25, 8), (1, 2.52), (.5, 4.774), (0, 10)]:
        for start in (0, h / 2):
            for shift in (0, .5, 1, 2):
                s = cusum_survival(k, h, start, [shift] * 2500)
                one.append([k, h, start, shift, 0, *describe(s[s > 1e-15])])
            s = cusum_survival(k, h, start, [.05 * t for t in range(1, 200)])
            one.append([k, h, start, 0, .05, *describe(s[s > 1e-15])])
    for k, h in [(.5, 4), (.5, 5), (.25, 4), (1, 2.52), (.7, 3.3), (.5, 4.774)]:
        for start in (0, h / 2, h / 5):
            for shift, n in ((0, 1500), (.5, 400), (1, 200), (2, 60)):
                s = cusum_both(k, h, start, [shift] * n)
                if shift:
                    # differences of sums: cut before rounding tells
                    s = s[s > 1e-9]
                both.append([k, h, start, shift, 0, *describe(s)])
        s = cusum_both(k, h, h / 2, [.05 * t for t in range(1, 70)])
        both.append([k, h, h / 2, 0, .05, *describe(s[s > 1e-13])])
    write("run-length-cumulative-sum", "Run length of the cumulative sum",
          "one side: density above zero on one Gauss-Legendre rule of 120 points and an atom at zero,"
          " value by value; both sides: from the one-sided laws, which begin anew at zero", 1e-7,
          {"columns": ["k", "h", "head start", "shift", "drift per value", *COLUMNS]},
          {"oneSide": one, "bothSides": both})


def cusum_steps():
    """Hawkins' pairs and the head start by the known relation of averages."""
    rows = []
    for k, h in [(.5, 4), (.5, 5), (.25, 6)]:
        for shift in (0, 1):
            def average(sign, z):
                u, w = np.polynomial.legendre.leggauss(120)
                y, w = (u + 1) * h / 2, w * h / 2
                m = sign * shift
                a = np.zeros((121, 121))
                a[1:, 1:] = N.pdf(y[None, :] - y[:, None] + k - m) * w[None, :]
                a[1:, 0] = N.cdf(k - y - m)
                a[0, 1:] = N.pdf(y + k - m) * w
                a[0, 0] = N.cdf(k - m)
                solved = np.linalg.solve(np.eye(121) - a, np.ones(121))
                return 1 + N.cdf(k - z - m) * solved[0] + (N.pdf(y - z + k - m) * w) @ solved[1:]
            for u0 in (0, h / 4, h / 2):
                pu, p0, mu, m0 = average(1, u0), average(1, 0), average(-1, u0), average(-1, 0)
                rows.append([k, h, u0, shift, float((pu * m0 + mu * p0 - p0 * m0) / (p0 + m0))])
    write("run-length-head-start", "Average run length of two sums with a head start",
          "(P(u)M(0) + M(u)P(0) - P(0)M(0))/(P(0) + M(0)) of the one-sided averages, each by the"
          " integral equation", 1e-9, {"columns": ["k", "h", "head start", "shift", "average"]},
          {"rows": rows},
          source="relation of Lucas and Crosier (1982), computed with NumPy 2.4 and SciPy 1.17.1")


# --- run rules: all histories, each judged anew --------------------------------------------------

def judge(history, rules, mids):
    x = [mids[a] for a in history]
    for rule in rules:
        kind = rule[0]
        if kind == "beyond":
            _, count, of, zone = rule
            last = x[-of:]
            if x[-1] > zone and sum(v > zone for v in last) >= count:
                return True
            if x[-1] < -zone and sum(v < -zone for v in last) >= count:
                return True
        else:
            count = rule[1]
            if len(x) < count:
                continue
            last = x[-count:]
            if kind == "same" and (all(v > 0 for v in last) or all(v < 0 for v in last)):
                return True
            if kind == "within" and all(abs(v) < rule[2] for v in last):
                return True
            if kind == "outside" and all(abs(v) > rule[2] for v in last):
                return True
    return False


def rule_chain(rules, cuts):
    """Histories as long as the longest rule may need; the matrix of their moves by zone."""
    span = max(r[2] if r[0] == "beyond" else r[1] for r in rules)
    edges = [-np.inf, *cuts, np.inf]
    mids = [cuts[0] - 1, *[(a + b) / 2 for a, b in zip(cuts, cuts[1:])], cuts[-1] + 1]
    names, queue, moves = {(): 0}, [()], []
    for history in queue:
        for a in range(len(mids)):
            longer = history + (a,)
            if judge(longer, rules, mids):
                continue
            kept = longer[-(span - 1):] if span > 1 else ()
            if kept not in names:
                names[kept] = len(names)
                queue.append(kept)
            moves.append((names[history], names[kept], a))
    return len(names), np.array(moves), edges


def rule_survival(chain, mean, steps=1500):
    size, moves, edges = chain
    chance = np.diff(N.cdf(np.array(edges) - mean))
    matrix = sparse.csr_matrix((chance[moves[:, 2]], (moves[:, 1], moves[:, 0])), (size, size))
    v = np.zeros(size)
    v[0] = 1
    survival = [1.]
    for _ in range(steps):
        v = matrix @ v
        survival.append(float(v.sum()))
        if survival[-1] < 1e-15:
            break
    return survival


def rules():
    one = ("beyond", 1, 1, 3)
    two = ("beyond", 2, 3, 2)
    four = ("beyond", 4, 5, 1)
    eight = ("same", 8)
    both = [-3, -2, -1, 0, 1, 2, 3]
    sets = {
        "1": ([one], [-3, 3]), "12": ([one, two], [-3, -2, 2, 3]),
        "13": ([one, four], [-3, -1, 1, 3]), "14": ([one, eight], [-3, 0, 3]),
        "123": ([one, two, four], [-3, -2, -1, 1, 2, 3]),
        "124": ([one, two, eight], [-3, -2, 0, 2, 3]),
        "134": ([one, four, eight], [-3, -1, 0, 1, 3]),
        "1234": ([one, two, four, eight], both),
        "1 and 9 on one side": ([one, ("same", 9)], [-3, 0, 3]),
        "1 2 and 9 on one side": ([one, two, ("same", 9)], [-3, -2, 0, 2, 3]),
        "1, 8 outside 1": ([one, ("outside", 8, 1)], [-3, -1, 1, 3]),
        "1, 15 within 1": ([one, ("within", 15, 1)], [-3, -1, 1, 3]),
        "10 of 11 on one side": ([("beyond", 10, 11, 0)], [0]),
        "6 of 8 beyond 0.5": ([("beyond", 6, 8, .5)], [-.5, .5]),
    }
    rows = []
    for name, (rule, cuts) in sets.items():
        if "within" in rule[-1][0]:
            continue
        chain = rule_chain(rule, cuts)
        print(name, chain[0], "histories")
        for shift in (0, .2, .4, .6, .8, 1, 1.2, 1.4, 1.6, 2, 3):
            rows.append([name, shift, *describe(rule_survival(chain, shift))])
    write("run-length-rules", "Run length of sets of run rules",
          "Markov chain whose states are all histories as long as the longest rule looks back, each"
          " judged anew", 1e-9, {"columns": ["rules", "shift", *COLUMNS]}, {"rows": rows})


def streaks():
    """A run of c successes in trials of chance p takes (1 - p^c)/((1 - p)p^c) trials on average."""
    rows = []
    for kind, count, zone in [("within", 15, 1), ("outside", 8, 1), ("outside", 5, 1.5),
                              ("within", 4, .5)]:
        for shift in (0, .5, 1):
            inside = mp.ncdf(zone - shift) - mp.ncdf(-zone - shift)
            p = inside if kind == "within" else 1 - inside
            rows.append([kind, count, zone, shift, float((1 - p ** count) / ((1 - p) * p ** count))])
    write("run-length-streaks", "Average run length to so many values within or outside a zone",
          "(1 - p^c)/((1 - p)p^c) with p from mpmath's ncdf", 1e-11,
          {"columns": ["kind", "count", "zone", "shift", "average"]}, {"rows": rows},
          source="Feller (1968), An Introduction to Probability Theory, volume 1, XIII.7; from memory"
                 " as to the page, computed with mpmath 1.3.0")


# --- rules that compare values: exact polynomials in the rank of the latest value ----------------

def compared(steady, alternating, length):
    """Chance of neither pattern among n independent values, by integration of polynomials on
    [0, 1]; exact in fractions."""
    zero = Fraction(0)

    def below(p):
        return [zero] + [c / (i + 1) for i, c in enumerate(p)]

    def above(p):
        low = below(p)
        return [sum(low) - low[0]] + [-c for c in low[1:]]

    def add(states, key, p):
        old = states.get(key, [])
        size = max(len(old), len(p))
        states[key] = [(old[i] if i < len(old) else zero) + (p[i] if i < len(p) else zero)
                       for i in range(size)]
    # density of the latest value by (direction, steps one way, steps in turn)
    states = {(0, 0, 0): [Fraction(1)]}
    survival = [Fraction(1), Fraction(1)]
    for _ in range(2, length):
        new = {}
        for (way, one, turn), p in states.items():
            for step, q in ((1, below(p)), (-1, above(p))):
                o = one + 1 if step == way else 1
                t = turn + 1 if step == -way else 1
                if (steady and o >= steady - 1) or (alternating and t >= alternating - 1):
                    continue
                o = o if steady else 0
                add(new, (step, o, t if alternating else 0), q)
        states = new
        survival.append(sum((sum(c / (i + 1) for i, c in enumerate(p)) for p in states.values()),
                            zero))
    return survival


def comparisons():
    rows = []
    for steady, alternating, length in [(4, 0, 45), (6, 0, 55), (7, 0, 55), (0, 5, 60), (0, 14, 60),
                                        (6, 14, 60)]:
        s = compared(steady, alternating, length)
        value = [mp.mpf(x.numerator) / x.denominator for x in s]
        ratio = value[-1] / value[-2]
        average = sum(value[:-1]) + value[-1] / (1 - ratio)
        rows.append([steady, alternating, float(average), float(1 - value[10]),
                     float(1 - value[20]), float(1 - value[40])])
        print("compared", steady, alternating, float(average),
              float(ratio / (value[-2] / value[-3]) - 1))
    write("run-length-comparisons",
          "Run length to so many values rising or falling, or going up and down in turn",
          "densities as polynomials with exact fractions; average with the last ratio for the tail",
          1e-10, {"columns": ["steady count", "alternating count", "average", "chance within 10",
                              "chance within 20", "chance within 40"]}, {"rows": rows},
          source="computed with Python fractions")


# --- limits from a baseline -----------------------------------------------------------------------

def grid(*marks):
    u, w = np.polynomial.legendre.leggauss(120)
    x = [(a + b) / 2 + (b - a) / 2 * u for a, b in zip(marks, marks[1:])]
    v = [(b - a) / 2 * w for a, b in zip(marks, marks[1:])]
    return np.concatenate(x), np.concatenate(v)


def ratio_density(w, n):
    """Density of the sample deviation over the true one."""
    nu = n - 1
    return np.exp(np.log(2) + nu / 2 * np.log(nu / 2) - special.gammaln(nu / 2)
                  + (nu - 1) * np.log(w) - nu * w * w / 2)


def off_for(half, q):
    """How far off the centre must be for limits of these half-widths to be left with chance q."""
    low, high = np.zeros_like(half), half + 40
    for _ in range(70):
        d = (low + high) / 2
        enough = special.ndtr(d - half) + special.ndtr(-d - half) > q
        low, high = np.where(enough, low, d), np.where(enough, d, high)
    return (low + high) / 2


def share_up_to(n, width, shift, average):
    """Over the deviation first; the program integrates over the mean first."""
    q, root = 1 / average, np.sqrt(n)
    # below the corner limits are left with chance q even if their centre is right
    corner = -special.ndtri(q / 2) / width
    sure = special.gammainc((n - 1) / 2, (n - 1) * corner ** 2 / 2)
    w, v = grid(*[corner + 6 / np.sqrt(n) * t for t in (0, 1e-4, .001, .01, .1, .3, 1)])
    d = off_for(width * w, q)
    beyond = special.ndtr(root * (shift - d)) + special.ndtr(-root * (d + shift))
    return sure + v @ (ratio_density(w, n) * beyond)


def average_quantile(n, width, shift, share):
    f = lambda l: share_up_to(n, width, shift, 1 + np.exp(l)) - share
    return 1 + np.exp(optimize.brentq(f, -3, 60, xtol=1e-12, rtol=1e-14))


def over_baselines(n, width, shift, function, highest):
    w, v = grid(*np.linspace(1e-9, highest, 13))
    z, u = grid(-9, -4, 0, 4, 9)
    p = (special.ndtr(-width * w[:, None] + shift - z / np.sqrt(n))
         + special.ndtr(-width * w[:, None] - shift + z / np.sqrt(n)))
    return float(v * ratio_density(w, n) @ function(np.minimum(p, 1)) @ (u * N.pdf(z)))


def chance_within(n, width, shift, m):
    return over_baselines(n, width, shift, lambda p: 1 - (1 - p) ** m, 1 + 14 / np.sqrt(2 * n))


def marginal_average(n, width):
    return over_baselines(n, width, 0, lambda p: 1 / p, 12)


def c4(n):
    return float(mp.sqrt(mp.mpf(2) / (n - 1)) * mp.gamma(mp.mpf(n) / 2) / mp.gamma(mp.mpf(n - 1) / 2))


PRINTED = {10: (22, 232, 7831), 15: (36, 262, 3994), 20: (50, 290, 2806), 30: (71, 313, 1907),
           60: (116, 338, 1187), 100: (149, 349, 904)}
PRINTED_RANGE = {15: (24, 240, 8787), 20: (34, 271, 5597), 30: (51, 298, 3336), 60: (89, 334, 1697)}


def baseline():
    sample = []
    for n, printed in PRINTED.items():
        for width, p in ((3, None), (3 / c4(n), printed)):
            quantiles = [average_quantile(n, width, 0, s) for s in (.1, .5, .9)]
            if p:
                for got, want in zip(quantiles, p):
                    # the practitioner's figures are simulated
                    assert abs(got / want - 1) < .06, (n, quantiles, p)
            sample.append([n, width, 0, *quantiles, chance_within(n, width, 0, 1),
                           chance_within(n, width, 0, 20)])
    for n, width, shift in [(10, 3, 1), (20, 3, 2), (15, 3.755, -1.5)]:
        quantiles = [average_quantile(n, width, shift, s) for s in (.1, .5, .9)]
        sample.append([n, width, shift, *quantiles, chance_within(n, width, shift, 1),
                       chance_within(n, width, shift, 20)])
    marginal = [[n, 3, marginal_average(n, 3)] for n in (15, 20, 30, 100)]
    print("marginal", marginal)
    rng = np.random.default_rng(20260725)
    ranges = []
    for n, printed in PRINTED_RANGE.items():
        draws = 1_600_000
        p, w = [], []
        for _ in range(40):
            x = rng.standard_normal((draws // 40, n))
            ratio = np.abs(np.diff(x, axis=1)).mean(axis=1) * np.sqrt(np.pi) / 2
            off = x.mean(axis=1)
            p.append(N.sf(3 * ratio - off) + N.sf(3 * ratio + off))
            w.append(ratio)
        average = 1 / np.sort(np.concatenate(p))[::-1]
        quantiles = np.quantile(average, [.1, .5, .9])
        for got, want in zip(quantiles, printed):
            assert abs(got / want - 1) < .06, (n, quantiles, printed)
        chance = 1 / average
        w = np.concatenate(w)
        ranges.append([n, 3, *map(float, quantiles), float(chance.mean()),
                       float((1 - (1 - chance) ** 20).mean()),
                       float((w < .8).mean()), float((w < 1.1).mean())])
    write("run-length-baseline", "Conditional average run lengths of limits from a baseline",
          "brentq over the integral of the chi density times the chance that the mean is off by"
          " enough; mean(1-(1-p)^m) by a product rule; moving range: 1.6 million simulated"
          " baselines", 1e-7,
          {"columns": ["n", "width", "shift", "quantile .1", "median", "quantile .9",
                       "chance per value", "chance within 20"],
           "rangeColumns": ["n", "width", "quantile .1", "median", "quantile .9",
                            "chance per value", "chance within 20", "P(ratio < 0.8)",
                            "P(ratio < 1.1)"],
           "marginalColumns": ["n", "width", "average over baselines and values"],
           "printedSample": {str(k): v for k, v in PRINTED.items()},
           "printedRange": {str(k): v for k, v in PRINTED_RANGE.items()}},
          {"sample": sample, "range": ranges, "marginal": marginal},
          "The practitioner's table (printed…) is simulated; its sample deviations are divided by c4,"
          " so that its limits are 3/c4 sample deviations. The moving-range rows are simulated:"
          " standard errors about 0.1 % for the chances and the lower quantiles and 0.5 % for"
          " quantile .9.")


def moments_of_range():
    """Mean and variance of the mean moving range over d2, from the moments of pairs of ranges."""
    rows = []
    rho = mp.mpf(-1) / 2
    product = 2 * 2 / mp.pi * (mp.sqrt(1 - rho ** 2) + rho * mp.asin(rho))
    mean = 2 / mp.sqrt(mp.pi)
    for n in (5, 8, 15, 30, 60):
        m = n - 1
        variance = (m * (2 - mean ** 2) + 2 * (m - 1) * (product - mean ** 2)) / m ** 2
        rows.append([n, float(variance / mean ** 2)])
    write("run-length-moving-range", "Variance of the mean moving range over d2",
          "m ranges: (m(2 - d2^2) + 2(m - 1)(E|a b| - d2^2))/(m d2)^2, E|a b| = (4/pi)(sqrt(1 -"
          " rho^2) + rho asin rho), rho = -1/2", 1e-7, {"columns": ["n", "variance"]},
          {"rows": rows}, source="Nabeya (1951) for the product moment, from memory; mpmath 1.3.0")


# --- combinations: simulation ---------------------------------------------------------------------

def simulate(step, start, shift, trials, seed, most=40000):
    rng = np.random.default_rng(seed)
    state = [np.full(trials, s, float) for s in start]
    lengths = np.zeros(trials)
    index = np.arange(trials)
    for n in range(1, most):
        x = rng.standard_normal(len(index)) + shift
        state, signal = step(state, x)
        lengths[index[signal]] = n
        index = index[~signal]
        state = [s[~signal] for s in state]
        if len(index) == 0:
            return [float(lengths.mean()), float(lengths.std() / np.sqrt(trials)),
                    float(np.median(lengths)), float((lengths <= 4).mean())]
    raise SystemExit("too long")


def combinations():
    rows = []
    for width, k, h, start in [(3.5, .5, 5, 0), (3.5, .5, 5, 2.5), (3, .5, 4, 0), (2.5, .25, 4, 2)]:
        def step(s, x):
            up = np.maximum(0, s[0] + x - k)
            down = np.maximum(0, s[1] - x - k)
            return [up, down], (up > h) | (down > h) | (np.abs(x) > width)
        for shift in (0, .5, 1, 2, 3):
            rows.append(["sums and single values", width, k, h, start, shift,
                         *simulate(step, [start, start], shift, 200_000, 7)])
    for lam, wide, run in [(.2, 2.962, 9), (.4, 3, 8)]:
        def step(s, x):
            z = lam * x + (1 - lam) * s[0]
            count = np.where(x * s[1] > 0, s[1] + np.sign(x), np.sign(x))
            limit = wide * np.sqrt(lam / (2 - lam))
            return [z, count], (np.abs(z) > limit) | (np.abs(count) >= run) | (np.abs(x) > 3)
        for shift in (0, 1):
            rows.append(["mean, single values and run", lam, wide, run, 3, shift,
                         *simulate(step, [0, 0], shift, 200_000, 11)])
    write("run-length-combinations", "Run lengths of charts watched together, simulated",
          "200 000 runs each with NumPy's default generator", 1e-2,
          {"columns": ["what", "width or weight", "k or width", "h or count", "head start or single"
                       " width", "shift", "average", "standard error", "median",
                       "chance within 4"]}, {"rows": rows},
          "Compare within four standard errors.")


def recalled():
    def save(name, title, source, data, expected, own, notes):
        body = {"id": name, "title": title, "source": source, "provenance": "from memory",
                "data": data, "expected": expected,
                "crosscheck": {"method": "recompute_runlength.py", "own": own}, "notes": notes}
        with open(name + ".json", "w", encoding="utf-8") as out:
            json.dump(body, out, indent=1)
            out.write("\n")
    own = {}
    for lam in ("0.75", "0.50", "0.25", "0.10"):
        own[lam] = describe(ewma_survival(float(lam), 3, lambda t: 0, 0, 1500))[0]
    save("arl-ewma-crowder-1987", "Average run lengths of the weighted mean in control, L = 3",
         "Crowder, S.V. (1987), A simple method for studying run-length distributions of"
         " exponentially weighted moving average charts, Technometrics 29(4) 401-407, table",
         {"width": 3, "shift": 0},
         {"0.75": "374.50", "0.50": "397.46", "0.25": "502.90", "0.10": "842.15"}, own,
         "Typed from memory after the program's own figures had been seen, so weak as "
         "evidence; agree.")

    def both(k, h):
        s = cusum_both(k, h, 0, [0] * 900)
        return describe(s)[0]
    pairs = [[".25", "8.01"], [".5", "4.77"], [".75", "3.34"], ["1.0", "2.52"], ["1.25", "1.99"],
             ["1.5", "1.61"]]
    exact = [float(optimize.brentq(lambda h: both(float(k), h) - 370, float(h) - .02,
                                   float(h) + .02, xtol=1e-8)) for k, h in pairs]
    print("Hawkins", exact)
    save("arl-cusum-hawkins-1993", "Decision intervals of two-sided sums with an average of 370",
         "Hawkins, D.M. (1993), Cumulative sum control charting: an underutilized SPC tool, Quality"
         " Engineering 5(3) 463-477; as reproduced in Montgomery, CUSUM chapter",
         {"average": 370, "k": [float(k) for k, _ in pairs]}, {"h": [h for _, h in pairs]},
         {"h": exact}, "Typed from memory after the program's own figures had been seen, so weak as "
         "evidence; agree to the printed digits except k = 1.5 (1.604, printed"
         " 1.61).")
    one = {h: describe(cusum_survival(.5, float(h), 0, [0] * 2000))[0] for h in ("3", "4", "5")}
    save("arl-cusum-brook-evans-1972", "One-sided sums of normal values, k = 0.5, in control",
         "Brook, D. & Evans, D.A. (1972), An approach to the probability distribution of CUSUM run"
         " length, Biometrika 59(3) 539-549; values as quoted widely",
         {"k": .5, "shift": 0}, {"3": "117.6", "4": "335.4", "5": "930.9"}, one,
         "Typed from memory; agree. Which of the figures stand in the paper itself and which in later"
         " tables is not known for certain.")


if __name__ == "__main__":
    for part in (ewma, ewma_settled, cusum, cusum_steps, rules, streaks, comparisons, recalled,
                 baseline, moments_of_range, combinations):
        part()
        print(part.__name__, "done", flush=True)
