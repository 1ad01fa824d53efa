import { describe, expect, test } from 'vitest';
import { barelyBegun, exampleJob, jobFiles, packetInput } from '../../test/jobs.ts';
import { makePacket } from './packet.ts';

describe('the packet', () => {
  test('is a PDF', () => {
    expect(Buffer.from(makePacket(packetInput(barelyBegun, null))).toString('latin1', 0, 5)).toBe('%PDF-');
  });

  test('has the same bytes when the same job is printed again after another one', () => {
    const inputs = jobFiles.map((name) => packetInput(exampleJob(name)));
    const [first, second] = [inputs.map(makePacket), inputs.map(makePacket)];
    for (const [i, packet] of first.entries()) expect(Buffer.compare(packet, second[i] ?? Buffer.of())).toBe(0);
    expect(Buffer.compare(first[0] ?? Buffer.of(), first[1] ?? Buffer.of())).not.toBe(0);
  }, 30_000);
});
