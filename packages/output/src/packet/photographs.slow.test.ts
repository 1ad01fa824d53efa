import { crc32, deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { exampleJob, packetInput } from '../../test/jobs.ts';
import { allText, picturesIn } from '../../test/poppler.ts';
import { makePacket, packetPages } from './packet.ts';

const hash = (digit: string): string => digit.repeat(64);

/** A grey picture of 4 by 3 dots, written after the PNG specification (ISO/IEC 15948). */
function png(): Uint8Array {
  const chunk = (type: string, data: Buffer): Buffer => {
    const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(4, 0);
  head.writeUInt32BE(3, 4);
  head.set([8, 0], 8);
  const rows = Buffer.concat(Array.from({ length: 3 }, () => Buffer.from([0, 40, 120, 200, 250])));
  const signature = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

const photographs = [
  { id: 'one', file: hash('a'), shows: 'Scores along the working end', of: 'body.diameter', along: '12' },
  { id: 'two', file: hash('b'), of: 'p5' },
  { id: 'three', file: hash('c'), shows: 'Gone from the disk' },
];
const input = packetInput(exampleJob('plunger', { photographs }));
const sound = new Map<string, Uint8Array>([
  [hash('a'), png()],
  [hash('b'), png()],
]);

describe('the photographs of a job', () => {
  test('are printed with the record, each with its words and its place', () => {
    const packet = makePacket({ ...input, picture: (of) => sound.get(of) });
    const text = allText(packet);
    expect(picturesIn(packet)).toEqual(['4×3', '4×3']);
    expect(text).toMatch(/1 Scores along the working end Diameter of the body, 12\.0 mm along/i);
    expect(text).toMatch(/2 Not described yet\. Reading of the /);
    expect(text).toContain('The picture is not at hand, or of a kind that cannot be printed. 3 Gone from the disk');
  });

  test('are on the pages that are looked at, too', () => {
    const pages = packetPages({ ...input, picture: (of) => sound.get(of) });
    expect(pages.at(-1)?.match(/<image /g)?.length).toBe(2);
  });

  test('are said to be missing where none can be had, and not spoken of where there are none', () => {
    expect(allText(makePacket(input))).toContain('3 photographs belong to this job');
    const none = makePacket({ ...packetInput(exampleJob('plunger')), picture: () => undefined });
    expect(allText(none)).not.toContain('Photographs');
  });

  test('that are damaged do not keep the packet from being printed', () => {
    const damaged = png().slice(0, 40);
    const packet = makePacket({ ...input, picture: (of) => (of === hash('a') ? damaged : sound.get(of)) });
    expect(allText(packet)).toContain('The picture could not be set. 1 Scores along the working end');
    expect(picturesIn(packet)).toEqual([]);
  });
});
