/** What a person may say about the whole route before it is planned; everything left open is chosen by the planner. */
import type { Json } from '@sparewright/core/job/merge';
import { waysHeld } from '@sparewright/core/route/ways-held';
import type { RouteView } from '@sparewright/output/present/job-view';
import { isObject, textAt } from '../document.ts';
import { choice, number, size, words } from '../forms/fields.ts';
import { Fields } from '../forms/record-table.tsx';
import type { Form } from '../use-job.ts';

export function RouteWishes({ form, chucks }: { readonly form: Form; readonly chucks: RouteView['chucks'] }) {
  const said = textsIn(form.document);
  return (
    <details className="folded wishes" open={said > 0 || undefined}>
      <summary>As you want it: first end, chuck, way to hold it, tailstock, bar, number of parts</summary>
      <Fields
        form={form}
        at={['route']}
        title="What is left open the planner chooses"
        fields={[
          choice('firstEndOut', 'End that stands out first', {
            choices: [
              { value: 'left', words: 'left end' },
              { value: 'right', words: 'right end' },
            ],
          }),
          choice('chuck', 'Chuck', { choices: chucks }),
          choice('hold', 'Way to hold it', { choices: words(...waysHeld) }),
          choice('tailstock', 'Tailstock in the first setup', {
            choices: [
              { value: 'true', words: 'supports the free end' },
              { value: 'false', words: 'not used' },
            ],
            become: withTailstock,
          }),
          size('stockDiameter', 'Diameter of the bar'),
          number('count', 'Parts to make'),
        ]}
      />
    </details>
  );
}

/** How many of these are said. */
function textsIn(document: Json | undefined): number {
  const keys = ['firstEndOut', 'chuck', 'hold', 'tailstock', 'stockDiameter', 'count'];
  return keys.filter((key) => textAt(document, ['route', key]) !== '').length;
}

function withTailstock(route: Json, chosen: string): Json {
  const { tailstock: _, ...others } = isObject(route) ? route : {};
  return chosen === '' ? others : { ...others, tailstock: chosen === 'true' };
}
