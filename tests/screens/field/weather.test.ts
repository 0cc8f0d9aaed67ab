import { describe, expect, test } from 'vitest';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { METHODS } from '../../../src/visit/effort.ts';
import { press, session } from './drive.ts';

function shown(typed: string, columns = 80): string {
  const { rows } = fieldFrame(press(session(), typed).session, { columns, rows: 24 });
  return rows.map(rowText).join(' ').replace(/\s+/g, ' ');
}

describe('the weather once it is given', () => {
  test('is told as it was understood', () => {
    const at = press(session(), '<escape>w7c 15 km/h sw<enter>').session;
    expect(at.message).toEqual({ kind: 'done', words: 'Weather: 7 °C, F3 4.2 m/s SW.' });
  });

  test('brings a caution where counts will be low, and is kept all the same', () => {
    const at = press(session(), '<escape>w7c f5 sw<enter>').session;
    expect(at.message?.kind).toBe('caution');
    expect(at.visit.weather).toHaveLength(1);
    for (const columns of [50, 80]) {
      const screen = shown('<escape>w7c f5 sw<enter>', columns);
      expect(screen).toContain(
        '! Wind F5: small birds are easily missed (above Beaufort 3; USGS roadside survey training).',
      );
      expect(screen).toContain('7 °C, F5 SW');
    }
  });

  test('is a problem where it can not be, with what was typed still there', () => {
    expect(shown('<escape>w7c f3-4<enter>')).toContain('! "f3-4": give one force, for example f4.');
    expect(shown('<escape>w7c f3-4<enter>')).toContain('weather> 7c f3-4');
  });
});

describe('the question after the effort', () => {
  test('shows every method that can be typed short', () => {
    for (const method of METHODS) expect(shown('<escape>e')).toContain(method);
  });

  test('takes the beginning of a method, and refuses a time', () => {
    const at = press(session(), '<escape>e2 km transect<enter>').session;
    expect(at.visit.effort).toMatchObject({ distance: 2000, method: 'line transect' });
    expect(shown('<escape>e45 min<enter>')).toContain('The time comes from the visit itself');
  });
});
