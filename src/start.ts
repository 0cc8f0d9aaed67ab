/**
 * The first thing that runs: asks for a new enough Node in one sentence, and sets what Ink and chalk
 * read from the environment as they are loaded.
 */
const [major = 0] = process.versions.node.split('.').map(Number);
if (major < 22) {
  process.stderr.write(
    `tussock: this is Node ${process.versions.node}; Tussock needs Node 22 or newer.\n`,
  );
  process.exit(2);
}
if (process.env.NO_COLOR !== undefined && process.env.NO_COLOR !== '')
  process.env.FORCE_COLOR = '0';
await import('./main.ts');

export {};
