import { readFileSync } from 'node:fs';
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { build } from 'esbuild';
import { readSpeciesList } from './src/taxa/species-list.ts';

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
    // Nothing here goes online, and Ink's layout would load Node's HTTP client to decode its own code.
    fetch: 'undefined',
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

// The lists are checked here, once: reading and checking rows costs a start 40 ms for 340 taxa.
const lists = [];
for (const file of (await readdir('taxa')).filter((name) => name.endsWith('.csv')).sort()) {
  const list = readSpeciesList(file.replace(/\.csv$/, ''), await readFile(`taxa/${file}`, 'utf8'));
  if (list.problems.length > 0) throw new Error(list.problems.join('\n'));
  lists.push(list);
}
await writeFile('dist/lists.json', JSON.stringify(lists));
