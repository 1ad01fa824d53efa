/** Workshops as documents: well and badly stocked, metric and inch dials, stepped and stepless drives. For tests of whatever plans work. */
import fc from 'fast-check';
import type { WorkshopDocument } from '../src/lathe/schema.ts';

type Cutter = WorkshopDocument['cutters'][number];
type Lathe = WorkshopDocument['lathe'];

const metric = { division: 0.02, perTurn: 1 };
const dials = fc.constantFrom<Lathe['dials']['crossSlide'][]>(
  { ...metric, reads: 'radius' },
  { division: 0.05, perTurn: 2, reads: 'radius' },
  { division: 0.05, perTurn: 4, reads: 'diameter' },
  { division: '0.001 in', perTurn: '0.1 in', reads: 'radius' },
  { division: '0.001 in', perTurn: '0.05 in', reads: 'diameter' },
);
const along = fc.constantFrom<Lathe['dials']['crossSlide'][]>(
  { ...metric, reads: 'travel' },
  { division: '0.001 in', perTurn: '0.1 in', reads: 'travel' },
  { division: 0.25, perTurn: 18, reads: 'travel' },
);

const speeds = fc.constantFrom<Lathe['speeds'][]>(
  { kind: 'steps', rpm: [125, 200, 315, 500, 800, 1250, 2000] },
  { kind: 'steps', rpm: [600] },
  { kind: 'range', from: 50, to: 2500 },
  { kind: 'range', from: 400, to: 400 },
);

const drive = fc.constantFrom<Lathe['drive'][]>(
  { power: 450, efficiency: 0.75, behaviour: 'constant power' },
  { power: 120, behaviour: 'constant torque', baseSpeed: 900 },
  { power: 2200, behaviour: 'constant torque' },
);

const feeds = fc.constantFrom<Lathe['feeds'][]>([], [0.1], [0.05, 0.08, 0.1, 0.14], [0.2, 0.4]);

const common = { hand: 'right', material: 'high-speed steel', rake: 8, edge: 'sharp', overhang: 20 } as const;

/** Every kind of cutter a turner may own; a workshop has some of them. */
const everyCutter: readonly Cutter[] = [
  {
    ...common,
    id: 'rough',
    name: 'roughing cutter',
    kind: 'turning',
    material: 'carbide',
    edge: 'honed',
    noseRadius: 0.4,
    approachAngle: 93,
    maxDepth: 0.5,
  },
  {
    ...common,
    id: 'finish',
    name: 'finishing cutter',
    kind: 'turning',
    noseRadius: 0.3,
    approachAngle: 92,
    rake: 14,
    maxDepth: 0.5,
  },
  {
    ...common,
    id: 'pointed',
    name: 'pointed cutter',
    kind: 'turning',
    hand: 'neutral',
    noseRadius: 0,
    approachAngle: 75,
    maxDepth: 0.2,
  },
  {
    ...common,
    id: 'left',
    name: 'left-hand cutter',
    kind: 'turning',
    hand: 'left',
    noseRadius: 0.2,
    approachAngle: 92,
    maxDepth: 0.6,
  },
  {
    ...common,
    id: 'round',
    name: 'round-nosed cutter',
    kind: 'turning',
    hand: 'neutral',
    noseRadius: 3,
    approachAngle: 60,
    rake: -5,
    edge: 'moulded',
    maxDepth: 1.5,
  },
  {
    ...common,
    id: 'bar-6',
    name: 'boring bar 6',
    kind: 'boring',
    noseRadius: 0.2,
    approachAngle: 95,
    overhang: 32,
    maxDepth: 0.4,
    barDiameter: 6,
    minBore: 8,
  },
  {
    ...common,
    id: 'bar-10',
    name: 'boring bar 10',
    kind: 'boring',
    material: 'carbide',
    edge: 'honed',
    noseRadius: 0.4,
    approachAngle: 95,
    overhang: 45,
    maxDepth: 0.6,
    barDiameter: 10,
    minBore: 13,
  },
  {
    ...common,
    id: 'groove',
    name: 'grooving cutter 1.5',
    kind: 'grooving',
    hand: 'neutral',
    noseRadius: 0.1,
    approachAngle: 90,
    maxDepth: 6,
    width: 1.5,
  },
  {
    ...common,
    id: 'part',
    name: 'parting cutter 2',
    kind: 'parting',
    hand: 'neutral',
    noseRadius: 0.1,
    approachAngle: 90,
    maxDepth: 15,
    width: 2,
  },
  {
    ...common,
    id: 'thread-60',
    name: 'threading cutter 60°',
    kind: 'threading',
    noseRadius: 0.1,
    approachAngle: 60,
    rake: 0,
    maxDepth: 2,
    flankAngle: 60,
  },
  {
    ...common,
    id: 'thread-55',
    name: 'threading cutter 55°',
    kind: 'threading',
    noseRadius: 0.1,
    approachAngle: 62,
    rake: 0,
    maxDepth: 2,
    flankAngle: 55,
  },
];

/** A lathe with everything on its rack that has a name here. */
export const fullWorkshop: WorkshopDocument = {
  sparewright: 'workshop',
  version: 1,
  units: 'mm',
  name: 'invented workshop',
  lathe: {
    name: 'light lathe',
    speeds: { kind: 'steps', rpm: [125, 200, 315, 500, 800, 1250, 2000] },
    drive: { power: 450, efficiency: 0.75, behaviour: 'constant power' },
    swing: 180,
    betweenCentres: 400,
    spindleBore: 20,
    chucks: [{ id: 'three', name: 'three-jaw', jaws: 3, kind: 'self-centring', from: 3, to: 95, jawLength: 18 }],
    tailstock: { centre: 'live', travel: 55, largestDrill: 13 },
    dials: {
      crossSlide: { ...metric, reads: 'radius' },
      topSlide: { ...metric, reads: 'travel' },
      topSlideTravel: 48,
      tailstock: { division: 0.05, perTurn: 2, reads: 'travel' },
    },
    feeds: [0.05, 0.08, 0.1, 0.14],
    leadscrew: { kind: 'metric', pitch: 1.5 },
  },
  cutters: [...everyCutter],
  drills: [3, 4, 5, 6, 8, 9, 10, 12, 13].map((diameter) => ({
    id: `drill-${diameter}`,
    diameter,
    kind: 'twist',
    pointAngle: 118,
    material: 'high-speed steel',
  })),
  gauges: [],
  bars: [],
};

/** Workshops with some of the cutters and drills, some without feeds, tailstock, dials along the work. */
export function arbitraryWorkshop(): fc.Arbitrary<WorkshopDocument> {
  return fc
    .record({
      speeds,
      drive,
      feeds,
      crossSlide: dials,
      topSlide: fc.option(along, { nil: undefined }),
      saddle: fc.option(along, { nil: undefined }),
      tailstock: fc.constantFrom(fullWorkshop.lathe.tailstock, undefined, { centre: 'none' as const, travel: 30 }),
      leadscrew: fc.constantFrom(fullWorkshop.lathe.leadscrew, undefined),
      jawLength: fc.constantFrom(8, 18, 40),
      to: fc.constantFrom(25, 95),
      betweenCentres: fc.constantFrom(80, 400),
      cutters: fc.subarray([...everyCutter]),
      drills: fc.subarray([...fullWorkshop.drills]),
      travel: fc.constantFrom(20, 48, undefined),
    })
    .map(({ speeds: s, drive: d, feeds: f, cutters, drills, ...r }) => ({
      ...fullWorkshop,
      lathe: {
        ...without(fullWorkshop.lathe),
        speeds: s,
        drive: d,
        feeds: f,
        betweenCentres: r.betweenCentres,
        chucks: [
          { id: 'three', name: 'three-jaw', jaws: 3, kind: 'self-centring', from: 3, to: r.to, jawLength: r.jawLength },
        ],
        ...(r.tailstock ? { tailstock: r.tailstock } : {}),
        ...(r.leadscrew ? { leadscrew: r.leadscrew } : {}),
        dials: {
          crossSlide: r.crossSlide,
          ...(r.topSlide ? { topSlide: r.topSlide } : {}),
          ...(r.saddle ? { saddle: r.saddle } : {}),
          ...(r.travel ? { topSlideTravel: r.travel } : {}),
        },
      },
      cutters,
      drills,
    }));
}

function without(lathe: Lathe): Omit<Lathe, 'tailstock' | 'leadscrew'> {
  const { tailstock: _tailstock, leadscrew: _leadscrew, ...rest } = lathe;
  return rest;
}
