import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { generated } from '../shared/generate.ts';
import { REGIONS } from '../src/taxa/regions.ts';

const at = (path: string) => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');

describe('documents', () => {
  test('the picture in the README is a frame that the program draws', () => {
    expect(at('README.md')).toContain(at('tests/screens/field/frames/suggestions-80x24.txt'));
  });

  test.each(Object.entries(generated()))(
    'shared/%s is what the program makes now',
    (name, text) => {
      expect(at(`shared/${name}`)).toBe(text);
    },
  );

  test('the README names exactly the two commands that set everything up', () => {
    expect(at('README.md')).toContain('npm ci && npm start');
    expect(at('README.md')).toContain('npm ci && npm test');
    expect(at('.ci/run')).toContain('npm ci && npm test\n');
  });

  test('every species list has its sources beside it', () => {
    for (const region of Object.keys(REGIONS)) {
      const files = readdirSync(new URL(`../taxa/${region}/`, import.meta.url));
      expect(files).toContain('sources.md');
      for (const file of files.filter((name) => name.endsWith('.csv')))
        expect(at(`taxa/${region}/sources.md`)).toContain(file);
    }
  });
});
