"""Recomputes the cases of linear models, inverse prediction, nested groups and precision by level.

Run in this folder: python3 recompute_lines.py
Needs SciPy 1.17.1, NumPy and mpmath 1.3.0; shares no code with the program. Linear fits and sums of
squares are exact fractions; inverse predictions are found by searching for the places where the t
test changes its mind, not by a formula for them; precision profiles by a general minimiser. Certified
and published figures that were typed from memory are compared with the calculation before they are
written; one that does not agree stops the script.
"""

import json
from fractions import Fraction as F

import mpmath as mp
import numpy as np
from scipy import optimize, stats

mp.mp.dps = 50
BY = "computed by recompute_lines.py"
RECALLED = "from memory, recomputed by recompute_lines.py"
STRD = "NIST StRD, certified values, https://www.itl.nist.gov/div898/strd/"


def write(name, title, source, provenance, data, expected, notes="", **more):
    body = {"id": name, "title": title, "source": source, "provenance": provenance, **more,
            "data": data,
            "expected": expected or {"where": "beside the inputs, in data"}, "notes": notes}
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump(body, out, indent=1)
        out.write("\n")


def real(value):
    return mp.mpf(value.numerator) / value.denominator if isinstance(value, F) else mp.mpf(value)


def text(value, digits=17):
    return mp.nstr(real(value), digits)


def agree(name, recalled, own, digits):
    recalled, own = real(F(recalled)), real(own)
    if abs(recalled - own) > abs(own) * mp.mpf(10) ** -digits:
        raise SystemExit(f"{name}: recalled {recalled}, own {own}")


def solve(a, b):
    n = len(a)
    m = [list(a[i]) + [b[i]] for i in range(n)]
    for i in range(n):
        p = next(r for r in range(i, n) if m[r][i] != 0)
        m[i], m[p] = m[p], m[i]
        m[i] = [v / m[i][i] for v in m[i]]
        for r in range(n):
            if r != i and m[r][i] != 0:
                m[r] = [v - m[r][i] * c for v, c in zip(m[r], m[i])]
    return [m[i][n] for i in range(n)]


class Fit:
    """Weighted least squares by the normal equations in fractions."""

    def __init__(self, rows, y, w=None, intercept=True):
        self.rows, self.y = rows, y
        self.w = w or [F(1)] * len(y)
        p = len(rows[0])
        self.df = len(y) - p
        a = [[sum(w * r[i] * r[j] for r, w in zip(rows, self.w)) for j in range(p)]
             for i in range(p)]
        self.b = solve(a, [sum(w * r[i] * v for r, v, w in zip(rows, y, self.w))
                           for i in range(p)])
        columns = [solve(a, [F(int(i == k)) for i in range(p)]) for k in range(p)]
        self.inverse = [[columns[j][i] for j in range(p)] for i in range(p)]
        self.residuals = [v - sum(c * t for c, t in zip(self.b, r)) for r, v in zip(rows, y)]
        self.sse = sum(w * r * r for w, r in zip(self.w, self.residuals))
        self.s2 = self.sse / self.df
        mean = sum(w * v for w, v in zip(self.w, y)) / sum(self.w) if intercept else 0
        self.ssr = sum(w * (v - mean) ** 2 for w, v in zip(self.w, y)) - self.sse
        self.dfr = p - int(intercept)

    def error(self, k):
        return mp.sqrt(real(self.s2 * self.inverse[k][k]))

    def height(self, row):
        return sum(c * t for c, t in zip(self.b, row))

    def leverage(self, row):
        return sum(a * self.inverse[i][j] * b for i, a in enumerate(row)
                   for j, b in enumerate(row))

    def expected(self):
        p = range(len(self.b))
        out = {"params": {f"B{k}": text(self.b[k]) for k in p},
               "se": {f"B{k}": text(self.error(k)) for k in p},
               "residual_sd": text(mp.sqrt(real(self.s2))),
               "r_squared": text(self.ssr / (self.ssr + self.sse)), "df": self.df}
        if self.s2:
            out["F"] = text(self.ssr / self.dfr / self.s2)
        return out

    def lack(self):
        groups = {}
        for r, v, w in zip(self.rows, self.y, self.w):
            groups.setdefault(tuple(r), []).append((v, w))
        pure = F(0)
        for g in groups.values():
            mean = sum(v * w for v, w in g) / sum(w for _, w in g)
            pure += sum(w * (v - mean) ** 2 for v, w in g)
        dl, dp = len(groups) - len(self.b), len(self.y) - len(groups)
        ratio = (self.sse - pure) / dl / (pure / dp)
        return {"lack_ss": text(self.sse - pure), "lack_df": dl, "pure_ss": text(pure),
                "pure_df": dp, "pure_sd": text(mp.sqrt(real(pure / dp))), "F": text(ratio),
                "p": text(f_tail(ratio, dl, dp))}


def f_tail(ratio, above, below):
    x = mp.mpf(below) / (below + above * real(ratio))
    return mp.betainc(mp.mpf(below) / 2, mp.mpf(above) / 2, 0, x, regularized=True)


def t_quantile(level, df):
    """Two-sided, from the tail by the incomplete beta function."""
    tail = lambda t: mp.betainc(mp.mpf(df) / 2, mp.mpf(1) / 2, 0, df / (df + t * t),
                                regularized=True) - (1 - mp.mpf(level))
    return mp.findroot(tail, float(stats.t.ppf(float(1 + level) / 2, df)))


FILIP="""0.8116 -6.860120914
0.9072 -4.324130045
0.9052 -4.358625055
0.9039 -4.358426747
0.8053 -6.955852379
0.8377 -6.661145254
0.8667 -6.355462942
0.8809 -6.118102026
0.7975 -7.115148017
0.8162 -6.815308569
0.8515 -6.519993057
0.8766 -6.204119983
0.8885 -5.853871964
0.8859 -6.109523091
0.8959 -5.79832982
0.8913 -5.482672118
0.8959 -5.171791386
0.8971 -4.851705903
0.9021 -4.517126416
0.909 -4.143573228
0.9139 -3.709075441
0.9199 -3.499489089
0.8692 -6.300769497
0.8872 -5.953504836
0.89 -5.642065153
0.891 -5.031376979
0.8977 -4.680685696
0.9035 -4.329846955
0.9078 -3.928486195
0.7675 -8.56735134
0.7705 -8.363211311
0.7713 -8.107682739
0.7736 -7.823908741
0.7775 -7.522878745
0.7841 -7.218819279
0.7971 -6.920818754
0.8329 -6.628932138
0.8641 -6.323946875
0.8804 -5.991399828
0.7668 -8.781464495
0.7633 -8.663140179
0.7678 -8.473531488
0.7697 -8.247337057
0.77 -7.971428747
0.7749 -7.676129393
0.7796 -7.352812702
0.7897 -7.072065318
0.8131 -6.774174009
0.8498 -6.478861916
0.8741 -6.159517513
0.8061 -6.835647144
0.846 -6.53165267
0.8751 -6.224098421
0.8856 -5.910094889
0.8919 -5.598599459
0.8934 -5.290645224
0.894 -4.974284616
0.8957 -4.64454848
0.9047 -4.290560426
0.9129 -3.885055584
0.9209 -3.408378962
0.9219 -3.13200249
0.7739 -8.726767166
0.7681 -8.66695597
0.7665 -8.511026475
0.7703 -8.165388579
0.7702 -7.886056648
0.7761 -7.588043762
0.7809 -7.283412422
0.7961 -6.995678626
0.8253 -6.691862621
0.8602 -6.392544977
0.8809 -6.067374056
0.8301 -6.684029655
0.8664 -6.378719832
0.8834 -6.065855188
0.8898 -5.752272167
0.8964 -5.132414673
0.8963 -4.811352704
0.9074 -4.098269308
0.9119 -3.66174277
0.9228 -3.2644011"""

WAMPLER_DELTA = [759, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 1838, -2048, 2048,
                 -2048, 1838, -2048, 2048, -2048, 2523, -2048, 2048, -2048, 759]
PONTIUS = """.11019 .21956 .32949 .43899 .54803 .65694 .76562 .87487 .98292 1.09146 1.20001 1.30822
1.41599 1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844 .11052 .22018 .32939 .43886 .54798
.65739 .76596 .87474 .98300 1.09150 1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 1.84696 1.95445
2.06177 2.16829"""


def powers(x, degree):
    return [[v ** k for k in range(degree + 1)] for v in x]


def certified(name, title, x, y, degree, recalled, sd, r2, digits=14):
    fit = Fit(powers([F(v) for v in x], degree), [F(v) for v in y])
    for k, v in enumerate(recalled):
        agree(name, v, fit.b[k], digits)
    agree(name, sd, mp.sqrt(real(fit.s2)), digits)
    agree(name, r2, fit.ssr / (fit.ssr + fit.sse), digits)
    expected = fit.expected()
    expected["params"] = {f"B{k}": v for k, v in enumerate(recalled)}
    expected["residual_sd"] = sd
    expected["r_squared"] = r2
    write(name, title, STRD + "lls/lls.shtml", RECALLED,
          {"x": [str(v) for v in x], "y": [str(v) for v in y], "degree": degree}, expected,
          "Data, coefficients, residual deviation and R squared typed from memory; they agree with "
          "exact fractions of these data to 14 digits. Standard errors and F are those fractions.")


def linear_sets():
    rows = [line.split() for line in FILIP.splitlines()]
    certified("strd-lls-filip", "NIST StRD linear least squares: Filip, degree 10",
              [r[1] for r in rows], [r[0] for r in rows], 10,
              ["-1467.48961422980", "-2772.17959193342", "-2316.37108160893", "-1127.97394098372",
               "-354.478233703349", "-75.1242017393757", "-10.8753180355343", "-1.06221498588947",
               "-0.670191154593408E-01", "-0.246781078275479E-02", "-0.402962525080404E-04"],
              "0.334801051324544E-02", "0.996727416185620")
    x = list(range(21))
    ones = ["1"] * 6
    plain = [sum(v ** k for k in range(6)) for v in x]
    certified("strd-lls-wampler1", "NIST StRD linear least squares: Wampler1, degree 5, exact", x,
              plain, 5, ones, "0", "1")
    tenths = [F(1, 10) ** k for k in range(6)]
    certified("strd-lls-wampler2", "NIST StRD linear least squares: Wampler2, degree 5, exact", x,
              [f"{float(sum(c * v ** k for k, c in enumerate(tenths))):.5f}" for v in x], 5,
              ["1", "0.1", "0.01", "0.001", "0.0001", "0.00001"], "0", "1")
    for n, times, sd, r2 in [(3, 1, "2360.14502379268", "0.999995559025820"),
                             (4, 100, "236014.502379268", "0.957478440825662"),
                             (5, 10000, "23601450.2379268", "0.224668921574940E-02")]:
        certified(f"strd-lls-wampler{n}", f"NIST StRD linear least squares: Wampler{n}, degree 5",
                  x, [v + times * d for v, d in zip(plain, WAMPLER_DELTA)], 5, ones, sd, r2)
    y = PONTIUS.split()
    certified("strd-lls-pontius", "NIST StRD linear least squares: Pontius, load cell, degree 2",
              [150000 * (i % 20 + 1) for i in range(40)], y, 2,
              ["0.673565789473684E-03", "0.732059160401003E-06", "-0.316081871345029E-14"],
              "0.205177424076185E-03", "0.999999900178537")


def one_way(groups):
    n = sum(len(g) for g in groups)
    grand = sum(sum(g) for g in groups) / n
    means = [sum(g) / len(g) for g in groups]
    between = sum(len(g) * (m - grand) ** 2 for g, m in zip(groups, means))
    within = sum((v - m) ** 2 for g, m in zip(groups, means) for v in g)
    return between, within, len(groups) - 1, n - len(groups)


def big_anova_sets():
    tops = [14, 13, 15, 13, 15, 13, 15, 13, 15]
    for number, whole in [(3, "1"), (6, "1000000"), (9, "1000000000000")]:
        groups = []
        for top in tops:
            first = F(top, 10) - 1
            tail = [first + F((-1) ** (i + 1), 10) for i in range(2000)]
            groups.append([first] + tail)
        between, within, dfb, dfw = one_way(groups)
        ratio = (between / dfb) / (within / dfw)
        name = f"strd-anova-smls0{number}"
        agree(name, "2001", ratio, 14)
        write(name, f"NIST StRD one-way ANOVA: SmLs0{number}, 9 groups of 2001",
              STRD + "anova/anova.html", RECALLED,
              {"whole": whole, "first_tenths": [t - 10 for t in tops], "group_size": 2001},
              {"ss_between": text(between), "ss_within": text(within), "df_between": dfb,
               "df_within": dfw, "F": "2001", "r_squared": text(between / (between + within)),
               "residual_sd": text(mp.sqrt(real(within / dfw)))},
              "Not typed but built from the rule that the smaller sets of the series show: each "
              "group starts with whole + first_tenths/10, then 0.1 less and 0.1 more in turn. F "
              "from memory; all figures from exact fractions.")


def nested(groups):
    """Sums of squares of values[i][j][k] in fractions."""
    a, b, n = len(groups), len(groups[0]), len(groups[0][0])
    flat = [v for g in groups for h in g for v in h]
    grand = sum(flat) / len(flat)
    outer = [sum(sum(h) for h in g) / (b * n) for g in groups]
    inner = [[sum(h) / n for h in g] for g in groups]
    squares = [b * n * sum((m - grand) ** 2 for m in outer),
               n * sum((m - outer[i]) ** 2 for i in range(a) for m in inner[i]),
               sum((v - inner[i][j]) ** 2 for i in range(a) for j in range(b)
                   for v in groups[i][j])]
    return squares, [a - 1, a * (b - 1), a * b * (n - 1)], grand


def fractions(groups):
    return [[[F(str(v)) for v in h] for h in g] for g in groups]


PURITY = [[[1, -1, 0], [-2, -3, -4], [-2, 0, 1], [1, 4, 0]],
          [[1, -2, -3], [0, 4, 2], [-1, 0, -2], [0, 3, 2]],
          [[2, 4, 0], [-2, 0, 2], [1, -1, 2], [3, 2, 1]]]
CALCIUM = [[[3.28, 3.09], [3.52, 3.48], [2.88, 2.80]], [[2.46, 2.44], [1.87, 1.92], [2.19, 2.19]],
           [[2.77, 2.66], [3.74, 3.44], [2.55, 2.55]], [[3.78, 3.87], [4.07, 4.12], [3.31, 3.31]]]
DYESTUFF = [[1545, 1440, 1440, 1520, 1580], [1540, 1555, 1490, 1560, 1495],
            [1595, 1550, 1605, 1510, 1560], [1445, 1440, 1595, 1465, 1545],
            [1595, 1630, 1515, 1635, 1625], [1520, 1455, 1450, 1480, 1445]]


def printed(name, pairs):
    for p, own in pairs:
        half = F(1, 2 * 10 ** (len(p.split(".")[1]) if "." in p else 0))
        if abs(F(p) - (F(own) if isinstance(own, (int, F)) else F(str(own)))) > half * F(101, 100):
            raise SystemExit(f"{name}: printed {p}, own {float(own)}")


def nested_books():
    ss, df, _ = nested(fractions(PURITY))
    ms = [s / d for s, d in zip(ss, df)]
    p = {"ss_outer": "15.06", "ss_inner": "69.92", "ss_within": "63.33", "ms_outer": "7.53",
         "ms_inner": "7.77", "ms_within": "2.64", "F_outer": "0.97", "F_inner": "2.94",
         "component_inner": "1.71", "component_within": "2.64"}
    printed("purity", zip(p.values(), ss + ms + [ms[0] / ms[1], ms[1] / ms[2],
                                                 (ms[1] - ms[2]) / 3, ms[2]]))
    write("nested-purity-montgomery", "Two-stage nested design: purity of batches from suppliers",
          "Montgomery, Design and Analysis of Experiments, chapter on nested designs, coded purity "
          "data", RECALLED, {"groups": PURITY}, {**p, "df": df, "component_outer_raw_negative": True},
          "Data and figures typed from memory and recomputed; all agree. The component of the "
          "suppliers comes out negative.")
    ss, df, _ = nested(fractions(CALCIUM))
    ms = [s / d for s, d in zip(ss, df)]
    p = {"ms_outer": "2.5201", "ms_inner": "0.3288", "ms_within": "0.0067",
         "component_outer": "0.3652", "component_inner": "0.1611", "component_within": "0.0067"}
    printed("calcium", zip(p.values(), ms + [(ms[0] - ms[1]) / 6, (ms[1] - ms[2]) / 2, ms[2]]))
    write("nested-calcium-snedecor", "Calcium in turnip greens: plants, leaves, determinations",
          "Snedecor and Cochran, Statistical Methods, nested classifications", RECALLED,
          {"groups": CALCIUM}, {**p, "df": df}, "Typed from memory and recomputed; all agree. "
          "The book rounds the within mean square to 0.0067 (own 0.00665417) and so prints "
          "components in the last digit from that.")
    ss, df, grand = nested([[[F(v)] for v in g] for g in DYESTUFF])
    p = {"ss_between": "56357.5", "ss_within": "58830", "ms_between": "11271.5",
         "ms_within": "2451.25", "component_between": "1764.05", "mean": "1527.5"}
    ms = [ss[0] / 5, ss[1] / 24]
    printed("dyestuff", zip(p.values(), ss[:2] + ms + [(ms[0] - ms[1]) / 5, grand]))
    write("nested-dyestuff-davies", "Yield of dyestuff: five preparations of each of six batches",
          "Davies and Goldsmith, Statistical Methods in Research and Production; Box and Tiao (1973)",
          RECALLED, {"groups": DYESTUFF}, p, "Typed from memory and recomputed; all agree.")


def modified_large_sample(plus, minus, alpha):
    """Bounds of sum c*MS - sum d*MS at alpha each; plus and minus are lists of (c, MS, df)."""
    inf = 10 ** 300
    upper = lambda a, m, n: stats.chi2.isf(a, m) / m if n == inf else stats.f.isf(a, m, n)
    theta = sum(c * s for c, s, _ in plus) - sum(c * s for c, s, _ in minus)
    low = high = 0.0
    for c, s, n in plus:
        low += (1 - 1 / upper(alpha, n, inf)) ** 2 * (c * s) ** 2
        high += (1 / upper(1 - alpha, n, inf) - 1) ** 2 * (c * s) ** 2
    for c, s, n in minus:
        low += (1 / upper(1 - alpha, n, inf) - 1) ** 2 * (c * s) ** 2
        high += (1 - 1 / upper(alpha, n, inf)) ** 2 * (c * s) ** 2
    for c, s, n in plus:
        for d, r, m in minus:
            f = upper(alpha, n, m)
            g, h = 1 - 1 / upper(alpha, n, inf), 1 / upper(1 - alpha, m, inf) - 1
            low += ((f - 1) ** 2 - g * g * f * f - h * h) / f * c * d * s * r
            f = upper(1 - alpha, n, m)
            h, g = 1 / upper(1 - alpha, n, inf) - 1, 1 - 1 / upper(alpha, m, inf)
            high += ((1 - f) ** 2 - h * h * f * f - g * g) / f * c * d * s * r
    def pairs(side):
        total = 0.0
        for i, (c, s, n) in enumerate(side):
            for d, r, m in side[i + 1:]:
                g, h = 1 - 1 / upper(alpha, n, inf), 1 - 1 / upper(alpha, m, inf)
                both = (1 - 1 / upper(alpha, n + m, inf)) ** 2 * (n + m) ** 2 / (n * m)
                total += (both - g * g * n / m - h * h * m / n) / (len(side) - 1) * c * d * s * r
        return total
    if len(plus) > 1 and minus:
        low += pairs(plus)
    if len(minus) > 1 and plus:
        high += pairs(minus)
    nu = theta ** 2 / sum((c * s) ** 2 / n for c, s, n in plus + minus) if theta > 0 else None
    return {"raw": theta, "df": nu, "lower": max(0.0, theta - np.sqrt(low)),
            "upper": max(0.0, theta + np.sqrt(high))}


def variance_intervals():
    cases = []
    def case(what, plus, minus, level):
        cases.append({"what": what, "level": level,
                      "parts": [[c, s, n] for c, s, n in plus] + [[-c, s, n] for c, s, n in minus],
                      **modified_large_sample(plus, minus, (1 - level) / 2)})
    for name, groups in [("calcium", CALCIUM), ("purity", PURITY)]:
        ss, df, _ = nested(fractions(groups))
        b, n = len(groups[0]), len(groups[0][0])
        m = [(float(s / d), d) for s, d in zip(ss, df)]
        case(name + " outer component", [(1 / (b * n), *m[0])], [(1 / (b * n), *m[1])], .95)
        case(name + " inner component", [(1 / n, *m[1])], [(1 / n, *m[2])], .95)
        case(name + " within component", [(1.0, *m[2])], [], .95)
        case(name + " single value",
             [(1 / (b * n), *m[0]), (1 / n - 1 / (b * n), *m[1]), (1 - 1 / n, *m[2])], [], .95)
        case(name + " mean of eight",
             [(1 / (b * n), *m[0]), (1 / n - 1 / (b * n), *m[1])], [(1 / n - 1 / 8, *m[2])], .9)
    case("two minus two", [(.5, 7.0, 3), (.25, 5.0, 6)], [(.3, 1.5, 9), (.1, 2.5, 4)], .95)
    case("three minus one", [(.5, 7.0, 3), (.25, 5.0, 6), (.2, 9.0, 5)], [(.3, 1.5, 9)], .95)
    write("variance-intervals", "Modified large-sample intervals of sums of mean squares",
          "Burdick and Graybill (1992); Ting et al. (1990); Graybill and Wang (1980)", BY,
          {"columns": "factor, mean square, degrees of freedom", "cases": cases}, {},
          "The formulas are the published ones, typed from memory, with SciPy's F and chi-square "
          "quantiles; null df where the sum is not above zero.", tolerance=1e-10,
          expression="theta -/+ sqrt(V) with scipy.stats.f.isf and chi2.isf")


DAYS = [1, 8, 15, 22, 29]
WINDOW = ["-.005", "-.002", ".004", ".005", ".006"]
WEIGHTED_X = ["0.5", "1", "2", "4", "8", "16", "16", "32"]
WEIGHTED_Y = ["1.13", "2.02", "4.15", "7.86", "16.5", "31.1", "33.0", "66.2"]
WEIGHTED_W = ["4", "4", "2", "1", "0.5", "0.25", "0.25", "0.0625"]


def weighted_line():
    x, y, w = ([F(v) for v in c] for c in (WEIGHTED_X, WEIGHTED_Y, WEIGHTED_W))
    fit = Fit(powers(x, 1), y, w)
    expected = fit.expected()
    expected["covariance"] = text(fit.s2 * fit.inverse[0][1])
    t = t_quantile(.95, fit.df)
    rows = []
    for at, new in [("0", "1"), ("10", "0.5"), ("40", "3")]:
        row = [F(1), F(at)]
        h, lev = real(fit.height(row)), real(fit.leverage(row))
        s = mp.sqrt(real(fit.s2))
        mean, wide = t * s * mp.sqrt(lev), t * s * mp.sqrt(lev + 1 / real(F(new)))
        rows.append([at, new] + [text(v) for v in (h, s * mp.sqrt(lev), h - mean, h + mean,
                                                   h - wide, h + wide)])
    write("line-weighted", "A weighted line: coefficients, covariance, heights and new values",
          "exact fractions and mpmath", BY,
          {"x": WEIGHTED_X, "y": WEIGHTED_Y, "w": WEIGHTED_W,
           "columns": ["x", "weight of the new value", "height", "standard error", "lower 95",
                       "upper 95", "new lower 95", "new upper 95"]},
          {**expected, "rows": rows, "lack_of_fit": fit.lack()}, tolerance=1e-13,
          expression="(X'WX)^-1 X'Wy in fractions; t quantile from the incomplete beta function")
    points = [[x[i], F((7 * i) % 5)] for i in range(8)]
    fit = Fit([[F(1), a, a * a, b, b * b] for a, b in points], y)
    at = [F(1), F(3), F(9), F(2), F(4)]
    write("two-predictors-degree-two", "Two predictors with their squares", "exact fractions", BY,
          {"points": [[float(a), float(b)] for a, b in points], "y": WEIGHTED_Y, "at": ["3", "2"]},
          {**fit.expected(), "height": text(fit.height(at)),
           "height_error": text(mp.sqrt(real(fit.s2 * fit.leverage(at))))},
          tolerance=1e-13, expression="(X'X)^-1 X'y in fractions")


def read(name):
    with open(name + ".json", encoding="utf-8") as source:
        return json.load(source)


def lack_of_fit():
    rows = read("nist-4.6.2-alaska-pipeline")["data"]["rows"]
    field, lab = [F(str(r[0])) for r in rows], [F(str(r[1])) for r in rows]
    fit = Fit(powers(lab, 1), field)
    own = fit.lack()
    p = {"pure_sd": "6.112687", "lack_df": 76, "pure_df": 29, "F": "0.9857",
         "percent_point": "46.3056"}
    printed("alaska", [(p["pure_sd"], F(own["pure_sd"])), (p["F"], F(own["F"])),
                       (p["percent_point"], F(text(100 * (1 - mp.mpf(own["p"])))))])
    write("nist-4.6.2-alaska-lack-of-fit", "Lack of fit of the unweighted line, Alaska pipeline",
          "NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.2.3", RECALLED,
          {"rows_of": "nist-4.6.2-alaska-pipeline"}, {**p, "own": own},
          "Printed figures typed from memory; they agree with exact fractions of the data.")
    lines = [float(v) ** -1.5 for v in lab]
    fit = Fit(powers(lab, 1), field, [F(v) for v in lines])
    p = {"intercept": "2.35234", "se_intercept": "0.5431", "slope": "0.80636",
         "se_slope": "0.02265", "residual_sd": "0.36459"}
    printed("alaska weighted", zip(p.values(), [fit.b[0], F(text(fit.error(0))), fit.b[1],
                                                F(text(fit.error(1))),
                                                F(text(mp.sqrt(real(fit.s2))))]))
    write("nist-4.6.2-alaska-weighted", "Weighted line with weights lab^-1.5, Alaska pipeline",
          "NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.2.5", RECALLED,
          {"rows_of": "nist-4.6.2-alaska-pipeline", "power": -1.5},
          {**p, "own": {**fit.expected(), "lack_of_fit": fit.lack()}},
          "Printed figures typed from memory; they agree with exact fractions of the data.")
    rows = read("nist-2.3.6.5-loadcell-quadratic-calibration")["data"]["rows"]
    x, y = [F(r[0]) for r in rows], [F(r[1]) for r in rows]
    write("loadcell-lack-of-fit", "Lack of fit of the line and the parabola, load cell",
          "exact fractions of the data of nist-2.3.6.5", BY,
          {"rows_of": "nist-2.3.6.5-loadcell-quadratic-calibration"},
          {"line": Fit(powers(x, 1), y).lack(), "parabola": Fit(powers(x, 2), y).lack()},
          "Of the decimals; the doubles nearest to them give residuals that differ in the twelfth "
          "digit, hence the tolerance.", tolerance=1e-9,
          expression="squares in fractions, tail by mpmath betainc")


def places(fit, y, share, level, degree, middle, span):
    """Ends of {x: t test does not reject}, found by scanning outwards and bisection."""
    t = t_quantile(level, fit.df)
    b = [real(v) for v in fit.b]
    inv = [[real(v) for v in r] for r in fit.inverse]
    s2 = real(fit.s2)

    def excess(x):
        row = [x ** k for k in range(degree + 1)]
        lev = sum(a * inv[i][j] * c for i, a in enumerate(row) for j, c in enumerate(row))
        off = sum(c * a for c, a in zip(b, row)) - y
        return off * off - t * t * s2 * (share + lev)

    grid = [middle + span * mp.sinh(mp.mpf(i) / 40) / 100 for i in range(-700, 701)]
    signs = [excess(x) > 0 for x in grid]
    ends = []
    for i in range(1400):
        if signs[i] != signs[i + 1]:
            lo, hi = grid[i], grid[i + 1]
            for _ in range(150):
                mid = (lo + hi) / 2
                lo, hi = (mid, hi) if (excess(mid) > 0) == signs[i] else (lo, mid)
            ends.append(lo)
    kind = ("bounded" if signs[0] and signs[-1] else "rays") if ends else "whole"
    return kind, ends, (t * mp.sqrt(s2 * inv[1][1]) / b[1]) ** 2


def inverse_predictions():
    rows = read("nist-2.3.6.7-linewidth-calibration")["data"]["rows"]
    thermometer = read("gum-h3-thermometer-calibration")["data"]
    flat = ["1.02", "0.98", "1.01", "1.03", "0.97", "1.00", "1.02", "0.99"]
    sets = {"window": (DAYS, WINDOW), "linewidth": ([r[0] for r in rows], [r[1] for r in rows]),
            "thermometer": ([v for v in thermometer["t_degC"]], thermometer["correction_degC"]),
            "flat": (list(range(8)), flat)}
    cases = []
    for name, y, weight, level in [
            ("window", ".012", None, .9), ("window", ".012", None, .95), ("window", "0", None, .9),
            ("window", ".012", None, .995), ("window", ".002", None, .995),
            ("window", ".012", 1, .9), ("window", ".012", 2, .9),
            ("linewidth", "4.5", 1, .95), ("linewidth", "9.02", 3, .99),
            ("linewidth", "1.2", None, .95), ("thermometer", "-.15", None, .95),
            ("thermometer", "-.165", 1, .95), ("flat", "1.05", None, .95),
            ("flat", "1.0", None, .95), ("flat", "1.2", 1, .95), ("flat", "1.2", None, .5)]:
        xs, ys = ([F(str(v)) for v in c] for c in sets[name])
        fit = Fit(powers(xs, 1), ys)
        share = mp.mpf(0) if weight is None else mp.mpf(1) / weight
        spread = real(max(xs) - min(xs))
        kind, ends, g = places(fit, real(F(y)), share, level, 1, real(sum(xs) / len(xs)), spread)
        cases.append({"set": name, "y": y, "weight": weight, "level": level, "kind": kind,
                      "at": text((F(y) - fit.b[0]) / fit.b[1]), "g": text(g),
                      "ends": [text(e) for e in ends]})
    low, high = (float(e) for e in cases[0]["ends"])
    if abs(low - 31.50) > .005 or abs(high - 61.24) > .005 or abs(float(cases[0]["g"]) - .1998) > 5e-5:
        raise SystemExit("practitioner's Fieller interval does not agree")
    write("inverse-predictions", "Where a line has a height: intervals, two rays, whole line",
          "t test inverted by search with mpmath", BY,
          {"sets": {k: {"x": [str(v) for v in a], "y": [str(v) for v in b]}
                    for k, (a, b) in sets.items()}, "cases": cases}, {},
          "The first case is the practitioner's: 31.50 to 61.24, g 0.1998.", tolerance=1e-11,
          expression="sign changes of (a + b x - y)^2 - t^2 s^2 (share + leverage(x))")


def curve_readings():
    rows = read("nist-2.3.6.5-loadcell-quadratic-calibration")["data"]["rows"]
    x, y = [F(r[0]) for r in rows], [F(r[1]) for r in rows]
    fit = Fit(powers(x, 2), y)
    cases = []
    for reading, weight, level in [("1.344", 1, .95), ("0.3", 3, .99), ("2.1", 1, .95)]:
        b = [real(v) for v in fit.b]
        at = mp.findroot(lambda v: b[0] + b[1] * v + b[2] * v * v - real(F(reading)),
                         float(F(reading)) * 10)
        kind, ends, _ = places(fit, real(F(reading)), mp.mpf(1) / weight, level, 2, at,
                               mp.mpf("0.01"))
        near = [e for e in ends if abs(e - at) < 1]
        cases.append({"y": reading, "weight": weight, "level": level, "at": text(at),
                      "lower": text(near[0]), "upper": text(near[1])})
    write("curve-readings", "Readings of a load cell taken back through its parabola",
          "t test inverted by search with mpmath, data of nist-2.3.6.5", BY,
          {"rows_of": "nist-2.3.6.5-loadcell-quadratic-calibration", "range": ["2", "21"],
           "cases": cases}, {}, "The published figure label 13.417 for 1.344 is not the root.",
          tolerance=1e-11, expression="sign changes of the squared t test")


def control_factors():
    rows = []
    printed_rows = {3: (4.156, 4.826), 5: (3.152, 3.518), 8: (2.743, 3.005), 10: (2.626, 2.860),
                    20: (2.417, 2.605), 30: (2.354, 2.528), 38: (None, 2.4976)}
    for df, figures in printed_rows.items():
        for m, figure in zip((2, 3), figures):
            level = (1 - mp.mpf(".05")) ** (mp.mpf(1) / m)
            t = t_quantile(level, df)
            if figure and abs(t - figure) > 6e-4:
                raise SystemExit(f"t* {df} {m}: {t}, printed {figure}")
            rows.append([df, m, text(t)])
    write("calibration-control-factors", "Factors t* of a calibration's control limits at 5 %",
          "practitioner's table, recomputed", BY, {"columns": ["df", "checks", "factor"]},
          {"rows": rows}, tolerance=1e-12, expression="t quantile at (1-(1-.05)^(1/m))/2")


def precision_data(seed, m, s0, theta, low, high, places_):
    rng = np.random.default_rng(seed)
    x = np.round(np.exp(rng.uniform(np.log(low), np.log(high), m)), 3)
    d = np.round(rng.normal(size=m) * np.sqrt(2 * (s0 ** 2 + (theta * x) ** 2)), places_)
    return x, d


def misfit(v0, v1, x, d):
    v = v0 + v1 * x * x
    return float(np.sum(.5 * np.log(4 * np.pi * v) + d * d / (4 * v)))


def best_mixture(x, d):
    """Both parts by several starts in the logarithms, and both boundaries."""
    one = np.mean(d * d / 2)
    prop = np.mean(d * d / (2 * x * x))
    best = (misfit(one, 0, x, d), one, 0.0)
    best = min(best, (misfit(0, prop, x, d), 0.0, prop))
    for a in (.9, .5, .1):
        start = np.log([one * a, prop * (1 - a)])
        got = optimize.minimize(lambda p: misfit(np.exp(p[0]), np.exp(p[1]), x, d), start,
                                method="Nelder-Mead",
                                options={"xatol": 1e-12, "fatol": 1e-13, "maxiter": 20000})
        if got.fun < best[0] - 1e-9:
            best = (got.fun, *np.exp(got.x))
    return best


def profile_end(x, d, level, least, confidence, sign, reach):
    """End of the profile-likelihood interval of the variance at a level: root in its logarithm."""
    limit = least + stats.chi2.ppf(confidence, 1) / 2

    def lowest(tau):
        # along v0 + v1*level^2 = tau, v0 from 0 to tau
        def along(share):
            v0 = tau * share
            return misfit(v0, (tau - v0) / level ** 2, x, d)
        shares = np.concatenate([[0, 1], 1 / (1 + np.exp(-np.linspace(-14, 14, 141)))])
        values = [along(s) for s in shares]
        i = int(np.argmin(values))
        if i < 2:
            return values[i]
        logit = np.linspace(-14, 14, 141)[i - 2]
        fine = optimize.minimize_scalar(lambda u: along(1 / (1 + np.exp(-u))),
                                        bounds=(logit - .4, logit + .4), method="bounded",
                                        options={"xatol": 1e-11})
        return min(values[i], fine.fun)

    start, far = np.log(reach), np.log(reach) + sign * 4
    return float(np.exp(optimize.brentq(lambda y: lowest(np.exp(y)) - limit, start, far,
                                        xtol=1e-13)))


def precision_profiles():
    cases = []
    forms = ["CONSTANT", "PROPORTIONAL", "QUADRATURE"]
    for seed, m, s0, theta, low, high, digits in [
            (1, 40, .004, .02, .05, 5, 5), (2, 60, .01, .03, .1, 3, 4), (3, 30, .02, 0, .1, 1, 4),
            (4, 30, 0, .05, .2, 20, 4), (5, 100, .004, .02, .02, 2, 5)]:
        x, d = precision_data(seed, m, s0, theta, low, high, digits)
        least, v0, v1 = best_mixture(x, d)
        constant, proportional = np.mean(d * d / 2), np.mean(d * d / (2 * x * x))
        fits = [misfit(constant, 0, x, d), misfit(0, proportional, x, d), least]
        aicc = [2 * f + 2 * k + 2 * k * (k + 1) / (m - k - 1) for f, k in zip(fits, (1, 1, 2))]
        rows = []
        for level in (float(np.min(x)), float(np.median(x)), float(np.max(x))):
            at = v0 + v1 * level ** 2
            rows.append([level, np.sqrt(at)]
                        + [np.sqrt(profile_end(x, d, level, least, .95, sign, at))
                           for sign in (-1, 1)])
        cases.append({"levels": x.tolist(), "differences": d.tolist(),
                      "constant": np.sqrt(constant), "proportional": np.sqrt(proportional),
                      "s0": np.sqrt(v0), "theta": np.sqrt(v1), "misfits": dict(zip(forms, fits)),
                      "criteria": dict(zip(forms, aicc)), "chosen": forms[int(np.argmin(aicc))],
                      "rows": rows})
    write("precision-profiles", "Deviation against level from pairs, three forms",
          "SciPy 1.17.1 optimize on simulated pairs", BY,
          {"columns": ["level", "deviation", "lower 95", "upper 95"], "cases": cases}, {},
          "Rows are of the form with both parts. Tolerance: what the general minimiser reaches.",
          tolerance=1e-6,
          expression="minimise sum(log(4 pi v)/2 + d^2/(4 v)), v = s0^2 + theta^2 x^2; profile by "
          "brentq over a constrained minimum")


def group_intervals():
    groups = [
        ["6.9", "5.4", "5.8", "4.6", "4.0"], ["8.3", "6.8", "7.8"], ["8.0", "10.5", "8.1", "6.9"],
        ["5.8"]]
    exact = [[F(v) for v in g] for g in groups]
    between, within, dfb, dfw = one_way(exact)
    s2, t = within / dfw, t_quantile(.95, dfw)
    means = [sum(g) / len(g) for g in exact]
    half = [t * mp.sqrt(real(s2 / len(g))) for g in exact]
    diff = t * mp.sqrt(real(s2 * (F(1, 3) + F(1, 4))))
    ratio = between / dfb / s2
    write("one-way-unequal-groups", "One-way analysis of unequal groups, intervals of means",
          "exact fractions and mpmath", BY, {"groups": groups},
          {"ss_between": text(between), "ss_within": text(within), "F": text(ratio),
           "p": text(f_tail(ratio, dfb, dfw)),
           "means": [[text(m), text(real(m) - h), text(real(m) + h)] for m, h in zip(means, half)],
           "difference_2_3": [text(real(means[1] - means[2]) - diff),
                              text(real(means[1] - means[2]) + diff)]},
          tolerance=1e-12, expression="sums in fractions, quantiles from the incomplete beta function")


def model_shares():
    """Criteria from the likelihood at its greatest, written out value by value."""
    residuals = {"wide": ["1.2", "-0.7", "0.4", "-1.9", "0.8", "1.1", "-0.6", "0.2", "-1.3", "0.9"],
                 "close": ["0.5", "-0.4", "0.6", "-0.7", "0.3", "0.4", "-0.8", "0.1", "-0.2", "0.6"],
                 "closest": ["0.4", "-0.4", "0.5", "-0.6", "0.3", "0.5", "-0.7", "0.1", "-0.3", "0.5"]}
    parameters = {"wide": 1, "close": 2, "closest": 4}
    rows, corrected, schwarz = {}, [], []
    for name, values in residuals.items():
        r = [F(v) for v in values]
        n, k, sse = len(r), parameters[name], sum(x * x for x in r)
        variance = real(sse / n)
        log = sum(-(mp.log(variance) + real(x * x) / variance) / 2 for x in r) + mp.mpf(n) / 2
        aicc = -2 * log + 2 * k + mp.mpf(2 * k * (k + 1)) / (n - k - 1)
        bic = -2 * log + k * mp.log(n)
        corrected.append(aicc)
        schwarz.append(bic)
        rows[name] = [text(sse), n, k, text(aicc), text(bic)]

    def shares(criteria):
        likelihoods = [mp.exp(-c / 2) for c in criteria]
        return [text(v / sum(likelihoods)) for v in likelihoods]
    write("model-shares", "Criteria of models and their shares of the likelihood",
          "normal likelihood with mpmath; criteria of Hurvich and Tsai (1989) and Schwarz (1978); "
          "shares of Burnham and Anderson (2002), chapter 2", BY,
          {"residuals": residuals, "columns": ["SSE", "n", "k", "corrected", "schwarz"]},
          {"rows": list(rows.values()), "sharesCorrected": shares(corrected),
           "sharesSchwarz": shares(schwarz)},
          notes="the constant n(1 + ln 2 pi) is left out", tolerance=1e-12,
          expression="-2 ln L + 2k + 2k(k+1)/(n-k-1), -2 ln L + k ln n, exp(-c/2)/sum")


if __name__ == "__main__":
    model_shares()
    linear_sets()
    big_anova_sets()
    nested_books()
    variance_intervals()
    weighted_line()
    lack_of_fit()
    inverse_predictions()
    curve_readings()
    control_factors()
    precision_profiles()
    group_intervals()
