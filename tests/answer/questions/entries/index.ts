/** All questions, in the order of the page. */
import type { Question } from '../question.ts';
import * as changing from './changing.ts';
import * as flight from './flight.ts';
import * as force from './force.ts';
import * as gas from './gas.ts';
import * as heat from './heat.ts';
import * as matching from './matching.ts';
import * as separation from './separation.ts';

export const questions: readonly Question[] = [
  matching,
  separation,
  changing,
  gas,
  force,
  flight,
  heat,
].flatMap((each) => Object.values(each));
