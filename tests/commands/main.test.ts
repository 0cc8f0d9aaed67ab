import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { fileNames, PROGRAM, run } from './run.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

describe('the command line', () => {
  test.each([[['--help']], [['help']], [['export', '--help']]])(
    '%j shows two examples first and ends with 0',
    async (args) => {
      const { code, answers, complaints } = await run(args, { notebook });
      expect({ code, complaints }).toEqual({ code: 0, complaints: [] });
      expect(answers[0]).toBe('For example:');
      expect(answers.slice(1, 4).map((line) => line.trimStart().split(/\s/)[0])).toEqual([
        'tussock',
        'tussock',
        '',
      ]);
    },
  );

  test('--help lists the commands and the exit codes', async () => {
    const { out } = await run(['--help'], { notebook });
    expect(out).toMatch(/^ {2}field /m);
    expect(out).toMatch(/^ {2}export /m);
    expect(out).toMatch(/Exit codes: 0 .+, 1 .+, 2 .+, 3 .+\./);
  });

  test('--version says only that', async () => {
    const { code, out } = await run(['--version'], { notebook });
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test.each([
    [['exprot'], 'Did you mean export?'],
    [['exprt', '--last'], 'Did you mean export?'],
    [['feild', '--stdin'], 'Did you mean field?'],
    [['--stdni'], 'Did you mean --stdin?'],
    [['field', '--plase', 'Sallow Mere'], 'Did you mean --place?'],
    [['export', '--lst'], 'Did you mean --last?'],
  ])('%j is answered with the nearest word and 2', async (args, nearest) => {
    const ran = await run(args, { notebook, input: 'tuf 12\n' });
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(nearest)]);
    expect(await fileNames(notebook)).toEqual([]);
  });

  test.each([
    [['wombat'], "unknown command 'wombat'"],
    [['--notebook'], 'argument missing'],
    [['field', '--place'], 'argument missing'],
    [['field', 'extra'], 'too many arguments'],
    [['export', 'one', 'two'], 'too many arguments'],
  ])('%j is told as wrong usage', async (args, sentence) => {
    const ran = await run(args, { notebook });
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(sentence)]);
  });

  test('without a terminal the screen refuses in a sentence that says what to do instead', async () => {
    const ran = await run([], { notebook, input: 'tuf 12\n' });
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([
      'tussock: The Field screen needs a terminal. To log lines from a file or a pipe: tussock field --stdin < lines.txt',
    ]);
    expect(await fileNames(notebook)).toEqual([]);
  });

  test.each([
    [['field', '--stdin'], 'file'],
    [['export', '--last'], 'file/below'],
  ])('%j with %j for a notebook, which is a file, ends with 3', async (args, name) => {
    await writeFile(join(notebook, 'file'), 'text');
    const named = [...args, '--notebook', join(notebook, name)];
    const ran = await run(named, { notebook, input: 'tuf 12\n' });
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([
      expect.stringContaining(`The notebook ${join(notebook, name)} can't be used`),
    ]);
  });

  test('--notebook goes before TUSSOCK_NOTEBOOK', async () => {
    const other = join(notebook, 'other');
    await run(['field', '--stdin', '--notebook', other], { notebook, input: 'tufted d\n' });
    expect(await fileNames(other)).toHaveLength(1);
    expect(await fileNames(notebook)).toEqual([]);
  });

  test('a program whose species lists are gone says so in a sentence', async () => {
    const program = join(notebook, 'moved', 'dist', 'tussock.js');
    await mkdir(join(notebook, 'moved'));
    await cp(dirname(PROGRAM), dirname(program), { recursive: true });
    await writeFile(join(notebook, 'moved', 'package.json'), '{"type": "module"}');
    await rm(join(dirname(program), 'lists'), { recursive: true });
    const ran = await run(['field', '--stdin'], { notebook, program, input: 'tuf\n' });
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(join('moved', 'dist', 'lists'))]);
  });
});
