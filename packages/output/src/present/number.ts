/** Plain numbers with the decimal sign of the job and a typographic minus. */
import { formatLength } from '@sparewright/core/units/format';
import { type DecimalSign, signOf } from './settings.ts';

/** With so many decimals; left out, as many as a person reads at a glance, trailing noughts trimmed. */
export function presentNumber(value: number, decimalSign: DecimalSign, decimals?: number): string {
  const style = { decimals: decimals ?? glance(value), decimalSign: signOf(decimalSign) };
  // A length in millimetres is a plain number: core rounds and signs both alike.
  const text = formatLength(value, 'mm', style);
  return decimals === undefined ? trimmed(text, style.decimalSign) : text;
}

/** `86 %` */
export function presentShare(share: number, decimalSign: DecimalSign): string {
  const percent = 100 * share;
  return `${presentNumber(percent, decimalSign, Math.abs(percent) < 1 && percent !== 0 ? 1 : 0)} %`;
}

/** Three or four figures, never more than six decimals. */
function glance(value: number): number {
  const size = Math.abs(value);
  if (size === 0 || size >= 1000) return 0;
  if (size >= 100) return 1;
  if (size >= 1) return 3 - Math.floor(Math.log10(size));
  return Math.min(6, 2 - Math.floor(Math.log10(size)));
}

function trimmed(text: string, sign: string): string {
  return text.includes(sign) ? text.replace(/0+$/, '').replace(new RegExp(`\\${sign}$`), '') : text;
}
