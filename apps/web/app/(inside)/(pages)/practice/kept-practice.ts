import type { PracticeOrder } from '@pullbook/practice-car';
import { noPractice, type Practice } from './practice';
import { addressOf } from './read-order';

/** How far a trainee has come with a car, as this tab keeps it. */
export interface KeptPractice {
  readonly practice: Practice;
  readonly isReady: boolean;
}

const nothingYet: KeptPractice = { practice: noPractice, isReady: false };
const keyOf = (order: PracticeOrder): string => `pullbook-practice ${addressOf(order)}`;

/** What the tab keeps of a practice car; nothing begun where it keeps none, or keeps nothing at all. */
export function readPractice(order: PracticeOrder): KeptPractice {
  try {
    const text = sessionStorage.getItem(keyOf(order));
    return text === null ? nothingYet : (JSON.parse(text) as KeptPractice);
  } catch (cause) {
    console.warn('this tab keeps no practice; it lasts until the page is closed', cause);
    return nothingYet;
  }
}

/** Keeps it; null forgets it, so that the same car begins anew. */
export function keepPractice(order: PracticeOrder, kept: KeptPractice | null): void {
  try {
    if (kept === null) sessionStorage.removeItem(keyOf(order));
    else sessionStorage.setItem(keyOf(order), JSON.stringify(kept));
  } catch (cause) {
    console.warn('this tab keeps no practice; it lasts until the page is closed', cause);
  }
}
