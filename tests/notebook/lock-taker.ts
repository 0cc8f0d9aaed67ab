/** Waits for a word, takes visits one after another, says of each what came of it, and holds them to its end. */
import { once } from 'node:events';
import { lockVisit } from '../../src/notebook/lock.ts';

const [notebook = '', ...ids] = process.argv.slice(2);
process.stdout.write('ready\n');
await once(process.stdin, 'data');
const said: string[] = [];
for (const id of ids) {
  const lock = await lockVisit(notebook, id);
  said.push('heldBy' in lock ? String(lock.heldBy?.process) : 'won');
}
process.stdout.write(`${said.join(' ')}\n`);
process.stdin.on('end', () => process.exit(0));
