/**
 * O-rings by name or by size.
 *
 * AS568 dash sizes (which ISO 3601-1 class A takes over), the preferred metric sizes of ISO 3601-1:1988, JIS B 2401 P and G,
 * and any metric ring by its two measures with class B tolerances.
 */
import { InputError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import { type LengthUnit, readLength } from '../../units/length.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from '../small-parts/standing.ts';
import { as568 } from './as568-sizes.ts';
import { isoInsideDiameters, isoSections, jis } from './metric-ring-sizes.ts';
import { classBInsideTolerance, classBSectionTolerance } from './ring-tolerance.ts';

export type RingSeries = 'AS568' | 'ISO 3601-1:1988 G' | 'JIS B 2401 P' | 'JIS B 2401 G' | 'metric, class B';

export interface ORing {
  /** `AS568-210`, `P20`, `20 × 2.65`. */
  readonly designation: string;
  readonly insideDiameter: Mm;
  /** To either side. */
  readonly insideTolerance: Mm;
  /** Diameter of the cord. */
  readonly section: Mm;
  /** To either side. */
  readonly sectionTolerance: Mm;
  readonly series: RingSeries;
  readonly sources: readonly SourceKey[];
  readonly status: Standing;
}

const hundredth = (mm: number): Mm => Math.round(mm * 100) / 100;
/** Thousandths of an inch to hundredths of a millimetre, in whole numbers so that halves round up. */
const thou = (value: number): Mm => Math.round((value * 254) / 100) / 100;

let listed: readonly ORing[] | undefined;

/** Every ring that a table names, built on first use. */
export function listedORings(): readonly ORing[] {
  listed ??= [...as568Rings(), ...isoRings(), ...jisRings()];
  return listed;
}

function* as568Rings(): Generator<ORing> {
  for (const { section, tolerance, sizes } of as568) {
    for (let i = 0; i < sizes.length; i += 3) {
      const [dash = 0, inside = 0, insideTolerance = 0] = sizes.slice(i, i + 3);
      yield {
        designation: `AS568-${String(dash).padStart(3, '0')}`,
        insideDiameter: thou(inside),
        insideTolerance: thou(insideTolerance),
        section: thou(section),
        sectionTolerance: thou(tolerance),
        series: 'AS568',
        sources: ['mem-as568', 'globaloring'],
        status: 'from memory',
      };
    }
  }
}

function* isoRings(): Generator<ORing> {
  for (const { section, tolerance, from, to } of isoSections) {
    for (const insideDiameter of isoInsideDiameters.filter((d) => d >= from && d <= to)) {
      yield {
        designation: `${insideDiameter} × ${section}`,
        insideDiameter,
        insideTolerance: hundredth(classBInsideTolerance(insideDiameter)),
        section,
        sectionTolerance: tolerance,
        series: 'ISO 3601-1:1988 G',
        sources: ['mem-gbt3452.1', 'rtdygert'],
        status: 'from memory',
      };
    }
  }
}

function* jisRings(): Generator<ORing> {
  for (const { series, section, tolerance, sizes } of jis) {
    for (const [, name, inside, insideTolerance] of sizes.matchAll(/([\d.]+A?)=([\d.]+)±([\d.]+)/g)) {
      yield {
        designation: `${series}${name}`,
        insideDiameter: Number(inside),
        insideTolerance: Number(insideTolerance),
        section,
        sectionTolerance: tolerance,
        series: `JIS B 2401 ${series}`,
        sources: ['mem-jisb2401'],
        status: 'from memory',
      };
    }
  }
}

const dashForm = /^(?:as\s*568\s*[a-c]?|iso\s*3601(?:-1)?)?\s*-\s*(\d{1,3})\s*[a-b]?$|^as\s*568\s*[a-c]?\s+(\d{1,3})$/i;
const jisForm = /^(?:jis\s*)?(?:b\s*2401\s*)?[-\s]*([pg])\s*([\d.]+a?)$/i;
const sizeForm = /^(?:(?:iso|din|gb\/t)\s*[\d.]+(?:-\d)?\s*[:-]?\s*)?([^x×*]+?)\s*[x×*]\s*([^x×*]+)$/i;

/**
 * The ring a text names: `AS568-210`, `-210`, `ISO 3601-1-210A`, `P20`, `20 x 2.65`, `18,64×3,53 mm`, `0.734 x 0.139 in`.
 * A size within 0.02 mm of an AS568, ISO or JIS ring is that ring; any other size is taken as written, with class B tolerances.
 *
 * @throws InputError naming the nearest rings when the text names none
 */
export function findORing(text: string): ORing {
  const plain = text.trim().replace(/−|–/g, '-');
  const dash = dashForm.exec(plain);
  if (dash) return byDash(Number(dash[1] ?? dash[2]), text);
  const japanese = jisForm.exec(plain);
  if (japanese) return byJis(`${japanese[1]}${japanese[2]}`.toUpperCase(), text);
  const size = sizeForm.exec(plain);
  if (size) return bySize(size[1] ?? '', size[2] ?? '', text);
  throw refused(text, 'an O-ring', 'AS568-210, 20 x 2.65 or P20');
}

function byDash(dash: number, text: string): ORing {
  const designation = `AS568-${String(dash).padStart(3, '0')}`;
  const rings = listedORings().filter((ring) => ring.series === 'AS568');
  const found = rings.find((ring) => ring.designation === designation);
  if (found) return found;
  const gap = (ring: ORing): number => Math.abs(Number(ring.designation.slice(6)) - dash);
  const nearest = rings.toSorted((a, b) => gap(a) - gap(b)).slice(0, 2);
  throw refused(text, 'a dash number of AS568', `the nearest, ${names(nearest)}`);
}

function byJis(name: string, text: string): ORing {
  const rings = listedORings().filter((ring) => ring.designation[0] === name[0] && ring.series.startsWith('JIS'));
  const found = rings.find((ring) => ring.designation === name);
  if (found) return found;
  const number = Number.parseFloat(name.slice(1));
  const gap = (ring: ORing): number => Math.abs(Number.parseFloat(ring.designation.slice(1)) - number);
  const nearest = rings.toSorted((a, b) => gap(a) - gap(b)).slice(0, 2);
  throw refused(text, `a size of JIS B 2401 ${name[0]} in the table`, `the nearest, ${names(nearest)}`);
}

function bySize(first: string, second: string, text: string): ORing {
  const unit: LengthUnit = /["″]|in(ch(es)?)?\s*$/i.test(second) ? 'in' : 'mm';
  const inside = readLength(first, unit)?.mm ?? Number.NaN;
  const section = readLength(second, unit)?.mm ?? Number.NaN;
  if (!(inside > 0 && section > 0))
    throw refused(text, 'inside diameter x cross-section', '20 x 2.65 or 0.734 x 0.139 in');
  if (section > 10 || inside > 1500)
    throw refused(text, 'a cross-section of at most 10 mm, inside diameter x section', '20 x 2.65');
  const [nearest] = nearestORings(inside, section, 1);
  if (nearest && Math.abs(nearest.insideDiameter - inside) <= 0.02 && Math.abs(nearest.section - section) <= 0.02)
    return nearest;
  return {
    designation: `${hundredth(inside)} × ${hundredth(section)}`,
    insideDiameter: hundredth(inside),
    insideTolerance: hundredth(classBInsideTolerance(inside)),
    section: hundredth(section),
    sectionTolerance: classBSectionTolerance(section),
    series: 'metric, class B',
    sources: section > 8.4 ? ['rtdygert', 'mem-din3771'] : ['rtdygert'],
    status: section > 8.4 ? 'from memory' : 'computed',
  };
}

/**
 * Listed rings nearest to a measured one. The section counts most: a worn or swollen ring keeps neither measure, but a
 * section is measured to a tenth and an inside diameter only to a few.
 *
 * @param insideDiameter  measured inside diameter [mm]
 * @param section  measured cross-section [mm]
 * @param count  how many
 */
export function nearestORings(insideDiameter: Mm, section: Mm, count = 3): ORing[] {
  const best: { readonly ring: ORing; readonly misfit: number }[] = [];
  for (const ring of listedORings()) {
    const across = (ring.insideDiameter - insideDiameter) / ring.insideTolerance;
    const thick = (ring.section - section) / ring.sectionTolerance;
    const misfit = across * across + thick * thick;
    const place = best.findIndex((b) => misfit < b.misfit);
    if (place >= 0) best.splice(place, 0, { ring, misfit });
    else if (best.length < count) best.push({ ring, misfit });
    if (best.length > count) best.pop();
  }
  return best.map(({ ring }) => ring);
}

function names(rings: readonly ORing[]): string {
  return rings.map((ring) => ring.designation).join(' or ');
}

function refused(text: string, expected: string, example: string): InputError {
  return new InputError([{ path: 'ring', value: text, expected, example }]);
}
