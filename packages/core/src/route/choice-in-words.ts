/** Why a cut is as it is, in words and numbers: what was chosen, and which limit forbids each way of being quicker. */
import type { MetrePerMinute, Mm } from '../units/quantities.ts';
import type { Binding, ChosenCut } from './choose-cut.ts';
import type { Limit, Measure } from './cut-candidate.ts';
import type { CutNumbers } from './route-result.ts';

export function choiceInWords(chosen: ChosenCut): string {
  const { numbers } = chosen;
  const feed = numbers.byHand ? `by hand, about ${numbers.feed} mm a turn` : `${numbers.feed} mm a turn`;
  const passes = `${numbers.passes} ${numbers.passes === 1 ? 'pass' : 'passes'} of ${length(numbers.depth)} at ${numbers.speed} rpm and ${feed}`;
  if (chosen.passed.length > 0)
    return `${passes}: no cut keeps every limit, this one passes them least: ${chosen.passed.map(broken).join('; ')}.`;
  return `${passes}: the quickest of this lathe's speeds and feeds. ${chosen.binding.map((b) => stopped(b, numbers)).join(' ')}`;
}

/** What a limit would come to, against what is allowed. */
const told: Record<Limit, (value: number, most: number) => string> = {
  bending: (value, most) => `give way ${length(value)} on the diameter, allowed ${length(most)}`,
  sings: (value, most) => `sing with a probability of ${percent(value)}, allowed ${percent(most)}`,
  power: (value, most) => `take ${percent(value)} of the drive, usable ${percent(most)}`,
  cutter: (_, most) => `be deeper than the cutter stands, ${length(most)}`,
  chip: (value, most) => `make a chip of ${length(value)}, thinner than ${length(most)} rubs`,
  finish: (value, most) =>
    Number.isFinite(value)
      ? `leave Ra ${fine(value)} µm, asked ${fine(most)} µm`
      : `pass the nose radius, too coarse for Ra ${fine(most)} µm`,
  feed: (value, most) =>
    `be ${fine(value / most)} times the ${fine(most)} mm a turn published for it or borne by its nose`,
};

function broken({ limit, value, most }: Measure): string {
  return `it would ${told[limit](value, most)}`;
}

function stopped({ raise, next, breaks }: Binding, numbers: CutNumbers): string {
  const what =
    next === undefined
      ? ''
      : {
          depth: `Passes of ${length(next)}`,
          feed: `A feed of ${fine(next)} mm a turn`,
          speed: `${fine(next)} rpm`,
        }[raise];
  if (breaks) return `${what} would ${told[breaks.limit](breaks.value, breaks.most)}.`;
  if (next !== undefined) return '';
  if (raise === 'feed') return numbers.byHand ? 'A hand feeds no faster evenly.' : 'The lathe has no larger feed.';
  if (raise === 'speed') return 'The next faster speed is more than published for this material and cutter.';
  return numbers.passes === 1
    ? 'One pass takes it all.'
    : 'In fewer passes the one before would not tell what the last will do.';
}

/** A cut by hand: the speed it may have, and what it asks of drive and work; a step of a curve gives way on its length. */
export function handCutInWords(
  cut: CutNumbers,
  published: MetrePerMinute,
  on: 'diameter' | 'length' = 'diameter',
): string {
  const slower =
    cut.cuttingSpeed > published
      ? `more than the ${fine(published)} published, but the slowest there is`
      : `of ${fine(published)} published`;
  return `${cut.speed} rpm, ${fine(cut.cuttingSpeed)} m/min ${slower}; by hand about ${fine(cut.feed)} mm a turn. It takes ${percent(cut.powerShare)} of the drive and pushes the work ${length(cut.bending)} on the ${on}.`;
}

function length(value: Mm): string {
  return `${Number(value.toFixed(3))} mm`;
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function fine(value: number): number {
  return Number(value.toPrecision(3));
}
