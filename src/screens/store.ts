/** A state outside React, so that a burst of keys never meets a stale one. */
export interface Store<State, Event> {
  get(): State;
  dispatch(event: Event): void;
  subscribe(listener: () => void): () => void;
}

/** Makes a store of a pure update; what the update asks for is handed to `perform` at once. */
export function createStore<State, Event, Effect>(
  initial: State,
  update: (state: State, event: Event) => { session: State; effects: Effect[] },
  perform: (effect: Effect) => void,
): Store<State, Event> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    dispatch(event) {
      const { session, effects } = update(state, event);
      state = session;
      for (const effect of effects) perform(effect);
      for (const listener of listeners) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
