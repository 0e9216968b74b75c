import type { ReadinessKey } from '@pullbook/contracts';

/** The questions of the readiness check in plain words; all must be answered yes before the first pull. */
export const readinessQuestions: Readonly<Record<ReadinessKey, string>> = {
  'place-closed': 'Is this a dynamometer or a closed course, with nobody else on it?',
  'second-person': 'Are there two of you, the driver driving and the passenger on the tablet?',
  'no-leaks': 'No leaks: boost pipes, vacuum lines, fuel, oil and water all dry and tight?',
  'lines-secure': 'Are the control lines and hoses clamped, routed clear of heat, and undamaged?',
  'oil-warm': 'Is the oil warm and the engine at its running temperature?',
  'idle-vacuum-steady': 'Does the engine idle evenly, with a steady vacuum?',
  'over-boost-cut-set': 'Is the over-boost cut set and known to work?',
  'mixture-watched': 'Is the mixture watched on every pull?',
  'knock-watched': 'Is knock watched on every pull?',
};
