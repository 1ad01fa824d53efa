import { expect, test } from 'vitest';
import { defaultFolder } from './default-folder.ts';

test.each([
  ['linux', '/home-of/ann', {}, '/home-of/ann/.local/share/sparewright'],
  ['linux', '/home-of/ann', { XDG_DATA_HOME: '/data' }, '/data/sparewright'],
  ['linux', '/home-of/ann', { XDG_DATA_HOME: 'data' }, '/home-of/ann/.local/share/sparewright'],
  ['darwin', '/Users/ann', {}, '/Users/ann/Library/Application Support/Sparewright'],
  ['win32', 'D:\\ann', {}, 'D:\\ann\\AppData\\Local\\Sparewright'],
  ['win32', 'D:\\ann', { LOCALAPPDATA: 'E:\\local' }, 'E:\\local\\Sparewright'],
  ['linux', '/home-of/ann', { SPAREWRIGHT_DATA: '/stick/data', XDG_DATA_HOME: '/data' }, '/stick/data'],
])('on %s with home %s and %j the data lies in %s', (platform, home, env, folder) => {
  expect(defaultFolder({ platform, home, env })).toBe(folder);
});
