import { useApp, useCursor } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import { Rows } from '../Rows.tsx';
import type { Store } from '../store.ts';
import { fieldFrame } from './frame.ts';
import type { FieldEvent, Session } from './session.ts';

export interface FieldScreenProps {
  store: Store<Session, FieldEvent>;
  /** Gets Ink's way to hand the terminal over for a while. */
  onReady?: (suspend: (meanwhile: () => Promise<void>) => Promise<void>) => void;
}

/** The Field screen: a frame of the session, with the terminal's own cursor on the line. */
export function FieldScreen({ store, onReady }: FieldScreenProps) {
  const session = useSyncExternalStore(store.subscribe, store.get);
  const { suspendTerminal } = useApp();
  const { setCursorPosition } = useCursor();
  const frame = fieldFrame(session, session.size);
  setCursorPosition(frame.cursor ?? undefined);
  useEffect(() => {
    onReady?.(suspendTerminal);
  }, [onReady, suspendTerminal]);
  return <Rows rows={frame.rows} />;
}
