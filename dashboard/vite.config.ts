import preactPreset from '@preact/preset-vite';
import { defineConfig } from 'vite';
import program from '../package.json' with { type: 'json' };

export default defineConfig({
  root: import.meta.dirname,
  plugins: [preactPreset()],
  define: { __PROGRAM_VERSION__: JSON.stringify(program.version) },
  build: {
    outDir: '../build/dashboard',
    emptyOutDir: true,
    sourcemap: true,
    // The page's content security policy allows no data: addresses for styles and scripts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
