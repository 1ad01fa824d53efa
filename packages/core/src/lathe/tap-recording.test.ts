import { describe, expect, test } from 'vitest';
import { tonesOf } from './tap-recording.ts';
import { readWave } from './wave-file.ts';

/** Always the same noise, between −1 and 1. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

interface Ring {
  readonly f: number;
  readonly damping: number;
  readonly height: number;
}

/** Five knocks, each ringing as told, over a room that is not quite still. */
function recorded(rings: readonly Ring[], rate: number, room = 0.003, knocks = 5): Float64Array {
  const random = noise(7);
  return Float64Array.from({ length: Math.round((0.3 + 0.6 * knocks) * rate) }, (_, i) => {
    const t = i / rate - 0.3;
    const since = t < 0 ? -1 : t - 0.6 * Math.floor(t / 0.6);
    const hard = 0.6 + 0.08 * Math.floor(Math.max(0, t) / 0.6);
    const sound = rings.reduce((sum, { f, damping, height }) => {
      const omega = 2 * Math.PI * f;
      return sum + height * Math.exp(-damping * omega * since) * Math.sin(omega * Math.sqrt(1 - damping ** 2) * since);
    }, 0);
    return (since < 0 ? 0 : hard * sound) + room * random();
  });
}

describe('a knock that rings at a known tone', () => {
  test.each([
    [265, 0.05, 44_100],
    [265, 0.02, 48_000],
    [190, 0.04, 48_000],
    [950, 0.015, 44_100],
    [2400, 0.006, 48_000],
  ])('%i Hz, damping %d, %i samples in a second', (f, damping, rate) => {
    const { knocks, tones } = tonesOf({ samples: recorded([{ f, damping, height: 0.7 }], rate), rate });
    expect(knocks).toBe(5);
    // A tone that dies away has its peak within ζ² of its frequency.
    expect(Math.abs((tones[0]?.frequency ?? 0) / f - 1)).toBeLessThan(0.006 + damping ** 2);
    expect(Math.abs((tones[0]?.damping ?? 0) / damping - 1)).toBeLessThan(0.15);
    expect(tones[0]?.uncertainty).toBeLessThan(0.03 * f);
  });
});

test('two tones are told apart, the stronger first', () => {
  const rings = [
    { f: 310, damping: 0.03, height: 0.3 },
    { f: 720, damping: 0.01, height: 0.5 },
  ];
  const { tones } = tonesOf({ samples: recorded(rings, 44_100), rate: 44_100 });
  expect(tones.map((t) => Math.round(t.frequency / 10))).toEqual([72, 31]);
});

test('a still room and a short scrape hold no knock', () => {
  const still = Float64Array.from({ length: 44_100 }, () => 0);
  expect(() => tonesOf({ samples: still, rate: 44_100 })).toThrow('no knock');
});

describe('a WAV file', () => {
  const file = (
    kind: number,
    bits: number,
    channels: number,
    body: (view: DataView, at: number) => void,
    frames = 2,
  ) => {
    const size = (frames * channels * bits) / 8;
    const view = new DataView(new ArrayBuffer(44 + size));
    const text = (at: number, word: string) => {
      for (const [i, c] of [...word].entries()) view.setUint8(at + i, c.charCodeAt(0));
    };
    text(0, 'RIFF');
    text(8, 'WAVEfmt ');
    view.setUint32(16, 16, true);
    view.setUint16(20, kind, true);
    view.setUint16(22, channels, true);
    view.setUint32(24, 48_000, true);
    view.setUint16(34, bits, true);
    text(36, 'data');
    view.setUint32(40, size, true);
    body(view, 44);
    return new Uint8Array(view.buffer);
  };

  test('is read at 16 and 24 bits and as floats, channels put together', () => {
    const sixteen = file(1, 16, 2, (v, at) => {
      for (const [i, x] of [16_384, 0, -32_768, -32_768].entries()) v.setInt16(at + 2 * i, x, true);
    });
    expect([...readWave(sixteen).samples]).toEqual([0.25, -1]);
    const three = [0, 0, 0x40, 0, 0, 0xc0];
    const packed = file(1, 24, 1, (v, at) => {
      for (const [i, x] of three.entries()) v.setUint8(at + i, x);
    });
    expect([...readWave(packed).samples]).toEqual([0.5, -0.5]);
    const floats = file(3, 32, 1, (v, at) => {
      for (const [i, x] of [0.125, -0.75].entries()) v.setFloat32(at + 4 * i, x, true);
    });
    expect(readWave(floats)).toEqual({ samples: Float64Array.of(0.125, -0.75), rate: 48_000 });
  });

  test('anything else is refused with a word', () => {
    expect(() => readWave(new Uint8Array(100))).toThrow('a WAV file');
    expect(() => readWave(file(2, 4, 1, () => undefined, 8))).toThrow('plain samples');
    expect(() => readWave(file(1, 16, 1, () => undefined).slice(0, 40))).toThrow('a WAV file');
  });
});
