/** The small workshop of the questions' examples, and what their answers rest on. */

export const demoWorkshop = ({ tests, noseRadius = 0 }: { tests?: object; noseRadius?: number } = {}) => ({
  sparewright: 'workshop',
  version: 1,
  units: 'mm',
  name: 'Example',
  lathe: {
    name: 'light bench lathe',
    speeds: { kind: 'steps', rpm: [200, 400, 800, 1600] },
    drive: { power: 450, efficiency: 0.75, behaviour: 'constant power' },
    swing: 180,
    betweenCentres: 300,
    spindleBore: 20,
    chucks: [{ id: 'chuck', name: 'three-jaw chuck', jaws: 3, kind: 'self-centring', from: 3, to: 95, jawLength: 18 }],
    tailstock: { centre: 'live', travel: 50 },
    dials: { crossSlide: { division: 0.02, perTurn: 1, reads: 'radius' } },
    feeds: [0.05, 0.1],
    ...(tests ? { tests } : {}),
  },
  cutters: [
    {
      id: 'knife',
      name: 'ground cutter',
      kind: 'turning',
      hand: 'right',
      material: 'high-speed steel',
      noseRadius,
      approachAngle: 90,
      rake: 0,
      edge: 'sharp',
      overhang: 20,
      maxDepth: 1,
    },
  ],
  drills: [],
  gauges: [],
  bars: [],
});

/** Where the judgement of a cut comes from. */
export const cutSources = [
  'WKZ',
  'colwell-1954',
  'merchant-1945',
  'LIT',
  'przemieniecki-ch5',
  'error-copying',
  'ALT131',
  'methods-dynamics',
  'wu-1989',
  'KJ',
  'NSKF',
  'lathe-kc-spread',
  'lathe-depths',
  'lathe-judgement',
  'laplace-approximation',
] as const;
