/**
 * Printed cutting speeds, feeds and depths, by source. Filled from reference/cutting/speeds-feeds.csv; the first column is the row
 * there.
 */
import type { SourceKey } from '../sources/register.ts';

export type SpeedOperation = 'turn' | 'rough' | 'finish' | 'drill' | 'ream' | 'thread' | 'part';

/** row, operation, cutter as printed, material as printed, then pairs of low and high */
export type PrintedRow = readonly [
  row: string,
  operation: SpeedOperation,
  cutter: string,
  material: string,
  ...number[],
];

export interface PrintedTable {
  readonly source: SourceKey;
  readonly status: string;
  readonly rows: readonly PrintedRow[];
}

/** Pairs: speed [m/min], where printed feed [mm/rev], where printed depth [mm]. */
export const speedTables: readonly PrintedTable[] = [
  {
    source: 'TO1',
    status: 'read',
    rows: [
      ['SF001', 'rough', 'HSS', 'austenitic 302 304 309 310 314 316', 6.1, 12.2, 0.508, 1.016],
      ['SF002', 'finish', 'HSS', 'austenitic 302 304 309 310 314 316', 15.2, 24.4, 0.203, 0.381],
      ['SF005', 'rough', 'carbide', 'austenitic 302 304 309 310 314 316', 45.7, 61, 0.254, 0.762],
      ['SF006', 'finish', 'carbide', 'austenitic 302 304 309 310 314 316', 45.7, 91.4, 0.203, 0.457],
      ['SF007', 'rough', 'HSS', '420 431 440 442 446 347 321', 6.1, 12.2, 0.381, 1.016],
      ['SF008', 'finish', 'HSS', '420 431 440 442 446 347 321', 16.8, 27.4, 0.203, 0.457],
      ['SF011', 'rough', 'carbide', '420 431 440 442 446 347 321', 50.3, 67.1, 0.381, 0.762],
      ['SF012', 'finish', 'carbide', '420 431 440 442 446 347 321', 50.3, 100.6, 0.127, 0.381],
      ['SF013', 'rough', 'HSS', '430F 416', 9.1, 18.3, 0.381, 1.016],
      ['SF014', 'finish', 'HSS', '430F 416', 22.9, 36.6, 0.203, 0.457],
      ['SF017', 'rough', 'carbide', '430F 416', 68.6, 91.4, 0.254, 0.762],
      ['SF018', 'finish', 'carbide', '430F 416', 68.6, 137.2, 0.127, 0.381],
      ['SF019', 'rough', 'HSS', '420F 303', 7.6, 16.8, 0.381, 1.27],
      ['SF020', 'finish', 'HSS', '420F 303', 19.8, 32, 0.127, 0.381],
      ['SF023', 'rough', 'carbide', '420F 303', 53.3, 73.2, 0.254, 0.762],
      ['SF024', 'finish', 'carbide', '420F 303', 59.4, 106.7, 0.127, 0.381],
    ],
  },
  {
    source: 'LM2',
    status: 'read',
    rows: [
      ['SF025', 'turn', 'HSS (implied)', 'cast iron', 20, 28],
      ['SF026', 'turn', 'HSS (implied)', 'mild steel', 18, 25],
      ['SF028', 'turn', 'HSS (implied)', 'brass', 45, 90],
      ['SF029', 'turn', 'HSS (implied)', 'bronze', 15, 21],
    ],
  },
  {
    source: 'LM1',
    status: 'read',
    rows: [
      ['SF033', 'turn', 'HSS', 'unalloyed steel C45, S235', 35, 50],
      ['SF034', 'turn', 'carbide P10 (brazed or uncoated)', 'unalloyed steel C45, S235', 100, 150],
      ['SF035', 'turn', 'carbide P20', 'unalloyed steel C45, S235', 80, 120],
      ['SF036', 'turn', 'carbide P40', 'unalloyed steel C45, S235', 50, 100],
      ['SF040', 'drill', 'HSS', 'unalloyed steel C45, S235', 30, 40],
    ],
  },
  {
    source: 'PLB',
    status: 'read',
    rows: [
      ['SF041', 'turn', 'HSS', 'mild steel 1018 1020', 24.4, 30.5, 0.127, 0.381],
      ['SF042', 'turn', 'carbide', 'mild steel 1018 1020', 91.4, 152.4, 0.203, 0.508],
      ['SF043', 'turn', 'HSS', 'medium carbon 1045', 21.3, 27.4, 0.127, 0.381],
      ['SF044', 'turn', 'carbide', 'medium carbon 1045', 76.2, 121.9, 0.203, 0.508],
      ['SF045', 'turn', 'HSS', 'alloy 4140', 18.3, 24.4, 0.127, 0.381],
      ['SF046', 'turn', 'carbide', 'alloy 4140', 61, 106.7, 0.203, 0.508],
      ['SF047', 'turn', 'HSS', 'stainless 304 316', 12.2, 18.3, 0.127, 0.381],
      ['SF048', 'turn', 'carbide', 'stainless 304 316', 45.7, 76.2, 0.203, 0.508],
      ['SF049', 'turn', 'HSS', 'tool steel O1 A2', 12.2, 18.3, 0.127, 0.381],
      ['SF050', 'turn', 'carbide', 'tool steel O1 A2', 45.7, 76.2, 0.203, 0.508],
      ['SF051', 'turn', 'HSS', 'aluminium 6061 7075', 61, 91.4, 0.127, 0.381],
      ['SF052', 'turn', 'carbide', 'aluminium 6061 7075', 243.8, 457.2, 0.203, 0.508],
      ['SF053', 'turn', 'HSS', 'brass', 45.7, 76.2, 0.127, 0.381],
      ['SF054', 'turn', 'carbide', 'brass', 152.4, 243.8, 0.203, 0.508],
      ['SF055', 'turn', 'HSS', 'bronze', 30.5, 45.7, 0.127, 0.381],
      ['SF056', 'turn', 'carbide', 'bronze', 106.7, 182.9, 0.203, 0.508],
      ['SF057', 'turn', 'HSS', 'grey cast iron', 15.2, 24.4, 0.127, 0.381],
      ['SF058', 'turn', 'carbide', 'grey cast iron', 76.2, 121.9, 0.203, 0.508],
      ['SF059', 'turn', 'HSS', 'plastics POM HDPE', 61, 121.9, 0.127, 0.381],
      ['SF060', 'turn', 'carbide', 'plastics POM HDPE', 152.4, 304.8, 0.203, 0.508],
    ],
  },
  {
    source: 'DLB',
    status: 'read',
    rows: [
      ['SF065', 'turn', 'HSS', 'aluminium', 106.7, 213.4],
      ['SF066', 'turn', 'HSS', 'brass and bronze', 76.2, 152.4],
      ['SF067', 'turn', 'HSS', 'copper', 30.5, 76.2],
      ['SF068', 'turn', 'HSS', 'cast iron soft', 30.5, 76.2],
      ['SF069', 'turn', 'HSS', 'cast iron hard', 15.2, 45.7],
      ['SF070', 'turn', 'HSS', 'mild steel', 30.5, 76.2],
      ['SF072', 'turn', 'HSS', 'alloy steel hard', 15.2, 45.7],
      ['SF073', 'turn', 'HSS', 'tool steel', 15.2, 45.7],
      ['SF075', 'turn', 'HSS', 'titanium', 27.4, 61],
    ],
  },
  {
    source: 'FMC',
    status: 'read',
    rows: [
      ['SF096', 'turn', 'coated indexable carbide (span of three grades)', 'non-alloy steel', 170, 480],
      ['SF097', 'turn', 'coated indexable carbide (span of three grades)', 'low-alloy steel', 130, 420],
      ['SF099', 'turn', 'coated indexable carbide (span of three grades)', 'stainless ferritic/martensitic', 60, 230],
      ['SF100', 'turn', 'coated indexable carbide (span of three grades)', 'stainless austenitic', 60, 200],
      ['SF101', 'turn', 'coated indexable carbide (span of three grades)', 'grey cast iron', 120, 420],
      ['SF102', 'turn', 'coated indexable carbide (span of three grades)', 'nodular cast iron', 120, 410],
    ],
  },
  {
    source: 'DGI',
    status: 'read',
    rows: [
      ['SF103', 'turn', 'coated indexable carbide', 'grey cast iron', 129.5, 548.6, 0.102, 0.305],
      [
        'SF104',
        'turn',
        'indexable carbide',
        'aluminium-silicon <12.2 % and 2024/6061/7075',
        199.6,
        499.9,
        0.102,
        0.406,
      ],
      ['SF105', 'turn', 'indexable carbide', 'copper and copper alloys', 269.7, 390.1, 0.102, 0.406],
    ],
  },
  {
    source: 'NAVY',
    status: 'read',
    rows: [
      ['SF106', 'drill', 'HSS', 'low-carbon steel', 24.4, 33.5],
      ['SF107', 'drill', 'HSS', 'medium carbon steel', 21.3, 24.4],
      ['SF108', 'drill', 'HSS', 'alloy steel', 15.2, 21.3],
      ['SF109', 'drill', 'HSS', 'stainless steel', 9.1, 12.2],
      ['SF110', 'drill', 'HSS', 'brass', 61, 91.4],
      ['SF111', 'drill', 'HSS', 'bronze', 61, 91.4],
      ['SF112', 'drill', 'HSS', 'Monel', 12.2, 15.2],
      ['SF113', 'drill', 'HSS', 'aluminium', 61, 91.4],
      ['SF114', 'drill', 'HSS', 'cast iron', 21.3, 45.7],
    ],
  },
  {
    source: 'PRC',
    status: 'read',
    rows: [
      ['SF128', 'drill', 'HSS', '303 (135-185 HB annealed)', 25.9, 25.9],
      ['SF129', 'ream', 'HSS', '303 (135-185 HB annealed)', 16.8, 16.8],
      ['SF130', 'ream', 'carbide', '303 (135-185 HB annealed)', 68.6, 68.6],
      ['SF131', 'drill', 'HSS', '303 (225-275 HB cold drawn)', 21.3, 21.3],
      ['SF132', 'ream', 'HSS', '303 (225-275 HB cold drawn)', 13.7, 13.7],
      ['SF133', 'ream', 'carbide', '303 (225-275 HB cold drawn)', 61, 61],
      ['SF134', 'drill', 'HSS', '416 420F 440F (135-185 HB)', 27.4, 27.4],
      ['SF135', 'ream', 'HSS', '416 420F 440F (135-185 HB)', 18.3, 18.3],
      ['SF136', 'ream', 'carbide', '416 420F 440F (135-185 HB)', 76.2, 76.2],
      ['SF137', 'drill', 'HSS', '416 420F 440F (185-240 HB)', 21.3, 21.3],
      ['SF138', 'ream', 'HSS', '416 420F 440F (185-240 HB)', 13.7, 13.7],
      ['SF139', 'ream', 'carbide', '416 420F 440F (185-240 HB)', 61, 61],
      ['SF149', 'drill', 'HSS', '304 302 321 347 (135-185 HB)', 16.8, 16.8],
      ['SF150', 'ream', 'HSS', '304 302 321 347 (135-185 HB)', 10.7, 10.7],
      ['SF151', 'ream', 'carbide', '304 302 321 347 (135-185 HB)', 45.7, 45.7],
      ['SF155', 'drill', 'HSS', '316 309 310 317 (135-185 HB)', 15.2, 15.2],
      ['SF156', 'ream', 'HSS', '316 309 310 317 (135-185 HB)', 9.1, 9.1],
      ['SF157', 'ream', 'carbide', '316 309 310 317 (135-185 HB)', 45.7, 45.7],
      ['SF161', 'drill', 'HSS', '410 420 403 (175-225 HB)', 19.8, 19.8],
      ['SF162', 'ream', 'HSS', '410 420 403 (175-225 HB)', 13.7, 13.7],
      ['SF163', 'ream', 'carbide', '410 420 403 (175-225 HB)', 61, 61],
      ['SF164', 'drill', 'HSS', '410 420 403 (275-325 HB)', 12.2, 12.2],
      ['SF165', 'ream', 'HSS', '410 420 403 (275-325 HB)', 7.6, 7.6],
      ['SF166', 'ream', 'carbide', '410 420 403 (275-325 HB)', 38.1, 38.1],
      ['SF167', 'drill', 'HSS', 'O1 O2 tool steel (175-225 HB)', 13.7, 13.7],
      ['SF176', 'drill', 'HSS', 'wrought aluminium cold drawn', 121.9, 121.9],
      ['SF177', 'ream', 'HSS', 'wrought aluminium cold drawn', 121.9, 121.9],
      ['SF178', 'ream', 'carbide', 'wrought aluminium cold drawn', 243.8, 243.8],
      ['SF179', 'drill', 'HSS', 'wrought aluminium solution treated and aged', 106.7, 106.7],
      ['SF180', 'ream', 'HSS', 'wrought aluminium solution treated and aged', 106.7, 106.7],
      ['SF181', 'ream', 'carbide', 'wrought aluminium solution treated and aged', 228.6, 228.6],
    ],
  },
  {
    source: 'ELH',
    status: 'read',
    rows: [
      ['SF182', 'drill', 'HSS', 'titanium pure 110-200 HB', 30, 30],
      ['SF183', 'drill', 'HSS-Co', 'titanium alpha and alpha-beta 300-360 HB', 12, 12],
      ['SF185', 'drill', 'HSS-Co', 'precipitation-hardened stainless 150-200 HB', 15, 15],
      ['SF186', 'drill', 'HSS', 'tool steel 196 HB', 18, 18],
      ['SF187', 'drill', 'HSS', 'tool steel 241 HB', 15, 15],
    ],
  },
  {
    source: 'DEC',
    status: 'read',
    rows: [
      ['SF189', 'drill', 'HSS', 'mild machinery steel 0.2-0.3 C', 24.4, 33.5],
      ['SF190', 'drill', 'HSS', 'steel 0.4-0.5 C', 21.3, 24.4],
      ['SF191', 'drill', 'HSS', 'tool steel 1.2 C', 15.2, 18.3],
      ['SF193', 'drill', 'HSS', 'alloy steel 300-400 HB', 6.1, 9.1],
      ['SF195', 'drill', 'HSS', 'stainless free machining', 9.1, 24.4],
      ['SF196', 'drill', 'HSS', 'stainless work hardening', 4.6, 15.2],
      ['SF198', 'drill', 'HSS', 'cast iron medium', 21.3, 30.5],
      ['SF199', 'drill', 'HSS', 'ordinary brass and bronze', 45.7, 91.4],
      ['SF200', 'drill', 'HSS', 'high tensile bronze', 21.3, 45.7],
      ['SF201', 'drill', 'HSS', 'aluminium', 61, 91.4],
    ],
  },
  {
    source: 'workshop-tables-MEM',
    status: 'from memory',
    rows: [
      ['SF223', 'turn', 'HSS', 'free-cutting steel', 40, 60, 0.05, 0.2, 0.1, 1.5],
      ['SF224', 'turn', 'HSS', 'mild steel', 28, 35, 0.05, 0.2, 0.1, 1.5],
      ['SF225', 'turn', 'HSS', 'C45', 22, 30, 0.05, 0.2, 0.1, 1.5],
      ['SF226', 'turn', 'HSS', '42CrMo4+QT', 12, 18, 0.05, 0.2, 0.1, 1.5],
      ['SF227', 'turn', 'HSS', '304/316', 12, 20, 0.05, 0.2, 0.1, 1.5],
      ['SF228', 'turn', 'HSS', '420/440C annealed', 15, 22, 0.05, 0.2, 0.1, 1.5],
      ['SF229', 'turn', 'HSS', '17-4PH', 9, 15, 0.05, 0.2, 0.1, 1.5],
      ['SF230', 'turn', 'HSS', 'CuZn39Pb3', 80, 150, 0.05, 0.2, 0.1, 1.5],
      ['SF231', 'turn', 'HSS', 'CuSn8 / CuSn12', 20, 40, 0.05, 0.2, 0.1, 1.5],
      ['SF232', 'turn', 'HSS', 'EN-GJL-250', 18, 25, 0.05, 0.2, 0.1, 1.5],
      ['SF233', 'turn', 'HSS', 'EN AW-6082/2011/7075', 80, 200, 0.05, 0.2, 0.1, 1.5],
      ['SF234', 'turn', 'HSS', 'Ti-6Al-4V', 8, 15, 0.05, 0.2, 0.1, 1.5],
      ['SF235', 'turn', 'HSS', 'POM, PA', 80, 200, 0.05, 0.2, 0.1, 1.5],
    ],
  },
];

/** Pairs: feed [mm/rev], where printed depth [mm]. */
export const feedTables: readonly PrintedTable[] = [
  {
    source: 'PLB',
    status: 'read',
    rows: [
      ['SF061', 'finish', 'HSS', 'any', 0.051, 0.127, 0.13, 0.51],
      ['SF062', 'finish', 'carbide', 'any', 0.076, 0.203, 0.13, 0.51],
      ['SF063', 'part', 'HSS', 'any', 0.051, 0.127],
      ['SF064', 'part', 'carbide', 'any', 0.076, 0.152],
    ],
  },
  {
    source: 'DLB',
    status: 'read',
    rows: [
      ['SF086', 'rough', 'any', 'aluminium', 0.381, 0.635],
      ['SF087', 'finish', 'any', 'aluminium', 0.127, 0.254],
      ['SF088', 'rough', 'any', 'brass and bronze', 0.381, 0.635],
      ['SF089', 'finish', 'any', 'brass and bronze', 0.076, 0.254],
      ['SF090', 'rough', 'any', 'copper', 0.254, 0.508],
      ['SF091', 'finish', 'any', 'copper', 0.102, 0.203],
      ['SF094', 'rough', 'any', 'mild, alloy, tool, stainless steel, titanium', 0.254, 0.508],
      ['SF095', 'finish', 'any', 'mild, alloy, tool, stainless steel, titanium', 0.076, 0.254],
    ],
  },
  {
    source: 'NAVY',
    status: 'read',
    rows: [
      ['SF115', 'drill', 'HSS', 'drill to 3.2 mm', 0.025, 0.051],
      ['SF116', 'drill', 'HSS', 'drill 3.2-6.4 mm', 0.051, 0.102],
      ['SF117', 'drill', 'HSS', 'drill 6.4-12.7 mm', 0.102, 0.178],
      ['SF118', 'drill', 'HSS', 'drill 12.7-25 mm', 0.178, 0.381],
      ['SF119', 'drill', 'HSS', 'drill over 25 mm', 0.381, 0.635],
    ],
  },
  {
    source: 'common-practice',
    status: 'common practice',
    rows: [
      ['SF218', 'part', 'HSS', 'any', 0.03, 0.1],
      ['SF219', 'part', 'indexable carbide', 'any', 0.04, 0.12],
    ],
  },
];

/** Pair: depth of cut [mm]. */
export const depthTables: readonly PrintedTable[] = [
  {
    source: 'DLB',
    status: 'read',
    rows: [
      ['SF076', 'turn', 'HSS', 'aluminium', 1.27, 1.27],
      ['SF077', 'turn', 'carbide', 'aluminium', 1.78, 1.78],
      ['SF078', 'turn', 'HSS', 'plain carbon steel', 0.76, 0.76],
      ['SF079', 'turn', 'carbide', 'plain carbon steel', 1.27, 1.27],
      ['SF080', 'turn', 'HSS', 'alloy steel', 0.64, 0.64],
      ['SF081', 'turn', 'carbide', 'alloy steel', 1.14, 1.14],
      ['SF082', 'turn', 'HSS', 'stainless steel', 0.76, 0.76],
      ['SF083', 'turn', 'carbide', 'stainless steel', 1.27, 1.27],
      ['SF084', 'turn', 'HSS', 'brass', 1.27, 1.27],
      ['SF085', 'turn', 'carbide', 'brass', 1.78, 1.78],
    ],
  },
];
