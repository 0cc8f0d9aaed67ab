import { readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

await rm('dist', { recursive: true, force: true });
await build({
  entryPoints: { tussock: 'src/start.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node22',
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.DEV': '"false"',
    TUSSOCK_VERSION: JSON.stringify(version),
  },
  // Ink asks for its developer tools only in development; they are not shipped.
  plugins: [
    {
      name: 'no-devtools',
      setup(setup) {
        setup.onResolve({ filter: /^react-devtools-core$/ }, () => ({
          path: 'devtools',
          namespace: 'none',
        }));
        setup.onLoad({ filter: /.*/, namespace: 'none' }, () => ({
          contents: 'export default {}',
        }));
      },
    },
  ],
  banner: {
    js: [
      '#!/usr/bin/env node',
      "import { createRequire as tussockRequire } from 'node:module';",
      'const require = tussockRequire(import.meta.url);',
    ].join('\n'),
  },
  minifySyntax: true,
  logLevel: 'warning',
});
