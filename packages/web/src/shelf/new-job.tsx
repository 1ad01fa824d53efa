/** A new job: five questions to a first drawing. */

import { hazards } from '@sparewright/core/job/hazards';
import { newJob, type Shape, shapes } from '@sparewright/core/job/templates';
import { type LengthUnit, readLength } from '@sparewright/core/units/length';
import { type FormEvent, useEffect, useState } from 'react';
import { createJob } from '../ask-server.ts';
import { go } from '../place.ts';
import { ScreenHead } from './screen-head.tsx';

interface Answers {
  readonly title: string;
  readonly machine: string;
  readonly units: LengthUnit;
  readonly hazard: string;
  readonly shape: Shape;
  readonly longest: string;
  readonly thickest: string;
}

type Wrong = Partial<Record<keyof Answers, string>>;

const shapeWords: Readonly<Record<Shape, string>> = {
  pin: 'a head and a shank',
  plunger: 'one sliding diameter, a cavity from the left',
  bush: 'one diameter, bored through',
  spindle: 'a thick middle between two journals',
  plug: 'a head and a stem for a thread',
};

export function NewJob() {
  const [answers, setAnswers] = useState<Answers>({
    title: '',
    machine: '',
    units: 'mm',
    hazard: 'ordinary',
    shape: 'pin',
    longest: '',
    thickest: '',
  });
  const [wrong, setWrong] = useState<Wrong>({});
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    document.title = 'New job · Sparewright';
  }, []);

  const answer = (change: Partial<Answers>) => setAnswers((before) => ({ ...before, ...change }));
  const begin = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const found = wrongIn(answers);
    setWrong(found);
    const [first] = Object.keys(found);
    if (first !== undefined) return document.getElementById(`new-${first}`)?.focus();
    const hazard = hazards.find((h) => h === answers.hazard) ?? 'ordinary';
    const { units } = answers;
    const made = newJob({
      ...answers,
      title: answers.title.trim(),
      machine: answers.machine.trim(),
      hazard,
      longest: lengthOf(answers.longest, units) ?? 0,
      thickest: lengthOf(answers.thickest, units) ?? 0,
    });
    try {
      const { id } = await createJob(JSON.parse(JSON.stringify(made)));
      go({ screen: 'job', job: id, stage: 'part' });
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'The job could not be made.');
    }
  };
  const field = (key: 'title' | 'machine' | 'longest' | 'thickest', label: string, hint: string) => (
    <span className="field wide">
      <label htmlFor={`new-${key}`}>{label}</label>
      <input
        id={`new-${key}`}
        value={answers[key]}
        autoComplete="off"
        aria-invalid={wrong[key] !== undefined}
        aria-describedby={`new-${key}-says`}
        onChange={(e) => answer({ [key]: e.target.value })}
      />
      <span id={`new-${key}-says`} className={wrong[key] === undefined ? 'understood' : 'refusal'}>
        {wrong[key] ?? hint}
      </span>
    </span>
  );
  return (
    <>
      <ScreenHead title="New job" here="new" />
      <main className="questions">
        <form onSubmit={(e) => void begin(e)} noValidate>
          <ol>
            <li>
              <h2>What is it?</h2>
              {field('title', 'Name of the job', 'As you would write it on the box: valve guide pin')}
            </li>
            <li>
              <h2>What does it belong to?</h2>
              {field('machine', 'Machine', 'May stay empty')}
            </li>
            <li>
              <h2>In which unit, and what can it do to people?</h2>
              <div className="fields">
                <span className="field">
                  <label htmlFor="new-units">Unit of bare numbers</label>
                  <select
                    id="new-units"
                    value={answers.units}
                    onChange={(e) => answer({ units: e.target.value === 'in' ? 'in' : 'mm' })}
                  >
                    <option value="mm">millimetres</option>
                    <option value="in">inches</option>
                  </select>
                </span>
                <span className="field">
                  <label htmlFor="new-hazard">Hazard class</label>
                  <select id="new-hazard" value={answers.hazard} onChange={(e) => answer({ hazard: e.target.value })}>
                    {hazards.map((h) => (
                      <option key={h}>{h}</option>
                    ))}
                  </select>
                </span>
              </div>
            </li>
            <li>
              <h2 id="new-shape">Which shape is nearest?</h2>
              <div className="shapes" role="radiogroup" aria-labelledby="new-shape">
                {shapes.map((shape) => (
                  <label key={shape}>
                    <input
                      type="radio"
                      name="shape"
                      checked={answers.shape === shape}
                      onChange={() => answer({ shape })}
                    />
                    <span className="name">{shape}</span>
                    <span className="understood">{shapeWords[shape]}</span>
                  </label>
                ))}
              </div>
            </li>
            <li>
              <h2>How long, and how thick at most?</h2>
              <div className="fields">
                {field('longest', 'Longest size', understood(answers.longest, answers.units, '79.5 · 3 1/8 in'))}
                {field('thickest', 'Thickest diameter', understood(answers.thickest, answers.units, '20 · .787"'))}
              </div>
            </li>
          </ol>
          <p>
            <button type="submit">Draw it</button>{' '}
            <span className="understood">Everything can be changed afterwards.</span>
          </p>
          {trouble !== '' && (
            <p className="refusal" role="alert">
              {trouble}
            </p>
          )}
        </form>
      </main>
    </>
  );
}

function wrongIn({ title, longest, thickest, units }: Answers): Wrong {
  const needed = 'A length above 0 and up to 3 m, for example 12,5 or 1/2 in.';
  const wrongLength = (text: string) => {
    const mm = lengthOf(text, units);
    return mm === undefined || mm <= 0 || mm > 3000 ? needed : undefined;
  };
  const lengths = { longest: wrongLength(longest), thickest: wrongLength(thickest) };
  return {
    ...(title.trim() === '' ? { title: 'A name to find it by.' } : {}),
    ...(title.trim().length > 160 ? { title: 'At most 160 letters.' } : {}),
    ...(lengths.longest === undefined ? {} : { longest: lengths.longest }),
    ...(lengths.thickest === undefined ? {} : { thickest: lengths.thickest }),
  };
}

function lengthOf(text: string, units: LengthUnit): number | undefined {
  return readLength(text, units)?.mm;
}

/** What was understood of it, as soon as it is a length. */
function understood(text: string, units: LengthUnit, otherwise: string): string {
  const mm = text.trim() === '' ? undefined : lengthOf(text, units);
  if (mm === undefined) return `As you would write it: ${otherwise}`;
  return `Understood: ${Number(mm.toFixed(3))} mm = ${Number((mm / 25.4).toFixed(4))} in`;
}
