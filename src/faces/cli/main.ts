/** The command line: reads its arguments, runs one command, tells what went wrong, returns the exit status. */

import { Command, CommanderError } from 'commander';
import { ProblemError } from '../../numerics/problem.ts';
import { BadInput } from './badInput.ts';
import { EXIT, type ExitStatus } from './exitStatus.ts';
import { placeProblem } from './placeProblem.ts';
import { processTerminal, type Terminal } from './terminal.ts';
import { problemText, studyProblemText } from './text/problemText.ts';
import { programVersion } from './version.ts';

export async function main(
  args: readonly string[],
  terminal: Terminal = processTerminal(),
): Promise<ExitStatus> {
  let status: ExitStatus = EXIT.answered;
  const program = commandLine(terminal, (given) => {
    status = given;
  });
  try {
    if (args.length === 0) {
      program.outputHelp();
      return EXIT.answered;
    }
    await program.parseAsync(args, { from: 'user' });
    return status;
  } catch (error) {
    return tell(error, terminal);
  }
}

/** Expected failures are told in words; anything else is a bug and shows its stack. */
function tell(error: unknown, terminal: Terminal): ExitStatus {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.answered : EXIT.badInput;
  if (error instanceof BadInput) {
    for (const problem of error.problems) {
      terminal.err(
        'file' in problem ? studyProblemText(problem, terminal.width) : problemText(problem, terminal.width),
      );
    }
    return EXIT.badInput;
  }
  if (error instanceof ProblemError) {
    terminal.err(problemText(error.problem, terminal.width));
    return EXIT.badInput;
  }
  const problem = placeProblem(error);
  if (problem === null) throw error;
  terminal.err(problemText(problem, terminal.width));
  return EXIT.badInput;
}

const examples = `
Examples:
  plumeline new my-question                 make a commented study
  plumeline new --list                      ready studies to start from, with their questions
  plumeline solve my-question               question, short answer, engines side by side
  plumeline solve my-question --json        every number, SI units, for other programs
  plumeline check my-question               which sentences are safe to say, and what is true
  plumeline claims talk.vtt                 what somebody claims, and how it could be tested
  plumeline sweep my-question               any quantity against any input, as the study asks
  plumeline map my-question                 the same while two inputs move
  plumeline need my-question                what an input would have to be for a comparison to hold
  plumeline review my-question --by NAME    sign what you have looked at
  plumeline script my-question              the script with its live numbers, and what to look at
  plumeline draw my-question --list         figures one by one, as SVG or PNG, in any size
  plumeline flow my-question                the jet with its shocks, computed, from the pad upwards
  plumeline cut my-question --to "40 s"     the lines to keep of its script
  plumeline captions my-question --out DIR  captions and chapters of its script
  plumeline slips my-question film.vtt      what the finished film says otherwise
  plumeline pack my-question --out folder   page, figures and numbers to publish
  plumeline clip my-question --figure cut --out climb.mp4   the engines climb, as a film
  plumeline open my-question                the same in a browser, with the altitude to drag
  plumeline quantities specificImpulse      what a number means and where it comes from

Exit status:
  0  answered
  1  answered, but something asked for could not be computed, or a sentence or analogy that is said fails
  2  bad input: a study that cannot be read, an unknown option

For explanation and comparison only, not for building, pressurising or firing hardware.`;

/** Gathers an option that may be given several times. */
function addedTo(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}

function commandLine(terminal: Terminal, done: (status: ExitStatus) => void): Command {
  const program = new Command('plumeline')
    .description(
      'From a question about rocket engines to an answer that can be defended:\nreal chemistry, real air, two engines side by side from the pad to vacuum.',
    )
    .version(programVersion())
    .exitOverride()
    .showHelpAfterError(
      '(plumeline --help shows what there is; a value with a space in it stands in quotes: "10 km")',
    )
    .configureOutput({
      writeOut: (text) => terminal.out(text.trimEnd()),
      writeErr: (text) => terminal.err(text.trimEnd()),
    })
    .addHelpText('after', examples);

  program
    .command('new')
    .description('make a folder with a commented study to start from')
    .argument('[folder]', 'folder to make')
    .option('--from <starter>', 'which starter or example to copy', 'blank')
    .option('--question <text>', 'the question to put in')
    .option('--list', 'only list the starters, each with the question it answers')
    .addHelpText(
      'after',
      `
A starter is a ready study: a question, its engines, sentences that are true, half true and false, with their tests.

Examples:
  plumeline new --list
  plumeline new my-question --from bell-against-plug`,
    )
    .action(async (folder: string | undefined, flags) => {
      const { newCommand } = await import('./commands/new.ts');
      done(await newCommand(folder, flags, terminal));
    });

  program
    .command('solve')
    .description('answer a study: who leads, by how much, what was held equal, what is left out')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--json', 'print the whole answer as JSON, SI units')
    .option('--ambient <pressures>', 'more surroundings, by pressure: "1 bar, 0.2 bar, 0 Pa"')
    .option('--altitude <altitudes>', 'more altitudes: "5 km, 12 km"')
    .option('--engine <id>', 'only this engine')
    .addHelpText(
      'after',
      `
Pressures are absolute. A thrust that the model does not have, for example of gas that has left the
wall, is told as such with its reason; that is an answer, not a failure.

Examples:
  plumeline solve my-question --altitude "5 km, 12 km"
  plumeline solve my-question --ambient "1 bar, 6 mbar" --engine bell
  plumeline solve my-question --json > answer.json`,
    )
    .action(async (study: string, flags) => {
      const { solveCommand } = await import('./commands/solve.ts');
      done(await solveCommand(study, flags, terminal));
    });

  program
    .command('check')
    .description(
      'check the sentences and analogies of a study: safe to say, say with care, don’t say, and what is true',
    )
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--json', 'print all that was found as JSON, SI units')
    .option('--before <file>', 'an earlier --json: tell which verdicts changed since')
    .option('--all', 'with the numbers, conditions and sources of each sentence')
    .addHelpText(
      'after',
      `
A sentence holds in a share of what is not known: inputs with ±, the published errors of the models.
From 95 % on it is safe to say, up to 5 % it is not to be said.
A sentence or analogy marked said: false is checked too, but does not count for the exit status.
Reported facts are not computed; one without a source counts as failing.

Exit status:
  0  nothing that is said fails
  1  a sentence or analogy that is said fails: don’t say, can’t tell, or its test cannot be read
  2  bad input

Examples:
  plumeline check my-question
  plumeline check my-question --json > before.json
  plumeline check my-question --before before.json`,
    )
    .action(async (study: string, flags) => {
      const { checkCommand } = await import('./commands/check.ts');
      done(await checkCommand(study, flags, terminal));
    });

  program
    .command('claims')
    .description('find the claims in a text or in captions, and propose a test for each')
    .argument('<file>', 'plain text (.txt, .md), WebVTT (.vtt) or SubRip (.srt), in English')
    .option('--study <folder>', 'the study whose engines are meant')
    .option('--json', 'print all that was found as JSON')
    .option('--accept <numbers>', 'write these into the study, to be checked, not said: "1,3"')
    .addHelpText(
      'after',
      `
What a claim means is a guess by its words and units: read each proposal before you accept it.
Nothing counts until it is accepted; then plumeline check tells what is true of it.

Examples:
  plumeline claims talk.vtt
  plumeline claims talk.vtt --study my-question
  plumeline claims talk.vtt --study my-question --accept 1,3`,
    )
    .action(async (file: string, flags) => {
      const { claimsCommand } = await import('./commands/claims.ts');
      done(await claimsCommand(file, flags, terminal));
    });

  program
    .command('sweep')
    .description(
      'follow any quantity while one input moves: optimum, crossings, where there is no value and why',
    )
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--of <expression>', 'what to follow; may be given several times', addedTo)
    .option(
      '--over <input>',
      'what moves: nozzle.areaRatio, altitude, throttle, engines.bell.chamber.pressure …',
    )
    .option('--from <value>', 'where it begins; absent: a range worth looking over')
    .option('--to <value>', 'where it ends')
    .option('--steps <how>', 'even or ratios')
    .option('--engine <id>', 'move it on this engine alone; may be given several times', addedTo)
    .option('--points <number>', 'at most so many points, 5 to 201 (33)')
    .option('--id <id>', 'one of the study’s own sweeps; without --of and --over, all of them')
    .option('--json', 'print all that was found as JSON, SI units')
    .option('--csv', 'print the points as comma-separated values')
    .addHelpText(
      'after',
      `
A place or a throttle that an expression leaves open is the one of the sweep. Without --engine the input moves
where the study states it: engines that inherit it move along. What is held is said with every table.

Examples:
  plumeline sweep my-question --of "bell.specificImpulse(vacuum)" --over nozzle.areaRatio --from 10 --to 100
  plumeline sweep my-question --of bell.thrust --of plug.thrust --over altitude
  plumeline sweep my-question --id area-ratio --csv > points.csv`,
    )
    .action(async (study: string, flags) => {
      const { sweepCommand } = await import('./commands/sweep.ts');
      done(await sweepCommand(study, flags, terminal));
    });

  program
    .command('map')
    .description('follow any quantity while two inputs move: the best place, where there is no value and why')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--of <expression>', 'what to follow')
    .option('--across <input>', 'what moves across')
    .option('--across-from <value>', 'where it begins; absent: a range worth looking over')
    .option('--across-to <value>', 'where it ends')
    .option('--up <input>', 'what moves upwards')
    .option('--up-from <value>', 'where it begins')
    .option('--up-to <value>', 'where it ends')
    .option('--engine <id>', 'move them on this engine alone; may be given several times', addedTo)
    .option('--points <number>', 'along each side, 3 to 41 (17)')
    .option('--id <id>', 'one of the study’s own maps; without --of, all of them')
    .option('--json', 'print all that was found as JSON, SI units')
    .option('--csv', 'print the points as comma-separated values')
    .addHelpText(
      'after',
      `
Example:
  plumeline map my-question --of "bell.specificImpulse(vacuum)" --across propellants.ratio --up nozzle.areaRatio`,
    )
    .action(async (study: string, flags) => {
      const { mapCommand } = await import('./commands/map.ts');
      done(await mapCommand(study, flags, terminal));
    });

  program
    .command('need')
    .description('what an input would have to be for a comparison to hold; no answer in range is an answer')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--so <comparison>', 'what is to hold, e.g. "bell.thrust(pad) >= plug.thrust(pad)"')
    .option('--over <input>', 'the unknown: nozzle.areaRatio, chamber.pressure, size.throat, …')
    .option('--from <value>', 'where to look from; absent: a range worth looking over')
    .option('--to <value>', 'where to look to')
    .option('--engine <id>', 'it moves on this engine alone; may be given several times', addedTo)
    .option('--id <id>', 'one of the study’s own needs; without --so and --over, all of them')
    .option('--json', 'print all that was found as JSON, SI units')
    .addHelpText(
      'after',
      `
The band in brackets is what all else that is not known leaves open. Exit status 1 where no value in the range does it.

Example:
  plumeline need my-question --so "bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum)" \\
    --over nozzle.areaRatio --engine bell`,
    )
    .action(async (study: string, flags) => {
      const { needCommand } = await import('./commands/need.ts');
      done(await needCommand(study, flags, terminal));
    });

  program
    .command('worth')
    .description('what the second engine of the pair gains and what it costs, on one basis, with bands')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--json', 'print all that was found as JSON, SI units')
    .addHelpText(
      'after',
      `
Example:
  plumeline worth examples/alder-booster`,
    )
    .action(async (study: string, flags) => {
      const { worthCommand } = await import('./commands/worth.ts');
      done(await worthCommand(study, flags, terminal));
    });

  program
    .command('review')
    .description('sign the sentences, facts and analogies that you have looked at; kept in review.yaml')
    .argument('<study>', 'folder with study.yaml, or that file')
    .requiredOption('--by <name>', 'who signs')
    .option('--sentences <ids>', 'only these: "on-the-way,vacuum-gain"')
    .option('--date <day>', 'day of signing, e.g. 2026-11-26; else today')
    .addHelpText(
      'after',
      `
Kept is what you saw: words, test, verdict, deciding numbers as spoken. A later change of any of it voids the
sign-off; plumeline check and the fact sheet of a package tell so.

Example:
  plumeline review my-question --by "J. Doe" --sentences on-the-way`,
    )
    .action(async (study: string, flags) => {
      const { reviewCommand } = await import('./commands/review.ts');
      done(await reviewCommand(study, flags, terminal));
    });

  program
    .command('script')
    .description('the script with its live numbers, and what is to be looked at in it')
    .argument('<study>', 'folder with study.yaml and script.md')
    .option('--json', 'print all that was found as JSON, SI units')
    .option('--cut <name>', 'only what that cut keeps, one of those at the head of the script')
    .option('--write <file>', 'write the script with its numbers as Markdown')
    .option('--reading <file>', 'write a page to read from: large words that scroll, without a network')
    .option('--record', 'record the numbers as they are now; later runs tell which have moved')
    .addHelpText(
      'after',
      `
Live numbers stand in double braces, {{bell.thrust(pad) in kN, about}}, and are told with the digits that what is
not known leaves. A number typed by hand is pointed out. A line with {says=id} carries the verdict of that sentence.

Exit status:
  0  nothing that is said fails
  1  a line says a sentence that fails, a recorded number has moved, or a number has no value
  2  bad input: no script, or one that cannot be read throughout

Examples:
  plumeline script my-question
  plumeline script my-question --cut short
  plumeline script my-question --record
  plumeline script my-question --write read-aloud.md`,
    )
    .action(async (study: string, flags) => {
      const { scriptCommand } = await import('./commands/script.ts');
      done(await scriptCommand(study, flags, terminal));
    });

  program
    .command('measured')
    .description('measured points of the study beside what is computed there, with residuals')
    .argument('<study>', 'folder with study.yaml and the CSV files it names')
    .option('--json', 'print all that was found as JSON, SI units')
    .option('--csv', 'print the points as comma-separated values')
    .addHelpText(
      'after',
      `
Example:
  plumeline measured my-question`,
    )
    .action(async (study: string, flags) => {
      const { measuredCommand } = await import('./commands/measured.ts');
      done(await measuredCommand(study, flags, terminal));
    });

  program
    .command('draw')
    .description('draw one figure to a file: SVG, PNG, its table as CSV, or its words')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--figure <name>', 'which one; see --list')
    .option('--list', 'draw nothing; name the figures that the study has')
    .option(
      '--out <file>',
      'where to; its ending says what: .svg, .png, .csv (the numbers), .txt (title and alt text)',
    )
    .option('--altitude <place>', 'for figures at one place: 12 km, vacuum')
    .option('--size <shape>', '16:9, 9:16, 1:1, print, or pixels such as 1280x720', '16:9')
    .option('--theme <theme>', 'light, dark or print (black on white); absent: light, or print for that size')
    .option('--png <width>', 'width of a PNG in pixels; absent: as laid out')
    .option('--transparent', 'no ground, for laying over film')
    .option('--fonts', 'carry the fonts inside an SVG')
    .option('--title <text>', 'said instead of the finding')
    .option('--without <parts>', 'leave out title, subtitle, notes; the caution stays')
    .addHelpText(
      'after',
      `
Examples:
  plumeline draw my-question --list
  plumeline draw my-question --figure push --altitude "12 km" --size 9:16 --theme dark --out push.svg
  plumeline draw my-question --figure cut-in-vacuum --png 3840 --transparent --out cut.png`,
    )
    .action(async (study: string, flags) => {
      const { drawCommand } = await import('./commands/draw.ts');
      done(await drawCommand(study, flags, terminal));
    });

  program
    .command('flow')
    .description(
      'compute the whole flow of an engine, shocks and jet, inviscid, at one altitude after another',
    )
    .argument('<study>', 'folder with study.yaml, or that file')
    .option('--engine <id>', 'which engine, any whose nozzle has a wall; absent: the first')
    .option('--altitude <places>', 'altitudes and vacuum: "0 km, 12 km, vacuum"')
    .option('--ambient <pressures>', 'by the pressure of the air: "1 bar, 0.2 bar"')
    .option(
      '--flight-speed <speed>',
      'of the vehicle through the air, its nozzle last: "300 m/s"; absent: at rest',
    )
    .option('--show <what>', 'pressure, mach, temperature, density, speed or "density gradient"', 'pressure')
    .option(
      '--streamlines [count]',
      'lines that run with the gas, so many on each side of the axis; absent: none',
    )
    .option('--fineness <how>', 'coarse, normal, fine or finest', 'normal')
    .option(
      '--event <what>',
      'through time at one altitude, the pad unless said: start, stop, "throttle 60 %" or switch',
    )
    .option('--ramp <time>', 'in which the feed of the chamber goes; absent: 2 ms')
    .option('--until <time>', 'of the whole; absent: 8 ms')
    .option('--frames <count>', 'moments told and drawn; absent: 16')
    .option('--floats <bits>', '32, 64 or reference: by what it is computed', '32')
    .option('--threads <count>', 'that take each step together; absent: one for each core, up to 8')
    .option('--out <place>', 'a picture (.svg, .png), or a folder for one picture a place')
    .option('--size <shape>', '16:9, 9:16, 1:1, print, or pixels such as 1280x720', '16:9')
    .option('--theme <theme>', 'light, dark or print', 'light')
    .option('--png <width>', 'width of a PNG in pixels; absent: as laid out')
    .option('--fonts', 'carry the fonts inside an SVG')
    .option('--fresh', 'compute anew what is kept from before')
    .option('--json', 'print what was found as JSON, SI units')
    .addHelpText(
      'after',
      `
The flow has no turbulence: the jet does not mix with the air, and where gas lets go of a wall is put in, not found.
The air outside is at rest, or comes along a cylinder as wide as the engine (--flight-speed): the vehicle ahead is not in the flow.
Hatched beside a wall: where gas with friction would let go, by the published criteria that let it go there.
Each flow is the beginning of the next; all are kept in the cache of the system by the hash of what they follow from.

Examples:
  plumeline flow my-question --altitude "0 km, 20 km"
  plumeline flow my-question --engine bell --altitude "15 km" --show "density gradient" --out jet.png
  plumeline flow my-question --altitude "0 km" --show speed --streamlines --out jet.svg
  plumeline flow my-question --altitude "12 km" --flight-speed "450 m/s" --out flying.svg
  plumeline flow my-question --altitude "10 km" --event start --fineness coarse --out moments`,
    )
    .action(async (study: string, flags) => {
      const { flowCommand } = await import('./commands/flow.ts');
      done(await flowCommand(study, flags, terminal));
    });

  program
    .command('cut')
    .description(
      'cut the script to a length: the greatest weight within the time, with all that kept lines rely on',
    )
    .argument('<study>', 'folder with study.yaml and script.md')
    .requiredOption(
      '--to <length>',
      'how long: "40 s", "10 min", or the name of a cut in the head of the script',
    )
    .option('--keep <ids>', 'lines or scenes to keep: "answer,pad"')
    .option('--leave <ids>', 'lines or scenes to leave out')
    .option('--json', 'print all that was found as JSON')
    .option('--write <file>', 'write the cut as a script of its own')
    .addHelpText(
      'after',
      `
Time is counted by spoken words, numbers as they are said. Exit status 1 where a checked sentence is said only in part.

Examples:
  plumeline cut my-question --to "40 s"
  plumeline cut my-question --to short --keep answer --write short.md`,
    )
    .action(async (study: string, flags) => {
      const { cutCommand } = await import('./commands/cut.ts');
      done(await cutCommand(study, flags, terminal));
    });

  program
    .command('captions')
    .description('write captions and chapters of the script, timed by its words: WebVTT, SubRip and a list')
    .argument('<study>', 'folder with study.yaml and script.md')
    .requiredOption('--out <folder>', 'folder to write into; captions and chapters there are replaced')
    .option('--cut <name>', 'of this cut of the script')
    .option('--narrow', 'rows of 37 signs instead of 42')
    .addHelpText(
      'after',
      `
Two rows, 1 to 7 s, at most 180 words a minute. What breaks a rule is told, and gives exit status 1.

Example:
  plumeline captions my-question --cut short --out captions`,
    )
    .action(async (study: string, flags) => {
      const { captionsCommand } = await import('./commands/captions.ts');
      done(await captionsCommand(study, flags, terminal));
    });

  program
    .command('slips')
    .description(
      'hold the captions of the finished film against its script: other numbers, words, lines left out',
    )
    .argument('<study>', 'folder with study.yaml and script.md')
    .argument('<captions>', 'captions of the film: WebVTT (.vtt) or SubRip (.srt)')
    .option('--cut <name>', 'the film says this cut of the script')
    .option('--json', 'print all that was found as JSON, times in seconds')
    .addHelpText(
      'after',
      `
Exit status 1 where there are slips.

Example:
  plumeline slips my-question film.vtt`,
    )
    .action(async (study: string, captions: string, flags) => {
      const { slipsCommand } = await import('./commands/slips.ts');
      done(await slipsCommand(study, captions, flags, terminal));
    });

  program
    .command('pack')
    .description('write one folder to publish: page, figures as SVG and PNG, numbers as CSV and JSON')
    .argument('<study>', 'folder with study.yaml, or that file')
    .requiredOption('--out <folder>', 'folder to write: a new or empty one, or an earlier package')
    .option('--date <day>', 'day of the package, e.g. 2026-11-26; else that of the latest sign-off')
    .option('--no-clips', 'without the clips that the script shows: quicker')
    .addHelpText(
      'after',
      `
The same study and the same day give the same bytes. A folder that holds anything else than an earlier package is left alone.

Example:
  plumeline pack my-question --out my-question-package`,
    )
    .action(async (study: string, flags) => {
      const { packCommand } = await import('./commands/pack.ts');
      done(await packCommand(study, flags, terminal));
    });

  program
    .command('clip')
    .description('write a moving figure as a film, or as numbered pictures')
    .argument('<study>', 'folder with study.yaml, or that file')
    .option(
      '--figure <name>',
      'cut, specific-impulse, thrust, push, pressure-along-wall, flow-ENGINE, ascent-ID, sweep-ID; or a clip by its name',
    )
    .option('--list', 'film nothing; name the clips that the study has')
    .option('--out <file>', 'file that ends in .mp4 or .webm, or a new folder for numbered pictures (PNG)')
    .option(
      '--kind <kind>',
      'altitude: it climbs; build-up: curves are drawn in; rings: a nozzle grows ring by ring; throttle: it throttles; drift: specks drift with the gas',
    )
    .option('--engine <id>', 'the engine that grows (rings); absent: the first')
    .option('--from <altitude>', 'where a climb begins: "5 km", pad, vacuum (pad)')
    .option('--to <altitude>', 'where it ends (vacuum)')
    .option('--at <altitude>', 'where a nozzle grows or throttles, or a wall is drawn (pad)')
    .option('--throttle <range>', 'from where to where it throttles ("100 % to 50 %")')
    .option('--size <size>', '16:9, 9:16, 1:1, print, or pixels such as 1280x720 (16:9)')
    .option('--fps <rate>', 'frames a second: 23.976, 24, 25, 29.97, 30, 50, 59.94, 60 (25)')
    .option('--seconds <time>', 'how long it is, the held ends in it (8)')
    .option('--hold-first <time>', 'how long the first picture stands (0.5)')
    .option('--hold-last <time>', 'how long the last one stands (1)')
    .option('--handles [time]', 'still pictures before and behind, for transitions; 1 s each unless said')
    .option('--loop', 'there and back: the last frame is the first')
    .option('--ease <how>', '"soft ends", smooth or even (soft ends)')
    .option('--theme <theme>', 'light or dark (light)')
    .option('--title <text>', 'said instead of the finding')
    .option('--alpha', 'transparent ground (.webm or pictures)')
    .addHelpText(
      'after',
      `
Films are encoded by Chromium or Chrome, found on PATH or by the environment variable CHROME; without one, numbered
pictures are written. A clip that flashes more than three times a second is refused. An interrupt leaves no half file.

Examples:
  plumeline clip my-question --list
  plumeline clip my-question --figure cut-climb --out climb.mp4
  plumeline clip my-question --figure specific-impulse --kind build-up --size 9:16 --alpha --out curves.webm
  plumeline clip my-question --figure push --engine bell --at "10 km" --fps 29.97 --out rings.mp4`,
    )
    .action(async (study: string, flags) => {
      const { clipCommand } = await import('./commands/clip.ts');
      done(await clipCommand(study, flags, terminal));
    });

  program
    .command('open')
    .description('open a study in the workbench, in a browser on this machine')
    .argument('<study>', 'folder with study.yaml')
    .option('--port <number>', 'port to listen on; the next free one is taken')
    .option('--no-browser', 'only print the address')
    .action(async (study: string, flags) => {
      const { openCommand } = await import('./commands/open.ts');
      done(await openCommand(study, flags, terminal));
    });

  program
    .command('quantities')
    .description('explain a quantity: meaning, equation, source, limits; without a name, list them')
    .argument('[name]', 'e.g. specificImpulse')
    .action(async (name: string | undefined) => {
      const { quantitiesCommand } = await import('./commands/quantities.ts');
      done(quantitiesCommand(name, terminal));
    });

  program
    .command('schema')
    .description('print the form of study.yaml as JSON Schema, for editors that check while typing')
    .action(async () => {
      const { studyJsonSchema } = await import('../../study/jsonSchema.ts');
      terminal.out(JSON.stringify(studyJsonSchema(), null, 2));
    });

  return program;
}
