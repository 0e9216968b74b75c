export { JUDGEMENT_RISES } from './judgement-rises.js';
export { JUDGEMENT_FAULTS, type JudgementFault } from './judgement-faults.js';
