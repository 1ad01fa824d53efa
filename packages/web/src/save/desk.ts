/**
 * One document under the hands of a person: what is typed is understood, kept, sent, and brought together with what others
 * typed. There is no button to save; the outbox holds what the server does not have yet.
 */
import { type Json, same } from '@sparewright/core/job/merge';
import { listRevisions, readRevision, readStored, type SaveAnswer, type Stored, saveDocument } from '../ask-server.ts';
import { type Desk, type DeskOptions, type DeskState, noRefusals, type Standing, unopened } from './desk-state.ts';
import { whenNews } from './events.ts';
import { differences, joinedWith, settled } from './join.ts';
import { openLater } from './later.ts';
import { client, dropLetter, letterOf, putLetter, whenOutboxChanges } from './outbox.ts';
import { isFault, isSilence, messageOf, refusalsOf } from './refusals.ts';
import { stepsOf } from './steps.ts';

/**
 * Typing goes on as long as keys follow each other faster than this [ms]: what is typed is shown at once, but kept, or refused,
 * only when it has stood for so long, for half a number is not meant.
 */
const pause = 300;
/** Work that takes longer is said to be under way [ms]. */
const unnoticed = 150;
/** A change is sent when no further one followed for this long [ms], so that a number is one revision, not one a digit. */
const lull = 900;
/** Whoever types on without such a pause waits no longer than this to have it kept, and then to have it sent [ms]. */
const longest = 4000;
/** Between two tries at a server that does not answer [ms]. */
const retry = 2500;

export function openDesk<View>({ key, address, check, concerns, whenStale, tell }: DeskOptions<View>): Desk {
  let state = unopened<View>();
  let saved: Stored | undefined;
  let accepted: Json | undefined;
  let refusedBy: 'check' | 'server' = 'check';
  let sending: Promise<void> | undefined;
  /** Asked for while a letter was on its way, and done once it has arrived. */
  let waiting: { deliver: boolean; catchUp: boolean } = { deliver: false, catchUp: false };
  let checking = new AbortController();
  const closed = new AbortController();
  const later = openLater();

  function set(change: Partial<DeskState<View>>): void {
    if (closed.signal.aborted) return;
    state = { ...state, ...change };
    tell(state);
  }

  async function open(): Promise<void> {
    try {
      saved = await readStored(address, closed.signal);
    } catch (error) {
      if (closed.signal.aborted) return;
      if (isSilence(error) && (await openLetter())) return;
      set({ trouble: messageOf(error) });
      if (isSilence(error)) later.in(retry, 'open', () => void open());
      return;
    }
    const letter = letterOf(key);
    set({ revision: saved.revision, trouble: '', document: letter?.document ?? saved.document });
    await look();
    if (letter) void deliver();
    else if (state.standing === 'opening') set({ standing: 'saved' });
    void learnSteps();
  }

  /** While the server is away there is at least what it does not have yet. @returns false when there is none */
  async function openLetter(): Promise<boolean> {
    const letter = letterOf(key);
    if (!letter) return false;
    saved = { revision: letter.base, document: letter.baseDocument };
    set({ revision: letter.base, document: letter.document, standing: 'kept here' });
    later.in(retry, 'deliver', () => void deliver());
    await look();
    return true;
  }

  /** Makes the view of what is typed; once it is understood and has stood for `patience` [ms], it is kept. */
  async function look(patience = 0): Promise<void> {
    const { document } = state;
    if (document === undefined || !saved) return;
    checking.abort();
    // Since when it is put off is not forgotten: who types on is to be kept all the same.
    if (patience === 0) later.drop('settle');
    else later.hold('settle');
    const mine = new AbortController();
    checking = mine;
    later.in(unnoticed, 'busy', () => set({ busy: true }));
    const settled = (work: () => void, most?: number): void => {
      if (patience === 0) work();
      else later.in(patience, 'settle', work, most);
    };
    try {
      const view = await check(document, mine.signal, (part) => {
        if (!mine.signal.aborted) set({ view: part });
      });
      if (mine.signal.aborted) return;
      accepted = document;
      set({ view, refusals: noRefusals, trouble: '' });
      settled(() => keep(document), longest);
    } catch (error) {
      if (mine.signal.aborted || closed.signal.aborted) return;
      if (isFault(error)) {
        // It says nothing against what was typed.
        set({ trouble: messageOf(error) });
        settled(() => keep(document), longest);
      } else settled(() => refuse(error, 'check'));
    } finally {
      if (checking === mine) {
        later.drop('busy');
        if (state.busy) set({ busy: false });
      }
    }
  }

  const standingOf = (document: Json): Standing => (saved && same(document, saved.document) ? 'saved' : 'sending');

  function refuse(error: unknown, by: typeof refusedBy): void {
    refusedBy = by;
    const refusals = refusalsOf(error);
    const trouble = Object.keys(refusals).length > 0 ? '' : messageOf(error);
    set({ standing: 'refused', refusals, trouble });
  }

  function keep(document: Json): void {
    if (!saved) return;
    // A letter on its way holds something else; once it has arrived there is none.
    if (same(document, saved.document) && !(sending && letterOf(key))) {
      dropLetter(key);
      if (state.standing !== 'merged') set({ standing: 'saved' });
      return;
    }
    const { base, baseDocument } = letterOf(key) ?? { base: saved.revision, baseDocument: saved.document };
    putLetter(key, { base, baseDocument, document });
    if (state.disagreement) return;
    set({ standing: 'sending' });
    later.in(lull, 'deliver', () => void deliver(), longest);
  }

  function deliver(): Promise<void> {
    if (sending) waiting = { ...waiting, deliver: true };
    sending ??= send().finally(() => {
      sending = undefined;
      const due = waiting;
      waiting = { deliver: false, catchUp: false };
      if (due.deliver) void deliver();
      else if (due.catchUp) void catchUp();
    });
    return sending;
  }

  async function send(): Promise<void> {
    const letter = letterOf(key);
    if (!letter || state.disagreement || closed.signal.aborted) return;
    const { base, document, undoes } = letter;
    try {
      const answer = await saveDocument(address, { baseRevision: base, document, client, undoes });
      arrived(letter.document, answer);
    } catch (error) {
      if (isSilence(error)) {
        set({ standing: 'kept here' });
        later.in(retry, 'deliver', () => void deliver());
      } else refuse(error, 'server');
      return;
    }
    void learnSteps();
  }

  function arrived(sent: Json, answer: SaveAnswer): void {
    if (answer.kind === 'conflict') {
      disagree(answer.revision, answer.theirs);
      return;
    }
    const letter = letterOf(key);
    const joined = !same(answer.document, sent);
    saved = { revision: answer.revision, document: answer.document };
    if (letter && !same(letter.document, sent)) {
      const document = joinedWith(sent, letter.document, answer.document);
      putLetter(key, { base: answer.revision, baseDocument: answer.document, document });
      later.in(lull, 'deliver', () => void deliver(), longest);
    } else dropLetter(key);
    const untouched = state.document === undefined || same(state.document, sent);
    const document = untouched ? answer.document : joinedWith(sent, state.document ?? sent, answer.document);
    set({ revision: answer.revision, standing: standingAfter(untouched, joined), ...(joined ? { document } : {}) });
    if (joined) void look();
  }

  /** What was typed while a letter was on its way is not kept yet, and may have been refused. */
  function standingAfter(untouched: boolean, joined: boolean): Standing {
    if (letterOf(key)) return 'sending';
    if (!untouched) return isRefused() ? 'refused' : 'sending';
    return joined ? 'merged' : 'saved';
  }

  function disagree(revision: number, theirs: Json): void {
    const letter = letterOf(key);
    if (!letter) return;
    const found = differences(letter.baseDocument, letter.document, theirs);
    set({ standing: 'conflict', disagreement: { revision, theirs, differences: found } });
  }

  async function learnSteps(): Promise<void> {
    const revisions = await listRevisions(address).catch(() => undefined);
    if (revisions) set({ steps: stepsOf(revisions) });
  }

  const isRefused = (): boolean => state.standing === 'refused';

  /** What was refused was never kept: undoing it is leaving it. What the server refused lies in the outbox, too. */
  function leave(): Promise<void> {
    if (refusedBy === 'server') dropLetter(key);
    const document = refusedBy === 'server' ? saved?.document : accepted;
    set({ document, refusals: noRefusals, trouble: '', standing: 'saved' });
    return look();
  }

  async function takeBack(which: 'undo' | 'redo'): Promise<void> {
    if (isRefused()) return leave();
    await look();
    if (isRefused()) return leave();
    later.drop('deliver');
    while (letterOf(key) && state.standing === 'sending') await deliver();
    if (letterOf(key)) return;
    await learnSteps();
    const number = state.steps[which];
    if (number === undefined) return;
    try {
      const { document } = await readRevision(address, number - 1);
      const { document: baseDocument } = await readRevision(address, number);
      putLetter(key, { base: number, baseDocument, document, undoes: number });
      set({ standing: 'sending', document });
      await deliver();
      await look();
    } catch (error) {
      set({ trouble: messageOf(error) });
    }
  }

  /** Takes in what was saved elsewhere. */
  async function catchUp(): Promise<void> {
    const known = saved;
    const theirs = await readStored(address, closed.signal).catch(() => undefined);
    if (!theirs || !saved) return;
    // Saved meanwhile: what was read may be older than that.
    if (known !== saved) return catchUp();
    // A lower number, or the same with other words, is what a restored backup holds.
    if (theirs.revision === saved.revision && same(theirs.document, saved.document)) return;
    if (sending) {
      waiting = { ...waiting, catchUp: true };
      return;
    }
    if (letterOf(key)) return void deliver();
    const before = saved.document;
    const document = joinedWith(before, state.document ?? before, theirs.document);
    saved = theirs;
    set({ revision: theirs.revision, document, standing: standingOf(document) });
    await look();
    void learnSteps();
  }

  /** Whoever leaves has done typing. */
  function keepNow(): void {
    if (later.isPlanned('settle') && accepted !== undefined && accepted === state.document) keep(accepted);
  }

  addEventListener('pagehide', keepNow);
  const stops = [
    () => removeEventListener('pagehide', keepNow),
    whenNews((news) => {
      if (concerns(news) === 'saved') void catchUp();
    }),
    whenStale?.(() => void look()) ?? (() => undefined),
    // Another window of the same browser has typed: the letter is shared, so this one shows it too.
    whenOutboxChanges(key, () => {
      const letter = letterOf(key);
      if (!letter || sending) return;
      set({ document: letter.document });
      void look();
    }),
  ];
  void open();

  return {
    edit(change) {
      if (state.document === undefined) return;
      const { standing } = state;
      const atRest = standing === 'saved' || standing === 'merged';
      set({ document: change(state.document), standing: atRest ? 'sending' : standing });
      void look(pause);
    },
    undo: () => void takeBack('undo'),
    redo: () => void takeBack('redo'),
    settle(choice) {
      const { disagreement } = state;
      const letter = letterOf(key);
      if (!disagreement || !letter) return;
      const { revision, theirs } = disagreement;
      const document = settled(letter.baseDocument, letter.document, theirs, choice);
      if (document === undefined) return set({ trouble: 'These do not go together; take one side for all of them.' });
      saved = { revision, document: theirs };
      dropLetter(key);
      set({ disagreement: undefined, revision, document, standing: standingOf(document) });
      void look();
    },
    refresh: () => void catchUp(),
    close() {
      keepNow();
      if (state.standing === 'sending') void deliver();
      closed.abort();
      checking.abort();
      later.close();
      for (const stop of stops) stop();
    },
  };
}
