export { drawPracticeCar } from './draw-practice-car.js';
export { judgePractice, type PracticeEnding, type PracticeFinding } from './judge-practice.js';
export {
  PRACTICE_LEVELS,
  type PracticeCar,
  type PracticeFaultName,
  type PracticeLevel,
  type PracticeOrder,
  type PracticePull,
  type PracticeSheet,
  type PracticeTrace,
} from './practice-car.js';
export { tellPracticeTruth, type PracticeEnd, type PracticeTruth } from './tell-practice-truth.js';
