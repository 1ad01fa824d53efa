/**
 * Speed of the recovery of a whole part: twelve sizes, three specimens, 120 readings. Beside it, in the same run, a plain
 * numpy program that works out the same probabilities (benchmarks/peers/recover_numpy.py; it needs Debian's python3-numpy
 * and python3-scipy). The peer does less: no designs in words, no wear by place, no limits, no next reading.
 *
 *     npx tsx benchmarks/recover.ts
 */
import { spawnSync } from 'node:child_process';
import type { Gauge, Reading } from '@sparewright/core/evidence/schema';
import { weigh } from '@sparewright/core/evidence/uncertainty';
import { seeded } from '@sparewright/core/numerics/seeded';
import type { RecoverFeature } from '@sparewright/core/recover/features';
import { habitPrior } from '@sparewright/core/recover/hypotheses';
import { ready } from '@sparewright/core/recover/prepare';
import { wearScales } from '@sparewright/core/recover/reading-density';
import { recover } from '@sparewright/core/recover/recover';
import { sizeEvidence } from '@sparewright/core/recover/size';
import { inventPart, modelLaw } from '../packages/core/test/invented-parts.ts';
import { figure, report, time } from './measure.ts';

const gauges: Gauge[] = [
  { id: 'micrometer', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 },
  { id: 'calliper', name: 'calliper', kind: 'calliper', resolution: 0.01 },
];
const machine = { country: 'Germany', decade: 1930 };

/** Twelve sizes of an invented metric machine, ten readings each on three specimens. */
function inventJob(): { features: RecoverFeature[]; readings: Reading[] } {
  const random = seeded(11);
  const features: RecoverFeature[] = [];
  const readings: Reading[] = [];
  const law = { ...modelLaw, habits: [0.75, 0.25, 0, 0] as const, wearTo: 0.1, steps: true };
  while (features.length < 12) {
    const part = inventPart(random, law);
    const perSpecimen = ['s0', 's1', 's2'].map((s) => part.readings.filter((r) => r.specimen === s));
    const wanted = [4, 3, 3];
    if (perSpecimen.some((rs, i) => rs.length < (wanted[i] ?? 0))) continue;
    const id = `f${features.length}.diameter`;
    const kind = part.isShaft ? 'outside diameter' : 'inside diameter';
    features.push({ id, title: id, kind, role: part.role });
    perSpecimen.forEach((rs, s) => {
      for (const r of rs.slice(0, wanted[s]))
        readings.push({
          id: `r${readings.length}`,
          of: id,
          value: Math.abs(r.value),
          gauge: part.isShaft ? r.gauge : 'calliper',
          condition: r.condition,
          specimen: `s${s}`,
        });
    });
  }
  return { features, readings };
}

const { features, readings } = inventJob();
const input = { evidence: { readings }, gauges, features, machine };
const result = recover(input);
const ours = time('recover(), the whole answer', 15, () => recover(input), 5);
const cpuStart = process.cpuUsage();
for (let i = 0; i < 10; i++) recover(input);
const cpu = process.cpuUsage(cpuStart).user / 1e4;

/** What the peer is handed: the same readings made ready, the same hypotheses with their priors. */
const forPeer = features.map((f) => {
  const isShaft = f.kind === 'outside diameter';
  const weighed = readings
    .filter((r) => r.of === f.id)
    .map((r) =>
      weigh(
        r,
        gauges.find((g) => g.id === r.gauge),
        isShaft ? 'outside' : 'inside',
        11.5e-6,
      ),
    );
  const prepared = ready(weighed, isShaft ? 1 : -1).readings;
  const evidence = sizeEvidence(prepared, { role: f.role, isShaft, isDiameter: true });
  return {
    turn: isShaft ? 1 : -1,
    readings: prepared,
    hypotheses: (evidence?.weighed ?? []).map(({ hypothesis: h }) => ({
      written: h.written,
      min: h.min,
      max: h.max,
      prior: h.prior,
    })),
  };
});

const peer = spawnSync('python3', [new URL('./peers/recover_numpy.py', import.meta.url).pathname], {
  input: JSON.stringify({ features: forPeer, wearScales, habits: habitPrior(machine), runs: 5 }),
  encoding: 'utf8',
  maxBuffer: 1 << 28,
});

interface PeerAnswer {
  readonly times: readonly number[];
  readonly top: readonly { readonly written: string; readonly probability: number }[];
}

function readPeer(text: string): PeerAnswer | undefined {
  try {
    const answer: PeerAnswer = JSON.parse(text);
    return answer;
  } catch {
    return undefined;
  }
}

const answer = readPeer(peer.stdout ?? '');
console.log(
  `${features.length} sizes, 3 specimens, ${readings.length} readings; processor time of one recover(): ${cpu.toFixed(0)} ms`,
);
if (!answer) {
  console.log(`The peer did not run: ${(peer.stderr || peer.error?.message || 'no answer').trim().split('\n').at(-1)}`);
  report('Recovery of a whole part', [], ours);
} else {
  report('Recovery of a whole part', [ours], figure('numpy, probabilities and intervals only', answer.times));
  const differences = result.sizes.map((s, i) => {
    const theirs = answer.top[i];
    const same = s.designs.find((d) => d.written === theirs?.written);
    return Math.abs((same?.probability ?? 0) - (theirs?.probability ?? 1));
  });
  console.log(
    `\nLargest difference in the probability of the likeliest design: ${Math.max(...differences).toPrecision(2)}`,
  );
}
