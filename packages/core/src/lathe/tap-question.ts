/**
 * The question at which tones something rings, from a recording of knocks.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { round } from './answer-fields.ts';
import { demoRecording } from './demo-recording.ts';
import { tonesOf } from './tap-recording.ts';
import { readWave } from './wave-file.ts';

/** Half a minute of two channels at 48 kHz and 16 bits. */
const mostCharacters = 8_000_000;

export const tapTones = defineQuestion({
  name: 'tap-tones',
  asks: 'At which tones does it ring when it is knocked against, and how fast do they die away, by this recording?',
  input: z.strictObject({
    wav: z
      .string()
      .max(mostCharacters, { error: 'a recording of at most half a minute' })
      .regex(/^[A-Za-z0-9+/]*={0,2}$/, { error: 'a WAV file in base64' })
      .describe('the recording, a WAV file with plain samples, in base64'),
  }),
  output: z.strictObject({
    seconds: z.number().describe('length of the recording [s]'),
    knocks: z.number().describe('knocks found [-]'),
    tones: z
      .array(
        z.strictObject({
          frequency: z.number().describe('tone [Hz]'),
          uncertainty: z.number().describe('spread from knock to knock, or what so short a sound can tell [Hz]'),
          damping: z
            .number()
            .nullable()
            .describe('share of critical damping; null where it does not die away clearly [-]'),
          strength: z.number().describe('power of its peak over that of the highest [-]'),
        }),
      )
      .describe('tones that stand out, the strongest first'),
  }),
  sources: ['methods-dynamics'],
  example: {
    input: { wav: demoRecording() },
    gives: { seconds: 0.25, knocks: 1 },
    from: 'one knock of a tone of 400 Hz that dies away with a damping of 0.02, made for this purpose',
  },
  answer({ wav }) {
    const recording = readWave(fromBase64(wav));
    const { knocks, tones } = tonesOf(recording);
    return {
      seconds: round(recording.samples.length / recording.rate),
      knocks,
      tones: tones.map((t) => ({
        frequency: round(t.frequency),
        uncertainty: round(t.uncertainty),
        damping: t.damping === undefined ? null : round(t.damping),
        strength: round(t.strength),
      })),
    };
  },
});

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

function fromBase64(text: string): Uint8Array {
  const plain = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((plain.length * 3) / 4));
  const values = new Uint8Array(128);
  for (let i = 0; i < letters.length; i++) values[letters.charCodeAt(i)] = i;
  let [bits, held, at] = [0, 0, 0];
  for (let i = 0; i < plain.length; i++) {
    held = ((held << 6) | (values[plain.charCodeAt(i)] ?? 0)) & 0xffffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}
