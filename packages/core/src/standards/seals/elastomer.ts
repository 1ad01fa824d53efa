/**
 * Which rubber for which medium and temperature.
 */
import { InputError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Celsius } from '../../units/quantities.ts';
import { type ElastomerRow, elastomerRows, type Rating } from './elastomer-table.ts';

/** Rows that rate a property of the rubber, not a medium it touches. */
const properties = new Set([
  'compression set',
  'ozone / weather',
  'temperature (air, standard grade)',
  'temperature (special grade)',
]);

export const elastomers: readonly string[] = [...new Set(elastomerRows.map((row) => row.material))];
export const media: readonly string[] = [...new Set(elastomerRows.map((row) => row.medium))].filter(
  (m) => !properties.has(m),
);

const elastomerAliases: Record<string, string> = {
  nitrile: 'NBR',
  'buna-n': 'NBR',
  viton: 'FKM',
  fpm: 'FKM',
  silicone: 'VMQ',
  fluorosilicone: 'FVMQ',
  epdm: 'EPDM-peroxide',
  neoprene: 'CR',
  chloroprene: 'CR',
  polyurethane: 'AU/EU',
  pu: 'AU/EU',
};

const mediumAliases: Record<string, string> = {
  oil: 'mineral oil and grease',
  grease: 'mineral oil and grease',
  'hydraulic oil': 'mineral oil and grease',
  'mineral oil': 'mineral oil and grease',
  petrol: 'fuel',
  gasoline: 'fuel',
  diesel: 'fuel',
  'petrol with ethanol': 'petrol with ethanol',
  e10: 'petrol with ethanol',
  water: 'hot water',
  air: 'compressed air',
  'brake fluid': 'glycol brake fluid (DOT 3/4/5.1)',
  glycol: 'glycol brake fluid (DOT 3/4/5.1)',
  'dot 3': 'glycol brake fluid (DOT 3/4/5.1)',
  'dot 4': 'glycol brake fluid (DOT 3/4/5.1)',
  'dot 5.1': 'glycol brake fluid (DOT 3/4/5.1)',
  'dot 5': 'silicone brake fluid (DOT 5)',
  lhm: 'mineral brake / LHM fluid',
  hfc: 'water-glycol hydraulic fluid HFC',
};

/** The table's name of a rubber: `nitrile`, `nbr`, `NBR 70` are NBR; EPDM without more is taken as peroxide-cured. */
export function knownElastomer(text: string): string | undefined {
  return known(text.replace(/[-\s]*\d{2}\s*(sh(ore)?\s*a?)?$/i, ''), elastomers, elastomerAliases);
}

/** The table's name of a medium: `DOT 4` is glycol brake fluid. */
export function knownMedium(text: string): string | undefined {
  return known(text, media, mediumAliases);
}

function known(text: string, list: readonly string[], aliases: Record<string, string>): string | undefined {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/dot\s*/, 'dot ');
  return (
    list.find((name) => name.toLowerCase() === plain) ?? (Object.hasOwn(aliases, plain) ? aliases[plain] : undefined)
  );
}

function elastomerName(text: string): string {
  return knownElastomer(text) ?? refuse('elastomer', text, elastomers);
}

function mediumName(text: string): string {
  return knownMedium(text) ?? refuse('medium', text, media);
}

function refuse(path: string, value: string, list: readonly string[]): never {
  throw new InputError([{ path, value, expected: `one of ${list.join(', ')}`, example: list[0] }]);
}

export interface ElastomerVerdict {
  readonly material: string;
  readonly medium: string;
  /** The worst that any source says; undefined when none rates this pair. */
  readonly rating: Rating | undefined;
  /** Best that any source says, where they disagree. */
  readonly best: Rating | undefined;
  /** The narrowest limits that the sources give this material, in air or in this medium. */
  readonly coldest: Celsius | undefined;
  readonly hottest: Celsius | undefined;
  readonly rows: readonly ElastomerRow[];
  readonly sources: readonly SourceKey[];
}

/**
 * What the published ratings say of a rubber in a medium. Where sources disagree, the worse rating and the narrower
 * temperatures count; a standard grade is assumed.
 *
 * @param material  rubber, by its symbol or trade word
 * @param medium  what it touches
 * @throws InputError naming what is in the table
 */
export function rateElastomer(material: string, medium: string): ElastomerVerdict {
  const rubber = elastomerName(material);
  const fluid = mediumName(medium);
  const own = elastomerRows.filter((row) => row.material === rubber);
  const rows = own.filter((row) => row.medium === fluid || (fluid === 'steam' && row.medium === 'hot water and steam'));
  const bounds = [...rows, ...own.filter((row) => row.medium === 'temperature (air, standard grade)')];
  const ratings = rows.flatMap((row) => row.rating ?? []).toSorted();
  return {
    material: rubber,
    medium: fluid,
    rating: ratings.at(-1),
    best: ratings[0],
    coldest: greatest(bounds.flatMap((row) => row.coldest ?? [])),
    hottest: least(bounds.flatMap((row) => row.hottest ?? [])),
    rows,
    sources: [...new Set(bounds.map((row) => row.source))],
  };
}

/** Temperature limits of a standard grade in air, the narrowest that the sources give. */
export function elastomerTemperatures(material: string): {
  coldest: Celsius | undefined;
  hottest: Celsius | undefined;
  sources: SourceKey[];
} {
  const rubber = elastomerName(material);
  const rows = elastomerRows.filter(
    (row) => row.material === rubber && row.medium === 'temperature (air, standard grade)',
  );
  return {
    coldest: greatest(rows.flatMap((row) => row.coldest ?? [])),
    hottest: least(rows.flatMap((row) => row.hottest ?? [])),
    sources: [...new Set(rows.map((row) => row.source))],
  };
}

/** Rubbers rated for a medium, best first by their worst rating. */
export function elastomersFor(medium: string): ElastomerVerdict[] {
  const fluid = mediumName(medium);
  return elastomers
    .map((material) => rateElastomer(material, fluid))
    .filter((verdict) => verdict.rating !== undefined)
    .toSorted((a, b) => (a.rating ?? 'F').localeCompare(b.rating ?? 'F'));
}

/** Linear expansion of rubbers [1/K], from memory of handbook tables. */
const expansion: Record<string, number> = {
  NBR: 1.1e-4,
  HNBR: 1.1e-4,
  'EPDM-sulfur': 1.6e-4,
  'EPDM-peroxide': 1.6e-4,
  FKM: 1.6e-4,
  VMQ: 1.8e-4,
  FVMQ: 1.8e-4,
  CR: 1.4e-4,
  FFKM: 2.3e-4,
};

/**
 * Linear expansion of a rubber; undefined when it is not known or none is remembered.
 *
 *     from a table
 *
 * @param material  rubber, by its symbol or trade word
 * @returns expansion [1/K]
 * @source mem-elastomers
 * @valid unfilled to usual filling; fillers shift it by a fifth either way
 * @example elastomerExpansion('nitrile') → 0.00011
 */
export function elastomerExpansion(material: string): number | undefined {
  return expansion[knownElastomer(material) ?? ''];
}

function greatest(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : Math.max(...values);
}

function least(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : Math.min(...values);
}
