import { describe, expect, test } from 'vitest';
import { gridPosition } from '../../../src/ground/grid-position.ts';
import { knownFrom } from '../../../src/taxa/known.ts';
import { press, SALLOW_MERE, session, tell } from './drive.ts';

const withGrids = (place: typeof SALLOW_MERE | null = SALLOW_MERE) =>
  tell(session(place), { kind: 'grids', grids: gridPosition });

describe('the answer to where', () => {
  test('takes a bare position in any form for the place that the visit has', () => {
    for (const typed of [
      'ST 401 285',
      '51.0532N 2.8553W',
      "51°3.19'N 2°51.32'W",
      'geo:51.0532,-2.8553',
    ]) {
      const { session: at } = press(withGrids(), `<escape>p${typed}<enter>`);
      expect(at.visit.place?.name).toBe('Sallow Mere');
      expect(at.visit.place?.verbatimCoordinates).toBe(typed);
      expect(at.visit.place?.position?.latitude).toBeCloseTo(51.0532, 3);
    }
  });

  test('keeps the metres that a grid square leaves open, and what else is known of the place', () => {
    const known = { ...SALLOW_MERE, habitat: 'reedbed' as string | null };
    const { session: at } = press(
      withGrids(known as typeof SALLOW_MERE),
      '<escape>pST 401 285<enter>',
    );
    expect(at.visit.place).toMatchObject({ uncertainty: 71, habitat: 'reedbed' });
  });

  test('keeps what was typed while the grids are not loaded, and takes it afterwards', () => {
    const { session: early } = press(session(), '<escape>pWithy Lane ST 401 285<enter>');
    expect(early.visit.place).toEqual(SALLOW_MERE);
    expect(early.message).toMatchObject({
      kind: 'problem',
      words: expect.stringContaining('Enter again'),
    });
    const late = press(tell(early, { kind: 'grids', grids: gridPosition }), '<enter>').session;
    expect(late.visit.place).toMatchObject({ name: 'Withy Lane', timeZone: 'Europe/London' });
  });

  test('takes the name of a known place with all that is known of it, and a new position for it', () => {
    const lane = { ...SALLOW_MERE, name: 'Withy Lane', habitat: 'lane' };
    const visit = { ...session().visit, place: lane };
    const from = tell(withGrids(), { kind: 'known', known: knownFrom([visit]) });
    expect(press(from, '<escape>pwithy lane<enter>').session.visit.place).toEqual(lane);
    const moved = press(from, '<escape>pWithy Lane 51.2, -2.9<enter>').session.visit.place;
    expect(moved).toEqual({
      ...lane,
      position: { latitude: 51.2, longitude: -2.9 },
      verbatimCoordinates: '51.2, -2.9',
    });
  });

  test('says what is wrong with a position and leaves it in the line', () => {
    const { session: at } = press(withGrids(), '<escape>pST 4012 85<enter>');
    expect(at.message?.words).toContain('as many figures east as north');
    expect(at.mode).toEqual({ at: 'ask', question: 'place' });
  });
});
