/** The words and tables of a sheet, in the order in which the server gives them. */

import type { FactView, SheetBlock, TableView } from '@sparewright/output/present/job-view';
import { Fragment, Suspense } from 'react';
import { HelpHere } from '../help/in-place.tsx';
import type { MeaningId } from '../help/titles.ts';
import { meaningsIn } from '../help/where.ts';
import { later } from '../later.tsx';

/** Drawn below its table, and read only where there is one to draw. */
const PassPicture = later(() => import('../lathe/pass-picture.tsx'));

/** Fewer passes are no curve. */
const leastPasses = 3;

function hasPasses({ columns, rows }: TableView): boolean {
  const titles = columns.map((c) => c.title);
  return rows.length >= leastPasses && ['pass', 'diameter after'].every((title) => titles.includes(title));
}

export function Blocks({ blocks }: { readonly blocks: readonly SheetBlock[] }) {
  const large = blocks.findIndex((b) => b.kind === 'heading' && !b.small);
  const meanings = meaningsIn(blocks);
  return blocks.map((block, i) => (
    <Fragment key={keyOf(block, i)}>
      <BlockView block={block} deep={large >= 0 && i > large} />
      <Meaning of={meanings[i] ?? []} />
    </Fragment>
  ));
}

function Meaning({ of }: { readonly of: readonly MeaningId[] }) {
  return of.length > 0 && <HelpHere meaning={of} />;
}

/** A sheet is written anew as a whole; where a block stands is what it is. */
function keyOf(block: SheetBlock, place: number): string {
  return `${place}-${block.kind}`;
}

/** Below a large heading small ones are a level deeper. */
function BlockView({ block, deep }: { readonly block: SheetBlock; readonly deep: boolean }) {
  const Small = deep ? 'h4' : 'h3';
  switch (block.kind) {
    case 'heading':
      return block.small ? <Small className="small">{block.text}</Small> : <h3 className="large">{block.text}</h3>;
    case 'words':
      return <p className={block.secondary ? 'secondary' : undefined}>{block.text}</p>;
    case 'list':
      return <Lines items={block.items} numbered={block.numbered} />;
    case 'sources':
      return (
        <details className="folded">
          <summary>Sources</summary>
          <Lines items={block.items} numbered={false} />
        </details>
      );
    case 'why':
      return <Why worked={block.worked} />;
    case 'facts':
      return <Facts rows={block.rows} />;
    case 'caution':
      return (
        <div className="caution">
          <p>
            <strong>▲ {block.title}</strong>
          </p>
          <Lines items={block.lines} numbered={false} />
        </div>
      );
    case 'proof':
      return (
        <div className="proof">
          <h4>{block.title}</h4>
          <Facts
            rows={[
              { what: 'How', is: block.how },
              { what: 'Accept', is: block.acceptance },
              { what: 'Why', is: block.why },
            ]}
          />
        </div>
      );
    case 'dial':
      return (
        <section className="dial" aria-label={`${block.name}, operation ${block.operation}`}>
          <Small className="small">
            {block.name}, operation {block.operation}: {block.title}
          </Small>
          {block.notes.length > 0 && <Lines items={block.notes} numbered={false} />}
          <PlainTable table={block.table} />
          {hasPasses(block.table) && (
            <Suspense>
              <PassPicture dial={block} />
            </Suspense>
          )}
        </section>
      );
    case 'table':
      return <PlainTable table={block} />;
  }
}

export function Lines({ items, numbered }: { readonly items: readonly string[]; readonly numbered: boolean }) {
  const lines = items.map((item, i) => <li key={keyed(item, i)}>{item}</li>);
  return numbered ? <ol className="lines">{lines}</ol> : <ul className="lines">{lines}</ul>;
}

const keyed = (text: string, place: number): string => `${place}-${text}`;

/** Each figure: its formula, the numbers put in, what comes of it, and whose formula it is. */
function Why({ worked }: Pick<Extract<SheetBlock, { kind: 'why' }>, 'worked'>) {
  return (
    <details className="folded">
      <summary>Why</summary>
      <ul className="worked">
        {worked.map(({ what, formula, put, gives, source }) => (
          <li key={what}>
            <span className="what">{what}</span>
            <span className="formula">{formula}</span>
            <span>Put in: {put.join(' · ')}</span>
            <span>
              Gives: <strong>{gives}</strong>
            </span>
            <span className="source">{source}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

export function Facts({ rows }: { readonly rows: readonly FactView[] }) {
  return (
    <dl className="facts">
      {rows.map(({ what, is }) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{is}</dd>
        </div>
      ))}
    </dl>
  );
}

function PlainTable({ table }: { readonly table: TableView }) {
  // Blanks are for pencil and paper; what was written in is shown.
  const shown = table.columns
    .map((column, at) => ({ column, at }))
    .filter(({ column, at }) => !column.blank || table.rows.some((row) => 'length' in row && (row[at] ?? '') !== ''));
  // Two columns, and a few of nothing but figures, fit a phone as they are.
  const narrow = shown.length <= 2 || (shown.length <= 6 && shown.every(({ column }) => column.right));
  return (
    <table className={narrow ? 'figures' : 'plain'}>
      <thead>
        <tr>
          {shown.map(({ column, at }) => (
            <th key={at} scope="col" className={column.right ? 'figure' : undefined}>
              {column.title} {column.unit !== '' && <span className="unit">{column.unit}</span>}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row, i) =>
          'length' in row ? (
            <tr key={keyed(row[0] ?? '', i)}>
              {shown.map(({ column, at }) => (
                <td key={at} data-label={column.title} className={column.right ? 'figure' : undefined}>
                  {row[at]}
                </td>
              ))}
            </tr>
          ) : (
            <tr key={keyed(row.title, i)} className="group">
              <th colSpan={shown.length} scope="colgroup">
                {row.title} <span className="unit">{row.says}</span>
              </th>
            </tr>
          ),
        )}
      </tbody>
    </table>
  );
}
