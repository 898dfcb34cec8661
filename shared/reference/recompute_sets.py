"""Computes the run-length cases of rules that look at either side or at sets of values.

Run in this folder: python3 recompute_sets.py
Needs SciPy 1.17.1 and NumPy 2.4; shares no code with the program, and as little of the algorithms as
possible: short rules by naive histories with the place in the set, each judged anew; the multirule
by a chain whose steps are whole sets; both again by simulation, where the windows are looked at as
they are. The script stops where chain and simulation part. About two minutes.
"""

import itertools
import json

import numpy as np
from scipy import sparse, stats

N = stats.norm
COLUMNS = ["average", "deviation", "quantile .1", "median", "quantile .9", "quantile .99",
           "chance within 4", "chance within 20"]
TRIALS = 400_000


def save(name, body):
    with open(name + ".json", "w", encoding="utf-8") as out:
        json.dump({"id": name, **body}, out, indent=1)
        out.write("\n")


def describe(survival):
    """From survival S(0), S(1), ...; what is left at the end falls by the last ratio."""
    s = np.array(survival)
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


# --- short rules: place in the sets and all values as far as a rule looks back ---------------------

def met(rule, x, in_set):
    """Whether a rule is met at the last of the values x, of which the last in_set are of its set."""
    kind = rule[0]
    if kind == "opposite":
        latest, before = x[-1], x[-in_set:-1] if in_set > 1 else []
        zone = rule[2]
        return ((latest > zone and any(v < -zone for v in before))
                or (latest < -zone and any(v > zone for v in before)))
    if kind == "same":
        last = x[-rule[1]:]
        return len(last) == rule[1] and (min(last) > 0 or max(last) < 0)
    _, count, of, zone = rule
    last = x[-of:]
    if kind == "either":
        return abs(x[-1]) > zone and sum(abs(v) > zone for v in last) >= count
    side = np.sign(x[-1])
    return abs(x[-1]) > zone and sum(side * v > zone for v in last) >= count


def history_chain(rules, every=1):
    """States (place in all sets, zones of the latest values); moves as (from, to, zone)."""
    zones = sorted({abs(r[-1]) if r[0] != "same" else 0 for r in rules})
    cuts = sorted({s * z for z in zones for s in (-1., 1.)} - {-0.0} | ({0.} if 0 in zones else set()))
    mids = [cuts[0] - 1, *[(a + b) / 2 for a, b in zip(cuts, cuts[1:])], cuts[-1] + 1]
    sets = [r[1] for r in rules if r[0] == "opposite"] + [every]
    cycle = int(np.lcm.reduce(sets))
    span = max({"opposite": lambda r: r[1], "same": lambda r: r[1]}.get(r[0], lambda r: r[2])(r)
               for r in rules)
    names, queue, moves = {(0, ()): 0}, [(0, ())], []
    for place, history in queue:
        for a in range(len(mids)):
            longer = history + (a,)
            x = [mids[z] for z in longer]
            looked = (place + 1) % every == 0
            if looked and any(met(r, x, place % r[1] + 1 if r[0] == "opposite" else 0)
                              for r in rules):
                continue
            to = ((place + 1) % cycle, longer[-(span - 1):] if span > 1 else ())
            if to not in names:
                names[to] = len(names)
                queue.append(to)
            moves.append((names[(place, history)], names[to], a))
    starts = [i for i, (place, _) in enumerate(queue) if place == 0]
    return len(names), np.array(moves), np.array([-np.inf, *cuts, np.inf]), cycle, starts


def survival(chain, shift, v=None, steps=100_000):
    size, moves, edges, _, _ = chain
    matrix = matrix_of(chain, shift)
    if v is None:
        v = np.zeros(size)
        v[0] = 1
    s = [1.]
    for _ in range(steps):
        v = matrix @ v
        s.append(float(v.sum()))
        if s[-1] < 1e-15:
            break
    return np.array(s)


def matrix_of(chain, shift):
    size, moves, edges, _, _ = chain
    chance = np.diff(N.cdf(edges - shift))
    return sparse.csr_matrix((chance[moves[:, 2]], (moves[:, 1], moves[:, 0])), (size, size))


def settled(chain):
    """Where the chain stands at the start of a set after many sets without change or signal."""
    size, _, _, cycle, _ = chain
    matrix = matrix_of(chain, 0)
    v = np.zeros(size)
    v[0] = 1
    for _ in range(400 * cycle):
        v = matrix @ v
        v /= v.sum()
    return v


SHORT = {
    "daily reading": ([("beyond", 1, 1, 3), ("either", 2, 3, 2)], 1, 1),
    "either 2 of 2 beyond 2": ([("either", 2, 2, 2)], 1, 1),
    "either 3 of 5 beyond 1.5": ([("either", 3, 5, 1.5)], 1, 1),
    "opposite 2 beyond 1": ([("opposite", 2, 1)], 1, 2),
    "opposite 3 beyond 1.5": ([("opposite", 3, 1.5)], 1, 3),
    "opposite 5 beyond 1.5": ([("opposite", 5, 1.5)], 1, 5),
    "1-3s, 2-2s, R-4s of 2": ([("beyond", 1, 1, 3), ("beyond", 2, 2, 2), ("opposite", 2, 2)], 1, 2),
    "1-3s, 2-2s, R-4s of 4": ([("beyond", 1, 1, 3), ("beyond", 2, 2, 2), ("opposite", 4, 2)], 1, 4),
    "opposite 2 beyond 1.5 and opposite 5 beyond 2":
        ([("opposite", 2, 1.5), ("opposite", 5, 2)], 1, 10),
    "either 3 of 4 beyond 1, opposite 3 beyond 1.5 and 6 on one side":
        ([("either", 3, 4, 1), ("opposite", 3, 1.5), ("same", 6)], 1, 3),
    "every 3: 2 of 3 beyond 1.5, either 3 of 4 beyond 1":
        ([("beyond", 2, 3, 1.5), ("either", 3, 4, 1)], 3, 3),
}


def short_rules():
    rows, late = [], []
    for name, (rules, every, counted) in SHORT.items():
        chain = history_chain(rules, every)
        start = settled(chain)
        for shift in (0, .5, -1.5):
            s = survival(chain, shift)
            if s[-1] > 1e-15:
                raise SystemExit("too long: " + name)
            rows.append([name, 1, shift, *describe(s)])
            if counted > 1:
                rows.append([name, counted, shift, *describe(np.append(s, 0)[::counted])])
            late.append([name, shift, float(survival(chain, shift, start).sum())])
    # closed forms: (1 + p)/p^2 and sets that are met with chance 2q^2
    p, q = 2 * N.sf(2), N.sf(1)
    got = {(r[0], r[1], r[2]): r[3] for r in rows}
    assert abs(got["either 2 of 2 beyond 2", 1, 0] / ((1 + p) / p ** 2) - 1) < 1e-10
    assert abs(got["opposite 2 beyond 1", 2, 0] / (1 / (2 * q * q)) - 1) < 1e-8
    return rows, late


# --- the multirule: a chain of whole sets ----------------------------------------------------------

READINGS = ("each value", "end of set", "4-1s and 10-x at end of set")
CUTS = np.array([-3., -2., -1., 0., 1., 2., 3.])


def multirule_chain(size, reading):
    """States (run on one side, run beyond 1, beyond 2), all signed; one move for all zones of a set."""
    late_pairs = reading == "end of set"
    late_runs = reading != "each value"
    names, queue, moves = {(0, 0, 0): 0}, [(0, 0, 0)], []

    def run(before, sign, most):
        if sign == 0:
            return 0
        return sign * min(most, 1 + (abs(before) if before * sign > 0 else 0))
    # zones 0 and 7 lie beyond 3 and reject at once
    inner = {1: -2.5, 2: -1.5, 3: -.5, 4: .5, 5: 1.5, 6: 2.5}
    for state in queue:
        for zones in itertools.product(range(1, 7), repeat=size):
            side, one, two = state
            rejected = {1, 6} <= set(zones)
            for i, zone in enumerate(zones):
                v = inner[zone]
                last = i == size - 1
                sign = int(np.sign(v))
                side = run(side, sign, 10)
                one = run(one, sign if abs(v) > 1 else 0, 4)
                now = sign if abs(v) > 2 else 0
                pair = now != 0 and now == two
                two = now
                rejected |= pair and (last or not late_pairs)
                rejected |= (abs(side) == 10 or abs(one) == 4) and (last or not late_runs)
            if not rejected:
                to = (side, one, two)
                if to not in names:
                    names[to] = len(names)
                    queue.append(to)
                moves.append((names[state], names[to], *zones))
    return len(names), np.array(moves)


def multirule_survival(chain, shift, steps=8000):
    count, moves = chain
    chance = np.diff(N.cdf(np.concatenate([[-np.inf], CUTS, [np.inf]]) - shift))
    matrix = sparse.csr_matrix((chance[moves[:, 2:]].prod(axis=1), (moves[:, 1], moves[:, 0])),
                               (count, count))
    v = np.zeros(count)
    v[0] = 1
    s = [1.]
    for _ in range(steps):
        v = matrix @ v
        s.append(float(v.sum()))
        if s[-1] < 1e-15:
            break
    return s


SHIFTS = (0, .5, 1, 2, 3)


def multirule():
    rows = []
    for size in (2, 4):
        for reading in READINGS:
            chain = multirule_chain(size, reading)
            for shift in SHIFTS:
                rows.append([size, reading, shift, *describe(multirule_survival(chain, shift))])
    return rows


# --- simulation ------------------------------------------------------------------------------------

def simulate_multirule(size, reading, shift, rng):
    alive = np.arange(TRIALS)
    history = np.zeros((TRIALS, 10))
    sets = np.zeros(TRIALS)
    length = 0
    while alive.size:
        length += 1
        new = rng.standard_normal((alive.size, size)) + shift
        rejected = (np.abs(new) > 3).any(1) | ((new > 2).any(1) & (new < -2).any(1))
        for i in range(size):
            history = np.column_stack([history[:, 1:], new[:, i]])
            last = i == size - 1
            for sign in (1, -1):
                h = sign * history
                if last or reading != "end of set":
                    rejected |= (h[:, -2:] > 2).all(1)
                if last or reading == "each value":
                    rejected |= (h[:, -4:] > 1).all(1) | (h > 0).all(1)
        sets[alive[rejected]] = length
        alive, history = alive[~rejected], history[~rejected]
    return float(sets.mean()), float(sets.std() / np.sqrt(TRIALS))


def simulate_daily(shift, rng):
    alive = np.arange(TRIALS)
    history = np.zeros((TRIALS, 3))
    values = np.zeros(TRIALS)
    length = 0
    while alive.size:
        length += 1
        history = np.column_stack([history[:, 1:], rng.standard_normal(alive.size) + shift])
        far = np.abs(history) > 2
        out = (np.abs(history[:, 2]) > 3) | (far[:, 2] & (far[:, 0] | far[:, 1]))
        values[alive[out]] = length
        alive, history = alive[~out], history[~out]
    return float(values.mean()), float(values.std() / np.sqrt(TRIALS))


def simulated(exact, short):
    rng = np.random.default_rng(20260801)
    rows = []
    for size, reading, shift, average, *_ in exact:
        if size == 2 or reading == "each value":
            got, error = simulate_multirule(size, reading, shift, rng)
            print(size, reading, shift, average, got, error, flush=True)
            assert abs(got - average) < 4 * error, (size, reading, shift)
            rows.append(["multirule", size, reading, shift, got, error])
    for name, counted, shift, average, *_ in short:
        if name == "daily reading":
            got, error = simulate_daily(shift, rng)
            assert abs(got - average) < 4 * error, (name, shift)
            rows.append([name, counted, "each value", shift, got, error])
    return rows


def main():
    made = {"provenance": "computed by recompute_sets.py"}
    short, late = short_rules()
    exact = multirule()
    save("run-length-sets", {
        "title": "Run length of rules that look at either side or at sets of values",
        "source": "computed with NumPy 2.4 and SciPy 1.17.1", **made,
        "expression": "short rules: Markov chain whose states are the place in the sets and all values"
                      " as far as the longest rule looks back, each judged anew; multirule: Markov"
                      " chain of whole sets over the lengths of three runs",
        "tolerance": 1e-9,
        "data": {"shortColumns": ["rules", "values a count", "shift", *COLUMNS],
                 "settledColumns": ["rules", "shift", "average in values"],
                 "multiruleColumns": ["values a set", "rules of successive values are looked at after",
                                      "shift", *COLUMNS]},
        "expected": {"short": short, "settled": late, "multirule": exact},
        "notes": "All figures are numbers of counts: of values, or of sets, the last counted whole."
                 " 'every 3' looks at rules at the end of sets of 3 only. Multirule: 1-3s and R-4s of"
                 " any value of the set, 2-2s, 4-1s, 10-x of successive values whatever their set."})
    save("run-length-sets-simulated", {
        "title": "Run length of the multirule and of the daily reading, simulated",
        "source": "computed with NumPy 2.4", **made,
        "expression": f"{TRIALS} runs each with NumPy's default generator, the latest 10 values (3 for"
                      " the daily reading) looked at as they are",
        "tolerance": 1e-2,
        "data": {"columns": ["rules", "values a count", "rules of successive values are looked at"
                             " after", "shift", "average", "standard error"]},
        "expected": {"rows": simulated(exact, short)},
        "notes": "Compare within four standard errors."})
    own = {reading: [row[3] for row in exact if row[0] == 2 and row[1] == reading]
           for reading in READINGS}
    save("practitioner-multirule", {
        "title": "Average number of runs of two controls until a multirule rejects",
        "source": "a practitioner's simulation of the rules 1-3s, 2-2s, R-4s, 4-1s, 10-x of Westgard,"
                  " Barry, Hunt and Groth (1981), Clin. Chem. 27, 493-501",
        "provenance": "from memory",
        "data": {"shifts": SHIFTS, "standardErrorInControl": 1.4},
        "expected": {"average": ["94", "27.1", "7.1", "1.95", "1.16"]},
        "crosscheck": {"method": "recompute_sets.py, multirule_chain()", "own": own},
        "notes": "Both controls are shifted, and independent. The source does not say when it looks at"
                 " rules of successive values. Looking after each value gives 9 to 13 % fewer runs up"
                 " to one deviation, at the end of a run only 5 to 9 % more; looking after each value"
                 " at 2-2s and at the end of a run at 4-1s and 10-x agrees within 2 %. 1.16 at three"
                 " deviations is high under each of them (1.138 or 1.139): a simulation of so few"
                 " runs that 94 has a standard error of 1.4 may be so far off."})


if __name__ == "__main__":
    main()
