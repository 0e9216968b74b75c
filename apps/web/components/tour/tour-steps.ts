import type { Role } from '@pullbook/contracts';

/** One step of the first tour: what to do and why, and how it is seen that it was done. */
export interface TourStep {
  readonly name: string;
  readonly text: string;
  /** Where it is done, if that is one place. */
  readonly href?: string;
  /** Done once the address is like this. */
  readonly path?: RegExp;
  /** Done once this stands on the page. */
  readonly mark?: string;
  /** Done once one pull more is on record. */
  readonly isRecording?: true;
}

const visit = /^\/visits\/[^/]+$/;
const signOff = /^\/visits\/[^/]+\/sign-off$/;
const duty = '[data-testid="next-duty"]';

const opening: TourStep = {
  name: 'Board',
  text: 'Every car stands on the board. Open one whose card says “next pull”: it is on test.',
  href: '/board',
  path: visit,
};
const closing: readonly TourStep[] = [
  {
    name: 'Sign-off',
    text: 'On the car’s visit choose Sign-off: the book shows what the pulls prove, a person ticks what they saw, and it is sealed.',
    path: signOff,
  },
  {
    name: 'Report',
    text: 'A sealed visit has a report for the customer behind a link, which can be taken back. That was the job.',
  },
];

const onDemoCars: readonly TourStep[] = [
  opening,
  {
    name: 'Readiness',
    text: 'No advice before the readiness check is passed: people can be hurt. Tick only what you have seen.',
    mark: duty,
  },
  {
    name: 'Next pull',
    text: 'The large figure is the duty to set; beside it why, the expected peak, and the chance of passing the ceiling.',
  },
  {
    name: 'Record',
    text: 'Type a peak inside the expected range and press Record pull. On these demo cars nothing can break.',
    isRecording: true,
  },
  {
    name: 'Proof',
    text: 'When enough pulls fit, the book says Accepted and names the pulls that prove it. A wrong one is voided, not erased.',
  },
  ...closing,
];

const onPracticeCars: readonly TourStep[] = [
  {
    name: 'Practice',
    text: 'Your book holds real cars, so the pulls are driven on a simulated one. Take a calm car.',
    href: '/practice',
    mark: '[data-tour="readiness"]',
  },
  {
    name: 'Readiness',
    text: 'No pull before the readiness check is passed: people can be hurt. Tick all five.',
    mark: '[data-tour="bench"]',
  },
  {
    name: 'Next pull',
    text: 'Ask what the book advises: the duty to set, why, and the chance of passing the ceiling.',
    mark: duty,
  },
  {
    name: 'Record',
    text: 'Drive it and read the peak. On a real car you type it in.',
    mark: '[data-tour="driven"]',
  },
  {
    name: 'Proof',
    text: 'Repeat until the book would keep the duty, keep it, and read what the car was.',
    mark: '[data-tour="truth"]',
  },
  ...closing,
];

const onTheDesk: readonly TourStep[] = [
  {
    name: 'Take in',
    text: 'Take in a car: customer, car and wishes on one page, while the customer stands there.',
    href: '/intake',
    path: /^\/intake$/,
  },
  {
    name: 'Job sheet',
    text: 'Taken in or on its visit, a car’s job sheet is printed with one press. It travels with the car.',
    path: /^\/visits\/[^/]+(\/about)?$/,
  },
  {
    name: 'Hand over',
    text: 'A car that is signed off is ready on the board: give the customer the report, and move it to collected.',
    href: '/board',
  },
];

/** The tour of a person: the job in its order, at the desk without the tuning; in a real book the pulls are practised. */
export function tourSteps(role: Role, isDemo: boolean): readonly TourStep[] {
  if (role === 'desk') return onTheDesk;
  return isDemo ? onDemoCars : onPracticeCars;
}
