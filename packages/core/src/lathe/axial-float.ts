/**
 * A spindle that moves freely along its axis: what that does to a face.
 *
 * Knowledge: float is lost motion, not stiffness. The cut pushes the spindle back until it rests against its stop, so that the face
 * comes out proud by anything from nothing to the whole float, depending on where the spindle stood at touching off; and only the
 * push of the cut holds it there.
 */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import type { Lathe } from './schema.ts';

/** Float when the owner has not told any: 0.005 to 0.02 mm on headstocks in order; common practice [mm]. */
const usualFloat: Mm = 0.01;
/** Float worth a caution on its own [mm]; judgement. */
const muchFloat: Mm = 0.03;

/** Float of a lathe, as told or as usual. */
export function axialFloatOf({ tests }: Pick<Lathe, 'tests'>): Mm {
  return tests?.axialFloat ?? usualFloat;
}

/** What to say of the float of a facing cut that pushes with a force square to the face. */
export function floatFindings({ setup, give }: PreparedSetup, push: number, told: boolean): Finding[] {
  const { axialFloat = 0, operation } = setup;
  if (operation !== 'facing' || axialFloat === 0) return [];
  const pressed = 1000 * push * Math.max(...give);
  return [
    {
      id: 'lathe.axial-float',
      level: axialFloat > muchFloat ? 'caution' : 'note',
      stage: 'route',
      at: 'cut',
      says: `${told ? 'The spindle floats along its axis' : 'The float of the spindle along its axis was not told; the usual one is taken'}: the face may come out proud by as much, and a tremble larger than the cut presses edge and work apart lifts the spindle off its stop. Whether it then hammers is not reckoned here.`,
      because: [
        { what: 'float', value: axialFloat, unit: 'mm', limit: muchFloat },
        {
          what: 'pressed apart by the cut',
          value: Number(pressed.toPrecision(2)),
          unit: 'µm',
          limit: 1000 * axialFloat,
        },
      ],
      remedies: [
        ...(told ? [] : ['measure it: indicator on the chuck face, pull and push the spindle by hand']),
        'take up the float at the bearings',
        'push the spindle back by hand before touching off',
        'measure the length after the cut and correct by what was really taken',
      ],
    },
  ];
}
