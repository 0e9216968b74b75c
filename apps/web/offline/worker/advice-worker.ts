/// <reference lib="webworker" />
import { nextPullOf } from '@pullbook/next-pull';
import type { AdviceAnswer, AdviceQuestion } from '../advise-here';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data }: MessageEvent<AdviceQuestion>) => {
  self.postMessage(answer(data));
};

function answer({ id, basis, pulls }: AdviceQuestion): AdviceAnswer {
  try {
    return { id, answer: nextPullOf(basis, pulls) };
  } catch (error) {
    return { id, fault: error instanceof Error ? error.message : String(error) };
  }
}
