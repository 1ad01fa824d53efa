/** What a number or a word on the screens and in the packet means. */
import type { Topic } from './topic.ts';

const meaning = (topic: Omit<Topic, 'beware' | 'sources'> & Partial<Topic>): Topic => ({
  beware: [],
  sources: [],
  ...topic,
});

export const meanings: readonly Topic[] = [
  meaning({
    id: 'uncertainty',
    lead: 'u is the standard uncertainty of a reading, U the expanded one, twice as much: about 95 of 100 such readings lie within U of the true size.',
    steps: [
      'u is made of four shares: the error the gauge is allowed by its standard or by your own certificate, the smallest step that is read, the repeatability of the hand, and the temperature.',
      'The column “mostly from” says which of them weighs most: that is the one to better.',
    ],
    formula: 'u = √(u₁² + u₂² + u₃² + u₄²);   U = 2 u',
    sources: ['GUM', 'DIN862-863', 'home-workshop', 'EA402'],
  }),
  meaning({
    id: 'as-made',
    lead: 'Between these two sizes the original was made, with 95 chances in 100, given everything that was measured and that wear is not known.',
    steps: [
      'Protected places pull it to what they show; worn places only say at least (a shaft) or at most (a bore).',
      'It grows with the uncertainty of the gauge and shrinks with every further protected reading.',
      'A size is settled when the interval leaves one sensible design; until then the drawing shows it in pencil.',
    ],
    sources: ['composed-error', 'recover-priors', 'GUM'],
  }),
  meaning({
    id: 'probability',
    lead: '“32 f7 82 %” means: of all sizes and limits a designer of that time and place may have written, this one explains the readings best, and 82 in 100 of the weight lie on it.',
    steps: [
      'Before anything is measured, round sizes, preferred numbers and the fits of the trade weigh more than odd ones.',
      'Every reading then raises the designs that agree with it and lowers the others.',
    ],
    beware: [
      'How common sizes and limits are is workshop judgement. What is not in the list cannot win: look at the conflicts that are shown.',
      'A probability is no permission. You decide, and the decision is written down with its reason.',
    ],
    formula: 'weight after = weight before × how likely the readings are under that design',
    sources: ['recover-priors', 'composed-error', 'ISO-286-1', 'ISO-3'],
  }),
  meaning({
    id: 'limits',
    lead: 'The finished size must lie between least and most. “By” says where the two come from.',
    steps: [
      'f7, H8 and the like: limits of ISO 286, from the size and the letter. The letter is the place, the number the width.',
      'ISO 2768 fine, medium, coarse: general limits, for sizes that carry none of their own.',
      '± and +/−: limits as you typed them.',
    ],
    sources: ['ISO-286-1', 'ISO-2768-1', 'ANSI-B4.2'],
  }),
  meaning({
    id: 'clearance',
    lead: 'The bore less the shaft, on the diameter. Least is the smallest bore with the largest shaft, most the largest bore with the smallest shaft.',
    steps: [
      'Plus is clearance: it slides. Minus is interference: it is pressed.',
      'When least is minus and most is plus it is a transition: it may be either, and is fitted by hand.',
      'The bore counts as it is today, worn, with the uncertainty of its readings.',
    ],
    formula: 'least = D least − d most;   most = D most − d least',
    sources: ['ISO-286-1', 'fit-habits'],
  }),
  meaning({
    id: 'squeeze',
    lead: 'Four numbers say whether a ring seals: how much it is flattened, how much it is stretched over its floor, how full the groove is, and how wide the gap is that rubber could be pressed into.',
    steps: [
      'Squeeze: thickness less depth, in hundredths of the thickness. Too little leaks, too much rubs and sets.',
      'Stretch: floor over inside of the ring. It thins the ring and shortens its life.',
      'Fill: area of the ring over that of the groove, hot and swollen too. Rubber cannot be compressed: it needs room.',
      'Low and high are the worst corners of all limits together; typical is the middle.',
    ],
    formula: 'squeeze = (W − h) / W;   stretch = (d floor − d ring) / d ring;   fill = (π/4) W² / (h b)',
    sources: ['mem-parker-squeeze', 'parker-stretch', 'parker-fill', 'seals-physics'],
  }),
  meaning({
    id: 'verdict',
    lead: 'How a figure stands to its limits. Low and high are the worst corners of all sizes that go into it.',
    steps: [
      'Good: every limit that must be kept is kept. A limit that its source gives for the nominal size is held against the typical figure.',
      'Marginal: a limit is passed that ought to be kept. Look at it, decide, write down why.',
      'Bad: a limit is broken that must not be.',
      'Not judged: no source gives a limit. That is not good, it is unknown.',
    ],
  }),
  meaning({
    id: 'margin',
    lead: 'How far a number is from its limit. 1 is at the limit, 2 is twice as strong as needed, below 1 it fails by this reckoning.',
    steps: ['Margins here count the worst corner of the limits, not the middle.'],
    beware: ['A margin says nothing of loads that were not entered: shock, bending, fatigue, corrosion.'],
    formula: 'margin = what it can bear / what it has to bear',
  }),
  meaning({
    id: 'weight',
    lead: 'What was found stands worst first.',
    steps: [
      'Stop: do not cut metal before this is settled.',
      'Caution: look at it and decide; write down why.',
      'Note: good to know.',
      'Under Why stand the numbers put in, the limit, and the source of it.',
    ],
  }),
  meaning({
    id: 'hazard',
    lead: 'What happens to people if the part fails. It brings the cautions and proof tests that go with it.',
    steps: [
      'In doubt take the worse one.',
      'For lifting, vehicles, pressure and food, local rules and licensed people have the last word.',
    ],
    sources: ['proof-practice', 'lathe-cautions'],
  }),
  meaning({
    id: 'proof',
    lead: 'The part is loaded once beyond what it will ever carry, where nobody can be hurt, before it goes into service.',
    steps: [
      'Usual is 1.25 to 1.5 times the working load or pressure.',
      'With water or oil, never with air: compressed gas throws pieces.',
    ],
    sources: ['proof-practice'],
  }),
  meaning({
    id: 'cutting',
    lead: 'What each cut asks of the lathe.',
    steps: [
      'Cutting speed is how fast the surface passes the cutter; the spindle speed is the nearest the lathe has.',
      'Force and power come from the specific cutting force of the material; they are compared with what the drive gives at that speed.',
      '“Pushes away” and “bends” are how far part, chuck and lathe give under that force, on the diameter: the part comes out that much thicker where it is softest.',
    ],
    beware: [
      'Published forces for one material differ by a quarter and more between publishers; the spread is counted.',
    ],
    formula: 'v = π d n;   F = k b h^(1−m);   P = F v',
    sources: ['KOE', 'lathe-kc-spread', 'methods-dynamics'],
  }),
  meaning({
    id: 'gives',
    lead: 'Everything between cutter and bed gives a little under the cutting force: the work, jaws, spindle, slides, post, cutter. Each bar is the share of one of them.',
    steps: [
      'Given in N/µm it is a stiffness: 20 N/µm gives 5 µm under 100 N. What gives in a row adds up; the softest decides.',
      'Behind the most likely value stands between which two nine in ten such lathes lie.',
      'Doubt left: 100 % where no test has taught anything yet, less with each test. The test that takes off most is named.',
      'A stiffer part helps by no more than its bar is long.',
    ],
    beware: ['Before the first test these are figures for lathes of this kind, hardly any of them published.'],
    formula: 'gives = force / stiffness;   1/k = 1/k₁ + 1/k₂ + …',
    sources: ['methods-dynamics', 'lathe-judgement', 'maxwell-reciprocity'],
  }),
  meaning({
    id: 'goes',
    lead: 'The plain verdict on one cut, with the number that decides it.',
    steps: [
      'Goes: every limit is kept with room to spare.',
      'Goes if: one number is near its limit or in doubt; what to do or to watch stands with it.',
      'Not on this lathe: a limit is broken at every setting this lathe has. What would help is listed, the least trouble first.',
    ],
    beware: [
      'It is reckoned for sharp, well-ground cutters at centre height and tight gibs. You are at the machine: what sounds wrong is wrong.',
    ],
    sources: ['lathe-judgement', 'methods-dynamics'],
  }),
  meaning({
    id: 'sings',
    lead: 'Below the line a cut is quiet, above it work and cutter swing each other up and it sings. The dots are the speeds that your lathe has.',
    steps: [
      'The full line is the most likely limit, the broken ones hold nine in ten such lathes.',
      'Slow speeds stand deeper cuts, for the flank rubs on the waves and damps them.',
      'A chance that it sings counts what is not known of your lathe. Note at the bench whether it sang: that settles more than any sum.',
    ],
    formula: 'depth at the limit = 1 / (2 K |Re G|), at the frequency where Re G is lowest',
    sources: ['methods-dynamics', 'wu-1989', 'lathe-judgement'],
  }),
  meaning({
    id: 'times',
    lead: 'The first figure is the likely time, the two behind it hold most days: cutting, measuring, changing cutters, setting up.',
    steps: [
      'They are a guide for one evening or two, not for a price. Times you note yourself bring them nearer to your own.',
    ],
    sources: ['common-practice'],
  }),
  meaning({
    id: 'dial',
    lead: 'What to set on the dial of your own lathe, from the zero named above the table.',
    steps: [
      'Approach every setting from the same side, to take up the backlash. Overshot: go back half a turn and come again.',
      '“Expect” is the size after a pass with the give of the lathe counted. If yours differs, write it down: the log of the bench learns your lathe.',
    ],
    formula:
      'size after = size at zero − 2 × division × (turns × divisions a turn + divisions), on a slide that reads the radius',
  }),
  meaning({
    id: 'stop-point',
    lead: 'Close sizes are not cut to the end: the last hundredths are taken off with abrasive paper, which takes off little and never digs in.',
    steps: [
      '“Aim the last cut at” is the size to stop at, “leave for paper” what is left of it on the diameter.',
      '“Chance to end inside” is how often such a last cut ends within the limits, given how your lathe and gauge scatter.',
    ],
    beware: ['Paper is held flat and pulled, never wrapped round the part or a finger: it can take the hand with it.'],
    sources: ['lathe-cautions', 'sizes-sandpaper', 'home-workshop'],
  }),
  meaning({
    id: 'cusp',
    lead: 'A curve cut by steps is left with ridges. The cusp is their height above the true curve: what is filed off at the end.',
    steps: ['More steps, or a larger nose, make it smaller. “Left to file” is the cusp in the table.'],
    formula: 'with a nose r and steps a on a flat: cusp ≈ a² / (8 r)',
    sources: ['geometry', 'mem-machinery'],
  }),
  meaning({
    id: 'accept',
    lead: 'A reading within these two conforms although the gauge is not perfect: the limits are drawn in by its uncertainty.',
    steps: [
      'Inside: conforms. Outside least and most by the same amount: does not. Between: not decided; measure with a better gauge.',
      'If nothing is left between the two, the gauge is too coarse for the size.',
    ],
    formula:
      'accept from = least + g;   to = most − g;   g = 1.64 u, so that a part which reads just that conforms with 95 %',
    sources: ['ISO14253-1', 'JCGM106'],
  }),
  meaning({
    id: 'roughness',
    lead: 'The mean height of the ridges a cutter leaves, in thousandths of a millimetre. 3.2 is a plain turned surface, 0.8 a good fine cut, 0.4 is papered.',
    steps: ['Feed and nose radius settle it at first, built-up edge and shaking add to it.'],
    formula: 'Ra ≈ 1000 f² / (32 r),   f and r in mm, Ra in µm',
    sources: ['mem-machinery', 'mem-b46', 'iso1302'],
  }),
  meaning({
    id: 'pencil',
    lead: 'What was measured or decided is drawn solid, in ink. What was inferred is drawn in pencil, dashed, until you confirm it.',
    steps: ['It is the same on the screen and on paper; on paper pencil is a grey that survives a copier.'],
  }),
];
