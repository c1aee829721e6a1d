/** What a study asks of its package: shapes of the figures, clips beside those that its script shows. */

export const PACKAGE_SHAPES = ['16:9', '9:16', '1:1', 'print'] as const;
export type PackageShape = (typeof PACKAGE_SHAPES)[number];

export interface PackageInput {
  /** Of every figure. */ readonly shapes: readonly PackageShape[];
  /** Names of clips, besides those that the script shows. */ readonly clips: readonly string[];
  /** Of every clip. */ readonly clipShapes: readonly PackageShape[];
}

export const USUAL_PACKAGE: PackageInput = {
  shapes: ['16:9', '9:16', '1:1'],
  clips: [],
  clipShapes: ['16:9'],
};

export const packageKeys = ['shapes', 'clips', 'clipShapes'] as const;
