/**
 * The limit by which verdicts are given, of whole lathes: edge, land, approach angle and a tool side that dips, against a
 * simulation in time in which modes move along their own way and the force pushes in its own direction.
 *
 * As in structure/land.slow.test.ts: eight lengths of a turn spread over a wave, −15 % and +30 % left out. The modes themselves
 * are taken from the program; they are held against closed forms and a finite-element program elsewhere.
 */
import { expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import { type SwingingMode, simulateLand } from '../../test/land-simulation.ts';
import { inPlaneRatio } from '../cutting/turning-force.ts';
import { radians } from '../units/quantities.ts';
import type { Setup } from './chain.ts';
import { cutForces } from './cut-forces.ts';
import { latheKnowledge } from './knowledge.ts';
import { draws } from './sampling.ts';
import { marginOf } from './singing-limit.ts';
import { latheModes, ringingWork } from './vibration.ts';
import { heldBar, materialOf } from './workshop-known.ts';

/** Force for each volume pressed aside, as docs/lathe/plausibility.md states it [N/mm³]. */
const pressedAside = 1.3e5;
/** A margin beyond this is not followed to its limit: no cut is taken that near to it. */
const most = 5;
const phases = [0, 1, 2, 3, 4, 5, 6, 7];

function random(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low * (high / low) ** (state / 2 ** 32);
  };
}

test('drawn lathes and cuts are quiet below the limit of the verdict and sing above it', () => {
  const workshop = exampleWorkshop();
  const [cutter] = workshop.cutters.filter((c) => c.kind === 'turning');
  if (!cutter) throw new Error('the example workshop has lost its turning cutter');
  const lathes = draws(latheKnowledge(workshop).joint, 20);
  const between = random(3);
  let [quiet, sang, undecided, blades] = [0, 0, 0, 0];
  lathes.forEach((values, i) => {
    const facing = i % 4 === 3;
    const plunging = i % 7 === 1;
    const diameter = between(6, 30);
    const length = facing ? 20 : diameter * between(1.5, 7);
    const setup: Setup = {
      operation: facing ? 'facing' : plunging ? 'grooving' : 'turning',
      work: heldBar({ diameter, length, grip: between(8, 25), material: '303', tailstock: false }, 300),
      cutter: {
        ...cutter,
        // A blade whose whip is felt, but no longer than it is said to dig in.
        ...(plunging ? ({ kind: 'parting', width: 1.5, bladeHeight: 9 } as const) : {}),
        edge: 'honed',
        noseRadius: between(0.1, 0.8),
        approachAngle: between(45, 95),
        overhang: plunging ? between(9, 18) : between(12, 30),
      },
      stations: [length],
      diameter,
    };
    const material = materialOf('303');
    const forces = cutForces(setup, material, plunging ? 1.5 : between(0.1, 1), between(0.03, 0.15));
    const speed = between(8, 80);
    const ringing = ringingWork(setup.work, length);
    const margin = Math.exp(marginOf(values, setup, ringing, forces, speed));
    const chipStiffness = forces.chipStiffness * values.force;
    const land = Math.sqrt((2 * values.rubbing) / pressedAside);
    const ratio = inPlaneRatio(radians(setup.cutter.rake));
    // The chip is measured square to the edge, in the plane of radius and axis; the cutting force is what the in-plane force is a
    // ratio of, and works on whatever dips.
    const square = forces.effectiveApproach;
    const modes = latheModes(values, setup, ringing).map((m): SwingingMode => {
      const along = (m.axis === 'radial') !== facing ? Math.cos(square) : Math.sin(square);
      const away = along * Math.cos(m.dip);
      // A land is pressed square to itself; what it drags along by friction is 0.3 of that [lathe-judgement, as in the model].
      const rubbed = m.of === 'blade' ? away + 0.3 * Math.sin(m.dip) : undefined;
      return { ...m, away, rubbed, driven: away + Math.sin(m.dip) / ratio };
    });
    // Modes that are hardly felt only cost time.
    const give = (m: SwingingMode) => Math.abs(m.away * m.driven) / m.stiffness;
    const softest = Math.max(...modes.map(give));
    const felt = modes.filter((m) => give(m) > 0.02 * softest);
    const frequency = loudest(felt, chipStiffness, (1000 / 60) * speed, land);
    const hear = (share: number, phase: number) =>
      simulateLand(
        felt,
        {
          chipStiffness,
          width: share * forces.chipWidth,
          turn: (8 + phase / phases.length) / frequency,
          speed: (1000 / 60) * speed,
          feed: 0.1,
          land,
          pressedAside,
          contact: 'even',
          frequency,
        },
        50,
      );
    const told = JSON.stringify({ i, margin, frequency, speed, diameter, length, land, chipStiffness });
    // Far below its limit the cut itself is tried; near it, what is just below the limit.
    const free = margin > most;
    for (const phase of free ? [i % 8] : [0, 4]) {
      const heard = hear(free ? 1 : 0.85 * margin, phase);
      expect(heard, told).not.toBe('sings');
      if (heard === 'quiet') quiet++;
      else undecided++;
    }
    if (free) return;
    if (plunging) blades++;
    if (phases.some((phase) => hear(1.3 * margin, phase) === 'sings')) sang++;
    else undecided++;
  });
  expect(blades).toBeGreaterThan(0);
  expect(quiet).toBeGreaterThan(24);
  expect(sang).toBeGreaterThan(6);
  expect(undecided).toBeLessThan(5);
}, 240_000);

/** Where the law without lobes is least: found by trying, so that the lengths of a turn can be chosen about it. */
function loudest(modes: readonly SwingingMode[], chipStiffness: number, speed: number, land: number): number {
  let best = { frequency: Math.min(...modes.map((m) => m.frequency)), load: Infinity };
  for (let f = 40; f < 6000; f *= 1.003) {
    const load = loadAt(modes, f, chipStiffness, speed, land);
    if (load < best.load) best = { frequency: f, load };
  }
  return best.frequency;
}

/** Least chip breadth times stiffness at a frequency over phases tried one by one: the least −P/(1 − w cos φ) where Q agrees. */
function loadAt(modes: readonly SwingingMode[], f: number, chipStiffness: number, speed: number, land: number): number {
  let [re, im] = [0, 0];
  for (const m of modes) {
    const r = f / m.frequency;
    const [a, b] = [1 - r * r, 2 * m.damping * r];
    const size = (m.away * m.driven) / m.stiffness / (a * a + b * b);
    re += size * a;
    im -= size * b;
  }
  if (re >= 0) return Infinity;
  const kl = (2 * Math.PI * f * land) / speed;
  const left = Math.abs(Math.sin(kl / 2) / (kl / 2));
  const rub = ((2 * Math.PI * f * pressedAside * land ** 2) / 2 / (chipStiffness * speed)) * left ** 2;
  const [p, q] = [re / (re * re + im * im), -im / (re * re + im * im)];
  let least = Infinity;
  let before = Number.NaN;
  for (let i = 0; i <= 360; i++) {
    const phase = (2 * Math.PI * i) / 360;
    const load = -p / (1 - left * Math.cos(phase));
    const off = q + load * (left * Math.sin(phase) + rub);
    if (before * off <= 0) least = Math.min(least, load);
    before = off;
  }
  return least;
}
