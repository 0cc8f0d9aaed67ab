import type { Grids } from '../ground/read-position.ts';

/** Loads what reads grid references: some 70 ms of libraries, which no start may wait for. */
export async function loadGrids(): Promise<Grids> {
  const { gridPosition } = await import('../ground/grid-position.ts');
  return gridPosition;
}
