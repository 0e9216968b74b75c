import { signOffKeys, type FieldError, type PresetEvidence, type SignOffNew } from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';
import { signOffQuestions } from './sign-off-questions.js';

/**
 * Refuses a sign-off that is not complete: an item not done, or a preset that the data do not carry. Everything that is
 * missing is named at once.
 *
 * @param evidence of every preset of the visit's car
 * @returns the evidence of the covered presets, in slot order
 * @throws DomainError preset-not-of-this-car, preset-not-accepted, sign-off-incomplete
 */
export function checkSignOff(input: SignOffNew, evidence: readonly PresetEvidence[]): PresetEvidence[] {
  const known = new Set(evidence.map(({ presetId }) => presetId));
  const stranger = input.presetIds.findIndex((presetId) => !known.has(presetId));
  if (stranger >= 0) {
    const message = 'is no standing preset of this car';
    throw new DomainError('preset-not-of-this-car', `one of the presets ${message}`, {
      errors: [{ field: `presetIds.${stranger}`, message }],
    });
  }
  const covered = evidence.filter(({ presetId }) => input.presetIds.includes(presetId));
  const ofPresets: FieldError[] = covered.flatMap(({ name, presetId, missing }) =>
    missing.map((message) => ({
      field: `presetIds.${input.presetIds.indexOf(presetId)}`,
      message: `${name}: ${message}`,
    })),
  );
  const done = new Set(input.items.filter((item) => item.done).map((item) => item.key));
  const ofItems = signOffKeys
    .filter((key) => !done.has(key))
    .map((key) => ({ field: `items.${key}`, message: `not done: ${signOffQuestions[key]}` }));
  const errors = [...ofPresets, ...ofItems];
  if (errors.length === 0) return covered;
  const code = ofPresets.length > 0 ? 'preset-not-accepted' : 'sign-off-incomplete';
  throw new DomainError(code, errors.map(({ message }) => message).join('; '), { errors });
}
