/** Ra that each way of working usually leaves. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Micrometre } from '../../units/quantities.ts';

export interface ProcessRoughness {
  readonly process: string;
  readonly raMin: Micrometre;
  readonly raMax: Micrometre;
  readonly source: SourceKey;
}

type Row = readonly [process: string, raMin: Micrometre, raMax: Micrometre];

/** Printed in microinch. */
const read: readonly Row[] = [
  ['flame cutting', 25.4, 25.4],
  ['sawing', 6.35, 25.4],
  ['drilling', 3.17, 12.7],
  ['EDM', 3.17, 6.35],
  ['milling', 1.6, 12.7],
  ['broaching', 1.6, 6.35],
  ['reaming', 1.6, 6.35],
  ['laser', 1.6, 12.7],
  ['burnishing', 0.41, 1.6],
  ['grinding', 0.2, 6.35],
  ['honing', 0.41, 3.17],
  ['polishing', 0.41, 1.6],
  ['extruding', 3.17, 6.35],
  ['investment casting', 6.35, 12.7],
  ['permanent mould casting', 6.35, 12.7],
  ['die casting', 1.6, 6.35],
];

/** Average application band of the usual handbook chart, from memory. */
const remembered: readonly Row[] = [
  ['turning, boring', 0.4, 6.3],
  ['grinding', 0.1, 1.6],
  ['honing', 0.1, 0.8],
  ['polishing', 0.1, 0.4],
  ['lapping', 0.05, 0.4],
  ['superfinishing', 0.05, 0.2],
  ['reaming', 0.8, 3.2],
  ['drilling', 1.6, 6.3],
  ['milling', 0.8, 6.3],
  ['roller burnishing', 0.2, 0.4],
  ['cold drawing', 0.8, 3.2],
  ['sawing', 1.6, 25],
];

const from =
  (source: SourceKey) =>
  ([process, raMin, raMax]: Row): ProcessRoughness => ({ process, raMin, raMax, source });

export const processRoughness: readonly ProcessRoughness[] = [
  ...read.map(from('firstratemold')),
  ...remembered.map(from('mem-b46')),
];

/** All printed bands of a process, `turning`, `grinding` …; sources disagree. */
export function roughnessOfProcess(process: string): ProcessRoughness[] {
  const asked = process.trim().toLowerCase();
  const found = processRoughness.filter((p) => p.process.split(', ').includes(asked) || p.process === asked);
  if (found.length === 0) {
    const known = [...new Set(processRoughness.flatMap((p) => p.process.split(', ')))];
    throw new DomainError('process', process, `one of ${known.join(', ')}`);
  }
  return found;
}

/** Processes whose usual band holds a wanted Ra, those that reach it easily first. */
export function processesFor(ra: Micrometre): ProcessRoughness[] {
  return processRoughness.filter((p) => p.raMin <= ra && ra <= p.raMax).toSorted((a, b) => a.raMin - b.raMin);
}
