#!/usr/bin/env python3
"""The recovery of sizes written straight down with numpy and scipy, as a peer in speed and a check on the answer.

Reads {features, wearScales, habits, runs} as JSON from standard input; writes times in ms and the likeliest designs.
Dense arrays over shared gauge error, mean wear, share of worn places and size; nothing clever."""
import json
import sys
import time

import numpy as np
from scipy.special import erfc, erfcx

DOUBTFUL, SLIP, SWOLLEN = 0.03, 0.001, 0.7
SHARES = np.array([0.2, 0.5, 0.8])


def worn_density(off, u, scale):
    z, r = off / u, u / scale
    x = (z + r) / np.sqrt(2)
    front = np.exp(-z * z / 2) * erfcx(np.maximum(x, 0))
    back = np.exp(np.minimum(z * r + r * r / 2, 700)) * erfc(np.minimum(x, 0))
    return np.where(x >= 0, front, back) / (2 * scale)


def log_density(reading, at, scales, u):
    off = reading["value"] - at
    plain = np.exp(-0.5 * (off / u) ** 2) / (u * np.sqrt(2 * np.pi))
    kind = reading["condition"]
    if kind in ("corroded", "plated"):
        worn = worn_density(-off, u, scales).mean(axis=0, keepdims=True)
        share = SWOLLEN
    else:
        worn = worn_density(off, u, scales)
        share = {"protected": DOUBTFUL, "worn": 1.0}.get(kind)
    if share is None:
        share = SHARES.reshape(1, -1, 1, 1)
    return np.log((1 - share) * plain + share * worn + SLIP)


def recover_feature(feature, scales):
    readings = [r for r in feature["readings"] if r["condition"] != "damaged"]
    gauges = [r["gauge"] for r in readings]
    main = max(dict.fromkeys(gauges), key=gauges.count)
    shared = next(r["shared"] for r in readings if r["gauge"] == main)
    biases = np.linspace(-2.6 * shared, 2.6 * shared, 15)
    weights = np.exp(-0.5 * (biases / shared) ** 2)
    weights /= weights.sum()
    scale = np.array(scales).reshape(-1, 1, 1, 1)
    hypotheses = feature["hypotheses"]
    ends = np.array([[h["min"], h["max"]] for h in hypotheses])
    if feature["turn"] < 0:
        ends = -ends[:, ::-1]
    evidence = np.ones((len(hypotheses), len(biases)))
    for specimen in dict.fromkeys(r["specimen"] for r in readings):
        mine = [r for r in readings if r["specimen"] == specimen]
        values = [r["value"] for r in mine]
        u = min(r["own"] for r in mine)
        step = min(u / np.sqrt(len(mine)) / 1.5, 0.003)
        grid = np.arange(min(values) - 8 * max(r["own"] + r["shared"] for r in mine), max(values) + 1.2, step)
        total = 0
        for r in mine:
            if r["gauge"] == main:
                at, own = grid + biases.reshape(1, 1, -1, 1), r["own"]
            else:
                count = sum(o["gauge"] == r["gauge"] for o in mine)
                at, own = grid.reshape(1, 1, 1, -1), np.sqrt(r["own"] ** 2 + count * r["shared"] ** 2)
            total = total + log_density(r, at, scale, own)
        total = np.exp(total - total.max())
        has_unsure = total.shape[1] > 1
        likelihood = total.mean(axis=(0, 1)) if has_unsure else total.mean(axis=0)[0]
        areas = np.concatenate([np.zeros((likelihood.shape[0], 1)), np.cumsum(likelihood, axis=1) * step], axis=1)
        edges = np.concatenate([[grid[0] - step / 2], grid + step / 2])
        for b in range(len(biases)):
            inside = np.interp(ends[:, 1], edges, areas[b]) - np.interp(ends[:, 0], edges, areas[b])
            evidence[:, b] *= inside / (ends[:, 1] - ends[:, 0])
    evidence = evidence @ weights
    priors = np.array([h["prior"] for h in hypotheses])
    return evidence, priors


def recover(data):
    each = [recover_feature(f, data["wearScales"]) for f in data["features"]]
    habits = np.array(data["habits"])
    for evidence, priors in each:
        habits = habits * (evidence @ priors)
        habits = habits / habits.sum()
    top = []
    for (evidence, priors), feature in zip(each, data["features"]):
        by_habit = evidence @ priors
        chance = evidence * (priors @ (habits / by_habit))
        names = {}
        for h, p in zip(feature["hypotheses"], chance):
            names[h["written"]] = names.get(h["written"], 0) + p
        best = max(names, key=names.get)
        top.append({"written": best, "probability": float(names[best])})
    return top


data = json.load(sys.stdin)
recover(data)
times = []
for _ in range(data["runs"]):
    start = time.perf_counter()
    answer = recover(data)
    times.append(1000 * (time.perf_counter() - start))
json.dump({"times": times, "top": answer}, sys.stdout)
