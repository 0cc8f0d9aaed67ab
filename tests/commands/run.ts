import { spawn } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import type { Visit } from '../../src/visit/visit.ts';

/** The built program; `npm test` builds it first. */
export const PROGRAM = fileURLToPath(new URL('../../dist/tussock.js', import.meta.url));

export interface Ran {
  code: number | null;
  /** Lines of standard output, without the last line end. */
  answers: string[];
  out: string;
  /** Lines of standard error, likewise. */
  complaints: string[];
}

interface How {
  notebook: string;
  input?: string | Buffer;
  environment?: Record<string, string>;
  program?: string;
  /** Closes the reading end of both outputs after the first bytes, as `2>&1 | head -1` does. */
  hangUp?: boolean;
}

/**
 * Runs the program to its end. Whatever happens, a person must not be shown a stack trace, and every
 * complaint must say which program speaks.
 */
export async function run(args: string[], how: How): Promise<Ran> {
  const child = spawn(process.execPath, [how.program ?? PROGRAM, ...args], {
    cwd: how.notebook,
    env: {
      PATH: process.env.PATH ?? '',
      TZ: 'UTC',
      TERM: 'xterm',
      TUSSOCK_NOTEBOOK: how.notebook,
      ...how.environment,
    },
  });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    out += text;
    if (how.hangUp) for (const stream of [child.stdout, child.stderr]) stream.destroy();
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    err += text;
  });
  child.stdin.on('error', () => {});
  child.stdin.end(how.input ?? '');
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('close', resolve).on('error', reject);
  });
  expect(err).not.toContain('    at ');
  const complaints = linesOf(err);
  for (const complaint of complaints) expect(complaint).toMatch(/^tussock: /);
  return { code, out, answers: linesOf(out), complaints };
}

function linesOf(text: string): string[] {
  return text === '' ? [] : text.replace(/\n$/, '').split('\n');
}

/** Names of the visit files of a notebook, oldest first. */
export async function fileNames(notebook: string): Promise<string[]> {
  const names = await readdir(join(notebook, 'visits'), { recursive: true }).catch(() => []);
  return names.filter((name) => name.endsWith('.json')).sort();
}

/** The one visit of a notebook; fails where there is none or more. */
export async function onlyVisit(notebook: string): Promise<Visit> {
  const names = await fileNames(notebook);
  expect(names).toHaveLength(1);
  return JSON.parse(await readFile(join(notebook, 'visits', names[0] ?? ''), 'utf8'));
}

/** Entries as the observer would tell them: name, count and parts, description. */
export function told(visit: Visit): string[] {
  return visit.entries.map((entry) => {
    const count = entry.count.kind === 'exact' ? String(entry.count.value) : entry.count.kind;
    const parts = entry.parts.map((part) => `${part.value}${part.letter}`);
    const name = entry.taxon?.vernacularName ?? `"${entry.words}"`;
    const description = entry.description === null ? [] : [`(${entry.description})`];
    return [name, count, ...parts, ...description].join(' ');
  });
}
