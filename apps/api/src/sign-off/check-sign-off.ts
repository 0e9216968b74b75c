import type { FieldError, PresetEvidence, SignOffChecklist, SignOffNew } from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';

type Item = SignOffChecklist['items'][number];

/** What a sign-off is held against. */
export interface SignOffGrounds {
  /** Of every preset of the visit's car. */
  readonly evidence: readonly PresetEvidence[];
  readonly checklist: SignOffChecklist;
}

/**
 * Refuses a sign-off that is not complete: an item not done, an item that the data do not show, or a preset that they
 * do not carry. Everything that is missing is named at once.
 *
 * @returns the evidence of the covered presets, in slot order
 * @throws DomainError preset-not-of-this-car, preset-not-accepted, sign-off-incomplete; changed-meanwhile where the
 *   signer has seen an older checklist
 */
export function checkSignOff(input: SignOffNew, { evidence, checklist }: SignOffGrounds): PresetEvidence[] {
  const { checklistRevision = checklist.revision } = input;
  if (checklistRevision !== checklist.revision) throw changedMeanwhile('checklist');
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
  const errors = [...ofPresets, ...openItems(input, checklist.items, covered)];
  if (errors.length === 0) return covered;
  const code = ofPresets.length > 0 ? 'preset-not-accepted' : 'sign-off-incomplete';
  throw new DomainError(code, errors.map(({ message }) => message).join('; '), { errors });
}

function openItems(
  input: SignOffNew,
  items: readonly Item[],
  covered: readonly PresetEvidence[],
): FieldError[] {
  const done = new Set(input.items.filter((item) => item.done).map((item) => item.key));
  return items.flatMap(({ key, text, evidence }) => {
    const field = `items.${key}`;
    if (evidence === null) return done.has(key) ? [] : [{ field, message: `not done: ${text}` }];
    const without = covered.filter((preset) => !preset[evidence]).map(({ name }) => name);
    if (without.length === 0) return [];
    return [{ field, message: `the data do not show it for ${without.join(', ')}: ${text}` }];
  });
}
