/**
 * What to saw off which bar for a number of parts, what it weighs, what becomes chips, and how long the saw takes.
 */
import { DomainError } from '../errors.ts';
import type { Kilogram, Mm, Second } from '../units/quantities.ts';
import { hacksawRate, mildSteelMachinability, sawKerf } from './practice.ts';
import type { CuttingList, SawnPiece } from './route-result.ts';

/** Lengths of which a cutting list is made. */
export interface PartsFromBar {
  readonly count: number;
  /** Part, facing of both ends, and the cut that takes it off. */
  readonly each: Mm;
  /** Grip and clearance of the jaws, once for each piece; nothing for sawn blanks. */
  readonly stub: Mm;
  /** Parts that one piece may hold: one for sawn blanks, what the lathe takes for bars. */
  readonly mostInPiece: number;
}

export interface RackBar {
  readonly id: string;
  readonly length: Mm;
}

/** Pieces from one bar, as many parts in a piece as may be; fewer parts than asked where the bar is too short. */
function cutUp(length: Mm, { count, each, stub, mostInPiece }: PartsFromBar): { parts: number; length: Mm }[] {
  const pieces: { parts: number; length: Mm }[] = [];
  let [left, wanted] = [length, count];
  while (wanted > 0) {
    const parts = Math.min(wanted, mostInPiece, Math.floor((left - stub) / each + 1e-9));
    if (parts < 1) return pieces;
    pieces.push({ parts, length: parts * each + stub });
    left -= parts * each + stub + (stub > 0 ? sawKerf : 0);
    wanted -= parts;
  }
  return pieces;
}

const partsIn = (pieces: readonly { parts: number }[]): number => pieces.reduce((sum, p) => sum + p.parts, 0);

/**
 * Pieces for all parts from the bars of one diameter: the shortest bar that alone is enough, else the longest first; undefined when
 * together they are too short.
 */
export function piecesFromRack(bars: readonly RackBar[], wanted: PartsFromBar): SawnPiece[] | undefined {
  const left = bars.toSorted((a, b) => a.length - b.length);
  const pieces: SawnPiece[] = [];
  for (let missing = wanted.count; missing > 0; missing = wanted.count - partsIn(pieces)) {
    const rest = { ...wanted, count: missing };
    const enough = left.findIndex((bar) => partsIn(cutUp(bar.length, rest)) === missing);
    const longest = left.findIndex((bar) => bar.length === left.at(-1)?.length);
    const bar = left.splice(enough < 0 ? Math.max(0, longest) : enough, 1)[0];
    const cut = bar && cutUp(bar.length, rest);
    if (!bar || !cut || cut.length === 0) return undefined;
    pieces.push(...cut.map((piece) => ({ ...piece, bar: bar.id })));
  }
  return pieces;
}

/** Pieces from bar that is bought as long as needed. */
export function piecesToBuy(wanted: PartsFromBar): SawnPiece[] {
  return cutUp(Number.POSITIVE_INFINITY, wanted).map((piece) => ({ ...piece, bar: undefined }));
}

/**
 * Weight of a length of round bar.
 *
 *     m = π d² l ρ / 4
 *
 * @param diameter  of the bar [mm]
 * @param length  of the bar [mm]
 * @param density  of the material [kg/mm³]
 * @returns its mass [kg]
 * @throws DomainError when diameter, length or density is negative
 * @source geometry
 * @valid solid round bar
 * @example barMass(20, 1000, 7.85e-6) → 2.466
 */
export function barMass(diameter: Mm, length: Mm, density: number): Kilogram {
  if (!(diameter >= 0 && length >= 0 && density >= 0))
    throw new DomainError('bar', { diameter, length, density }, 'diameter, length and density of 0 or more');
  return (Math.PI / 4) * diameter ** 2 * length * density;
}

/**
 * Time to saw through a round bar by hand, quick and slow.
 *
 *     t = 60 (π d² / 4) / (q m / m₀),  q in mm² a minute
 *
 * @param diameter  of the bar [mm]
 * @param machinability  of the material, free-cutting steel 100; that of mild steel when it is not known [%]
 * @returns the time of a quick and of a slow hand [s]
 * @throws DomainError when diameter or machinability is not above 0
 * @source common-practice rates for mild steel: a 20 mm bar takes 2 to 4 minutes
 * @valid a sharp blade; other materials in proportion to how they machine, which is a rough guess
 * @example sawingTime(20) → { low: 120, high: 240 }
 */
export function sawingTime(
  diameter: Mm,
  machinability: number = mildSteelMachinability,
): { readonly low: Second; readonly high: Second } {
  if (!(diameter > 0)) throw new DomainError('diameter', diameter, 'above 0 mm');
  if (!(machinability > 0)) throw new DomainError('machinability', machinability, 'above 0 %');
  const area = (Math.PI / 4) * diameter ** 2;
  const relative = machinability / mildSteelMachinability;
  return { low: (60 * area) / (hacksawRate.quick * relative), high: (60 * area) / (hacksawRate.slow * relative) };
}

export interface CuttingListInput {
  readonly wanted: PartsFromBar;
  readonly pieces: readonly SawnPiece[];
  readonly diameter: Mm;
  readonly density: number | undefined;
  readonly machinability: number | undefined;
  /** Mass of one finished part. */
  readonly partMass: Kilogram | undefined;
}

export function cuttingList({
  wanted,
  pieces,
  diameter,
  density,
  machinability,
  partMass,
}: CuttingListInput): CuttingList {
  const weigh = (length: Mm) => (density === undefined ? undefined : barMass(diameter, length, density));
  const length = pieces.reduce((sum, p) => sum + p.length, 0);
  const mass = weigh(length);
  const stubs = weigh(pieces.length * wanted.stub);
  const one = sawingTime(diameter, machinability);
  return {
    count: wanted.count,
    pieces,
    length,
    kerf: sawKerf,
    mass,
    stubs,
    chips:
      mass === undefined || stubs === undefined || partMass === undefined
        ? undefined
        : Math.max(0, mass - stubs - wanted.count * partMass),
    sawing: { low: pieces.length * one.low, high: pieces.length * one.high },
  };
}

/** One line for each kind of piece, `2 pieces sawn off bar-1: Ø16 mm, 96 mm long, for 3 parts each`; and one for the saw. */
export function cuttingListInWords(list: CuttingList, diameter: Mm): string[] {
  const alikeTo = (a: SawnPiece) =>
    list.pieces.filter((b) => b.bar === a.bar && b.parts === a.parts && Math.abs(b.length - a.length) < 1e-6);
  const kinds = list.pieces.map(alikeTo).filter((alike, i) => alike[0] === list.pieces[i]);
  const lines = kinds.flatMap((alike) => {
    const [piece] = alike;
    if (!piece) return [];
    const from = piece.bar === undefined ? '' : ` off ${piece.bar}`;
    const parts = piece.parts === 1 ? 'one part' : `${piece.parts} parts`;
    const size = `Ø${Number(diameter.toFixed(3))} mm, ${Math.ceil(piece.length)} mm long`;
    return [
      `${alike.length === 1 ? 'a piece' : `${alike.length} pieces`} sawn${from}: ${size}, for ${parts}${alike.length === 1 ? '' : ' each'}`,
    ];
  });
  const minutes = (s: Second) => Math.max(1, Math.round(s / 60));
  const saw = `with a hacksaw ${minutes(list.sawing.low)} to ${minutes(list.sawing.high)} min`;
  const chips = list.chips === undefined ? '' : `, ${list.chips.toFixed(3)} kg of it chips`;
  const weight = list.mass === undefined ? '' : `${list.mass.toFixed(3)} kg of bar${chips}; `;
  return [...lines, `for sawing: ${weight}${saw}`];
}
