/** What each file of a package is. */

export function readme(question: string, caution: string): string {
  return `${question}

${caution}

index.html     question, short answer, pictures, tables, conditions, models, sources; open it in a browser or print it
explore.html   the same to play with: drag the altitude, touch a number to see where it comes from
figures/       each figure as SVG (live text, font Source Sans 3) and PNG, in each shape that the study asks for;
               the numbers of each as CSV; alt-texts.csv: what each shows, for those who cannot see it
numbers.csv    every number with its name, in SI units and as shown
numbers.json   the whole answer, SI units
sentences.json what the check of sentences, facts and analogies found, SI units; absent where the study has none
worth.json     gain and price of the pair; absent where there is one engine
measured.csv   measured points of the study beside what is computed, with residuals; measured.json the same for
               programs; absent where the study has none
needs.json     what it would take; absent where the study does not ask
fact-sheet.html
               every sentence, fact and analogy with verdict, test, deciding numbers, conditions, models, sources
               and who reviewed it; fact-sheet.json the same for programs
sources.json   every source of the numbers and of the study as CSL-JSON, for word processors and reference managers
sources.bib    the same as BibTeX
sources.txt    the same for people, each with what it is used for
clips/         moving figures named by scene, as long as the script shows them; clips.csv: what each shows; a folder of
               numbered pictures each, where no browser was there to encode films
scenes/        stills that the script shows, named by scene
script/        the script as written (script.md), with its numbers (whole.md), and each cut with and without them;
               -reading.html: large words to read from, without a network
timeline.otio  the script as a timeline for the edit (OpenTimelineIO): pictures with their figures, the voice with a
               marker on each line; one more for each cut
captions/      captions (WebVTT, SubRip) and chapters of the whole and of each cut, timed by words until there is a recording
scenes.csv     scenes of the whole and of each cut: start, length, what is shown and its file
numbers-by-scene.csv
               the live numbers, scene by scene
               (these are absent where the study has no script)
description.txt
               text to go below a film: answer, chapters, corrections, sources
corrections.md what differs from the package that lay here before, old values kept to be seen; absent where nothing does
study.yaml     the study it was made from
manifest.json  size and SHA-256 of each file
`;
}
