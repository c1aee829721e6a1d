/** The picture of a question: a figure of the program, drawn from its starter. */
import type { Crew } from '../../../src/answer/asked/crew.ts';
import type { StudyAnswer } from '../../../src/answer/model.ts';
import { sweep, sweepRequestOf } from '../../../src/answer/sweeps/index.ts';
import type { Study } from '../../../src/study/model.ts';
import {
  cutView,
  type FigureOptions,
  figureSweep,
  impulseOverAltitude,
  pressureAlongWall,
  type Scene,
  sizeOutlines,
  thrustOverAltitude,
} from '../../../src/telling/index.ts';
import type { QuestionFigure } from './question.ts';

export interface Drawable {
  readonly study: Study;
  readonly crew: Crew;
  readonly answer: StudyAnswer;
}

const look: FigureOptions = { size: '16:9', theme: 'light' };

export async function pictureOf(figure: QuestionFigure, { study, crew, answer }: Drawable): Promise<Scene> {
  switch (figure.kind) {
    case 'thrust over altitude':
      return thrustOverAltitude(answer, look);
    case 'specific impulse over altitude':
      return impulseOverAltitude(answer, look);
    case 'outlines':
      return sizeOutlines(answer, look);
    case 'pressure along the wall':
      return pressureAlongWall(answer, { ...look, altitude: figure.altitude });
    case 'cut view':
      return cutView(answer, { ...look, altitude: figure.altitude });
    case 'sweep': {
      const input = study.sweeps.find(({ id }) => id === figure.id);
      if (input === undefined) throw new Error(`the starter has no sweep ${figure.id}`);
      return figureSweep(await sweep(study, crew, sweepRequestOf(study, input)), look);
    }
  }
}
