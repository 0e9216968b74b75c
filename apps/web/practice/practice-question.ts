import type {
  PracticeEnding,
  PracticeFinding,
  PracticeOrder,
  PracticePull,
  PracticeSheet,
  PracticeTruth,
} from '@pullbook/practice-car';

/** A pull as it stands in the practice list. */
export type TakenPull = PracticePull & {
  /** Left out of the reckoning by the trainee. */
  readonly isSetAside: boolean;
  /** When the car was looked over after this pull and found sound; left out where it was not. */
  readonly foundSoundAt?: string;
};

/** What the simulation can be asked for, and what it answers. */
export interface PracticeAsks {
  readonly sheet: { readonly question: object; readonly answer: PracticeSheet };
  readonly pull: { readonly question: { readonly duties: readonly number[] }; readonly answer: PracticePull };
  readonly end: {
    readonly question: { readonly pulls: readonly TakenPull[]; readonly ending: PracticeEnding };
    readonly answer: { readonly truth: PracticeTruth; readonly findings: readonly PracticeFinding[] };
  };
}

export type PracticeQuestion = {
  [What in keyof PracticeAsks]: {
    readonly id: number;
    readonly what: What;
    readonly order: PracticeOrder;
  } & PracticeAsks[What]['question'];
}[keyof PracticeAsks];

export type PracticeAnswer = PracticeAsks[keyof PracticeAsks]['answer'];

export type PracticeReply =
  | { readonly id: number; readonly answer: PracticeAnswer }
  | { readonly id: number; readonly share: number }
  | { readonly id: number; readonly fault: string };
