import { Command } from 'commander';
import type { ReportOptions } from './commands/report.ts';
import type { Shell } from './lists-commands.ts';
import { stamp } from './visit/time.ts';

interface Reporting extends Shell {
  /** Writes to standard output; false when nobody reads it any more. */
  write(text: string): Promise<boolean>;
}

/** `tussock report`: the season as one page. */
export function reportCommand({ io, notebook, opened, write }: Reporting): Command {
  return new Command('report')
    .description('print the report of a season: one HTML page, or Markdown')
    .option('--year <year>', 'the visits of a year')
    .option('--from <date>', 'visits from this date on, such as 2026-04-01')
    .option('--to <date>', 'visits up to this date')
    .option('--place <name>', 'visits to this place')
    .option('--group <group>', 'entries of this group alone, such as birds')
    .option(
      '--by <name>',
      'who logged, a person or a club; again for another',
      (name: string, before: string[] = []) => [...before, name],
    )
    .option('--exact', 'with the places of visits that have threatened and sensitive species')
    .option('--markdown', 'as Markdown, without pictures')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock report --year 2026 --by "Ashwick Levels naturalists" > report.html\n  tussock report --from 2026-04-01 --to 2026-06-30 --group birds --markdown > spring.md\n',
    )
    .action(async (options: ReportOptions & { notebook?: string }) => {
      const { seasonReport } = await import('./commands/report.ts');
      const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
      const today = stamp(Date.now(), timeZone).slice(0, 10);
      await seasonReport(await opened(options.notebook, false), options, today, { ...io, write });
    });
}
