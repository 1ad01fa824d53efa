/** Bench tests: one kind at a time to write down, and those written down already. */
import { listAt, type Path, textAt } from '../document.ts';
import type { Choice } from '../forms/fields.ts';
import { column, number } from '../forms/fields.ts';
import { Fields, RecordTable } from '../forms/record-table.tsx';
import type { Form } from '../use-job.ts';
import { NewTest } from './new-test.tsx';
import { lackedByLoads, PushLoads, withReadLoads } from './push-loads.tsx';
import { TapFile } from './tap-file.tsx';
import { type BegunTest, kinds, type TestKind, testKinds, testWords } from './test-kinds.ts';

interface Props {
  readonly workshop: Form;
  readonly begun: BegunTest;
  readonly choose: (test: BegunTest) => void;
}

export function Tests({ workshop, begun, choose }: Props) {
  const { kind } = begun;
  const { how, fields } = kinds[kind];
  const specs = fields({
    cutters: choicesAt(workshop, ['cutters']),
    states: choicesAt(workshop, ['lathe', 'tests', 'states']),
  });
  return (
    <section aria-labelledby="write-tests">
      <h3 className="large" id="write-tests">
        Write a test down
      </h3>
      <fieldset className="kinds">
        <legend className="unseen">Kind of test</legend>
        {testKinds.map((k) => (
          <button key={k} type="button" aria-pressed={k === kind} onClick={() => choose({ kind: k, begins: {} })}>
            {kinds[k].name} <span className="unit">{listAt(workshop.document, pathOf(k)).length}</span>
          </button>
        ))}
      </fieldset>
      <p>{how}</p>
      {(kind === 'pushes' || kind === 'taps') && (
        <p className="caution-line">
          <strong>▲ Caution</strong> Spindle stopped and the drive switched off at the wall, chuck key out. Pull
          steadily and do not stand where a slipping hook would throw you or the scale.
        </p>
      )}
      <NewTest
        key={`${kind} ${JSON.stringify(begun.begins)}`}
        workshop={workshop}
        begun={begun}
        fields={specs}
        {...(kind === 'pushes'
          ? { more: (form: Form) => <PushLoads form={form} />, lacks: lackedByLoads, finish: withReadLoads }
          : kind === 'taps'
            ? { more: (form: Form) => <TapFile form={form} /> }
            : {})}
      />
      <Written workshop={workshop} kind={kind} specs={specs} />
    </section>
  );
}

interface WrittenProps {
  readonly workshop: Form;
  readonly kind: TestKind;
  readonly specs: ReturnType<(typeof kinds)[TestKind]['fields']>;
}

function Written({ workshop, kind, specs }: WrittenProps) {
  const path = pathOf(kind);
  const tests = listAt(workshop.document, path);
  if (tests.length === 0) return <p className="secondary">None of these is written down yet.</p>;
  return (
    <ol className="written">
      {tests.map((test, i) => {
        const words = testWords(kind, test);
        return (
          <li key={textAt(test, ['id'])}>
            <details className="folded">
              <summary>
                {words}{' '}
                <span className="unseen">
                  , {kinds[kind].one} {i + 1}
                </span>
              </summary>
              <Fields
                form={workshop}
                at={[...path, i]}
                title={`${kinds[kind].one} ${i + 1}`}
                fields={specs.filter((f) => f.of === undefined || f.of(test))}
              />
              {kind === 'pushes' && (
                <RecordTable
                  form={workshop}
                  path={[...path, i, 'readings']}
                  title={`Readings of push test ${i + 1}`}
                  one="reading"
                  columns={[
                    column(number('force', 'Force', { unit: 'N', needed: true })),
                    column(number('up', 'While it rises', { unit: 'µm' })),
                    column(number('down', 'While it falls', { unit: 'µm' })),
                  ]}
                  add={() => ({ force: 100 })}
                />
              )}
            </details>{' '}
            <button
              type="button"
              aria-label={`Take out: ${words}`}
              onClick={() => workshop.put([...path, i], undefined)}
            >
              Take out
            </button>
          </li>
        );
      })}
    </ol>
  );
}

const pathOf = (kind: TestKind): Path => ['lathe', 'tests', kind];

function choicesAt(form: Form, path: Path): Choice[] {
  return listAt(form.document, path).map((r) => ({ value: textAt(r, ['id']), words: textAt(r, ['name']) }));
}
