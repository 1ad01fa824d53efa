/** Where the page begins. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { keepDelivering } from './bench/deliver.ts';
import { loadAhead } from './later.tsx';
import { keepScreens } from './save/keep-screens.ts';
import { applyTheme } from './use-theme.ts';

applyTheme();
keepDelivering();
const place = document.getElementById('page');
if (!place) throw new Error('the page has no place for its content');
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

/** From the first picture until what else there is may be loaded [ms]. */
const rest = 1500;
setTimeout(() => {
  loadAhead();
  keepScreens();
}, rest);
