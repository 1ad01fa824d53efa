/** Light, dark, or the strong contrast of the bench: how this device shows the screens. Kept in the browser, not in any job. */
import { useSyncExternalStore } from 'react';

export const themes = ['as the device', 'light', 'dark', 'bench'] as const;
export type Theme = (typeof themes)[number];

const key = 'sparewright.theme';
const changed = new EventTarget();

function kept(): Theme {
  const stored = localStorage.getItem(key);
  return themes.find((theme) => theme === stored) ?? 'as the device';
}

/** Before anything is shown, and whenever another window of this browser chooses anew. */
export function applyTheme(): void {
  const theme = kept();
  if (theme === 'as the device') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  changed.dispatchEvent(new Event('theme'));
}

export function chooseTheme(theme: Theme): void {
  localStorage.setItem(key, theme);
  applyTheme();
}

export function useTheme(): Theme {
  return useSyncExternalStore(listen, kept);
}

function listen(tell: () => void): () => void {
  const onStorage = (event: StorageEvent): void => {
    if (event.key === key) applyTheme();
  };
  changed.addEventListener('theme', tell);
  addEventListener('storage', onStorage);
  return () => {
    changed.removeEventListener('theme', tell);
    removeEventListener('storage', onStorage);
  };
}
