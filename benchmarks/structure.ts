/**
 * What gives way: bending, modes and lobes of a chucked bar beside the same in numpy and scipy, in one run; and all that one
 * operation can do on a small lathe, with the spread of what is not known of it.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { capability } from '@sparewright/core/lathe/capability';
import { judgeCut } from '@sparewright/core/lathe/cut-verdict';
import { latheKnowledge } from '@sparewright/core/lathe/knowledge';
import { prepareSetup } from '@sparewright/core/lathe/prepare-setup';
import { whatWouldHelp } from '@sparewright/core/lathe/remedies';
import { workshopSchema } from '@sparewright/core/lathe/schema';
import { heldBar, materialOf } from '@sparewright/core/lathe/workshop-known';
import { beamModes, modalStiffness } from '@sparewright/core/structure/beam-modes';
import { leastStableWidth } from '@sparewright/core/structure/least-stable-width';
import { stabilityLimits } from '@sparewright/core/structure/limit-at-speed';
import { clamped, deflectionUnderUnitLoad } from '@sparewright/core/structure/stepped-beam';
import { figure, report, time } from './measure.ts';

const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));

const bar = {
  sections: [{ from: 0, to: 120, outerDiameter: 12 }],
  youngsModulus: 206_000,
  poissonRatio: 0.3,
  density: 7.85e-6,
  chuck: clamped,
};
const stations = Array.from({ length: 40 }, (_, i) => 3 * (i + 1));
const modes = () => beamModes(bar, { stations: [120], count: 6, elements: 40 });
const oriented = modes().map((m) => ({
  frequency: m.frequency,
  stiffness: modalStiffness(m, 0),
  damping: 0.02,
  direction: 1,
}));
const cut = { chipStiffness: 2000 };
const speeds = Array.from({ length: 100 }, (_, i) => 125 + (1875 * i) / 99);
const lobes = () => stabilityLimits(oriented, cut, speeds);

const peer = spawnSync('python3', [path('benchmarks/peers/beam_modes.py')], {
  encoding: 'utf8',
  // One core for the peer as for us.
  env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
});
const theirs: Record<string, unknown> = peer.status === 0 ? JSON.parse(peer.stdout) : { missing: 'python3' };
const own = {
  static: time('own: bending at 40 stations', 101, () => deflectionUnderUnitLoad(bar, stations), 400),
  modes: time('own: six modes, 40 elements', 101, modes, 400),
  lobes: time('own: limits at 100 speeds, crossings refined', 101, lobes, 400),
};
if ('missing' in theirs) {
  console.log(`${theirs.missing} is not installed: no peer beside these`);
  for (const f of Object.values(own)) console.log(`  ${f.what.padEnd(52)} ${f.median.toPrecision(3)} ms`);
} else {
  const times = (name: string) => {
    const list = theirs[name];
    return Array.isArray(list) ? list.map(Number) : [];
  };
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const ours = sum(Object.values(own).map((f) => f.median));
  const peers = sum(['static', 'modes', 'lobes'].map((name) => figure(name, times(name)).median));
  report('bending', [own.static], figure('numpy and scipy, dense', times('static')));
  report('modes', [own.modes], figure('scipy.linalg.eigh, dense, six modes', times('modes')));
  report('lobes', [own.lobes], figure('numpy, crossings not refined', times('lobes')));
  console.log(
    `\nall three: ${ours.toPrecision(3)} ms beside ${peers.toPrecision(3)} ms, ${(peers / ours).toPrecision(2)} times as fast (wanted: 5)`,
  );
  console.log(
    `\nagreement: first frequency ${oriented[0]?.frequency.toFixed(4)} and ${Number(theirs.frequency).toFixed(4)} Hz, ` +
      `end under a newton ${(1000 * (deflectionUnderUnitLoad(bar, [120])[0] ?? 0)).toPrecision(6)} and ${(1000 * Number(theirs.tip)).toPrecision(6)} µm, ` +
      `least stable width ${(1000 * leastStableWidth(oriented, cut).width).toFixed(2)} and ${(1000 * Number(theirs.least)).toFixed(2)} µm`,
  );
}

const workshop = workshopSchema('mm').parse(
  JSON.parse(readFileSync(path('examples/bench-lathe.workshop.json'), 'utf8')),
);
const { joint } = latheKnowledge(workshop);
const material = materialOf('303');
const [cutter] = workshop.cutters;
if (!cutter) throw new Error('the example workshop has no cutters');
const setup = {
  operation: 'turning',
  work: heldBar({ diameter: 10, length: 40, grip: 18, material: '303' }, 300),
  cutter,
  stations: Array.from({ length: 40 }, (_, i) => 1 + i),
  diameter: 10,
} as const;
const grid = {
  speeds: Array.from({ length: 16 }, (_, i) => Math.round(125 * 1.2 ** i)),
  feeds: [0.03, 0.05, 0.06, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2],
  depths: Array.from({ length: 38 }, (_, i) => 0.02 * (i + 1)),
};
const cuts = grid.speeds.length * grid.feeds.length * grid.depths.length;
const prepared = prepareSetup(joint, setup, material, 64);
const asked = { depth: 0.2, feed: 0.05, speed: 800, sizeLimit: 0.02 };
for (const f of [
  time('setup made ready: 64 draws, 40 stations, 6 modes each', 15, () => prepareSetup(joint, setup, material, 64)),
  time(`${cuts} cuts of it judged`, 15, () => capability(prepared, workshop.lathe, grid)),
  time('both together (wanted: < 150)', 15, () =>
    capability(prepareSetup(joint, setup, material, 64), workshop.lathe, grid),
  ),
  time('one verdict, setup and knowledge included', 15, () =>
    judgeCut(prepareSetup(latheKnowledge(workshop).joint, setup, material), workshop.lathe, asked),
  ),
  time('what would help: every remedy tried', 9, () =>
    whatWouldHelp({ setup, asked, joint }, material, workshop.lathe),
  ),
]) {
  console.log(
    `  ${f.what.padEnd(56)} ${f.median.toPrecision(3).padStart(7)} ms  (${f.least.toPrecision(3)} to ${f.most.toPrecision(3)})`,
  );
}
