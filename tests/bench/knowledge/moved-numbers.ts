import type { Random } from '@pullbook/practice-car';
import { FIRST_NUISANCE } from './car-guess.js';

/** The other samples, whose differences are steps too. */
interface Others {
  readonly random: Random;
  readonly count: number;
  readonly numbersOf: (index: number) => Float64Array;
}

/** Shares of the kinds of step; the rest are small ones along some of the numbers. */
const FRESH = 0.05;
const NUISANCE = 0.15;
const DIFFERENCE = 0.4;
const SCALES = [0.15, 0.04, 0.01, 0.003];
const ALONG_ALL = 0.3;
/** Numbers that most formulas ask for. */
const USUAL_NUMBERS = 8;
const JITTER = 0.002;

/** Where a Metropolis step leads from some numbers, each kept from 0 to 1 by going round; as likely there and back. */
export function movedNumbers(numbers: Float64Array, others: Others): Float64Array {
  const { random } = others;
  const kind = random();
  if (kind < FRESH) return numbers.map(random);
  if (kind < FRESH + NUISANCE) {
    const moved = numbers.slice();
    moved[FIRST_NUISANCE + below(random, numbers.length - FIRST_NUISANCE)] = random();
    return moved;
  }
  return kind < FRESH + NUISANCE + DIFFERENCE ? byDifference(numbers, others) : byScale(numbers, random);
}

function byDifference(numbers: Float64Array, { random, count, numbersOf }: Others): Float64Array {
  const one = numbersOf(below(random, count));
  const other = numbersOf(below(random, count));
  const share = random() < 0.2 ? 1 : 0.5 * random();
  const moved = numbers.slice();
  for (let index = 0; index < moved.length; index += 1) {
    const step = share * ((one[index] as number) - (other[index] as number));
    moved[index] = round((moved[index] as number) + step + JITTER * (random() - 0.5));
  }
  return moved;
}

function byScale(numbers: Float64Array, random: Random): Float64Array {
  const scale = SCALES[below(random, SCALES.length)] as number;
  const all = random() < ALONG_ALL;
  const along = [below(random, USUAL_NUMBERS), below(random, numbers.length)];
  const moved = numbers.slice();
  for (let index = 0; index < moved.length; index += 1)
    if (all || along.includes(index)) moved[index] = round((moved[index] as number) + scale * bell(random));
  return moved;
}

/** Roughly normal. */
const bell = (random: Random): number => 1.4 * (random() + random() + random() - 1.5);

const below = (random: Random, count: number): number => Math.floor(random() * count);

const round = (number: number): number => number - Math.floor(number);
