import { join } from 'node:path';
import { build } from 'esbuild';
import { ROOT } from './invented.ts';

const SOURCE = `
import { render, Text, useInput } from 'ink';
import { createElement, useState } from 'react';
function Bare() {
  const [typed, setTyped] = useState('');
  useInput((text) => setTyped(text));
  return createElement(Text, null, typed === '' ? 'ready' : 'typed ' + typed);
}
render(createElement(Bare), { alternateScreen: true, interactive: true, maxFps: 60 });
`;

/** Bundles the least Ink program that draws a line and answers a key; the file to run. */
export async function bareInk(folder: string): Promise<string> {
  const outfile = join(folder, 'bare-ink.mjs');
  await build({
    stdin: { contents: SOURCE, resolveDir: ROOT },
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node22',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    alias: { 'react-devtools-core': 'node:path' },
    banner: {
      js: "import { createRequire } from 'node:module';\nconst require = createRequire(import.meta.url);",
    },
    minifySyntax: true,
    logLevel: 'error',
  });
  return outfile;
}
