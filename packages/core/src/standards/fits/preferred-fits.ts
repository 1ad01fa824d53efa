/**
 * The fits of the trade: few are needed, and gauges and reamers exist for these.
 */
import type { SourceKey } from '../../sources/register.ts';

export interface PreferredFit {
  /** Hole basis: the usual case, since reamers come in H. */
  readonly hole: string;
  readonly shaft: string;
  /** The same fit on a shaft of class h, for instance drawn or ground bar left as it is. */
  readonly shaftBasis: { readonly hole: string; readonly shaft: string };
  readonly name: string;
  readonly use: string;
  readonly assembly: string;
  readonly sources: readonly SourceKey[];
}

/** Loosest first. H7/f7 has no exact twin on shaft basis; the nearest listed stands there. */
export const preferredFits: readonly PreferredFit[] = [
  {
    hole: 'H11',
    shaft: 'c11',
    shaftBasis: { hole: 'C11', shaft: 'h11' },
    name: 'very loose running',
    use: 'coarse parts that must always go together: pins and links in dirt, heat or paint, covers, parts with wide commercial tolerances',
    assembly: 'by hand, visible play',
    sources: ['MH-11', 'BS4500A', 'ND-uses'],
  },
  {
    hole: 'H9',
    shaft: 'd9',
    shaftBasis: { hole: 'D9', shaft: 'h9' },
    name: 'free running',
    use: 'shafts in plain bearings where position is not critical, long or several bearings, wide temperature swings, high speed',
    assembly: 'by hand',
    sources: ['MH-11'],
  },
  {
    hole: 'H9',
    shaft: 'd10',
    shaftBasis: { hole: 'D10', shaft: 'h9' },
    name: 'free running (British selection)',
    use: 'as H9/d9; the British list takes d10 where the American list takes d9',
    assembly: 'by hand',
    sources: ['BS4500A', 'GM-8'],
  },
  {
    hole: 'H9',
    shaft: 'e9',
    shaftBasis: { hole: 'E9', shaft: 'h9' },
    name: 'easy running',
    use: 'widely spaced bearings, swinging or slowly turning shafts',
    assembly: 'by hand',
    sources: ['BS4500A', 'ND-uses'],
  },
  {
    hole: 'H8',
    shaft: 'e8',
    shaftBasis: { hole: 'E8', shaft: 'h8' },
    name: 'running with wide play',
    use: 'general shafts, several bearings, sliding rods',
    assembly: 'by hand',
    sources: ['ND-uses'],
  },
  {
    hole: 'H8',
    shaft: 'f7',
    shaftBasis: { hole: 'F8', shaft: 'h7' },
    name: 'close running',
    use: 'plain bearings of ordinary machines, moderate speed and pressure, oiled; general purpose running fit',
    assembly: 'by hand',
    sources: ['MH-11', 'BS4500A', 'ND-uses'],
  },
  {
    hole: 'H7',
    shaft: 'f7',
    shaftBasis: { hole: 'F8', shaft: 'h6' },
    name: 'close running, finer bore',
    use: 'bush bored to H7 on a running shaft, or a running bore on a ground h6 shaft',
    assembly: 'by hand',
    sources: ['ND-uses', 'ND-225'],
  },
  {
    hole: 'H7',
    shaft: 'g6',
    shaftBasis: { hole: 'G7', shaft: 'h6' },
    name: 'sliding',
    use: 'parts that slide or turn slowly and must still be located: pistons and valves in bores, spindle and slide bearings, locating pins',
    assembly: 'by hand, no shake felt when oiled',
    sources: ['MH-11', 'BS4500A', 'ND-uses'],
  },
  {
    hole: 'H7',
    shaft: 'h6',
    shaftBasis: { hole: 'H7', shaft: 'h6' },
    name: 'locating',
    use: 'still parts that are to be put together and taken apart freely; gaps down to zero',
    assembly: 'by hand with oil',
    sources: ['MH-11', 'BS4500A'],
  },
  {
    hole: 'H8',
    shaft: 'h7',
    shaftBasis: { hole: 'H8', shaft: 'h7' },
    name: 'locating, coarser',
    use: 'as H7/h6 with easier tolerances',
    assembly: 'by hand',
    sources: ['fit-habits'],
  },
  {
    hole: 'H9',
    shaft: 'h9',
    shaftBasis: { hole: 'H9', shaft: 'h9' },
    name: 'locating, coarse',
    use: 'collars, levers, spacers on drawn bar',
    assembly: 'by hand',
    sources: ['fit-habits'],
  },
  {
    hole: 'H11',
    shaft: 'h11',
    shaftBasis: { hole: 'H11', shaft: 'h11' },
    name: 'locating, very coarse',
    use: 'parts slipped together and then welded, pinned or clamped',
    assembly: 'by hand',
    sources: ['ND-uses'],
  },
  {
    hole: 'H7',
    shaft: 'js6',
    shaftBasis: { hole: 'JS7', shaft: 'h6' },
    name: 'easy push',
    use: 'accurately located parts often taken apart',
    assembly: 'hand or light mallet',
    sources: ['fit-habits'],
  },
  {
    hole: 'H7',
    shaft: 'k6',
    shaftBasis: { hole: 'K7', shaft: 'h6' },
    name: 'push',
    use: 'wheels, couplings and pulleys on keys, parts to be removed now and then',
    assembly: 'mallet',
    sources: ['MH-11', 'BS4500A', 'JP'],
  },
  {
    hole: 'H7',
    shaft: 'm6',
    shaftBasis: { hole: 'M7', shaft: 'h6' },
    name: 'tight push',
    use: 'dowels and hubs that must not shift',
    assembly: 'mallet or light press',
    sources: ['fit-habits'],
  },
  {
    hole: 'H7',
    shaft: 'n6',
    shaftBasis: { hole: 'N7', shaft: 'h6' },
    name: 'tight location',
    use: 'accurate location where interference is allowed; often tight',
    assembly: 'press',
    sources: ['MH-11', 'BS4500A', 'JP'],
  },
  {
    hole: 'H7',
    shaft: 'p6',
    shaftBasis: { hole: 'P7', shaft: 'h6' },
    name: 'light press, locating',
    use: 'bushes and rings that must be located and held without high bore pressure; transition up to 3 mm',
    assembly: 'press',
    sources: ['MH-11', 'BS4500A', 'DM-276'],
  },
  {
    hole: 'H7',
    shaft: 'r6',
    shaftBasis: { hole: 'R7', shaft: 'h6' },
    name: 'press',
    use: 'bushes in housings, holding more than p6',
    assembly: 'press',
    sources: ['fit-habits'],
  },
  {
    hole: 'H7',
    shaft: 's6',
    shaftBasis: { hole: 'S7', shaft: 'h6' },
    name: 'medium drive',
    use: 'permanent joints in ordinary steel, shrink fits on thin sections; about the tightest for cast iron',
    assembly: 'press or heat',
    sources: ['MH-11', 'BS4500A', 'BH-3.2'],
  },
  {
    hole: 'H7',
    shaft: 'u6',
    shaftBasis: { hole: 'U7', shaft: 'h6' },
    name: 'force or shrink',
    use: 'parts that can stand high stress; heat rather than force',
    assembly: 'heat or cold',
    sources: ['MH-11'],
  },
];

/** The entry for a hole basis fit such as `H8/f7`, if it is one of the list. */
export function preferredFit(name: string): PreferredFit | undefined {
  return preferredFits.find((f) => `${f.hole}/${f.shaft}` === name);
}
