/** A short recording of one knock, made for the example of a question. */

const rate = 4000;
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** 0.05 s of silence, then a tone of 400 Hz that dies away with a damping of 0.02, 8 bits, as a WAV file in base64. */
export function demoRecording(): string {
  const [silence, sound] = [0.05 * rate, 0.2 * rate];
  const samples = Array.from({ length: silence + sound }, (_, i) => {
    const t = (i - silence) / rate;
    const omega = 2 * Math.PI * 400;
    return 128 + (t < 0 ? 0 : Math.round(120 * Math.exp(-0.02 * omega * t) * Math.sin(omega * t)));
  });
  const text = (word: string) => [...word].map((c) => c.charCodeAt(0));
  const number = (value: number, bytes: number) => Array.from({ length: bytes }, (_, i) => (value >> (8 * i)) & 255);
  return base64([
    ...text('RIFF'),
    ...number(36 + samples.length, 4),
    ...text('WAVEfmt '),
    ...number(16, 4),
    ...number(1, 2),
    ...number(1, 2),
    ...number(rate, 4),
    ...number(rate, 4),
    ...number(1, 2),
    ...number(8, 2),
    ...text('data'),
    ...number(samples.length, 4),
    ...samples,
  ]);
}

function base64(bytes: readonly number[]): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const four = [18, 12, 6, 0].map((shift) => letters[(three >> shift) & 63]);
    out += four.map((c, k) => (i + k > bytes.length ? '=' : c)).join('');
  }
  return out;
}
