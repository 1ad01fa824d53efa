/** The table of a thread: infeeds of equal chip section in dial numbers, crest left to see, and the reading over wires. */
import { DomainError } from '../../errors.ts';
import type { PlacedThread } from '../../part/part-result.ts';
import {
  constantAreaInfeeds,
  crestWidthAtDepth,
  describeTip,
  infeedDepth,
} from '../../standards/threads/cutting-geometry.ts';
import { threadLimits } from '../../standards/threads/limits.ts';
import { bestWire, readingOverWires } from '../../standards/threads/over-wires.ts';
import { usualPasses } from '../../standards/threads/passes.ts';
import { preTurnedDiameter } from '../../standards/threads/pre-turned.ts';
import type { Thread } from '../../standards/threads/thread.ts';
import { degrees, type Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, dialSetting } from './dial.ts';

/**
 * Passes on a light lathe over the most that makers of threading tools advise; `common practice`, and enough to keep the first infeed
 * under the one they print for stainless steel.
 */
const lightLathe = 1.75;
/** First depth of cut on a light lathe where no pass count is published, on the radius; `common practice`. */
const firstInfeed: Mm = 0.2;
/** Passes at full depth to clear what gave way; `common practice`. */
const springPasses = 2;

/** The table; `gears` tells the change gears and the half nuts, where leadscrew and wheels are known. */
export function threadTable(
  id: string,
  operation: string,
  placed: PlacedThread,
  dial: Dial,
  gears: readonly string[] = ['Set the change gears, then check the first scratch with a pitch gauge.'],
): DialTable {
  const { thread, side } = placed;
  const aim = threadAim(thread, side);
  const choice = { crestDiameter: aim.crest, pitchDiameter: aim.pitch };
  const full = infeedDepth(thread, side, choice);
  const infeeds = constantAreaInfeeds(thread, passCount(thread.pitch, full.depth), side, choice);
  const settings = infeeds.map((p) => dialSetting(p.cumulative, dial));
  // A pass that the dial cannot tell from the one before would only rub.
  const cut = settings
    .filter((s, i) => s.travel > (settings[i - 1]?.travel ?? 0))
    .map((setting, i) => ({ name: String(i + 1), setting }));
  const last = dialSetting(full.depth, dial);
  const spring = Array.from({ length: springPasses }, (_, i) => ({ name: `spring ${i + 1}`, setting: last }));
  return {
    id,
    kind: 'thread',
    title: `Thread ${thread.designation}`,
    operation,
    columns: [
      { key: 'pass', title: 'pass', unit: '' },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'depth', title: 'depth so far', unit: 'mm', decimals: 3 },
      { key: 'crest', title: 'crest left', unit: 'mm', decimals: 2 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: [...cut, ...spring].map(({ name, setting }) => ({
      pass: name,
      turns: setting.turns,
      divisions: setting.divisions,
      depth: setting.travel,
      crest: side === 'external' ? crestWidthAtDepth(thread, setting.travel, full.tip) : '',
    })),
    notes: [
      dialNote('Cross slide', dial),
      `Crest ${side === 'external' ? 'turned' : 'bored'} to Ø${aim.crest.toFixed(3)} mm; zero the dial with the threading cutter touching it. ${aim.why}`,
      `Cutter: ${Math.round(degrees(thread.flankAngle) * 100) / 100}° included, end with a ${describeTip(full.tip)}; a sharper one goes deeper, a blunter one less deep: the wires or the mate decide.`,
      `Pitch ${Number(thread.pitch.toFixed(5))} mm${thread.threadsPerInch === undefined ? '' : ` (${thread.threadsPerInch} to the inch)`}${thread.starts > 1 ? `, ${thread.starts} starts` : ''}.`,
      ...gears,
      ...(side === 'external'
        ? [wireNote(thread, aim.pitch)]
        : ['Try the mate, or a tap or plug of the size, from pass to pass.']),
    ],
  };
}

/** Passes of equal chip section. */
function passCount(pitch: Mm, depth: Mm): number {
  try {
    return Math.max(4, Math.ceil(lightLathe * usualPasses(pitch).most));
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    // With steps t√(i/n) the first is t/√n.
    return Math.min(60, Math.max(4, Math.ceil((depth / firstInfeed) ** 2)));
  }
}

interface Aim {
  readonly crest: Mm;
  readonly pitch: Mm;
  readonly why: string;
}

/** Crest and pitch diameter to aim at: the middle of their limits where the standard gives limits, else the basic sizes. */
function threadAim(thread: Thread, side: 'external' | 'internal'): Aim {
  try {
    const limits = threadLimits(thread, side);
    const crest = preTurnedDiameter(thread, side);
    return {
      crest: crest.diameter,
      pitch: (limits.pitch.max + limits.pitch.min) / 2,
      why: `Limits for class ${limits.toleranceClass}.`,
    };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return {
      crest: side === 'external' ? thread.majorDiameter : thread.minorDiameter,
      pitch: thread.pitchDiameter,
      why: 'No limits are held for this thread: basic sizes, to be fitted to the mate.',
    };
  }
}

/** The crest's limits and aim, for the operation that turns it; undefined where the standard gives none. */
export function crestAim(thread: Thread, side: 'external' | 'internal'): { aim: Mm; max: Mm; min: Mm } | undefined {
  try {
    const crest = preTurnedDiameter(thread, side);
    return { aim: crest.diameter, max: crest.limits.max, min: crest.limits.min };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}

function wireNote(thread: Thread, pitchDiameter: Mm): string {
  const wire = Number(bestWire(thread.pitch, thread.flankAngle).toFixed(2));
  const groove = { pitchDiameter, pitch: thread.pitch, flankAngle: thread.flankAngle, starts: thread.starts };
  return `Over three wires of ${wire.toFixed(2)} mm the micrometer reads ${readingOverWires(groove, wire).toFixed(3)} mm when the thread is right. Other wires need another reading: ask over-wires.`;
}
