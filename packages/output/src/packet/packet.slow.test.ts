/** What stands on the printed sheets, as poppler reads them back. */
import type { DialTable } from '@sparewright/core/route/dial-table';
import { source, sourceKeys } from '@sparewright/core/sources/register';
import { describe, expect, test } from 'vitest';
import { barelyBegun, exampleJob, packetInput, workshop } from '../../test/jobs.ts';
import { allText, faces, information, lackingIn, pageSizes, pageTexts } from '../../test/poppler.ts';
import { makePacket, type PacketInput } from './packet.ts';
import { printable } from './printable.ts';

const pin = packetInput(exampleJob('valve-guide-pin'));
const pinPacket = makePacket(pin);
const ourFaces = ['NationalPark-Bold', 'NationalPark-Regular'];

const route = (input: PacketInput) => {
  if (!input.assessment.route) throw new Error('the example has a route');
  return input.assessment.route;
};

describe('a finished job', () => {
  const pages = pageTexts(pinPacket);
  const text = pages.join(' ');

  test('has a sheet for each purpose, in the order of the work', () => {
    const headings = [
      pin.job.title,
      'How each size was arrived at',
      'Will it do its work',
      'What to buy, cut and lay out',
      'Setup 1',
      'Setup 2',
      'Coming to size',
      'Inspection',
      'Proof tests and record',
    ];
    const at = headings.map((h) => pages.findIndex((page) => page.trim().startsWith(h)));
    expect(at).not.toContain(-1);
    expect(at.toSorted((a, b) => a - b)).toEqual(at);
  });

  test('numbers its sheets and names the job on each of them', () => {
    for (const [i, page] of pages.entries()) {
      expect(page).toContain(`sheet ${i + 1} of ${pages.length}`);
      expect(page).toContain(pin.job.title);
      expect(page).toContain('hazard class: pressure');
      expect(page).toContain('all figures invented');
    }
  });

  test('prints every caution of the hazard class and of lathe work on the first sheet', () => {
    expect(pin.assessment.cautions.map((c) => c.about)).toContain('pressure');
    expect(
      lackingIn(
        pages[0] ?? '',
        pin.assessment.cautions.map((c) => c.says),
      ),
    ).toEqual([]);
  });

  test('repeats the cautions of the hazard class on the inspection sheet and beside the proof tests', () => {
    const pressing = pin.assessment.cautions.filter((c) => c.about === 'pressure').map((c) => c.says);
    expect(pressing.length).toBeGreaterThan(0);
    for (const heading of ['Inspection Caution', 'Proof tests and record']) {
      const sheet = pages.find((page) => page.trim().startsWith(heading));
      expect(lackingIn(sheet ?? '', pressing)).toEqual([]);
    }
  });

  test('says every finding, worst first', () => {
    const at = pin.assessment.findings.map((f) => text.indexOf(f.says.replace(/(\s)-(\d)/g, '$1−$2')));
    expect(at.length).toBeGreaterThan(3);
    expect(at).not.toContain(-1);
    const firstPages = `${pages[0]} ${pages[1]}`;
    const levels = [...firstPages.matchAll(/\b(STOP|CAUTION|NOTE)\b/g)].map((m) => m[1]);
    const order = ['STOP', 'CAUTION', 'NOTE'];
    expect(levels.map((l) => order.indexOf(l ?? ''))).toEqual(
      levels.map((l) => order.indexOf(l ?? '')).toSorted((a, b) => a - b),
    );
  });

  test('has every operation with its cautions and its table', () => {
    const { operations, tables } = route(pin);
    expect(operations.length).toBeGreaterThan(10);
    const said = [...operations.flatMap((o) => [o.title, ...o.cautions]), ...tables.flatMap((t) => t.notes)];
    expect(lackingIn(text, printable(said).value)).toEqual([]);
  });

  test('has blanks for what is measured, tested and signed', () => {
    expect(lackingIn(text, ['measured', 'conforms', 'Result', 'Signature', 'Made by', 'Fitted on'])).toEqual([]);
  });

  test('carries no clock', () => {
    expect(information(pinPacket)).not.toMatch(/Date/);
  });

  test('is set in the bundled face alone, on A4', () => {
    expect(faces(pinPacket).toSorted()).toEqual(ourFaces);
    for (const [short, long] of pageSizes(pinPacket)) {
      // ISO 216: 210 by 297 mm, in points of 1/72 in.
      expect(short).toBeCloseTo((210 / 25.4) * 72, 0);
      expect(long).toBeCloseTo((297 / 25.4) * 72, 0);
    }
    expect(pageSizes(pinPacket)).toHaveLength(pages.length);
  });
});

describe('a job in inches', () => {
  const input = packetInput(exampleJob('gland-spindle', { sheet: { paper: 'Letter' } }));
  const packet = makePacket(input);

  test('is printed on Letter when it asks for it', () => {
    const sizes = pageSizes(packet);
    expect(sizes.length).toBeGreaterThan(5);
    // 8.5 by 11 in.
    for (const size of sizes) expect(size).toEqual([612, 792]);
  });

  test('has its dial tables in inches to four decimals', () => {
    const { tables } = route(input);
    const table = tables.find((t) => t.kind === 'turning');
    const last = table?.rows.at(-1)?.diameter;
    if (typeof last !== 'number') throw new Error('the example has a turning table');
    // Sentences give the millimetres in brackets behind the inches; a table never does.
    const text = allText(packet).replaceAll(/\([\d.]+ mm\)/g, '');
    expect(lackingIn(text, [(last / 25.4).toFixed(4), last.toFixed(3)])).toEqual([last.toFixed(3)]);
  });

  test('has the diameters in the titles of its operations in inches', () => {
    const titled = route(input).operations.find((o) => /^Rough .* to Ø[\d.]+$/.test(o.title));
    const mm = Number(titled?.title.split('Ø')[1]);
    const metric = titled?.title ?? '';
    expect(lackingIn(allText(packet), [`Ø${(mm / 25.4).toFixed(4)} in`, metric])).toEqual([metric]);
  });
});

test('a decimal comma is used in tables, sizes and sentences', () => {
  const input = packetInput(exampleJob('valve-guide-pin', { sheet: { decimalSign: 'comma' } }));
  // Titles of sources are quoted as they were printed.
  const text = sourceKeys.reduce((t, key) => t.replaceAll(source(key).title, ''), allText(makePacket(input)));
  const { stock, tables } = route(input);
  const [table] = tables;
  const row = table?.rows[0];
  if (!stock || typeof row?.diameter !== 'number') throw new Error('the example has stock and a turning table');
  expect(lackingIn(text, [row.diameter.toFixed(3).replace('.', ',')])).toEqual([]);
  expect(text.match(/[^ ]*\d\.\d+ (?:mm|µm|%|N·m|MPa|kg)(?![a-z])/g) ?? []).toEqual([]);
});

describe('hostile text', () => {
  const titled = ['#import "a": *', '*x* _y_ $z^2$', '@ref <label>', '</text>&amp;'];
  const attacks = [
    '#import "secret.typ": *',
    '#read("/etc/passwd")',
    '*x* _y_ $z^2$',
    String.raw`\u{41} \ end`,
    '@ref <label>',
    '= not a heading',
    '</text><script>alert(1)</script>&amp;',
    '"}]; ~ -- /* // ```raw```',
  ];

  test('stands on the sheets exactly as it was typed', () => {
    const job = exampleJob('valve-guide-pin', { title: titled.join(' '), notes: attacks.join('\n') });
    const pages = pageTexts(makePacket(packetInput(job)));
    // The title is typed into the head, into the foot of each sheet, and as SVG into the drawing.
    for (const page of pages) expect(lackingIn(page, [titled.join(' ')])).toEqual([]);
    expect(lackingIn(pages.join(' '), attacks)).toEqual([]);
  });

  test('cannot bring in another face, and what cannot be printed is named', () => {
    const job = exampleJob('valve-guide-pin', {
      title: 'Bolzen 漢 Ж ﷽',
      sheet: { drawnBy: '漢字' },
    });
    const packet = makePacket(packetInput(job));
    expect(faces(packet).toSorted()).toEqual(ourFaces);
    expect(lackingIn(allText(packet), ['U+6F22', 'Bolzen ?'])).toEqual([]);
  });
});

describe('a job that has only begun', () => {
  test('still gives a packet that says what is missing', () => {
    const text = allText(makePacket(packetInput(barelyBegun, null)));
    const { missing } = packetInput(barelyBegun, null).assessment;
    expect(missing.length).toBeGreaterThan(3);
    const sentences = ['there is nothing to draw', 'there is nothing to plan', 'nothing to measure'];
    expect(lackingIn(text, [...missing, ...sentences])).toEqual([]);
  });

  test('with a part but no workshop is drawn, and says why nothing is planned', () => {
    const text = allText(makePacket(packetInput(exampleJob('plunger'), null)));
    const sentences = ['without a lathe and cutters no route can be planned', 'Inspection', 'Proof tests'];
    expect(lackingIn(text, sentences)).toEqual([]);
  });
});

describe('a table of 120 rows', () => {
  const table: DialTable = {
    id: 'long',
    kind: 'curve',
    title: 'A long curve',
    operation: route(pin).operations[0]?.id ?? '',
    columns: [
      { key: 'step', title: 'step', unit: '', decimals: 0 },
      { key: 'a', title: 'along turns', unit: '', decimals: 0 },
      { key: 'b', title: 'along divisions', unit: '', decimals: 0 },
      { key: 'c', title: 'across turns', unit: '', decimals: 0 },
      { key: 'd', title: 'across divisions', unit: '', decimals: 0 },
      { key: 'diameter', title: 'to diameter', unit: 'mm', decimals: 3 },
      { key: 'measured', title: 'measured here', unit: 'mm', blank: true },
    ],
    rows: Array.from({ length: 120 }, (_, i) => ({
      step: i + 1,
      a: 1,
      b: 2,
      c: 3,
      d: 4,
      diameter: 100.001 + i,
    })),
    notes: ['The last note.'],
  };
  const pages = pageTexts(
    makePacket({ ...pin, assessment: { ...pin.assessment, route: { ...route(pin), tables: [table] } } }),
  );

  test('has its name and headings on each of its pages', () => {
    const withRows = pages.filter((page) => /\b[12]\d\d\.001\b/.test(page));
    expect(withRows.length).toBeGreaterThan(2);
    for (const page of withRows) {
      expect(page).toContain('A long curve');
      expect(page).toContain('measured here');
    }
  });

  test('has all its rows', () => {
    const text = pages.join(' ');
    expect(
      lackingIn(
        text,
        table.rows.map((row) => Number(row.diameter).toFixed(3)),
      ),
    ).toEqual([]);
  });
});

test('what was measured on the new part is printed with its decision', () => {
  const job = exampleJob('plunger');
  const dimension = packetInput(job).assessment.part?.dimensions.find((d) => d.kind === 'outside diameter');
  const gauge = workshop.gauges.find((g) => g.kind === 'outside micrometer');
  if (!dimension || !gauge) throw new Error('the examples have a diameter and a micrometer');
  const ruined = dimension.min - 1;
  const measured = {
    ...job,
    inspection: { readings: [{ id: 'm1', of: dimension.id, value: ruined, gauge: gauge.id }] },
  };
  const input = packetInput(measured);
  const text = allText(makePacket(input));
  const row = input.assessment.inspection.rows.find((r) => r.dimension === dimension.id);
  expect(row?.decision).toBe('does not conform');
  expect(lackingIn(text, [(row?.value ?? 0).toFixed(3), 'NO (0 %)'])).toEqual([]);
});
