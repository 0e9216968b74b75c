/// <reference lib="webworker" />
import {
  drawPracticeCar,
  judgePractice,
  tellPracticeTruth,
  type PracticeCar,
  type PracticeOrder,
} from '@pullbook/practice-car';
import type { PracticeAnswer, PracticeAsks, PracticeQuestion, PracticeReply } from '../practice-question';
import { practiceRules } from '../practice-rules';

declare const self: DedicatedWorkerGlobalScope;

type Ending = PracticeAsks['end'];

self.onmessage = ({ data }: MessageEvent<PracticeQuestion>) => {
  const { id } = data;
  const reply = (one: PracticeReply): void => self.postMessage(one);
  try {
    reply({ id, answer: answer(data, (share) => reply({ id, share })) });
  } catch (error) {
    reply({ id, fault: error instanceof Error ? error.message : String(error) });
  }
};

let kept: { readonly key: string; readonly car: PracticeCar } | null = null;

/** The car is drawn once and kept while it is practised with. */
function carOf(order: PracticeOrder): PracticeCar {
  const key = `${order.level} ${order.number}`;
  if (kept?.key !== key) kept = { key, car: drawPracticeCar(order) };
  return kept.car;
}

function answer(question: PracticeQuestion, onProgress: (share: number) => void): PracticeAnswer {
  const car = carOf(question.order);
  if (question.what === 'sheet') return car.sheet;
  if (question.what === 'pull') return car.pullAfter(question.duties);
  return endOf(car, question, onProgress);
}

function endOf(
  car: PracticeCar,
  { pulls, ending }: Ending['question'],
  onProgress: (share: number) => void,
): Ending['answer'] {
  const acceptedDuty = ending.kind === 'accept' ? ending.duty : null;
  const { stepLimit, requiredPulls } = practiceRules;
  const truth = tellPracticeTruth(car, { pulls, acceptedDuty, stepLimit }, onProgress);
  const findings = judgePractice({ sheet: car.sheet, pulls, ending, truth, stepLimit, requiredPulls });
  return { truth, findings };
}
