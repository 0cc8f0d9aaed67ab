import { readFileSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { build } from 'esbuild';
import { listName, REGIONS } from './src/taxa/regions.ts';
import { readSpeciesList } from './src/taxa/species-list.ts';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

/** Built aside and put in place whole: a program that runs, or a build that fails, keeps the one before. */
const NEXT = 'node_modules/.cache/tussock-next';
await rm(NEXT, { recursive: true, force: true });
await build({
  entryPoints: { tussock: 'src/start.ts' },
  outdir: NEXT,
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
await mkdir(`${NEXT}/lists`);
for (const region of Object.keys(REGIONS)) {
  const lists = [];
  for (const file of (await readdir(`taxa/${region}`)).sort()) {
    if (!file.endsWith('.csv')) continue;
    const group = file.replace(/\.csv$/, '').replaceAll('-', ' ');
    const identity = { name: listName(region, group), region, group };
    const list = readSpeciesList(identity, await readFile(`taxa/${region}/${file}`, 'utf8'));
    if (list.problems.length > 0) throw new Error(list.problems.join('\n'));
    lists.push(list);
  }
  await writeFile(`${NEXT}/lists/${region}.json`, JSON.stringify(lists));
}
await rm('dist', { recursive: true, force: true });
await rename(NEXT, 'dist');
