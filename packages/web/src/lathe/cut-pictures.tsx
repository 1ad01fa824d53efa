/** The pictures of one cut on this lathe. */
import { type Mm, mmPerInch } from '@sparewright/core/units/quantities';
import { depthChart } from '@sparewright/output/chart/depth-chart';
import { drawBars } from '@sparewright/output/chart/draw-bars';
import { drawChart } from '@sparewright/output/chart/draw-chart';
import type { CutAsked, RouteView } from '@sparewright/output/present/job-view';
import { presentNumber, presentShare } from '@sparewright/output/present/number';
import { presentProse } from '@sparewright/output/present/prose';
import { useCallback, useMemo } from 'react';
import { Picture } from './picture.tsx';
import type { useAnswer } from './use-answer.ts';

type Settings = RouteView['settings'];
type AnswerOf<N extends Parameters<typeof useAnswer>[0]> = NonNullable<ReturnType<typeof useAnswer<N>>['answer']>;

const isPlunge = ({ operation }: CutAsked) => operation === 'grooving' || operation === 'parting';

interface SizeProps {
  readonly answer: AnswerOf<'cut-on-lathe'>;
  readonly cut: CutAsked;
  readonly settings: Settings;
}

/** What one pass leaves on, along the work. */
export function SizePicture({ answer, cut, settings }: SizeProps) {
  const draw = useCallback(
    (width: Mm) => {
      const inches = settings.units === 'in';
      const along = (mm: Mm) => (inches ? mm / mmPerInch : mm);
      const error = (mm: Mm) => (inches ? mm / mmPerInch : 1000 * mm);
      const points = answer.stations.map((s) => [along(s.at), error(s.error)] as const);
      const ends = [points[0], points.at(-1)].map((p) => presentNumber(p?.[1] ?? 0, settings.decimalSign));
      const unit = inches ? 'in' : 'µm';
      return drawChart(
        {
          title: 'What one pass leaves on, along the work',
          description: `From ${ends[0]} ${unit} towards the jaws to ${ends[1]} ${unit} at the free end, on the diameter.`,
          x: { title: 'from the jaws', unit: settings.units },
          y: { title: 'left on, on the diameter', unit, from: 0 },
          lines: [{ points, meaning: 'computed' }],
        },
        { ...settings, width, height: 52 },
      );
    },
    [answer, settings],
  );
  if (cut.operation === 'facing' || isPlunge(cut)) return null;
  const { low, middle, high } = answer.taper;
  const figure = (mm: Mm) =>
    settings.units === 'in'
      ? presentNumber(mm / mmPerInch, settings.decimalSign, 4)
      : presentNumber(mm, settings.decimalSign, 3);
  return (
    <figure>
      <figcaption>
        Bending: what one pass leaves on along the work. Difference {figure(middle)} {settings.units}; nine lathes in
        ten like this one {figure(low)} to {figure(high)}.
      </figcaption>
      <Picture draw={draw} />
    </figure>
  );
}

interface DepthProps {
  readonly answer: AnswerOf<'depth-at-speeds'>;
  readonly cut: CutAsked;
  readonly number: number;
  /** Other operations of the same kind, cutter and setup. */
  readonly others: readonly { readonly number: number; readonly speed: number; readonly depth: Mm }[];
  readonly settings: Settings;
}

export function DepthPicture({ answer, cut, number, others, settings }: DepthProps) {
  const draw = useCallback(
    (width: Mm) =>
      drawChart(
        depthChart(
          answer,
          [
            ...others.map((o) => ({ speed: o.speed, depth: o.depth, label: String(o.number) })),
            { speed: cut.speed, depth: cut.depth, label: `operation ${number}` },
          ],
          { ...settings, plunge: isPlunge(cut), title: 'How deep at each speed' },
        ),
        { ...settings, width, height: 70 },
      ),
    [answer, cut, number, others, settings],
  );
  return (
    <figure>
      <figcaption>
        How deep at each of the lathe’s own speeds, with the feed of operation {number}.
        {others.length > 0 &&
          ' The other numbers are operations of this setup with the same cutter; the limit drawn is that of this one.'}
      </figcaption>
      <Picture draw={draw} />
    </figure>
  );
}

const mostRemedies = 6;
/** A gain that shows in no figure is none. */
const leastGain = 0.02;

interface HelpProps {
  readonly answer: AnswerOf<'what-would-help'>;
  readonly cut: CutAsked;
  readonly settings: Settings;
}

function depthWords(mm: Mm, { units, decimalSign }: Settings): string {
  if (mm === 0) return 'none';
  return units === 'in'
    ? `${presentNumber(mm / mmPerInch, decimalSign, 4)} in`
    : `${presentNumber(mm, decimalSign, 2)} mm`;
}

/** Keys of sources mean something in the help only. */
const withoutKeys = (text: string): string => text.replace(/ ?\[[\w-]+\]/g, '');

/** What a remedy changes, as a bar: the first of these in which any of them shows. */
interface Measure {
  readonly words: string;
  readonly of: (r: AnswerOf<'what-would-help'>['asItStands']) => number;
  readonly written: (value: number) => string;
}

function measureOf({ asItStands, remedies }: AnswerOf<'what-would-help'>, cut: CutAsked, settings: Settings): Measure {
  const depth: Measure = {
    words: `greatest ${isPlunge(cut) ? 'width of the edge' : 'depth'} at which everything is good`,
    of: (r) => r.safeDepth,
    written: (value) => depthWords(value, settings),
  };
  const chance: Measure = {
    words: 'chance that this cut sings',
    of: (r) => r.chatter,
    written: (value) => presentShare(value, settings.decimalSign),
  };
  const size: Measure = {
    words: 'what one pass leaves on, at most',
    of: (r) => r.sizeError,
    written: (value) =>
      settings.units === 'in'
        ? `${presentNumber(value / mmPerInch, settings.decimalSign, 4)} in`
        : `${presentNumber(value, settings.decimalSign, 3)} mm`,
  };
  if (remedies.some((r) => r.safeDepth > 1.05 * asItStands.safeDepth + 1e-6)) return depth;
  return remedies.some((r) => r.chatter < asItStands.chatter - 0.02) ? chance : size;
}

export function HelpPicture({ answer, cut, settings }: HelpProps) {
  const { measure, helping } = useMemo(() => {
    const found = measureOf(answer, cut, settings);
    return { measure: found, helping: answer.remedies.filter((r) => r.gain > leastGain).slice(0, mostRemedies) };
  }, [answer, cut, settings]);
  const draw = useCallback(
    (width: Mm) => {
      const bar = (label: string, value: number, more: string, meaning: 'computed' | 'accent') => ({
        label,
        value,
        written: `${measure.written(value)}${more}`,
        meaning,
      });
      return drawBars(
        {
          title: 'What would help',
          description: `${measure.words}, as it stands and with each remedy.`,
          bars: [
            bar('as it stands', measure.of(answer.asItStands), '', 'computed'),
            ...helping.map((r, i) => bar(String(i + 1), measure.of(r), `, ${r.effort}`, 'accent')),
          ],
        },
        { ...settings, width },
      );
    },
    [answer, settings, helping, measure],
  );
  if (helping.length === 0) return <p>Nothing that was tried would let this cut go deeper, quieter or truer.</p>;
  return (
    <figure>
      <figcaption>What would help: {measure.words}, and how much work it is.</figcaption>
      <Picture draw={draw} />
      <ol className="remedies">
        {helping.map((r) => (
          <li key={r.name}>
            {presentProse(r.name, settings)}{' '}
            <span className="secondary">
              ({r.effort}; sings with a chance of {presentShare(r.chatter, settings.decimalSign)} instead of{' '}
              {presentShare(answer.asItStands.chatter, settings.decimalSign)}
              {r.assumes !== undefined && `; takes for granted: ${presentProse(withoutKeys(r.assumes), settings)}`})
            </span>
          </li>
        ))}
      </ol>
      {answer.notReckoned.length > 0 && (
        <details className="folded">
          <summary>Done in the trade, but not judged here</summary>
          <ul>
            {answer.notReckoned.map((n) => (
              <li key={n}>{n}</li>
            ))}
          </ul>
        </details>
      )}
    </figure>
  );
}
