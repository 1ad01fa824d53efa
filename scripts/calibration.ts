/**
 * `npm run calibration`: recovers some thousands of invented parts and writes what came of it to docs/recover/accuracy.md.
 * Seeds are fixed: the same figures come out every time.
 */
import { writeFileSync } from 'node:fs';
import { seeded } from '@sparewright/core/numerics/seeded';
import type { PerHabit } from '@sparewright/core/recover/hypotheses';
import { recover } from '@sparewright/core/recover/recover';
import { classWeights } from '@sparewright/core/recover/role-classes';
import { nearestByPitchToo, nearestThread, roundedBest, roundedMean } from '../benchmarks/peers/plain-habit.ts';
import { ruleBased } from '../benchmarks/peers/re-tol.ts';
import { type Invented, inventPart, type Law, modelLaw } from '../packages/core/test/invented-parts.ts';
import { inventThread, recoveredThread } from '../packages/core/test/invented-threads.ts';
import { below, recoverOne } from '../packages/core/test/recover-one.ts';

const wears = { light: [0.003, 0.015], medium: [0.015, 0.06], heavy: [0.06, 0.25] } as const;
const gauges = ['micrometer', 'calliper'] as const;
const parts = 600;

/** A machine whose country and decade are known, so that its system of units is nearly so. */
const known = { metric: [0.72, 0.24, 0.03, 0.01], inch: [0.0375, 0.0125, 0.7125, 0.2375] } as const satisfies Record<
  string,
  PerHabit
>;

const same = (a: number | undefined, b: number | undefined) =>
  a !== undefined && b !== undefined && Math.abs(a - b) < 2e-3;
const percent = (n: number, of: number) => `${((100 * n) / of).toFixed(0)} %`;

interface Tally {
  nominal: number;
  design: number;
}

function sizesRow(wear: keyof typeof wears, gauge: (typeof gauges)[number], seed: number) {
  const [wearFrom, wearTo] = wears[wear];
  const random = seeded(seed);
  const tallies = { ours: none(), mean: none(), best: none(), rules: none() };
  let [listed, within] = [0, 0];
  for (let i = 0; i < parts; i++) {
    const habits = i % 2 === 0 ? known.metric : known.inch;
    const law: Law = {
      ...modelLaw,
      wear: 'gamma',
      maker: 'anywhere',
      wearFrom,
      wearTo,
      gauge,
      steps: true,
      habits,
      noOwn: true,
    };
    const part = inventPart(random, law);
    const found = recoverOne(part.readings, { role: part.role, isShaft: part.isShaft, isDiameter: true }, habits);
    const top = found?.ranked[0]?.hypothesis;
    const byNominal = new Map<number, number>();
    for (const r of found?.ranked ?? [])
      if (r.hypothesis.nominal !== undefined)
        byNominal.set(r.hypothesis.nominal, (byNominal.get(r.hypothesis.nominal) ?? 0) + r.probability);
    const nominal = [...byNominal].toSorted((a, b) => b[1] - a[1])[0]?.[0];
    count(tallies.ours, part, nominal, same(top?.nominal, part.nominal) && top?.toleranceClass === part.toleranceClass);
    if (
      (found?.ranked ?? [])
        .slice(0, 3)
        .some(({ hypothesis: h }) => same(h.nominal, part.nominal) && h.toleranceClass === part.toleranceClass)
    )
      listed++;
    const first = found?.densities[0];
    const p = first ? below(first, part.made[first.specimen] ?? 0) : 0;
    if (p > 0.025 && p < 0.975) within++;
    others(part, tallies);
  }
  return { wear, gauge, tallies, listed, within };
}

function none(): Tally {
  return { nominal: 0, design: 0 };
}

function count(tally: Tally, part: Invented, nominal: number | undefined, isDesign: boolean): void {
  if (same(nominal, part.nominal)) tally.nominal++;
  if (isDesign) tally.design++;
}

function others(part: Invented, tallies: { mean: Tally; best: Tally; rules: Tally }): void {
  const turn = part.isShaft ? 1 : -1;
  const all = part.readings.map((r) => turn * r.value);
  const good = part.readings.filter((r) => r.condition === 'protected').map((r) => turn * r.value);
  const isInch = part.habit.system === 'inch';
  // The plain habit takes the class that is usual for the role.
  const usual = [...classWeights(part.role, part.isShaft, 'hole')].toSorted((a, b) => b[1] - a[1])[0]?.[0];
  const mean = roundedMean(all, isInch);
  count(tallies.mean, part, mean, same(mean, part.nominal) && usual === part.toleranceClass);
  const best = roundedBest(good.length > 0 ? good : all, isInch, part.isShaft);
  count(tallies.best, part, best, same(best, part.nominal) && usual === part.toleranceClass);
  const rule = ruleBased(good.length > 0 ? good : all, part.isShaft, isInch);
  count(
    tallies.rules,
    part,
    rule?.nominal,
    same(rule?.nominal, part.nominal) && rule?.toleranceClass === part.toleranceClass,
  );
}

function threadsRow(wear: keyof typeof wears, seed: number) {
  const random = seeded(seed);
  const right = { ours: 0, crestOnly: 0, nearest: 0, nearestBoth: 0 };
  for (let i = 0; i < parts; i++) {
    const isInch = i % 2 === 1;
    const t = inventThread(random, isInch, wear);
    const habits = isInch ? known.inch : known.metric;
    const pair = (d: number | undefined, p: number | undefined) =>
      same(d, t.thread.majorDiameter) && same(p, t.thread.pitch);
    const ours = recoveredThread(t, habits, true);
    const crestOnly = recoveredThread(t, habits, false);
    const near = nearestThread(t.crest.value, isInch);
    const both = nearestByPitchToo(t.crest.value, t.pitch.value, isInch);
    if (pair(ours?.majorDiameter, ours?.pitch)) right.ours++;
    if (pair(crestOnly?.majorDiameter, crestOnly?.pitch)) right.crestOnly++;
    if (pair(near?.majorDiameter, near?.pitch)) right.nearest++;
    if (pair(both?.majorDiameter, both?.pitch)) right.nearestBoth++;
  }
  return { wear, right };
}

/** Whole machines of six sizes, nothing known of where they came from: each size alone, and all together. */
function machines(count: number, seed: number) {
  const random = seeded(seed);
  let [alone, together, system, sizes] = [0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const habits: PerHabit = i % 2 === 0 ? [0.75, 0.25, 0, 0] : [0, 0, 0.75, 0.25];
    const law: Law = {
      ...modelLaw,
      wear: 'gamma',
      wearFrom: 0.02,
      wearTo: 0.15,
      gauge: 'calliper',
      steps: true,
      habits,
      noOwn: true,
    };
    const invented = Array.from({ length: 6 }, () => inventPart(random, law));
    const features = invented.map((p, k) => ({
      id: `f${k}.diameter`,
      title: `f${k}`,
      kind: p.isShaft ? ('outside diameter' as const) : ('inside diameter' as const),
      role: p.role,
    }));
    const readingsOf = (k: number) =>
      (invented[k]?.readings ?? []).map((r) => ({
        id: `f${k}-${r.id}`,
        of: `f${k}.diameter`,
        value: Math.abs(r.value),
        condition: r.condition,
        specimen: r.specimen,
        gauge: 'c',
      }));
    const ask = (which: readonly number[]) =>
      recover({
        evidence: { readings: which.flatMap(readingsOf) },
        gauges: [{ id: 'c', name: 'calliper', kind: 'calliper' }],
        features,
      });
    const whole = ask([0, 1, 2, 3, 4, 5]);
    if (whole.inches > 0.5 === (i % 2 === 1)) system++;
    invented.forEach((part, k) => {
      sizes++;
      const id = `f${k}.diameter`;
      if (same(whole.sizes.find((s) => s.of === id)?.nominals[0]?.size, part.nominal)) together++;
      if (same(ask([k]).sizes[0]?.nominals[0]?.size, part.nominal)) alone++;
    });
  }
  return { alone: percent(alone, sizes), together: percent(together, sizes), system: percent(system, count), count };
}

const keys: (keyof typeof wears)[] = ['light', 'medium', 'heavy'];
const sizeRows = gauges.flatMap((gauge, g) => keys.map((wear, w) => sizesRow(wear, gauge, 100 + 10 * g + w)));
const threadRows = keys.map((wear, w) => threadsRow(wear, 200 + w));

const whole = machines(150, 300);

const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]) =>
  [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');

const text = `# How often the recovered design is right

Written by \`npm run calibration\`; seeds are fixed, so the figures come out the same each time. Every part is invented: ${parts} in each row, half of them metric and half in inches, 1 to 3 specimens with 2 to 6 readings each, diameters from ${modelLaw.from} to ${modelLaw.to} mm, shafts and bores of every role, all with a nominal size from the series and limits usual for the role. A quarter of the readings come from protected places, the rest from worn or unsure ones.

The wear follows a law that is **not** the one reckoned with (a gamma law of two hits in place of the exponential), gauges err anywhere within their limits and are read to 0.01 mm. The country and decade of the machine are known, so that its system of units is 95 % sure. Mean wear on diameter: light 3 to 15 µm, medium 15 to 60 µm, heavy 60 to 250 µm.

A warning: sizes, limits and roles are drawn from the same weights (workshop judgement, \`common practice\`) that the recovery starts from. On real machines of one maker the share may be lower or higher. What does not hang on them is the comparison, and that the 95 % intervals hold.

## Sizes: share with the right nominal size

${table(
  ['Gauge', 'Wear', 'Recovered', 'Mean, rounded', 'Best reading, rounded', 'Rule-based'],
  sizeRows.map(({ gauge, wear, tallies: t }) => [
    gauge,
    wear,
    ...[t.ours, t.mean, t.best, t.rules].map((x) => percent(x.nominal, parts)),
  ]),
)}

## Sizes: share with the right nominal size **and** limits

${table(
  [
    'Gauge',
    'Wear',
    'Recovered',
    'among its first three',
    'Mean, usual class',
    'Best reading, usual class',
    'Rule-based',
    '95 % interval holds the size as made',
  ],
  sizeRows.map(({ gauge, wear, tallies: t, listed, within }) => [
    gauge,
    wear,
    percent(t.ours.design, parts),
    percent(listed, parts),
    ...[t.mean, t.best, t.rules].map((x) => percent(x.design, parts)),
    percent(within, parts),
  ]),
)}

*Mean, rounded*: the mean of all readings to the nearest half millimetre or 1/32 in. *Best reading*: the protected reading, or where there is none any reading, with most metal left, rounded the same way. *Usual class*: the commonest class of the role. *Rule-based*: equations 14 and 15 of the published procedure [RE-TOL], written anew in \`benchmarks/peers/re-tol.ts\`, given the protected readings where there are any; it knows classes of ISO 286 only, so that round thou and general tolerances, more than a third of these designs, are beyond it.

Nobody can be right about limits much more often than this: h8, f7 and f8 overlap, and one specimen somewhere within them cannot tell them apart. That is why the answer is a list with probabilities.

## Whole machines: sizes that tell each other inches or millimetres

${table(
  ['Right nominal size', 'share'],
  [
    ['each size alone', whole.alone],
    ['six sizes together', whole.together],
    ['inches or millimetres told right, by the six', whole.system],
  ],
)}

${whole.count} invented machines of six sizes, measured by calliper, medium to heavy wear, nothing known of country or decade.

## Threads: share with the right diameter and pitch

${table(
  [
    'Wear of the crest',
    'Recovered, crest and pitch',
    'Recovered, crest alone',
    'Nearest diameter',
    'Nearest diameter and pitch',
  ],
  threadRows.map(({ wear, right: r }) => [
    wear,
    ...[r.ours, r.crestOnly, r.nearest, r.nearestBoth].map((n) => percent(n, parts)),
  ]),
)}

${parts} invented threads in each row, half metric and half of the inch families, common ones more often; crest within its limits less wear (light to 0.02 mm, medium to 0.08, heavy to 0.2), pitch over ten crests by calliper. 1/4 BSW and 1/4-20 UNC, say, count as the same here: only the flanks tell them apart.
`;

writeFileSync(new URL('../docs/recover/accuracy.md', import.meta.url), text);
console.log(text);
