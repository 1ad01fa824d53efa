/** What the job is, typed. */

import { hazards } from '@sparewright/core/job/hazards';
import type { Form } from '../use-job.ts';
import { choice, number, prose, text, words } from './fields.ts';
import { Fields } from './record-table.tsx';

export function JobForm({ form }: { readonly form: Form }) {
  return (
    <>
      <h3 className="large">What the job is</h3>
      <Fields
        form={form}
        at={[]}
        title="The job"
        fields={[
          text('title', 'Title', { needed: true, wide: true }),
          choice('hazard', 'Hazard class', { choices: words(...hazards), needed: true }),
          text('machine.name', 'Machine it belongs to', { needed: true, wide: true }),
          number('machine.decade', 'Built in the decade of'),
          text('machine.country', 'Made in'),
          choice('sheet.paper', 'Paper', { choices: words('A4', 'Letter') }),
          choice('sheet.projection', 'Projection', { choices: words('first angle', 'third angle') }),
          choice('sheet.decimalSign', 'Decimal sign', { choices: words('point', 'comma') }),
          text('sheet.drawnBy', 'Name in the title block'),
          text('sheet.date', 'Date in the title block'),
          prose('notes', 'Notes', { wide: true }),
        ]}
      />
    </>
  );
}
