/**
 * Which printed rows stand for which material. `own` rows name the alloy among those they are printed for;
 * `group` rows are those of the machining group it falls into. The choice is ours; the rows are the sources'.
 */

export type IsoGroup = 'P' | 'M' | 'K' | 'N' | 'S' | 'H';

/**
 * A row that names the alloy and was read comes first, then its group's row that was read, then remembered ones. Two exceptions: tin
 * and aluminium bronze take the remembered 1350 MPa before the 700 MPa that one maker prints for all lead-free copper alloys (the
 * higher one errs to the safe side on a light lathe), and titanium the maker's later edition, with which the remembered list agrees.
 */
export interface ForceChoice {
  readonly row: string;
  readonly own: boolean;
  /** Other printed values for the same stuff; their scatter is the uncertainty. */
  readonly others: readonly string[];
}

export interface CuttingChoice {
  readonly iso: IsoGroup;
  readonly force?: ForceChoice;
  /** Rows of speed tables. */
  readonly own: readonly string[];
  readonly group: readonly string[];
  readonly feeds: readonly string[];
  readonly depths: readonly string[];
  readonly fluids: readonly string[];
  /** Taylor constants printed for steel or for other metals. */
  readonly work: 'steel' | 'non-steel' | 'none';
}

const sf = (rows: string): readonly string[] => rows.split(' ').map((row) => `SF${row}`);
const kc = (row: string, own: boolean, others = ''): ForceChoice => ({
  row: `KC${row}`,
  own,
  others: others === '' ? [] : others.split(' ').map((o) => `KC${o}`),
});

const steel = {
  iso: 'P',
  feeds: sf('094 095'),
  fluids: ['steel'],
  work: 'steel',
  own: [] as readonly string[],
} as const;
const mild = {
  ...steel,
  group: sf('026 041 042 070 224 033 034 035 036 096 106 189 040'),
  depths: sf('078 079'),
} as const;
const medium = { ...steel, group: sf('043 044 096 107 190 040'), depths: sf('078 079') } as const;
const alloy = { ...steel, group: sf('045 046 072 097 108'), depths: sf('080 081') } as const;
const tool = { ...steel, group: sf('049 050 073 186 187'), depths: sf('080 081') } as const;
const austenitic = {
  iso: 'M',
  feeds: sf('094 095'),
  depths: sf('082 083'),
  fluids: ['austenitic stainless'],
  work: 'steel',
} as const;
const martensitic = { ...austenitic, iso: 'P', fluids: ['steel'] } as const;
const brass = { iso: 'N', feeds: sf('088 089'), depths: sf('084 085'), fluids: ['brass'], work: 'non-steel' } as const;
const bronze = { ...brass, depths: [], fluids: ['bronze'], group: sf('055 056 029 066 105 111 199') } as const;
const aluminium = {
  iso: 'N',
  force: kc('022', false, '079'),
  feeds: sf('086 087'),
  depths: sf('076 077'),
  fluids: ['aluminium'],
  work: 'non-steel',
} as const;
const agedDrilling = '113 201 179 180 181';
const titanium = { iso: 'S', feeds: sf('094 095'), depths: [], fluids: ['titanium'], work: 'none' } as const;
const plastic = { iso: 'N', feeds: [], depths: [], own: [], group: [], fluids: ['plastics'], work: 'none' } as const;
const ironFluid = ['cast iron'];

/** By grade, or by the beginning of a material's id where the condition matters; the longest that fits counts. */
export const choices: Readonly<Record<string, CuttingChoice>> = {
  '11SMn30': { ...mild, force: kc('001', false, '064'), own: sf('223') },
  '11SMnPb30': { ...mild, force: kc('001', false, '064'), own: sf('223') },
  C15: { ...mild, force: kc('001', false, '047 064') },
  S275: { ...mild, force: kc('039', true, '001 046 064') },
  C45: { ...medium, force: kc('002', false, '049 065'), own: sf('033 034 035 036 225') },
  'C45-QT': { ...medium, force: kc('003', false, '049 065'), own: sf('033 034 035 036 225') },
  '080M40': { ...medium, force: kc('002', false, '048 065') },
  '44SMn28': { ...medium, force: kc('002', false, '065') },
  '42CrMo4': { ...alloy, force: kc('042', true, '007 068'), own: sf('226') },
  '42CrMo4-QT-16-40': { ...alloy, force: kc('042', true, '008 068'), own: sf('226') },
  '42CrMo4-QT-to16': { ...alloy, force: kc('042', true, '009 068'), own: sf('226'), group: sf('045 046 072 097 193') },
  '34CrNiMo6': { ...alloy, force: kc('008', false, '068') },
  '34CrNiMo6-QT-to16': { ...alloy, force: kc('009', false, '068'), group: sf('045 046 072 097 193') },
  '605M36': { ...alloy, force: kc('007', false, '068') },
  '16MnCr5': { ...alloy, force: kc('041', true, '006 067') },
  '100Cr6': { ...tool, force: kc('006', false, '010 067') },
  '115CrV3': { ...tool, force: kc('006', false, '010 067'), group: sf('049 050 073 191') },
  O1: { ...tool, force: kc('006', false, '010 067'), own: sf('049 050 167') },
  '303': {
    ...austenitic,
    force: kc('014', false, '057 071'),
    own: sf('019 020 023 024 128 129 130'),
    group: sf('100 195'),
  },
  '303-CD': {
    ...austenitic,
    force: kc('014', false, '057 071'),
    own: sf('019 020 023 024 131 132 133'),
    group: sf('100 195'),
  },
  '304': {
    ...austenitic,
    force: kc('014', false, '057 071'),
    own: sf('001 002 005 006 047 048 227 149 150 151'),
    group: sf('100 109 196'),
  },
  '316': {
    ...austenitic,
    force: kc('014', false, '071'),
    own: sf('001 002 005 006 047 048 227 155 156 157'),
    group: sf('100 109 196'),
  },
  '2205': { ...austenitic, force: kc('014', false, '072'), own: [], group: sf('001 002 005 006 100 196') },
  '416': { ...martensitic, force: kc('012', false, '069'), own: sf('013 014 017 018 134 135 136'), group: sf('099') },
  '416-T': { ...martensitic, force: kc('013', false, '069'), own: sf('013 014 017 018 137 138 139'), group: sf('099') },
  '420': {
    ...martensitic,
    force: kc('013', false, '069'),
    own: sf('007 008 011 012 228 161 162 163'),
    group: sf('099'),
  },
  '420-H': { ...martensitic, iso: 'H', force: kc('034', false), own: [], group: [], feeds: [], depths: [] },
  '431': { ...martensitic, force: kc('013', false), own: sf('007 008 011 012'), group: sf('099 164 165 166') },
  '440C': { ...martensitic, force: kc('013', false, '069'), own: sf('007 008 011 012 228'), group: sf('099 109 196') },
  '440C-H': { ...martensitic, iso: 'H', force: kc('035', false), own: [], group: [], feeds: [], depths: [] },
  '17-4PH': { ...martensitic, force: kc('070', false), own: sf('229 185'), group: sf('109') },
  'GJL-250': {
    iso: 'K',
    force: kc('016', false, '059 075'),
    own: sf('232'),
    group: sf('057 058 025 069 101 103 114 198'),
    feeds: [],
    depths: [],
    fluids: ironFluid,
    work: 'none',
  },
  'GJS-400-15': {
    iso: 'K',
    force: kc('017', false, '076'),
    own: [],
    group: sf('102 025 114'),
    feeds: [],
    depths: [],
    fluids: ironFluid,
    work: 'none',
  },
  'GJS-500-7': {
    iso: 'K',
    force: kc('018', false, '017 076 077'),
    own: [],
    group: sf('102 025 114'),
    feeds: [],
    depths: [],
    fluids: ironFluid,
    work: 'none',
  },
  CuZn39Pb3: { ...brass, force: kc('026', false, '080'), own: sf('230'), group: sf('028 053 054 066 105 110 199') },
  C36000: { ...brass, force: kc('026', false, '080'), own: [], group: sf('028 053 054 066 105 110 199') },
  CuZn36Sn1Pb: { ...brass, force: kc('027', false, '038 081'), own: [], group: sf('028 053 054 066 105 110 199') },
  CuSn8: { ...bronze, force: kc('082', false, '028'), own: sf('231') },
  CuSn12: { ...bronze, force: kc('082', false, '028'), own: sf('231') },
  C90700: { ...bronze, force: kc('082', false, '028'), own: [] },
  CuAl10Ni5Fe4: { ...bronze, force: kc('082', false, '028'), own: [], group: sf('055 056 029 105 200') },
  LG2: { ...bronze, force: kc('026', false, '061 081'), own: [] },
  SAE660: { ...bronze, force: kc('026', false, '081'), own: [] },
  'Cu-ETP': {
    ...brass,
    force: kc('028', false, '082'),
    own: sf('067'),
    group: sf('105'),
    feeds: sf('090 091'),
    depths: [],
    fluids: ['copper'],
  },
  '2011': { ...aluminium, force: kc('022', false, '079'), own: sf('233'), group: sf(`065 ${agedDrilling}`) },
  '2014': { ...aluminium, own: [], group: sf(`065 051 052 ${agedDrilling}`) },
  '2024': { ...aluminium, own: sf('104'), group: sf(`065 051 052 ${agedDrilling}`) },
  '6061': { ...aluminium, own: sf('051 052 104'), group: sf(`065 ${agedDrilling}`) },
  '6082': { ...aluminium, force: kc('022', false, '079'), own: sf('233'), group: sf(`065 051 052 ${agedDrilling}`) },
  '7075': {
    ...aluminium,
    force: kc('022', false, '079'),
    own: sf('051 052 104 233'),
    group: sf(`065 ${agedDrilling}`),
  },
  '5083': { ...aluminium, force: kc('021', false, '078'), own: [], group: sf('065 113 201 176 177 178') },
  'Ti-Gr2': { ...titanium, force: kc('036', false, '032 083'), own: sf('182'), group: sf('075') },
  'Ti-Gr5': { ...titanium, force: kc('037', false, '033 084'), own: sf('234 183'), group: sf('075') },
  Monel400: {
    iso: 'S',
    force: kc('031', false),
    own: sf('112'),
    group: [],
    feeds: [],
    depths: [],
    fluids: ['copper, Monel'],
    work: 'none',
  },
  'POM-C': { ...plastic, own: sf('059 060 235') },
  'POM-H': { ...plastic, own: sf('059 060 235') },
  PA66: { ...plastic, own: sf('235'), group: sf('059 060') },
  'PA6-G': { ...plastic, own: sf('235'), group: sf('059 060') },
  'PE-UHMW': { ...plastic, group: sf('059 060') },
  PTFE: { ...plastic, group: sf('059 060') },
  PEEK: { ...plastic, group: sf('059 060') },
  'PET-P': { ...plastic, group: sf('059 060') },
};
