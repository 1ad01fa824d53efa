/** How to measure: the state of the surface, diameters, lengths, tapers, run-out. */
import { bores, condition, lengths, lobes, outside, runout, tapers } from './drawings/round.ts';
import type { Topic } from './topic.ts';

export const measuringRound: readonly Topic[] = [
  {
    id: 'before',
    lead: 'A reading is worth what is known about it. Note four things with each: what it is of, the gauge, the place along and round the part, and the state of the surface there.',
    steps: [
      'Wash, degrease, dry. Stone off burrs, not the surface.',
      'Let the part and the gauge lie together for an hour.',
      'Try the gauge on something of known size. What it shows too much goes into the workshop as its zero error.',
      'Read every place twice, with the gauge taken off in between. If the two differ by more than the smallest step, read a third time and find out why.',
    ],
    beware: [
      'A part carried in the pocket is ten degrees warm: 30 mm of stainless grows by 5 µm. If it is warm all the same, type its temperature and it is taken into account.',
      'Old parts come with old dirt: lead paint, asbestos packing, caustic or poisonous residues. Find out what it held before you scrape it, wear gloves, and do not dry-brush or blow it off.',
    ],
    enter: 'Stage Evidence, under Readings; temperature and notes below the reading.',
    sources: ['ISO1', 'NPL-FAQ', 'home-workshop', 'lathe-cautions'],
  },
  {
    id: 'condition',
    lead: 'The state of the surface decides what a reading says. One good protected reading is worth ten worn ones.',
    picture: condition,
    steps: [
      'Look for places that nothing ever rubbed: under an old ring, beyond the end of the stroke, under a collar, inside the first thread.',
      'Measure there and call it protected: it tells the size as it was made.',
      'Measure the working stretch on its loaded side and across it, and call it worn: a shaft was at least this, a bore at most this.',
      'What you cannot tell is unsure: it counts as perhaps worn.',
    ],
    beware: [
      'Damaged, corroded and plated places are noted but not used: burrs, rust and chrome add metal as well as take it off.',
      'The difference between protected and worn is the wear of this part. Measure the part it works against too: there wear adds to the clearance as much.',
    ],
    enter: 'Stage Evidence, column Surface there: protected, worn, unsure, damaged, corroded or plated.',
    sources: ['recover-priors', 'composed-error'],
  },
  {
    id: 'outside',
    lead: 'With an outside micrometer wherever limits are closer than 0.1 mm; a calliper is enough for the rest.',
    picture: outside,
    steps: [
      'Wipe the anvils with clean paper drawn through them, close, and look at zero.',
      'At least three places along the part, and two round, at 0° and 90°. On the working stretch look for the smallest.',
      'Close with the ratchet or the friction thimble, always the same way; rock a little until it sits square.',
      'Read the sleeve first, then the thimble, then the vernier. Most wrong readings are wrong by half a millimetre or by 0.025 inch.',
    ],
    beware: [
      'A calliper presses as you press it. Hold it square, use the part of the jaws next to the beam, and count on about 0.03 mm.',
      'Two readings round tell oval wear, not three lobes: see the next piece.',
    ],
    enter:
      'Stage Evidence, a reading of the diameter; Along is counted from the left end of its section, Round in degrees.',
    sources: ['DIN862-863', 'TB9', 'home-workshop'],
  },
  {
    id: 'lobes',
    lead: 'A part from a three-jaw chuck or a grinder without centres can measure the same all round and still be tight in its bore.',
    picture: lobes,
    steps: [
      'Lay the part in a vee of 60° or 90° and set an indicator on top of it.',
      'Turn it slowly through one turn and count how often the needle comes back: three times means three lobes.',
      'Try the part in a bore that should pass it, or in a ring gauge.',
    ],
    beware: ['Which vee shows which number of lobes best differs: try both before you say it is round.'],
    enter: 'Note it at the reading; the size itself stays the one between flat faces.',
    sources: ['metrology-methods', 'common-practice'],
  },
  {
    id: 'bores',
    lead: 'The part that is left tells half; the bore it works in tells the other half.',
    picture: bores,
    steps: [
      'Best: a three-point bore gauge, or a dial bore gauge set in a ring or a micrometer.',
      'Good: a telescopic gauge and a micrometer. Rock it to the smallest along and largest across, lock it, measure it. Take five and drop the odd one.',
      'For small bores: pins. The largest that enters and the smallest that does not stand on both sides of the size.',
      'At the mouth, in the middle and at the far end; at 0° and 90° each.',
    ],
    beware: [
      'The jaws of a calliper have flats: in a bore of 10 mm flats of 0.5 mm read 0.013 mm small, flats of 1 mm 0.050 mm. Use them above 20 mm and for wide limits only.',
      'A bore wears bell-mouthed: the protected place is often just inside, beyond the reach of the stroke.',
    ],
    formula: 'jaws with flats of breadth b in a bore D read D − √(D² − b²) ≈ b² / (2 D) small',
    enter: 'Stage Evidence, a reading of the bore, or of the part it works against (entered at stage Duty).',
    sources: ['DIN863-4', 'DIN862-863', 'metrology-methods', 'home-workshop'],
  },
  {
    id: 'lengths',
    lead: 'From one face, always the same one; then errors do not add up.',
    picture: lengths,
    steps: [
      'Choose the face that sits against something when the part is in its machine.',
      'Measure every shoulder from it, with a depth gauge or with a calliper’s beam end held square.',
      'Depths of drilled holes go to the flat, not to the point: a pin of known length with a flat end finds it.',
    ],
    beware: [
      'A chamfer or a radius at the face shortens what the jaws catch. Measure over the whole face.',
      'A face that was hammered stands proud in the middle.',
    ],
    enter:
      'Stage Evidence, a reading of the length or depth. The part is typed section by section: each length is the difference of two of these.',
    sources: ['DIN862-863', 'home-workshop'],
  },
  {
    id: 'tapers',
    lead: 'Two diameters at a known distance give the angle; a third in the middle tells whether it is straight.',
    picture: tapers,
    steps: [
      'Scribe or set two places a known length apart, as far as the cone allows.',
      'Measure the diameter at each with the edge of the anvils, or stand the part on a plate and measure over two equal rollers, once on the plate and once on blocks of known height.',
      'Rub a little marking blue on it and try it in its seat: where the blue goes, it touches.',
    ],
    beware: ['An anvil 6 mm broad reads the thick side of its breadth. On steep cones use rollers or a knife edge.'],
    formula: 'tan(α/2) = (D − d) / (2 L);   taper 1 : L / (D − d)',
    enter:
      'Stage Part, a section or bore of shape cone: both diameters and the length. Angles with a half are worked out from them.',
    sources: ['geometry', 'metrology-methods'],
  },
  {
    id: 'runout',
    lead: 'How much a surface wobbles when the part turns about what carries it. It is what a seal or a seat feels.',
    picture: runout,
    steps: [
      'Lay the part in two vees on the surfaces it runs on, or between its own centres if they are clean.',
      'Set an indicator square on the surface, a little pressed in.',
      'Turn slowly by hand. The most less the least of one turn is the run-out.',
      'Take it in three places along: the same everywhere is an offset, growing along is a bend.',
    ],
    beware: [
      'Run-out is twice the offset of the two axes.',
      'A bent original must not be copied: the drawing shows it straight.',
      'Keep cloth, sleeves and hair away when it is turned under power; by hand is better.',
    ],
    enter:
      'A note at the reading. How closely the new part has to be dialled in is said at stage Route, under Dial in to.',
    sources: ['DIN878', 'common-practice', 'lathe-cautions'],
  },
];
