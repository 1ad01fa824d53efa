/** Curved sections as recovered from their points, in finished words and pictures. */
import type { CurveShape, RecoveredCurve, RecoverResult } from '@sparewright/core/recover/recover-result';
import { drawChart } from '../chart/draw-chart.ts';
import { paintSvg } from '../svg/paint.ts';
import { valueAt } from './document-places.ts';
import type { DocumentPath, RecoveredFeatureView, TakeView } from './job-view.ts';
import { presentLength, presentSize } from './length.ts';
import type { ViewContext } from './recovered-context.ts';
import { decisionAbout, isLeftOpen } from './recovered-decision.ts';
import { barsOf, pictureWidth } from './recovered-size.ts';
import { sureness } from './size-line.ts';

/** Less likely shapes are not offered. */
const leastTaken = 0.05;

export function curveViews({ curves }: RecoverResult, context: ViewContext): RecoveredFeatureView[] {
  return curves.map((curve) => curveView(curve, context));
}

function curveView(curve: RecoveredCurve, context: ViewContext): RecoveredFeatureView {
  const { settings, places } = context;
  const of = `${curve.of}.${curve.measured === 'depths' ? 'depths' : 'profile'}`;
  const title = `curve of the ${curve.of.replaceAll('-', ' ')}`;
  const shown = curve.shapes.filter((s, i) => i === 0 || s.probability > 0.005);
  const named = shown.map((s) => ({ name: nameOf(s, context), probability: s.probability }));
  return {
    of,
    title,
    says: [
      `${curve.points.length} ${curve.measured === 'depths' ? 'depths below the top' : 'diameters along it'} were measured.`,
      ...(curve.shapes[0] ? [saysOf(curve.shapes[0], context)] : []),
    ],
    line: curve.measured === 'depths' ? null : profileOf(curve, title, context),
    bars: barsOf(named, title, settings),
    designs: named.map((n) => ({ written: n.name, share: sureness(n.probability, settings) })),
    wear: [],
    lookAlike: null,
    next: [],
    takes: shown
      .filter((s, i) => i === 0 || s.probability > leastTaken)
      .map((s, i) => takeOf(s, i, curve, places.get(curve.of), context)),
    ownAt: null,
    entered: null,
    decision: decisionAbout(of, context),
    openAs: of,
    isOpen: isLeftOpen(of, context),
    conflicts: [],
  };
}

function nameOf({ shape, radius, bulge }: CurveShape, { settings }: ViewContext): string {
  const r = radius === undefined ? '' : `, radius ${presentSize(radius, settings, settings.units === 'in' ? 3 : 2)}`;
  return `${shape === 'free' ? 'free curve' : shape}${r}${bulge === 'inward' ? ', hollow' : ''}`;
}

function saysOf(shape: CurveShape, context: ViewContext): string {
  if (shape.shape === 'free') return 'Neither cone nor arc goes through them: it is a curve of its own.';
  const { settings } = context;
  const off = presentSize(shape.deviation, settings, settings.units === 'in' ? 5 : 4);
  const sure =
    shape.uncertainty === undefined
      ? ''
      : ` (± ${presentSize(2 * shape.uncertainty, settings, settings.units === 'in' ? 3 : 2)})`;
  return `Likeliest: ${nameOf(shape, context)}${sure}. The points lie ${off} off it, root mean square.`;
}

/** The measured points in ink, the likeliest shape in pencil through them. */
function profileOf(curve: RecoveredCurve, title: string, { settings }: ViewContext): string {
  const { units, decimalSign } = settings;
  const value = (mm: number) => (units === 'in' ? mm / 25.4 : mm);
  const scene = drawChart(
    {
      title,
      description: `Diameters along it: ${curve.points.map((p) => `${presentLength(p.size, units, decimalSign)} at ${presentLength(p.along, units, decimalSign)}`).join(', ')}.`,
      x: { title: 'along, from its left end', unit: units },
      y: { title: 'diameter', unit: units },
      lines: [{ points: curve.fitted.map((p) => [value(p.along), value(p.size)] as const), meaning: 'inferred' }],
      marks: curve.points.map((p) => ({
        x: value(p.along),
        y: value(p.size),
        shape: 'dot' as const,
        meaning: 'measured' as const,
      })),
    },
    { decimalSign, width: pictureWidth, height: 60 },
  );
  return paintSvg(scene, { theme: 'screen' });
}

function takeOf(
  shape: CurveShape,
  rank: number,
  curve: RecoveredCurve,
  at: DocumentPath | undefined,
  context: ViewContext,
): TakeView {
  const name = nameOf(shape, context);
  return {
    name: rank === 0 ? 'The likeliest' : 'Also possible',
    write: name,
    means: '',
    why: `${sureness(shape.probability, context.settings)} by the points measured`,
    puts: at ? putsOf(shape, curve, at, context) : [],
  };
}

/** A section outside becomes one of the recovered shape; of a dome the height follows from the radius. Elsewhere only the decision is written. */
function putsOf(shape: CurveShape, curve: RecoveredCurve, at: DocumentPath, context: ViewContext): TakeView['puts'] {
  if (at[0] !== 'part' || at[1] !== 'outside') return [];
  const write = (mm: number) => typed(mm, context);
  const kind = valueAt(context.document, [...at, 'kind']);
  if (kind === 'crown') {
    const foot = context.assessment.part?.dimensions.find((d) => d.id === `${curve.of}.diameter`)?.nominal;
    const { shape: s, radius: r } = shape;
    if (s !== 'sphere' || r === undefined || foot === undefined || !(r > foot / 2)) return [];
    return [{ at: [...at, 'length'], value: write(r - Math.sqrt(r * r - (foot / 2) ** 2)) }];
  }
  const kept = Object.fromEntries(
    ['id', 'name', 'role', 'finish', 'length', 'startEdge', 'endEdge'].flatMap((key) => {
      const value = valueAt(context.document, [...at, key]);
      return value === undefined ? [] : [[key, value]];
    }),
  );
  if (shape.shape === 'free') {
    const points = curve.points.map((p) => ({ along: write(p.along), diameter: write(p.size) }));
    return [{ at, value: { ...kept, kind: 'curve', points } }];
  }
  if (!shape.ends) return [];
  const diameters = { startDiameter: write(shape.ends[0].size), endDiameter: write(shape.ends[1].size) };
  if (shape.shape === 'cone') return [{ at, value: { ...kept, kind: 'cone', ...diameters } }];
  if (shape.shape !== 'arc' || shape.radius === undefined) return [];
  return [{ at, value: { ...kept, kind: 'arc', ...diameters, radius: write(shape.radius), bulge: shape.bulge } }];
}

/** A plain size in the unit of the job, as one types it. */
function typed(mm: number, { settings }: ViewContext): string {
  return settings.units === 'in' ? (mm / 25.4).toFixed(4) : mm.toFixed(3);
}
