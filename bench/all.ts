/** Runs every bench in turn, each in a Node of its own. Fails only where one of them fails. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from './invented.ts';

const BENCHES = [
  'keystrokes',
  'search',
  'search-quality',
  'save',
  'start',
  'key-to-frame',
  'board',
];

const failed = BENCHES.filter((name) => {
  const { status } = spawnSync(process.execPath, [join(ROOT, 'bench', `${name}.ts`)], {
    stdio: 'inherit',
  });
  return status !== 0;
});
if (failed.length > 0) {
  console.error(`Failed: ${failed.join(', ')}`);
  process.exitCode = 1;
}
