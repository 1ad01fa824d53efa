/** Reads a recording as a telephone or a computer writes it: RIFF WAVE, plain samples. */
import { DomainError } from '../errors.ts';

export interface Recording {
  /** One channel, the mean of all; full scale is 1. */
  readonly samples: Float64Array;
  /** Samples in a second [Hz]. */
  readonly rate: number;
}

type Format = { readonly kind: number; readonly channels: number; readonly rate: number; readonly bits: number };

const integers = 1;
const floats = 3;
/** The kind of samples stands further on in the header. */
const extensible = 0xfffe;

/**
 * @param bytes  the file
 * @throws DomainError when it is no such file, or its samples are packed
 */
export function readWave(bytes: Uint8Array): Recording {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const name = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (bytes.length < 44 || name(0) !== 'RIFF' || name(8) !== 'WAVE')
    throw new DomainError('recording', `${bytes.length} bytes`, 'a WAV file');
  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const [id, size] = [name(at), view.getUint32(at + 4, true)];
    const body = at + 8;
    if (id === 'fmt ' && body + 16 <= bytes.length) format = formatAt(view, body, size);
    if (id === 'data' && format) return samplesOf(view, body, Math.min(size, bytes.length - body), format);
    at = body + size + (size % 2);
  }
  throw new DomainError('recording', 'no samples', 'a WAV file that holds samples');
}

function formatAt(view: DataView, at: number, size: number): Format {
  const kind = view.getUint16(at, true);
  const further = kind === extensible && size >= 26 && at + 26 <= view.byteLength;
  return {
    kind: further ? view.getUint16(at + 24, true) : kind,
    channels: view.getUint16(at + 2, true),
    rate: view.getUint32(at + 4, true),
    bits: view.getUint16(at + 14, true),
  };
}

function samplesOf(view: DataView, from: number, size: number, { kind, channels, rate, bits }: Format): Recording {
  const read = readers[`${kind} ${bits}`];
  if (!read || channels < 1 || channels > 8 || rate < 4000 || rate > 400_000)
    throw new DomainError('recording', `kind ${kind}, ${bits} bits, ${rate} Hz`, 'plain samples of 8 to 32 bits');
  const width = (bits / 8) * channels;
  const samples = new Float64Array(Math.floor(size / width));
  for (let i = 0; i < samples.length; i++) {
    let sum = 0;
    for (let c = 0; c < channels; c++) sum += read(view, from + i * width + (c * bits) / 8);
    samples[i] = Number.isFinite(sum) ? sum / channels : 0;
  }
  return { samples, rate };
}

const readers: Readonly<Record<string, (view: DataView, at: number) => number>> = {
  [`${integers} 8`]: (v, at) => (v.getUint8(at) - 128) / 128,
  [`${integers} 16`]: (v, at) => v.getInt16(at, true) / 2 ** 15,
  [`${integers} 24`]: (v, at) => ((v.getInt8(at + 2) << 16) | v.getUint16(at, true)) / 2 ** 23,
  [`${integers} 32`]: (v, at) => v.getInt32(at, true) / 2 ** 31,
  [`${floats} 32`]: (v, at) => v.getFloat32(at, true),
};
