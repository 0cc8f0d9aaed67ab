import { randomUUID } from 'node:crypto';
import { Command, type Option } from 'commander';
import type { ExportOptions } from './commands/export-options.ts';
import type { Shell } from './lists-commands.ts';

interface Exporting extends Shell {
  /** Writes to standard output; false when nobody reads it any more. */
  write(text: string): Promise<boolean>;
}

/** `tussock export`: visits as tables, Darwin Core, GeoJSON or waypoints. */
export function exportCommand({ io, notebook, opened, write }: Exporting): Command {
  const command = new Command('export')
    .description('print visits as a table, Darwin Core, GeoJSON or GPX, or write an archive')
    .argument('[file]', 'a visit file, or its name in the notebook')
    .addHelpText(
      'before',
      'For example:\n  tussock export --year 2026 --group birds --table matrix > birds.csv\n  tussock export --all --archive field-log.zip --by "Ashwick Levels naturalists" --licence CC-BY-4.0\n',
    );
  for (const option of optionsOf(notebook())) command.addOption(option);
  return command.action(
    async (file: string | undefined, options: ExportOptions & { notebook?: string }) => {
      const { exportVisits, tellColumns } = await import('./commands/export.ts');
      if (options.columns) return tellColumns(options, io);
      const moment = { id: randomUUID(), now: new Date() };
      const folder = await opened(options.notebook, false);
      await exportVisits(folder, file, options, moment, { ...io, write });
    },
  );
}

function optionsOf(notebook: Option): Option[] {
  const command = new Command()
    .option('--last', 'the latest visit')
    .option('--all', 'all visits')
    .option('--year <year>', 'the visits of a year')
    .option('--from <date>', 'visits from this date on, such as 2026-04-01')
    .option('--to <date>', 'visits up to this date')
    .option('--place <name>', 'visits to this place')
    .option('--group <group>', 'entries of this group alone, such as birds')
    .option('--table <table>', 'entries (one row each), species (one row each a visit) or matrix')
    .option('--columns', 'tell what the columns of the table mean')
    .option('--separator <sign>', 'between cells of a table: , or ; or tab')
    .option('--decimal <sign>', 'in numbers of a table: . or ,')
    .option('--darwin-core', 'Darwin Core occurrences as CSV')
    .option('--archive <file>', 'a Darwin Core Archive with events, effort and weather (zip)')
    .option('--geojson', 'visits and entries as GeoJSON')
    .option('--gpx', 'visits, and entries with a position, as waypoints (GPX 1.1)')
    .option('--absences', 'with what complete visits did not have; for Darwin Core')
    .option(
      '--by <name>',
      'who logged, a person or a club; again for another; for Darwin Core',
      (name: string, before: string[] = []) => [...before, name],
    )
    .option('--title <title>', 'title of the archive')
    .option('--licence <licence>', 'of the archive: CC0-1.0, CC-BY-4.0 or CC-BY-NC-4.0')
    .option('--exact', 'with exact places of threatened and sensitive species, and all notes');
  return [...command.options, notebook];
}
