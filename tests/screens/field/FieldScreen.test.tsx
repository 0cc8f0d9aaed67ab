import { setImmediate as turn } from 'node:timers/promises';
import { render } from 'ink-testing-library';
import { expect, test } from 'vitest';
import { FieldScreen } from '../../../src/screens/field/FieldScreen.tsx';
import type { Effect } from '../../../src/screens/field/session.ts';
import { updateField } from '../../../src/screens/field/update.ts';
import { createStore } from '../../../src/screens/store.ts';
import { keysOf, session } from './drive.ts';

test('what is typed stands on the drawn screen, and an entry asks to be saved', async () => {
  const effects: Effect[] = [];
  const start = { ...session(), size: { columns: 100, rows: 24 } };
  const store = createStore(start, updateField, (effect: Effect) => effects.push(effect));
  const screen = render(<FieldScreen store={store} />);
  expect(screen.lastFrame()).toContain('Sallow Mere');
  expect(screen.lastFrame()?.split('\n')).toHaveLength(24);
  // A burst: all keys before React draws once.
  keysOf('tuf 12<enter>pochard').forEach((key, at) => {
    store.dispatch({
      kind: 'key',
      key,
      now: store.get().now + 1,
      id: `00000000-0000-4000-8000-00000000000${at % 10}`,
    });
  });
  await turn();
  await turn();
  expect(screen.lastFrame()).toContain('log> pochard');
  expect(screen.lastFrame()).toMatch(/1 07:40 Tufted Duck +Aythya fuligula +12 LC/);
  expect(effects.map((effect) => effect.kind)).toEqual(['save']);
  screen.unmount();
});
