/** A cut along a bar as options tell of it, in the words of the questions about cuts. */
import { InputError } from '@sparewright/core/errors';
import type { Workshop } from '@sparewright/core/lathe/schema';
import { readLength } from '@sparewright/core/units/length';
import { mmPerInch } from '@sparewright/core/units/quantities';
import { readWorkshopFile } from './read-file.ts';

export interface BarOptions {
  readonly workshop: string;
  readonly material: string;
  readonly diameter: string;
  readonly out: string;
  readonly feed: string;
  readonly tailstock?: true;
  readonly grip?: string;
  readonly cutter?: string;
  readonly state?: string;
}

/** What questions about a cut are asked with, but for its depth and speed. */
export interface BarCut {
  readonly units: Workshop['units'];
  readonly workshop: Workshop;
  readonly input: {
    readonly workshop: unknown;
    readonly state: string | undefined;
    readonly cutter: string;
    readonly material: string;
    readonly sections: readonly { readonly length: string; readonly outerDiameter: string }[];
    readonly grip: string;
    readonly tailstock: boolean;
    readonly feed: number | string;
  };
  readonly inWords: { readonly work: string; readonly held: string; readonly cutter: string };
}

export function readBarCut(options: BarOptions): BarCut {
  const { document, workshop } = readWorkshopFile(options.workshop);
  const { units } = workshop;
  const diameter = withUnit(options.diameter, units);
  const out = withUnit(options.out, units);
  const cutter = turningCutter(workshop, options);
  const grip = options.grip === undefined ? jawLength(workshop, diameter) : withUnit(options.grip, units);
  return {
    units,
    workshop,
    input: {
      workshop: document,
      state: options.state,
      cutter,
      material: options.material,
      sections: [{ length: out, outerDiameter: diameter }],
      grip,
      tailstock: options.tailstock ?? false,
      feed: feedOf(options.feed, units),
    },
    inWords: {
      work: `${options.material}, Ø${diameter}, ${out} out of the jaws`,
      held: `gripped over ${grip}${options.tailstock ? ', end on the tailstock centre' : ', end free'}`,
      cutter: workshop.cutters.find((c) => c.id === cutter)?.name ?? cutter,
    },
  };
}

/** A bare number speaks the unit of the workshop. */
export function withUnit(text: string, units: Workshop['units']): string {
  return /^[-\d.,/\s]+$/.test(text) ? `${text.trim()} ${units}` : text;
}

/** What is no number is left as it is, to be refused with the others. */
export function numeric(text: string): number | string {
  const value = Number(text.replace(',', '.'));
  return text.trim() === '' || Number.isNaN(value) ? text : value;
}

/** [mm/rev] */
function feedOf(text: string, units: Workshop['units']): number | string {
  const value = numeric(text);
  return units === 'in' && typeof value === 'number' ? value * mmPerInch : value;
}

function turningCutter({ cutters }: Workshop, { cutter, workshop }: BarOptions): string {
  const found = cutter === undefined ? cutters.find((c) => c.kind === 'turning') : undefined;
  const named = cutters.find((c) => c.id === cutter);
  if (named && named.kind !== 'turning') {
    const expected = 'a turning cutter; sparewright ask cut-on-lathe judges boring, grooving and parting';
    throw new InputError([{ path: '--cutter', value: `${cutter}, for ${named.kind}`, expected }]);
  }
  const id = cutter ?? found?.id;
  if (id !== undefined) return id;
  throw new InputError([
    { path: `${workshop}: cutters`, value: undefined, expected: 'a turning cutter, or --cutter ID' },
  ]);
}

/** Of the first chuck that takes the bar; a diameter that is none is left to be refused with the others. */
function jawLength({ lathe, units }: Workshop, diameter: string): string {
  const mm = readLength(diameter, units)?.mm ?? 0;
  const chuck = lathe.chucks.find((c) => !(mm > 0) || (c.from <= mm && mm <= c.to));
  if (chuck) return `${chuck.jawLength} mm`;
  throw new InputError([
    { path: '--diameter', value: diameter, expected: 'a bar that a chuck of the workshop takes, or --grip LENGTH' },
  ]);
}

const optionOf: Readonly<Record<string, string>> = {
  'sections[0].length': '--out',
  'sections[0].outerDiameter': '--diameter',
  sections: '--out and --diameter',
  to: '--out',
  sizeLimit: '--limit',
};

/** Says which option the refused place was. */
export function naming<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, path: optionOf[issue.path] ?? `--${issue.path}` })));
  }
}
