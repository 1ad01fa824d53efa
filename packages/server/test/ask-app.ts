/** One set of routes over one store with the examples in it, for tests that leave the jobs as they are. */
import { afterAll } from 'vitest';
import { openApp } from './test-app.ts';

const app = openApp();
afterAll(() => app.close());

export const { get, post, send, ownFaults } = app;
