import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { begin } from '../terminal/terminal.ts';
import { fileNames, run } from './run.ts';

describe('The invented notebook', () => {
  test('is made whole in a folder, and says that all in it is invented.', async () => {
    const notebook = freshFolder();
    const folder = join(notebook, 'invented');
    const ran = await run(['demo', '--folder', folder], { notebook });
    expect(ran.code).toBe(0);
    expect(ran.answers[0]).toBe(`150 visits in ${folder}`);
    expect(ran.answers[1]).toMatch(/All in it is invented/);
    expect(await fileNames(folder)).toHaveLength(150);
    // The program's own check has nothing to say against it.
    const checked = await run(['check', '--notebook', folder], { notebook });
    expect(checked).toMatchObject({ code: 0, complaints: [] });
  });

  test('without a folder is made among the temporary files.', async () => {
    const notebook = freshFolder();
    const ran = await run(['demo'], { notebook, environment: { TMPDIR: notebook } });
    const folder = / in (.+)$/.exec(ran.answers[0] ?? '')?.[1] ?? '';
    expect(folder.startsWith(join(notebook, 'tussock-demo-'))).toBe(true);
    expect(await fileNames(folder)).toHaveLength(150);
  });

  test('that was made before is left as it is, with what was logged in it since.', async () => {
    const notebook = freshFolder();
    const folder = join(notebook, 'invented');
    await run(['demo', '--folder', folder], { notebook });
    const [name = ''] = await fileNames(folder);
    const path = join(folder, 'visits', name);
    await writeFile(path, `${await readFile(path, 'utf8')}\n`);
    const changed = await readFile(path, 'utf8');
    expect((await run(['demo', '--folder', folder], { notebook })).code).toBe(0);
    expect(await readFile(path, 'utf8')).toBe(changed);
  });

  test('never comes to lie among other files.', async () => {
    const notebook = freshFolder();
    const folder = join(notebook, 'mine');
    await mkdir(folder);
    await writeFile(join(folder, 'letter.txt'), 'dear');
    const ran = await run(['demo', '--folder', folder], { notebook });
    expect(ran).toMatchObject({ code: 1, answers: [] });
    expect(ran.complaints[0]).toMatch(/is not empty.*name a new folder/);
    expect(await fileNames(folder)).toEqual([]);
  });

  test('opens on the Field screen in a terminal, with its own lists wherever one is.', async () => {
    const notebook = freshFolder();
    const folder = join(notebook, 'invented');
    const environment = { TZ: 'America/Chicago' };
    const journey = begin({ notebook, args: ['demo', '--folder', folder], environment });
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    await journey.shows('log>');
    journey.send('3 cettis w\r');
    await journey.shows(/Cetti's Warbler/);
    journey.send('\u001bq');
    expect((await journey.ends()).code).toBe(0);
    expect(journey.sent()).toContain('All in it is invented');
    expect(await fileNames(folder)).toHaveLength(151);
  });
});
