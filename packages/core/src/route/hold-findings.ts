/** What the planner has to say about the way the work is held. */
import type { Finding } from '../finding.ts';
import type { Lathe } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { driveFindings, squeezeFindings } from './grip-findings.ts';
import { facedRatio, type Holding, isFacedFarOut, slender, takesCentre } from './hold.ts';
import type { Realised } from './realise.ts';

export function holdingFindings(
  part: PartResult,
  { spindleBore }: Lathe,
  holding: Holding,
  realised: readonly Realised[],
): Finding[] {
  return [
    ...(holding.makeshift ? [nothingToGrip(part, holding)] : []),
    ...support(part, holding, spindleBore),
    ...(holding.makeshift || holding.setup.held !== 'in the chuck' ? [] : grip(part, holding)),
    ...driveFindings(holding, realised),
    ...squeezeFindings(part, holding, realised),
  ];
}

function nothingToGrip(part: PartResult, { setup }: Holding): Finding {
  return {
    id: 'route.nothing-to-grip',
    level: 'stop',
    stage: 'route',
    at: setup.id,
    says: 'No finished cylinder is long enough, and within the range of the chucks, to hold the part when it is turned round.',
    because: [{ what: 'length of the part', value: part.outline.length, unit: 'mm' }],
    remedies: [
      'Leave a stub to hold on and cut it off last',
      'Make a split bush or soft jaws for the part',
      'Turn it on a mandrel',
    ],
  };
}

function support(part: PartResult, holding: Holding, spindleBore: Mm): Finding[] {
  const { setup, ends } = holding;
  if (setup.held !== 'in the chuck') return setup.tailstock ? [] : slenderMandrel(holding);
  if (ends.centred)
    return [
      {
        id: 'route.centre-hole-stays',
        level: 'note',
        stage: 'route',
        at: setup.id,
        says: `A centre hole stays in the ${setup.endOut} end. If the original has none, leave a stub for it and cut the stub off last.`,
        because: [],
        remedies: [],
      },
      ...facedFarOut(setup, spindleBore),
    ];
  if (!slender(holding.sections, setup.endOut, holding.jaw)) return [];
  return [
    {
      id: 'route.slender-without-centre',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: 'The work stands out further than three times its thickness without the tailstock: it will bend and sing.',
      because: [{ what: 'standing out', value: setup.out, unit: 'mm', source: 'common-practice' }],
      remedies: takesCentre(part, setup.endOut)
        ? ['Support the free end with the tailstock']
        : [
            'Leave a stub with a centre hole and cut it off last',
            'Turn it in short stretches, letting the bar out as you go',
            'Use a steady',
          ],
    },
  ];
}

/** A mandrel too thin for a centre in its end, or a lathe without one. */
function slenderMandrel({ sections, setup, jaw }: Holding): Finding[] {
  const { mandrel } = setup;
  if (!mandrel || !slender(sections, setup.endOut, jaw)) return [];
  return [
    {
      id: 'route.slender-without-centre',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: 'The mandrel stands out far for its thickness without the tailstock: it will bend and sing.',
      because: [{ what: 'length of the mandrel', value: mandrel.length, unit: 'mm', source: 'common-practice' }],
      remedies: [
        'Light cuts, a keen edge',
        'Let the mandrel reach past the work, centre it, and bring up the tailstock',
      ],
    },
  ];
}

/** The end is faced and centred before the tailstock can hold it. */
function facedFarOut(setup: Holding['setup'], spindleBore: Mm): Finding[] {
  const limit = facedRatio * setup.grip.diameter;
  if (!isFacedFarOut(setup)) return [];
  return [
    {
      id: 'route.faced-far-out',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: 'The end is faced and centred far out of the jaws, before the tailstock can support it.',
      because: [{ what: 'standing out', value: setup.out, unit: 'mm', limit, source: 'common-practice' }],
      remedies: [
        setup.grip.diameter <= spindleBore
          ? 'Face and centre it first with the work pushed back through the spindle, then let it out'
          : 'File the sawn end square, mark its centre and drill the centre hole on a drilling machine, then touch it up here',
        'Steady it beside the end',
        'Slow speed and light cuts, hand near the switch',
      ],
    },
  ];
}

function grip(part: PartResult, { setup }: Holding): Finding[] {
  const findings: Finding[] = [];
  if (setup.grip.length < setup.grip.diameter / 2)
    findings.push({
      id: 'route.short-grip',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: 'The jaws hold on less than half the diameter in length.',
      because: [
        {
          what: 'length of grip',
          value: setup.grip.length,
          unit: 'mm',
          limit: setup.grip.diameter / 2,
          source: 'common-practice',
        },
      ],
      remedies: [
        'Light cuts only',
        'Hold on a split bush that bears on more of the part',
        'Push the part against the jaw steps and support it with the tailstock',
      ],
    });
  if (part.threads.some((t) => t.side === 'external' && t.on === setup.grip.on))
    findings.push({
      id: 'route.held-on-thread',
      level: 'caution',
      stage: 'route',
      at: setup.id,
      says: 'The part is held on its finished thread: jaws spoil the crests.',
      because: [],
      remedies: [
        'Screw on a nut sawn through on one side, or a split threaded bush, and hold that',
        'Dial in on a plain diameter',
      ],
    });
  return findings;
}
