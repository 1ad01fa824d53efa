/** Reading metric, BA and pipe threads. Each returns undefined when the text is of another kind. */

import { mmPerInch } from '../../units/quantities.ts';
import { inchName, inchSize } from './basic-sizes.ts';
import { standardThread } from './catalogue.ts';
import type { Thread } from './record.ts';
import { nearestInch, nearestMetric, refuse, specialMetric } from './special.ts';
import { metricSizes } from './tables/metric.ts';

const number = String.raw`\d*\.?\d+`;
const metricPattern = new RegExp(`^m ?(${number})(?: ?[x/ ] ?p?(${number}))?(?: (coarse))?$`, 'i');

/** `M10`, `M10x1.25`, `M 10 x 1.25`. Without a pitch it is the coarse one. */
export function readMetric(text: string, rest: string): Thread | undefined {
  if (!/^m ?[\d.]/i.test(rest)) return undefined;
  const match = metricPattern.exec(rest);
  if (!match) refuse(text, 'M, the diameter and, if it is not the coarse one, the pitch in millimetres', 'M10x1.25-6g');
  const diameter = Number(match[1]);
  const coarse = metricSizes.find(([d]) => d === diameter)?.[2] ?? 0;
  if (match[2] === undefined) {
    if (coarse === 0) {
      const near = nearestMetric(diameter);
      refuse(
        text,
        `a pitch, because M${diameter} has no coarse one; listed nearby: ${near.join(', ')}`,
        near[0] ?? 'M10x1',
      );
    }
    return standardThread(`M${diameter}`);
  }
  const pitch = Number(match[2]);
  return (
    standardThread(pitch === coarse ? `M${diameter}` : `M${diameter}x${pitch}`) ?? specialMetric(text, diameter, pitch)
  );
}

/** `2 BA`, `2BA`, `No. 2 BA`, `BA 2`. */
export function readBa(text: string, rest: string): Thread | undefined {
  const match = /^(?:no\.? ?|# ?)?(\d+) ?-?b\.? ?a\.?$|^b\.? ?a\.? ?(?:no\.? ?)?(\d+)$/i.exec(rest);
  if (!match) return undefined;
  const size = match[1] ?? match[2] ?? '';
  return standardThread(`${Number(size)} BA`) ?? refuse(text, 'a BA number from 0 to 16', '2 BA');
}

const pipePattern =
  /^(bspp|bspt|bsp|rp|rc|pt|pf|g|r|npt)[ .]?([\d /.-]+)$|^([\d /.]+?)(?:[ x-]+(\d+(?:\.\d+)?))?[ -]*(bspp|bspt|bsp|rp|rc|g|r|npt)$/i;
const letters: Readonly<Record<string, 'G' | 'R' | 'NPT'>> = {
  g: 'G',
  bspp: 'G',
  bsp: 'G',
  pf: 'G',
  rp: 'G',
  r: 'R',
  rc: 'R',
  bspt: 'R',
  pt: 'R',
  npt: 'NPT',
};

/** `G1/4`, `R 1/8`, `1/4 BSPP`, `1/8-27 NPT`. Plain BSP is read as parallel, which the remark says. */
export function readPipe(text: string, rest: string): Thread | undefined {
  const match = pipePattern.exec(rest);
  if (!match) return undefined;
  const word = (match[1] ?? match[5] ?? '').toLowerCase();
  const letter = letters[word] ?? 'G';
  const size = (match[2] ?? match[3] ?? '').trim();
  const inches = inchSize(size);
  const family = letter === 'G' ? 'pipe-parallel' : letter === 'R' ? 'pipe-taper' : 'npt';
  const name = inches === undefined ? size : inchName(inches);
  const found = [`${letter} ${name}`, ...nptNames(name)].map(standardThread).find((t) => t?.family === family);
  if (!found) {
    const near = nearestInch((inches ?? 0.25) * mmPerInch * 1.2, family);
    refuse(
      text,
      `a size of ${letter === 'NPT' ? 'NPT' : letter} pipe thread; listed nearby: ${near.join(', ')}`,
      near[0] ?? 'G 1/4',
    );
  }
  const tpi = match[4];
  if (tpi !== undefined && Number(tpi) !== found.threadsPerInch) {
    refuse(text, `${found.threadsPerInch} threads an inch on this size`, found.designation);
  }
  const remark = pipeRemark(word);
  if (remark === undefined) return found;
  if (word === 'bsp') return { ...found, remark };
  const series = word === 'rp' ? 'Rp' : 'Rc';
  return { ...found, series, designation: `${series} ${found.size}`, remark };
}

function nptNames(size: string): string[] {
  return [27, 18, 14, 11.5].map((tpi) => `${size}-${tpi} NPT`);
}

function pipeRemark(word: string): string | undefined {
  if (word === 'bsp') return 'BSP alone is read as parallel (G); a taper thread is written R or BSPT';
  if (word === 'rp')
    return 'Rp: the parallel nut of a taper (ISO 7-1) bolt; sizes as G, tolerances are not those of ISO 228-1';
  if (word === 'rc') return 'Rc: taper nut; sizes are those in the gauge plane';
  return undefined;
}
