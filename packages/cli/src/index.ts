import { Command, CommanderError, Option } from 'commander';
import type { DataOptions } from './data/open-data.ts';
import { BadInput, EXIT, type Terminal } from './terminal.ts';
import { type BackupOptions, backupVerb } from './verbs/backup.ts';
import { calc } from './verbs/calc.ts';
import { check } from './verbs/check.ts';
import { compare } from './verbs/compare.ts';
import { explain } from './verbs/explain.ts';
import { type ExportOptions, exportVerb } from './verbs/export.ts';
import { fits } from './verbs/fits.ts';
import { type ForecastOptions, forecast, SERVICES } from './verbs/forecast.ts';
import { formulas } from './verbs/formulas.ts';
import { type HoursVerbOptions, hoursVerb } from './verbs/hours.ts';
import { importVerb } from './verbs/import.ts';
import { papers } from './verbs/papers.ts';
import { planVerb } from './verbs/plan.ts';
import { restoreVerb } from './verbs/restore.ts';
import { type ServeVerbOptions, serveVerb } from './verbs/serve.ts';
import { type SpreadVerbOptions, spreadVerb } from './verbs/spread.ts';

interface Common {
  readonly json?: boolean;
  readonly catalogue?: string;
  readonly prices?: string;
  readonly weather?: string;
  readonly now?: string;
}

/** Runs one command line and gives its exit status: 0 go or caution, 1 stop or not known, 2 bad input. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  let status: number = EXIT.fine;
  const program = new Command('slabwright')
    .description('Plans, prices and papers a resin floor, with the working behind every number.')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => terminal.out(text),
      // Who asks for data gets the trouble as data, below.
      writeErr: (text) => {
        if (!args.includes('--json')) terminal.err(text);
      },
    })
    .showHelpAfterError('(slabwright --help lists the verbs)')
    .showSuggestionAfterError();

  const verb = (signature: string, says: string): Command =>
    program.command(signature).description(says).option('--json', 'print data instead of text');
  const withFiles = (command: Command): Command =>
    command
      .option('--catalogue <file>', 'catalogue instead of catalogue.json beside the job')
      .option('--prices <file>', 'price book instead of price-book.json beside the job')
      .option('--weather <file>', 'hourly weather, or a typical year (EPW), instead of weather.json beside the job')
      .option('--now <instant>', 'plan as of this moment, for example 2026-05-13T06:00:00-06:00');

  /** Weather and a reading typed by hand. */
  const withTyped = (command: Command): Command =>
    command
      .option('--air-low <temperature>', 'weather typed by hand instead of a file: coldest air of the day, "8 °C"')
      .option('--air-high <temperature>', 'warmest air of the day, "22 °C"')
      .option('--humidity <share>', 'relative humidity at the coldest hour, "85 %"')
      .option('--wind <speed>', 'wind, "2 m/s"')
      .option('--cloud <share>', 'share of the sky that is cloud, "30 %"')
      .option('--slab-now <temperature>', 'a reading of this moment beside those of the job: slab, "16 °C"')
      .option('--air-now <temperature>', 'air over the floor, "18 °C"')
      .option('--humidity-now <share>', 'humidity over the floor, "60 %"')
      .option('--material-now <temperature>', 'resin in its pail, "24 °C"');

  verb('calc <formula> [inputs...]', 'compute one formula: calc film/wet-from-dry dryFilm="5 mil" volumeSolids="65 %"')
    .option('--in <unit>', 'unit of the answer')
    .action((id: string, pairs: string[], options: { in?: string; json?: boolean }) => {
      status = calc(id, pairs, options, terminal);
    });
  verb('formulas [word]', 'list the formulas, or those that speak of a word').action(
    (word: string | undefined, options: Common) => {
      status = formulas(word, options, terminal);
    },
  );
  withFiles(
    verb('check <job>', 'read a job file (or its folder, or - for standard input) and name what is wrong'),
  ).action((job: string, options: Common) => {
    status = check(job, options, terminal);
  });
  withTyped(withFiles(verb('plan <job>', 'plan a job: verdicts, preparation, buying, hours, price')))
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .option('--notes', 'print also how things were counted and what was assumed')
    .action((job: string, options: Common & { units?: 'imperial' | 'metric'; notes?: boolean }) => {
      status = planVerb(job, options, terminal);
    });
  withFiles(
    verb('fits <job>', 'try every system of the catalogue on this slab: which fit, and what would admit the rest'),
  )
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .action((job: string, options: Common & { units?: 'imperial' | 'metric' }) => {
      status = fits(job, options, terminal);
    });
  withTyped(withFiles(verb('hours <job>', 'the hours of a job: slab, dew point, windows, schedule, return to service')))
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .option('--option <id>', 'option to show, instead of the accepted one')
    .option('--ics <file>', 'write the day as a calendar file, with alarms for readings and windows')
    .action((job: string, options: HoursVerbOptions) => {
      status = hoursVerb(job, options, terminal);
    });
  verb('forecast <job>', 'ask a public service for the weather of the site; only where you allow it')
    .addOption(
      new Option(
        '--service <service>',
        'Norwegian Meteorological Institute (any place), or US National Weather Service',
      )
        .choices(SERVICES)
        .makeOptionMandatory(),
    )
    .requiredOption('--out <file>', 'where the weather goes: weather.json beside the job is found by itself')
    .option('--allow-sending-the-place', 'send the place of the site, rounded to 0.01°, and nothing else of the job')
    .option('--overwrite', 'replace a file that is there already')
    .action(async (job: string, options: ForecastOptions) => {
      status = await forecast(job, options, terminal);
    });
  withTyped(withFiles(verb('explain <job> <entry>', 'show how a number of the plan came about, down to its readings')))
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .option('--depth <levels>', 'how far down the inputs are opened', '2')
    .action((job: string, entry: string, options: Common & { units?: 'imperial' | 'metric'; depth: string }) => {
      status = explain(job, entry, options, terminal);
    });
  verb('compare <products...>', 'set data sheets side by side, like for like')
    .option('--catalogue <file>', 'catalogue to read, instead of catalogue.json here')
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .action((products: string[], options: Common & { units?: 'imperial' | 'metric' }) => {
      status = compare(products, options, terminal);
    });
  withFiles(
    verb('spread <job-or-floor>', 'order of pours of a job, or of a floor in the instance format, as map and table'),
  )
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .option('--effort <effort>', 'quick, full, or a number of candidates', 'quick')
    .action((path: string, options: SpreadVerbOptions) => {
      status = spreadVerb(path, options, terminal);
    });
  withTyped(withFiles(verb('papers <job>', 'write the papers of a job as PDF')))
    .requiredOption('--out <folder>', 'where the papers go')
    .option('--option <id>', 'option to paper, instead of the accepted one')
    .addOption(new Option('--units <system>', 'imperial or metric').choices(['imperial', 'metric']))
    .addOption(new Option('--paper <size>', 'letter or a4').choices(['letter', 'a4']))
    .addOption(new Option('--language <language>', 'language of crew and safety sheet').choices(['en', 'es']))
    .action(async (job: string, options: Parameters<typeof papers>[1]) => {
      status = await papers(job, options, terminal);
    });

  const withDataFolder = (command: Command): Command =>
    command.option('--data <folder>', 'folder that holds the data (./data)');
  const withOut = (command: Command, says: string): Command =>
    withDataFolder(command)
      .requiredOption('--out <path>', says)
      .option('--overwrite', 'replace a file that is there already');
  withOut(
    verb('export <job-id>', 'write a stored job as a file'),
    'a name ending in .json for the job alone, a folder for the job with its catalogue and prices, - for the screen',
  ).action(async (id: string, options: ExportOptions) => {
    status = await exportVerb(id, options, terminal);
  });
  withDataFolder(
    verb('import <file>', 'store a job with what lies beside it, a catalogue or a price book; older versions are kept'),
  ).action(async (file: string, options: DataOptions) => {
    status = await importVerb(file, options, terminal);
  });
  withOut(verb('backup', 'write everything stored as one file, with every revision'), 'the file').action(
    async (options: BackupOptions) => {
      status = await backupVerb(options, terminal);
    },
  );
  withDataFolder(verb('restore <file>', 'add from a backup what is missing; nothing stored is changed')).action(
    async (file: string, options: DataOptions) => {
      status = await restoreVerb(file, options, terminal);
    },
  );
  verb('serve', 'serve the app and its data folder on this machine')
    .option('--port <number>', 'port to answer on, 0 for a free one (4170)')
    .option('--data <folder>', 'folder that holds the data, made when it is not there (./data)')
    .option('--host <address>', 'address to listen on; without it nobody but this machine is answered (127.0.0.1)')
    .option('--name <names...>', 'names this server is called by in the network')
    .action(async (options: ServeVerbOptions) => {
      status = await serveVerb(options, terminal);
    });

  try {
    await program.parseAsync([...args], { from: 'user' });
  } catch (trouble) {
    return failed(trouble, args, terminal);
  }
  return status;
}

function failed(trouble: unknown, args: readonly string[], terminal: Terminal): number {
  if (trouble instanceof CommanderError) {
    if (trouble.exitCode === 0) return EXIT.fine;
    if (args.includes('--json')) {
      const message = trouble.message.replace(/^error: /, '');
      terminal.out(`${JSON.stringify({ issues: [{ code: 'bad-command', message }], messages: [message] }, null, 2)}\n`);
    }
    return EXIT.badInput;
  }
  if (!(trouble instanceof BadInput)) throw trouble;
  if (args.includes('--json')) {
    const issues =
      trouble.issues.length > 0 ? trouble.issues : trouble.lines.map((message) => ({ code: 'bad-input', message }));
    terminal.out(`${JSON.stringify({ issues, messages: trouble.lines }, null, 2)}\n`);
  } else {
    terminal.err(`${trouble.lines.join('\n')}\n`);
  }
  return EXIT.badInput;
}
