/**
 * Natural frequencies and bending of stepped shafts from the finite-element program CalculiX (Debian: calculix-ccx): quarter
 * models of solid bricks, clamped at one end, bending in one plane. Writes packages/core/reference/dynamics/ccx-shafts.csv and
 * ccx-shafts-bending.csv, against which the tests of the beam are held.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

interface Shaft {
  readonly id: string;
  /** Length, outside diameter, bore. */
  readonly sections: readonly (readonly [number, number, number])[];
}

type Point = readonly [number, number];
/** A four-sided patch: (u, v) in 0 … 1 to a point of the quarter disc, and the radius it reaches out to. */
interface Patch {
  readonly from: number;
  readonly to: number;
  at(u: number, v: number): Point;
}

const steel = { youngsModulus: 206_000, poissonRatio: 0.3, density: 7.85e-9 };
const modes = 3;
/** Push square to the shaft at its free end [N]. */
const push = 1000;

const ring = (from: number, to: number, low: number, high: number): Patch => ({
  from,
  to,
  at: (u, v) => {
    const r = from + u * (to - from);
    const angle = low + v * (high - low);
    return [r * Math.cos(angle), r * Math.sin(angle)];
  },
});

/** Three patches about the axis, the outer two ending on a circle. */
function core(radius: number): Patch[] {
  const p = 0.55 * radius;
  const m = 0.42 * radius;
  const mix = (a: Point, b: Point, t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  const arc = (angle: number): Point => [radius * Math.cos(angle), radius * Math.sin(angle)];
  return [
    { from: 0, to: radius, at: (u, v) => mix(mix([0, 0], [p, 0], u), mix([0, p], [m, m], u), v) },
    { from: 0, to: radius, at: (u, v) => mix(mix([p, 0], [m, m], v), arc((v * Math.PI) / 4), u) },
    { from: 0, to: radius, at: (u, v) => mix(mix([m, m], [0, p], v), arc(((1 + v) * Math.PI) / 4), u) },
  ];
}

type Analysis = 'modes' | 'bending';

function input(shaft: Shaft, analysis: Analysis): string {
  const radii = [...new Set(shaft.sections.flatMap(([, outer, bore]) => [outer / 2, bore / 2]))]
    .filter((r) => r > 0)
    .toSorted((a, b) => a - b);
  const smallest = radii[0] ?? 1;
  const rings = radii.flatMap((to, i) => {
    const from = i === 0 ? smallest / 2 : (radii[i - 1] ?? 0);
    return [ring(from, to, 0, Math.PI / 4), ring(from, to, Math.PI / 4, Math.PI / 2)];
  });
  const patches = [...core(smallest / 2), ...rings];
  const nodes = new Map<string, { id: number; x: number; y: number; z: number }>();
  const node = ([x, y]: Point, z: number): number => {
    const key = [x, y, z].map((c) => Math.round(c * 1e5)).join();
    const known = nodes.get(key) ?? { id: nodes.size + 1, x, y, z };
    nodes.set(key, known);
    return known.id;
  };
  const elements: number[][] = [];
  let start = 0;
  for (const [length, outer, bore] of shaft.sections) {
    const layers = Math.max(2, Math.ceil(length / (smallest * 0.7)));
    for (let layer = 0; layer < layers; layer++) {
      const [z0, z2] = [start + (length * layer) / layers, start + (length * (layer + 1)) / layers];
      const z1 = (z0 + z2) / 2;
      for (const { from, to, at } of patches) {
        if (to > outer / 2 + 1e-9 || from < bore / 2 - 1e-9) continue;
        const corners = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
        const sides = [at(0.5, 0), at(1, 0.5), at(0.5, 1), at(0, 0.5)];
        elements.push([
          ...corners.map((p) => node(p, z0)),
          ...corners.map((p) => node(p, z2)),
          ...sides.map((p) => node(p, z0)),
          ...sides.map((p) => node(p, z2)),
          ...corners.map((p) => node(p, z1)),
        ]);
      }
    }
    start += length;
  }
  const list = [...nodes.values()];
  const end = start;
  const face = list.filter((n) => Math.abs(n.z - end) < 1e-9);
  const ends = shaft.sections.map((_, i) => shaft.sections.slice(0, i + 1).reduce((sum, [long]) => sum + long, 0));
  const set = (name: string, pick: (n: (typeof list)[number]) => boolean) =>
    `*NSET,NSET=${name}\n${list
      .filter(pick)
      .map((n) => n.id)
      .join(',\n')}`;
  return [
    '*NODE',
    ...list.map((n) => `${n.id},${n.x.toFixed(6)},${n.y.toFixed(6)},${n.z.toFixed(6)}`),
    '*ELEMENT,TYPE=C3D20R,ELSET=ALL',
    ...elements.map((e, i) => `${i + 1},${e.slice(0, 10).join(',')},\n${e.slice(10).join(',')}`),
    set('CLAMP', (n) => n.z < 1e-9),
    set('MIRROR', (n) => Math.abs(n.y) < 1e-9),
    set('BEND', (n) => Math.abs(n.x) < 1e-9),
    `*MATERIAL,NAME=STEEL\n*ELASTIC\n${steel.youngsModulus},${steel.poissonRatio}\n*DENSITY\n${steel.density}`,
    '*SOLID SECTION,ELSET=ALL,MATERIAL=STEEL',
    // Bending along x: nothing leaves the plane y = 0, and across the plane x = 0 motion is turned about.
    '*BOUNDARY\nCLAMP,1,3\nMIRROR,2,2\nBEND,2,3',
    ...(analysis === 'modes'
      ? [`*STEP\n*FREQUENCY\n${modes}\n*END STEP\n`]
      : [
          set('SECTIONENDS', (n) => Math.abs(n.y) < 1e-9 && ends.some((z) => Math.abs(n.z - z) < 1e-9)),
          '*STEP\n*STATIC\n*CLOAD',
          // A quarter of the push, spread over the quarter of the end face.
          ...face.map((n) => `${n.id},1,${(push / 4 / face.length).toPrecision(9)}`),
          '*NODE PRINT,NSET=SECTIONENDS\nU\n*END STEP\n',
        ]),
  ].join('\n');
}

/** Numbers of the lines that the program printed. */
function solve(folder: string, shaft: Shaft, analysis: Analysis): number[][] {
  writeFileSync(join(folder, 'shaft.inp'), input(shaft, analysis));
  const run = spawnSync('ccx', ['shaft'], { cwd: folder, encoding: 'utf8' });
  if (run.status !== 0) throw new Error(`ccx failed on ${shaft.id}: ${run.stdout.slice(-400)}`);
  return readFileSync(join(folder, 'shaft.dat'), 'utf8')
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number));
}

function frequencies(folder: string, shaft: Shaft): number[] {
  return solve(folder, shaft, 'modes')
    .filter((cells) => cells.length === 5 && Number.isInteger(cells[0]))
    .slice(0, modes)
    .map((cells) => cells[3] ?? Number.NaN);
}

/** How far the axis has moved at the end of each section, the mean over its nodes across the plane of bending [mm]. */
function bending(folder: string, shaft: Shaft): number[] {
  const places = new Map<number, number>();
  const text = input(shaft, 'bending');
  for (const line of text.slice(0, text.indexOf('*ELEMENT')).split('\n')) {
    const [id, , , z] = line.split(',').map(Number);
    if (id !== undefined && z !== undefined) places.set(id, z);
  }
  const moved = solve(folder, shaft, 'bending').filter((c) => c.length === 4 && Number.isInteger(c[0]));
  let z = 0;
  return shaft.sections.map(([length]) => {
    z += length;
    const here = moved.filter(([id]) => Math.abs((places.get(id ?? 0) ?? Number.NaN) - z) < 1e-6).map((c) => c[1] ?? 0);
    return here.reduce((sum, x) => sum + x, 0) / here.length;
  });
}

if (spawnSync('ccx', ['-v']).error) {
  console.log('ccx is not installed (Debian: apt-get install calculix-ccx); nothing was run.');
} else {
  const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  const shafts: Shaft[] = JSON.parse(readFileSync(here('shafts.json'), 'utf8'));
  const folder = mkdtempSync(join(tmpdir(), 'ccx-shafts-'));
  const told = (shaft: Shaft) => `${shaft.id},"${shaft.sections.map((s) => s.join(' x ')).join('; ')}"`;
  const write = (file: string, columns: string, values: (shaft: Shaft) => readonly number[]): void => {
    const rows = shafts.flatMap((shaft) =>
      values(shaft).map((value, i) => `${told(shaft)},${i + 1},${value.toPrecision(7)},computed,CCX`),
    );
    const csv = [`id,sections_length_outer_bore_mm,${columns},status,source`, ...rows, ''].join('\n');
    writeFileSync(here(`../../packages/core/reference/dynamics/${file}`), csv);
    console.log(csv);
  };
  write('ccx-shafts.csv', 'mode,frequency_Hz', (shaft) => frequencies(folder, shaft));
  write('ccx-shafts-bending.csv', `section,moved_mm_by_${push}_N`, (shaft) => bending(folder, shaft));
  rmSync(folder, { recursive: true });
}
