/** How to measure: threads, crowns, grooves, seal grooves, drives. */
import { crown, grooves, hexagon, seal, threads } from './drawings/shaped.ts';
import type { Topic } from './topic.ts';

export const measuringShapes: readonly Topic[] = [
  {
    id: 'threads',
    lead: 'Three things settle a thread: its crest diameter, its pitch, and the angle of its flanks. Old machines mix families that look alike.',
    picture: threads,
    steps: [
      'The crest with a micrometer or calliper, where the thread was never screwed in. A bolt’s crest lies a little under its name: 11.85 mm is an M12.',
      'The pitch over as many crests as there are: from the first to the last, divided by the pitches between them. Over ten pitches the error is a tenth.',
      'Or lay thread gauges against the light: the one without light on either flank tells pitch and angle, 55° or 60°.',
      'Count in inches too: threads in exactly one inch.',
      'Inside threads: screw a known bolt in by hand, or take a cast with wax or plaster.',
    ],
    beware: [
      '1.25 mm and 20 per inch (1.27 mm) differ by 0.02 mm over one pitch and by 0.16 mm over eight.',
      'Two families with the same pitch differ in the angle: over a short nut they go together and jam later.',
      'A stretched or worn thread has a longer pitch in the loaded stretch.',
    ],
    formula: 'pitch = length over n crests / (n − 1)',
    enter: 'Stage Evidence: a reading of the crest and one of the pitch, with the pitches spanned below it.',
    sources: ['ISO68-1', 'BS84', 'NEMES-3W', 'common-practice'],
  },
  {
    id: 'crown',
    lead: 'A domed end is too short to be measured as a radius. Cap height and chord give it.',
    picture: crown,
    steps: [
      'The chord: the diameter at the rim where the dome begins, with a micrometer or calliper.',
      'The cap: the length over the dome less the length to the rim, with a depth gauge on the rim or with the part stood on a plate.',
      'Hold radius gauges against it in the light: it tells whether it is round, or flattened by use.',
    ],
    beware: [
      'An error in the cap weighs more the flatter the dome is: at a chord of 20 mm and a cap of 1 mm, 0.05 mm in the cap are 2.4 mm in the radius.',
    ],
    formula: 'R = c² / (8 h) + h / 2',
    enter: 'Stage Part, a section of shape crown: its diameter is the chord, its length the cap.',
    sources: ['geometry', 'metrology-methods'],
  },
  {
    id: 'grooves',
    lead: 'The floor is out of reach of most anvils, and it is what counts.',
    picture: grooves,
    steps: [
      'The floor: over two equal pieces of wire, less twice the wire; or with the thin edges of a calliper; or with blade anvils.',
      'The width with drill shanks, pins or feeler gauges: the largest that enters.',
      'The place from the reference face to the near wall.',
      'The radius at the floor by eye against a wire of known size.',
    ],
    beware: [
      'Measure the wire itself, and that it is the same on both sides.',
      'A worn wall leans: take the width at the floor and at the top.',
    ],
    formula: 'floor = M − 2 w',
    enter: 'Stage Part, under Grooves; readings of floor diameter and width at stage Evidence.',
    sources: ['geometry', 'metrology-methods', 'common-practice'],
  },
  {
    id: 'seal-grooves',
    lead: 'The old ring is no witness: it has set, swollen or shrunk. Measure groove, bore and gap, and choose the ring from these.',
    picture: seal,
    steps: [
      'Depth: half the bore less half the floor, not from the land, for the land may be worn.',
      'Width between the walls, and whether there is room for a back-up ring.',
      'The gap: half of bore less land, at its widest. Through it the rubber is pressed out.',
      'The floor and the walls with a fingernail and a lens: a scratch across the floor leaks.',
      'The old ring all the same: its thickness where it is roundest, in two directions, to tell the series.',
    ],
    beware: [
      'Any sharp edge the ring is drawn over cuts it: note the lead-in.',
      'Whatever held pressure can hold some still. Let it off, and cover your eyes, before an old seal is drawn.',
    ],
    enter:
      'Stage Part for the groove with its purpose; stage Duty for the bore, the ring, its rubber and the pressure.',
    sources: ['engineersedge-static', 'mem-parker-squeeze', 'parker-stretch', 'lathe-cautions'],
  },
  {
    id: 'hexagon',
    lead: 'Keys round a socket out at the corners of its mouth. Its flats further in, and the key that fits, tell the size.',
    picture: hexagon,
    steps: [
      'Across the flats with the inside jaws, on all three pairs, as deep as they go.',
      'Try keys: the largest that enters without force. Metric and inch keys lie close: 5/16 in is 7.938 mm, 8 mm is not.',
      'The depth to the flat floor with a depth gauge; what is drilled deeper is told apart.',
    ],
    beware: [
      'Across the corners is 2/√3 = 1.155 times across the flats in a sharp hexagon; a broached one is smaller there.',
    ],
    formula: 'e = 1.155 s',
    enter: 'Stage Part, under what is made off the lathe: across flats, depth, and how it is made.',
    sources: ['ISO2936', 'ISO23429', 'geometry'],
  },
];
