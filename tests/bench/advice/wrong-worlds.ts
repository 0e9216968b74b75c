import { USUAL_CONDITIONS, type ShapeConditions } from '@pullbook/practice-car';

/** A way in which the cars depart from what the advice takes for granted. */
export interface WrongWorld {
  readonly name: string;
  readonly conditions: ShapeConditions;
}

const WHAT: readonly (readonly [keyof ShapeConditions, string])[] = [
  ['scatter', 'pull-to-pull scatter'],
  ['soak', 'shift by heat soak'],
  ['falsePulls', 'share of false pulls'],
  ['steepness', 'steepness of the rise'],
];
const FACTORS = [0.5, 1.5, 2];

/** Each assumption wrong by half, down and up, and by double, one at a time. */
export const WRONG_WORLDS: readonly WrongWorld[] = [
  { name: 'as drawn', conditions: USUAL_CONDITIONS },
  ...WHAT.flatMap(([key, name]) =>
    FACTORS.map((factor) => ({
      name: `${name} × ${factor}`,
      conditions: { ...USUAL_CONDITIONS, [key]: factor },
    })),
  ),
];
