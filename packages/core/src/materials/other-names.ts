/** Names people type that have no record of their own here, and names that mean two things. From memory unless said. */

/** A name without a record: what it is, and the grade of the table nearest to it. */
export interface OtherName {
  readonly name: string;
  readonly is: string;
  readonly near: string;
}

/** BS 970:1955 letters and other names, as remembered [BS970-1955]. */
export const otherNames: readonly OtherName[] = [
  { name: 'EN1B', is: '240M07, free-cutting mild steel with more sulphur', near: '11SMn30' },
  { name: 'EN3A', is: '070M20, mild steel', near: 'C15' },
  { name: 'EN19T', is: '709M40 in condition T, Rm 850 to 1000 MPa: softer than the +QT held here', near: '42CrMo4' },
  { name: 'EN24T', is: '817M40 in condition T, Rm 850 to 1000 MPa: softer than the +QT held here', near: '34CrNiMo6' },
  { name: 'EN56A', is: '410S21, 12 % chromium stainless', near: '416' },
  { name: 'EN56B', is: '420S29, 13 % chromium stainless, less carbon than EN56C', near: '420' },
  { name: 'EN56D', is: '420S45, 13 % chromium stainless, more carbon than EN56C', near: '420' },
  { name: 'EN58A', is: '302S25, 18/8 stainless with more carbon', near: '304' },
  { name: 'EN58B', is: '321S12, 18/8 stabilised with titanium', near: '304' },
  { name: 'EN58C', is: '321S20, 18/9 stabilised with titanium', near: '304' },
  { name: 'EN58D', is: '12/12 chromium-nickel stainless, soft (doubtful)', near: '304' },
  { name: 'EN58F', is: '347S17, 18/8 stabilised with niobium', near: '304' },
  { name: 'EN58G', is: '347S17, 18/10 stabilised with niobium', near: '304' },
  { name: 'EN58H', is: '315S16, 18/10 with 1.5 % molybdenum', near: '316' },
  { name: 'EN58BM', is: '325S21, free-cutting 18/8 stabilised with titanium', near: '303' },
  { name: 'EN58JM', is: '326S36, free-cutting 18/10 with molybdenum', near: '316' },
  { name: '410', is: '12 % chromium stainless (1.4006)', near: '416' },
  { name: '430', is: '17 % chromium ferritic stainless (1.4016)', near: '431' },
  { name: '321', is: '18/8 stainless stabilised with titanium (1.4541)', near: '304' },
  { name: 'A3', is: 'fastener class: 18/8 stabilised with titanium or niobium', near: '304' },
  { name: 'A5', is: 'fastener class: 316 stabilised with titanium or niobium', near: '316' },
  { name: 'G1', is: 'Admiralty gunmetal 88-10-2, CuSn10Zn2', near: 'LG2' },
  { name: 'Admiralty gunmetal', is: 'G1, 88-10-2, CuSn10Zn2', near: 'LG2' },
];

/** Names that resolve here and have another meaning beside. */
export const secondMeanings: Readonly<Record<string, string>> = {
  a2: 'A2 is also an air-hardening tool steel, which is not in this table',
  gunmetal: 'leaded gunmetal is meant; Admiralty gunmetal G1 (88-10-2) is another alloy, not in this table',
  monel: 'the 400 alloy is meant; K-500 is harder and not in this table',
};
