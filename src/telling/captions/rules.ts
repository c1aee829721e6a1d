/**
 * Rules of captions, with their sources.
 *
 * BBC: Subtitle Guidelines, version 1.1.7 (May 2018): 160–180 words a minute, two rows, breaks at natural points, more time for
 * long figures, 37 signs in the older grid, within 1.5 s of the speech. San Diego Community College District, At-a-Glance
 * Captioning Style Guide: rows of about 42 signs, 1 s to 7 s. University of Tennessee Libraries, Timed Text Style Guide: two
 * rows of 42, where a row may break.
 */

export interface CaptionRules {
  /** Signs in a row. */ readonly row: number;
  readonly rows: number;
  /** [s] */ readonly shortest: number;
  /** [s] */ readonly longest: number;
  /** Words a minute, figures counted as they are said. */ readonly fastest: number;
  /** [s] by which a caption may come before or stay behind its words. */ readonly drift: number;
}

export const CAPTION_RULES: CaptionRules = {
  row: 42,
  rows: 2,
  shortest: 1,
  longest: 7,
  fastest: 180,
  drift: 1.5,
};

/** The older grid of 37 signs. */
export const NARROW_ROW = 37;
