/** The screens: built to dist, served by packages/server. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig(({ command }) => {
  // What is built is what people use, also when a test builds it: a test's own NODE_ENV would bring in the larger React.
  if (command === 'build') process.env.NODE_ENV = 'production';
  return {
    plugins: [react()],
    build: {
      target: 'es2023',
      // The content security policy allows no data: addresses.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
    },
    // So that a worker may load a part of itself later.
    worker: { format: 'es' },
  };
});
