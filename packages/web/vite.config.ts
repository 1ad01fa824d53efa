/** The screens: built to dist, served by packages/server. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [react()],
  build: {
    target: 'es2023',
    // The content security policy allows no data: addresses.
    assetsInlineLimit: 0,
    // The bundled face lies in the package that draws with it.
    modulePreload: { polyfill: false },
  },
});
