import { spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const folders = readdirSync(join(ROOT, 'src'), { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map(({ name }) => name);

const IMPORT = 'lint/style/noRestrictedImports';
const GLOBAL = 'lint/style/noRestrictedGlobals';

function importing(from: string): string {
  return `import { planted } from '${from}';\nexport const grown = planted;\n`;
}

/** Code that breaks a rule of the house in a folder, and the rule that must refuse it. */
const violations: [folder: string, code: string, rule: string][] = [
  ['visit', importing('../screens/paint.ts'), IMPORT],
  ['visit', importing('../taxa/taxon.ts'), IMPORT],
  ['visit', importing('../notebook/visit-store.ts'), IMPORT],
  ['visit', "export { planted } from '../outputs/hiding.ts';\n", IMPORT],
  ['visit', "export type { Row } from '../screens/paint.ts';\n", IMPORT],
  ['visit', "export const grown = () => import('../screens/paint.ts');\n", IMPORT],
  ['taxa', 'export const grown = () => new Date();\n', GLOBAL],
  ['taxa', importing('../screens/paint.ts'), IMPORT],
  ['taxa', importing('node:fs'), IMPORT],
  ['sky', 'export const grown = () => Date.now();\n', GLOBAL],
  ['sky', importing('../visit/visit.ts'), IMPORT],
  ['ground', 'export const grown = () => process.cwd();\n', GLOBAL],
  ['ground', importing('../visit/visit.ts'), IMPORT],
  ['screens', importing('node:fs'), IMPORT],
  ['screens', importing('node:fs/promises'), IMPORT],
  ['screens', importing('../notebook/notebook.ts'), IMPORT],
  ['screens', 'export const grown = () => console.log(1);\n', GLOBAL],
  ['screens', 'export const grown = () => setTimeout(() => {}, 1);\n', GLOBAL],
  ['notebook', importing('../taxa/taxon.ts'), IMPORT],
  ['notebook', importing('../screens/paint.ts'), IMPORT],
  ['screens', importing('fs/promises'), IMPORT],
  ['screens', importing('node:process'), IMPORT],
  ['screens', importing('../main.ts'), IMPORT],
  ['screens', 'export const grown = () => crypto.randomUUID();\n', GLOBAL],
  ['visit', 'export const grown = () => globalThis.performance.now();\n', GLOBAL],
  ['taxa', importing('../almanac/asking/ask.ts'), IMPORT],
  ['almanac', importing('../sky/sun.ts'), IMPORT],
  ['almanac', importing('../ground/position.ts'), IMPORT],
  ['almanac', importing('node:fs'), IMPORT],
  ['almanac', 'export const grown = () => Date.now();\n', GLOBAL],
  ['outputs', importing('../screens/paint.ts'), IMPORT],
  ['outputs', importing('lowdb'), IMPORT],
  ...folders
    .filter((folder) => folder !== 'commands')
    .map((folder): [string, string, string] => [
      folder,
      importing('../commands/export.ts'),
      IMPORT,
    ]),
];

/** Code that the same rules must let pass. */
const allowed: [folder: string, code: string][] = [
  ['visit', importing('../ground/position.ts')],
  ['visit', importing('./entry.ts')],
  ['taxa', importing('../visit/visit.ts')],
  ['notebook', importing('../visit/visit.ts')],
  ['notebook', importing('node:fs/promises')],
  ['screens', importing('../taxa/search.ts')],
  ['almanac', importing('../taxa/known.ts')],
  ['almanac', importing('../visit/sums.ts')],
  ['screens', importing('../almanac/asking/ask.ts')],
  ['outputs', importing('../almanac/plots/bars.ts')],
  ['outputs', importing('../ground/generalise.ts')],
  ['commands', importing('../screens/paint.ts')],
  ['commands', importing('node:fs/promises')],
  ['commands', 'export const grown = () => Date.now();\n'],
];

let project: string;
/** Rules that refused a file, by its path. */
const refused = new Map<string, string[]>();

function planted(kind: 'bad' | 'good', folder: string, at: number): string {
  return join('src', folder, `${kind}-${at}.ts`);
}

beforeAll(async () => {
  project = mkdtempSync(join(tmpdir(), 'tussock-'));
  for (const file of ['biome.json', 'package.json']) cpSync(join(ROOT, file), join(project, file));
  const plant = (path: string, code: string) => {
    mkdirSync(join(project, dirname(path)), { recursive: true });
    writeFileSync(join(project, path), code);
  };
  for (const [at, [folder, code]] of violations.entries()) plant(planted('bad', folder, at), code);
  for (const [at, [folder, code]] of allowed.entries()) plant(planted('good', folder, at), code);
  // This reporter writes one line for each finding.
  for (const line of (await lint()).split('\n')) {
    const found = /^::error title=([^,]+),file=([^,]+),/.exec(line);
    if (!found) continue;
    const [, rule = '', file = ''] = found;
    const path = file.slice(file.lastIndexOf(join('src', '')));
    refused.set(path, [...(refused.get(path) ?? []), rule]);
  }
});

afterAll(() => rmSync(project, { recursive: true, force: true }));

async function lint(): Promise<string> {
  const program = join(ROOT, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');
  const options = ['lint', '--reporter=github', '--max-diagnostics=none', '.'];
  const child = spawn(process.execPath, [program, ...options], { cwd: project });
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    out += text;
  });
  await new Promise((resolve, reject) => {
    child.on('close', resolve).on('error', reject);
  });
  return out;
}

test.each(violations.map((each, at) => [...each, at] as const))(
  'src/%s refuses %j',
  (folder, _, rule, at) => {
    expect(refused.get(planted('bad', folder, at))).toEqual([rule]);
  },
);

test.each(allowed.map((each, at) => [...each, at] as const))(
  'src/%s may hold %j',
  (folder, _, at) => {
    expect(refused.get(planted('good', folder, at))).toBeUndefined();
  },
);

test('the core asks no clock and no chance by other ways', () => {
  const core = folders.filter((folder) => folder !== 'commands' && folder !== 'notebook');
  for (const folder of core)
    for (const file of readdirSync(join(ROOT, 'src', folder), {
      recursive: true,
      encoding: 'utf8',
    }))
      if (/\.tsx?$/.test(file))
        expect(readFileSync(join(ROOT, 'src', folder, file), 'utf8')).not.toMatch(
          /Temporal\.Now|Math\.random/,
        );
});
