/**
 * Time to plan a route: the plunger in a fresh process and after one edit, and how it grows with the number of features.
 * Writes docs/route/README.md and the chart beside it.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { workshopSchema } from '@sparewright/core/lathe/schema';
import { definePart } from '@sparewright/core/part/define-part';
import { type PartDocument, partSchema } from '@sparewright/core/part/schema';
import { planRoute } from '@sparewright/core/route/plan-route';
import { drawChart } from '@sparewright/output/chart/draw-chart';
import { paintSvg } from '@sparewright/output/svg/paint';
import { buildSync } from 'esbuild';
import { type Figure, figure, report } from './measure.ts';

const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const read = (name: string) => JSON.parse(readFileSync(path(`examples/${name}`), 'utf8'));
const shop = read('bench-lathe.workshop.json');
const folder = mkdtempSync(join(tmpdir(), 'sparewright-route-'));

function coldTimes(runs: number): number[] {
  const outfile = join(folder, 'cold.mjs');
  const entryPoints = [path('benchmarks/cold-route.ts')];
  buildSync({ entryPoints, bundle: true, platform: 'node', format: 'esm', target: 'node20', outfile });
  return Array.from({ length: runs }, () =>
    Number(spawnSync(process.execPath, [outfile, path('examples')], { encoding: 'utf8' }).stdout),
  );
}

/** Times of planning one part after another, each a little different from the last. */
function editTimes(parts: readonly PartDocument[], lathe: unknown = shop): number[] {
  const workshop = readWorkshop(lathe);
  const defined = parts.map((p) => definePart(partSchema('mm').parse(p)));
  return defined.map((part) => {
    const start = process.cpuUsage();
    planRoute(part, workshop, undefined);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
}

function plungers(count: number): PartDocument[] {
  const document = read('plunger.job.json');
  readJob(document);
  return Array.from({ length: count }, (_, i) => {
    const part: PartDocument = structuredClone(document.part);
    const body = part.outside.find((s) => s.id === 'body');
    if (body?.kind === 'cylinder') body.diameter = `${(32 - 0.01 * i).toFixed(2)} f7`;
    return part;
  });
}

/** A stepped shaft of so many features: two sections, then a groove on the second, and so on; thin by hundredths at a time. */
function shaft(features: number, edit: number): PartDocument {
  const outside: PartDocument['outside'] = [];
  const grooves: NonNullable<PartDocument['grooves']> = [];
  for (let i = 0; outside.length + grooves.length < features; i++) {
    const id = `section-${i + 1}`;
    const diameter = Number((28 - 0.4 * i - (i === 1 ? 0.01 * edit : 0)).toFixed(2));
    outside.push({ kind: 'cylinder', id, diameter: i % 3 === 0 ? `${diameter} h9` : diameter, length: 6.5 });
    if (i % 2 === 1 && outside.length + grooves.length < features)
      grooves.push({ id: `groove-${i}`, on: id, along: 2, width: 2.2, floorDiameter: diameter - 2, purpose: 'other' });
  }
  return { name: 'invented shaft', material: 'C45', outside, grooves };
}

const cold = figure('plunger in a fresh process, loading left out (wanted: < 400)', coldTimes(7));
const warm = plungers(18);
const edited = figure('plunger after one changed diameter (wanted: < 80)', editTimes(warm).slice(3));
const counts = [2, 6, 12, 20, 30, 40, 50, 60];
const long = { ...shop, lathe: { ...shop.lathe, betweenCentres: 600 } };
workshopSchema('mm').parse(long);
const growth = counts.map((features) => {
  const times = editTimes(
    Array.from({ length: 8 }, (_, i) => shaft(features, i)),
    // Cutters of its own, so that nothing was judged before.
    { ...long, name: `${features} features` },
  );
  return { features, first: times[0] ?? Number.NaN, edited: figure('', times.slice(2)) };
});
rmSync(folder, { recursive: true, force: true });

report('planning a route', [cold], edited);
for (const g of growth)
  console.log(
    `  ${String(g.features).padStart(3)} features: at first ${ms(g.first)}, after an edit ${ms(g.edited.median)}`,
  );

const sixty = growth.at(-1);
const six = growth.find((g) => g.features === 6);
const power =
  sixty && six ? Math.log(sixty.edited.median / six.edited.median) / Math.log(sixty.features / six.features) : 0;
const points = (of: (g: (typeof growth)[number]) => number) => growth.map((g) => [g.features, of(g)] as const);
writeFileSync(
  path('docs/route/growth.svg'),
  paintSvg(
    drawChart(
      {
        title: 'Time to plan a route',
        description: `Time to plan a stepped shaft over its number of features, at first and after one changed diameter. Sixty features take ${ms(sixty?.first)} at first and ${ms(sixty?.edited.median)} after an edit.`,
        x: { title: 'features', unit: '', from: 0, to: 62 },
        y: { title: 'time', unit: 'ms', from: 0 },
        lines: [
          { points: points((g) => g.first), meaning: 'measured', label: 'at first' },
          { points: points((g) => g.edited.median), meaning: 'accent', label: 'after an edit' },
        ],
        marks: growth.flatMap((g) => [
          { x: g.features, y: g.first, shape: 'ring' as const, meaning: 'measured' as const },
          { x: g.features, y: g.edited.median, shape: 'dot' as const, meaning: 'accent' as const },
        ]),
      },
      { decimalSign: 'point' },
    ),
    { theme: 'paper' },
  ),
);
writeFileSync(path('docs/route/README.md'), page(cold, edited));

function page(fresh: Figure, after: Figure): string {
  const rows = growth.map((g) => `| ${g.features} | ${ms(g.first)} | ${ms(g.edited.median)} |`);
  return `# How long planning takes

Measured by \`npx tsx benchmarks/route.ts\` on ${cpus().length} cores that others used as well: processor time, medians.

| Route of the plunger | Time | Wanted |
|---|---|---|
| in a fresh process, loading left out | ${ms(fresh.median)} (${ms(fresh.least)} to ${ms(fresh.most)}) | under 400 ms |
| after one changed diameter | ${ms(after.median)} (${ms(after.least)} to ${ms(after.most)}) | under 80 ms |

A stepped shaft with a groove on every second section, planned at first and after one changed diameter:

| Features | At first | After an edit |
|---|---|---|
${rows.join('\n')}

![Time over the number of features](growth.svg)

From 6 to 60 features the time after an edit grows with their number to the power ${power.toFixed(1)}. What takes time is judging each cut on the lathe: the work's shape at that moment is boiled down once for each operation and remembered, so that an edit costs the operations whose work it changes.

The order of operations is exact as long as no more beginnings of one length are alike than are kept: 3000 divided by the number of operations of a setup, at least 24. Beyond that it is the best of those that looked best.
`;
}

function ms(value: number | undefined): string {
  return `${value === undefined ? '?' : value < 10 ? value.toFixed(1) : value.toFixed(0)} ms`;
}
