#!/usr/bin/env python3
"""The nesting instances by general-purpose solvers, in formulations that are not ours, with a time limit.

  cutting_solvers.py REFERENCE [--set BEGINNING] [--limit SECONDS] [--programs highs,cbc,glpk]
                     [--every N] [--models assign,flow,list] [--ours BENCH_CUTTING] [--csv FILE]

REFERENCE is the folder that holds cutting/; the worked examples are in this file. HiGHS comes with
python3-scipy, CBC is the program cbc (coinor-cbc), GLPK glpsol (glpk-utils): what is not installed is
said and left out. With --ours, the program bench_cutting solves the same files within the same time, and its
row stands above theirs (its times are processor time, theirs by the clock). With --csv, what was solved to a gap of nothing is written as a second proof: that is how
tests/reference/nest_optima.csv was made.

Formulations:
  assign  pieces of each kind in each bar that might be bought, one yes or no for each bar
  flow    arc flow (Valerio de Carvalho 1999): a bar is a path from one cut to the next
  list    every maximal pattern as a whole number (where there are at most 300,000)
Own files are taken on a grid of 0.1 mm, pieces with their kerf rounded up and bars down.
"""
import argparse
import csv
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import zipfile

try:
    import numpy
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_matrix
except ImportError:
    milp = None


class Instance:
    """Weights (length and kerf) with demands; bars (capacity, price, supply or None)."""

    def __init__(self, name, items, bars):
        self.name = name
        merged = {}
        for weight, demand in items:
            merged[weight] = merged.get(weight, 0) + demand
        self.items = sorted(merged.items(), reverse=True)
        self.bars = bars


def own_files(folder):
    for name in sorted(os.listdir(folder)):
        numbers = list(map(int, open(os.path.join(folder, name)).read().split()))
        kerf, trim, kinds = numbers[:3]
        at = 3 + 3 * kinds
        bars = []
        for i in range(3, at, 3):
            length, price, supply = numbers[i:i + 3]
            bars.append(((length - trim + kerf) // 10, price, None if supply < 0 else supply))
        pairs = numbers[at + 1:]
        items = [(-(-(pairs[i] + kerf) // 10), pairs[i + 1]) for i in range(0, len(pairs), 2)]
        yield Instance(name[:-4], items, bars)


def or_library(path):
    words = open(path).read().split()
    at = 1
    for _ in range(int(words[0])):
        name, capacity, count = words[at], float(words[at + 1]), int(words[at + 2])
        unit = 10 if name.startswith('t') else 1
        sizes = [round(float(w) * unit) for w in words[at + 4:at + 4 + count]]
        at += 4 + count
        yield Instance('Falkenauer_' + name, [(s, 1) for s in sizes], [(round(capacity * unit), 1, None)])


def named_lists(path, prefix):
    lines = open(path).read().split('\n')
    at = 0
    while at < len(lines):
        if "'" not in lines[at]:
            at += 1
            continue
        name = re.sub(r'[^A-Za-z0-9]', '', lines[at])
        kinds, capacity = int(lines[at + 1]), int(lines[at + 2])
        items = [tuple(map(int, lines[at + 3 + i].split())) for i in range(kinds)]
        at += 3 + kinds
        yield Instance(prefix + name, items, [(capacity, 1, None)])


def archive(path):
    with zipfile.ZipFile(path) as files:
        for name in files.namelist():
            numbers = list(map(int, files.read(name).split()))
            yield Instance('Scholl_' + name.split('.')[0], [(s, 1) for s in numbers[2:]],
                           [(numbers[1], 1, None)])


def examples():
    """reference/cutting/examples.md: E1 to E6 at one bar, M1 to M6 at prices; kerf and trim worked in."""
    one = [('E1', 100, [(45, 97), (36, 610), (31, 395), (14, 211)]),
           ('E2', 110, [(75, 8), (55, 10), (50, 24), (45, 35), (20, 48)]),
           ('E3', 40, [(20, 30), (16, 55), (12, 111), (8, 90)]),
           ('E4', 188, [(59, 227), (48, 108), (45, 48), (42, 96), (34, 150)]),
           ('E5', 17, [(9, 15), (5, 20), (3, 25)]),
           ('E6', 5600, [(1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20),
                         (2000, 10), (2050, 12), (2100, 14), (2140, 16), (2150, 18), (2200, 20)])]
    for name, capacity, items in one:
        yield Instance('example_' + name, items, [(capacity, 1, None)])
    yield Instance('example_M1', [(4, 20), (3, 10), (2, 20)], [(9, 10, None), (6, 7, None), (5, 6, None)])
    yield Instance('example_M2', [(391, 1), (356, 3), (345, 1)],
                   [(768, 2057, None), (960, 2997, None), (1152, 3727, None)])
    bars = [(4877 - 7, 3290, None), (6096 - 7, 3980, None), (7620 - 7, 4870, None)]
    items = [(1503, 4), (903, 6), (603, 5)]
    yield Instance('example_M3', items, bars)
    yield Instance('example_M4', items, bars[:2])
    yield Instance('example_M5', items, bars[:2] + [(7620 - 7, 4870, 1)])
    yield Instance('example_M6', items, bars + [(1900 - 7, 0, 1)])


def all_sets(reference):
    folder = os.path.join(reference, 'cutting', 'instances')
    cc0 = os.path.join(folder, 'esicup_cc0')
    yield 'examples', examples
    yield 'own', lambda: own_files(os.path.join(folder, 'own'))
    yield 'Falkenauer u120', lambda: or_library(os.path.join(folder, 'orlib', 'binpack1.txt'))
    for i, name in enumerate(['u250', 'u500', 'u1000', 't60', 't120', 't249', 't501']):
        path = os.path.join(cc0, 'falkenauer', f'binpack{i + 2}.txt')
        yield 'Falkenauer ' + name, lambda path=path: or_library(path)
    for i in (1, 2):
        path = os.path.join(cc0, 'schwerin', f'SCH_WAE{i}.BPP')
        yield f'Schwerin {i}', lambda path=path, i=i: named_lists(path, f'Schwerin{i}_')
    for i in (1, 2):
        path = os.path.join(cc0, 'waescher', f'WAE_GAU{i}.BPP')
        yield f'Waescher {i}', lambda path=path: named_lists(path, 'Waescher_')
    for i in (1, 2, 3):
        yield f'Scholl {i}', lambda i=i: archive(os.path.join(cc0, 'scholl', f'bin{i}data.zip'))
    yield 'Hard28', lambda: named_lists(os.path.join(cc0, 'hard28', 'hard28'), 'Hard28_')


class Model:
    """Least cost x with rows low <= a x <= high, 0 <= x <= most, all whole."""

    def __init__(self):
        self.cost, self.most, self.rows = [], [], []

    def add(self, cost, most):
        self.cost.append(cost)
        self.most.append(most)
        return len(self.cost) - 1

    def row(self, entries, low, high):
        self.rows.append((entries, low, high))


INFINITE = float('inf')


def first_fit(instance, capacity):
    free = []
    for weight, demand in instance.items:
        for _ in range(demand):
            for b, room in enumerate(free):
                if room >= weight:
                    free[b] -= weight
                    break
            else:
                free.append(capacity - weight)
    return len(free)


def assign_model(instance):
    model = Model()
    longest = max(capacity for capacity, _, _ in instance.bars)
    total = sum(w * d for w, d in instance.items)
    placed = [[] for _ in instance.items]
    for capacity, price, supply in instance.bars:
        fitting = [i for i, (w, _) in enumerate(instance.items) if w <= capacity]
        most = sum(instance.items[i][1] for i in fitting)
        if supply is None:
            worth = min(p / c for c, p, s in instance.bars if p > 0)
            budget = first_fit(instance, longest) * max(p for _, p, _ in instance.bars)
            most = min(most, int(budget / price) if price else most, first_fit(instance, capacity)
                       if len(fitting) == len(instance.items) else most, int(budget / worth / capacity) + 1)
        else:
            most = min(most, supply)
        before = None
        for _ in range(most):
            bar = model.add(price, 1)
            entries = [(bar, -capacity)]
            for i in fitting:
                weight, demand = instance.items[i]
                x = model.add(0, min(demand, capacity // weight))
                placed[i].append((x, 1))
                entries.append((x, weight))
            model.row(entries, -INFINITE, 0)
            if before is not None:
                model.row([(before, 1), (bar, -1)], 0, INFINITE)
            before = bar
    for (_, demand), entries in zip(instance.items, placed):
        model.row(entries, demand, demand)
    return model if total and len(model.cost) <= 40000 else None


def flow_model(instance, most_arcs=60000):
    """Items are laid the heaviest first; a node is a length at which a cut may be."""
    longest = max(capacity for capacity, _, _ in instance.bars)
    arcs = set()
    reached = {0}
    for i, (weight, demand) in enumerate(instance.items):
        fresh = set()
        for start in reached:
            at = start
            for _ in range(demand):
                if at + weight > longest:
                    break
                arcs.add((at, at + weight, i))
                at += weight
                fresh.add(at)
            if len(arcs) > most_arcs:
                return None
        reached |= fresh
    ends = {capacity for capacity, _, _ in instance.bars}
    nodes = sorted(reached | ends)
    model = Model()
    flow = {node: [] for node in nodes}
    laid = [[] for _ in instance.items]
    for start, end, i in sorted(arcs):
        x = model.add(0, instance.items[i][1])
        flow[start].append((x, -1))
        flow[end].append((x, 1))
        laid[i].append((x, 1))
    pieces = sum(d for _, d in instance.items)
    for a, b in zip(nodes, nodes[1:]):
        if a == 0:
            continue
        x = model.add(0, pieces)
        flow[a].append((x, -1))
        flow[b].append((x, 1))
    for capacity, price, supply in instance.bars:
        x = model.add(price, pieces if supply is None else supply)
        flow[capacity].append((x, -1))
        flow[0].append((x, 1))
    for node in nodes:
        model.row(flow[node], 0, 0)
    for (_, demand), entries in zip(instance.items, laid):
        model.row(entries, demand, INFINITE)
    return model


def list_model(instance, most=300000):
    model = Model()
    rows = [[] for _ in instance.items]
    limits = []
    count = 0
    for capacity, price, supply in instance.bars:
        used = []
        stack = [(0, capacity, ())]
        while stack:
            i, room, taken = stack.pop()
            if i == len(instance.items):
                counts = dict(taken)
                is_maximal = all(counts.get(j, 0) >= d or w > room
                                 for j, (w, d) in enumerate(instance.items))
                if is_maximal and taken:
                    x = model.add(price, sum(d for _, d in instance.items) if supply is None else supply)
                    used.append((x, 1))
                    for j, n in taken:
                        rows[j].append((x, n))
                continue
            count += 1
            if count > 20 * most or len(model.cost) > most:
                return None
            weight, demand = instance.items[i]
            for n in range(min(demand, room // weight) + 1):
                stack.append((i + 1, room - n * weight, taken + ((i, n),) if n else taken))
        if supply is not None and used:
            limits.append((used, supply))
    for (_, demand), entries in zip(instance.items, rows):
        model.row(entries, demand, INFINITE)
    for used, supply in limits:
        model.row(used, -INFINITE, supply)
    return model


def by_highs(model, limit):
    data, row_of, column_of, low, high = [], [], [], [], []
    for r, (entries, least, most) in enumerate(model.rows):
        for column, value in entries:
            data.append(value)
            row_of.append(r)
            column_of.append(column)
        low.append(least)
        high.append(most)
    matrix = csr_matrix((data, (row_of, column_of)), shape=(len(model.rows), len(model.cost)))
    result = milp(model.cost, constraints=LinearConstraint(matrix, low, high),
                  integrality=numpy.ones(len(model.cost)), bounds=Bounds(0, model.most),
                  options={'time_limit': limit, 'mip_rel_gap': 0.0})
    cost = None if result.x is None else round(result.fun)
    return cost, result.status == 0


def lp_text(model):
    def sum_of(entries):
        return ' '.join(f'{v:+d} x{c}' + ('\n' if k % 8 == 7 else '') for k, (c, v) in enumerate(entries))
    text = ['Minimize\n obj: ' + sum_of([(i, c) for i, c in enumerate(model.cost) if c]), 'Subject To']
    for entries, low, high in model.rows:
        entries = [(c, v) for c, v in entries if v]
        if not entries:
            continue
        if low == high:
            text.append(f' {sum_of(entries)} = {low}')
        elif low > -INFINITE:
            text.append(f' {sum_of(entries)} >= {low}')
        else:
            text.append(f' {sum_of(entries)} <= {high}')
    text.append('Bounds')
    text += [f' 0 <= x{i} <= {m}' for i, m in enumerate(model.most)]
    text.append('General')
    text += [f' x{i}' for i in range(len(model.cost))]
    return '\n'.join(text + ['End\n'])


def run(words, limit):
    try:
        return subprocess.run(words, capture_output=True, text=True, timeout=limit * 3 + 30).stdout
    except subprocess.TimeoutExpired:
        return ''


def by_program(model, limit, words, cost_pattern, done_pattern):
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'model.lp')
        with open(path, 'w') as file:
            file.write(lp_text(model))
        said = run([w.format(path=path, limit=int(limit)) for w in words], limit)
    cost = re.findall(cost_pattern, said)
    return (round(float(cost[-1])) if cost else None), re.search(done_pattern, said) is not None


def by_cbc(model, limit):
    return by_program(model, limit, ['cbc', '{path}', 'ratioGap', '0', 'allowableGap', '0', 'sec', '{limit}',
                                     'solve'], r'Objective value:\s+([-\d.e+]+)', r'Optimal solution found')


def by_glpk(model, limit):
    return by_program(model, limit, ['glpsol', '--lp', '{path}', '--tmlim', '{limit}', '-o', '/dev/stdout'],
                      r'Objective:\s+obj = ([-\d.e+]+)', r'Status:\s+INTEGER OPTIMAL')


MODELS = {'assign': assign_model, 'flow': flow_model, 'list': list_model}
NAMES = {'assign': 'assignment to bars', 'flow': 'arc flow', 'list': 'all patterns listed'}
PROGRAM_NAMES = {'highs': 'HiGHS (python3-scipy)', 'cbc': 'CBC', 'glpk': 'GLPK'}
PROGRAMS = {'highs': by_highs, 'cbc': by_cbc, 'glpk': by_glpk}


NEEDS = {'highs': ('python3-scipy', lambda: milp is not None), 'cbc': ('coinor-cbc', lambda: shutil.which('cbc')),
         'glpk': ('glpk-utils', lambda: shutil.which('glpsol'))}


def installed(programs):
    there = []
    for program in programs:
        package, is_there = NEEDS[program]
        if is_there():
            there.append(program)
        else:
            print(f'{PROGRAM_NAMES[program]} is left out: package {package} is not installed', flush=True)
    return there


def print_ours(program, set_name, limit, every):
    said = subprocess.run([program, set_name, str(limit), str(every)], capture_output=True, text=True).stdout
    for line in said.splitlines():
        if line.startswith(set_name) and line[len(set_name)] == ' ' and line[len(set_name):].lstrip()[0].isdigit():
            print(f'{set_name:18} ours           {line[18:].strip()}', flush=True)


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    words.add_argument('reference')
    words.add_argument('--set', default='')
    words.add_argument('--only', default='', help='beginnings of instance names, by commas')
    words.add_argument('--limit', type=float, default=2.0)
    words.add_argument('--programs', default='highs,cbc,glpk')
    words.add_argument('--models', default='assign,flow,list')
    words.add_argument('--every', type=int, default=1)
    words.add_argument('--ours', help='the program bench_cutting')
    words.add_argument('--csv')
    asked = words.parse_args()
    proofs = []
    programs = installed(asked.programs.split(','))
    for set_name, files in all_sets(asked.reference):
        if not set_name.startswith(asked.set):
            continue
        if asked.ours and set_name != 'examples':
            print_ours(asked.ours, set_name, asked.limit, asked.every)
        table = {}
        for number, instance in enumerate(files()):
            if number % asked.every or not instance.name.startswith(tuple(asked.only.split(','))):
                continue
            for model_name in asked.models.split(','):
                model = MODELS[model_name](instance)
                for program in programs:
                    start = time.time()
                    found = PROGRAMS[program](model, asked.limit) if model else (None, False)
                    cost, is_proven = found
                    table.setdefault((model_name, program), []).append((is_proven, time.time() - start))
                    if is_proven:
                        proofs.append((instance.name, cost, model_name, program))
                        print(f'    {instance.name} {cost} {model_name} {program} {time.time() - start:.2f} s',
                              flush=True)
        for (model_name, program), rows in table.items():
            proven = sum(1 for is_proven, _ in rows if is_proven)
            mean = sum(seconds for _, seconds in rows) / len(rows)
            print(f'{set_name:18} {model_name:7} {program:6} {proven:4} of {len(rows):4} proven; '
                  f'mean {mean * 1000:9.1f} ms', flush=True)
    if asked.csv:
        with open(asked.csv, 'w', newline='') as file:
            out = csv.writer(file, lineterminator='\n')
            out.writerow(['instance', 'cost', 'source', 'seen'])
            for name, cost, model_name, program in proofs:
                out.writerow([name, cost, f'{NAMES[model_name]} by {PROGRAM_NAMES[program]} to a gap of 0',
                              'computed'])
    return 0


if __name__ == '__main__':
    sys.exit(main())
