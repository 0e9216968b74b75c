import {
  signOffKeys,
  type ChecklistItem,
  type FieldError,
  type SignOffChecklistChange,
} from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';
import { builtInItems, findBuiltInItem } from './built-in-items.js';
import type { KeptItem } from './read-checklist.js';

type Wanted = SignOffChecklistChange['items'][number];

/**
 * The items of a new revision: those of the workshop's own that are new get a key, and every built-in item is in it
 * once and is ticked by a person.
 *
 * @param known the items of the revision that is changed
 * @param revision the one that is made; keys of new items carry it, so that no key is ever given twice
 * @throws DomainError invalid-request naming every item that is wrong or missing
 */
export function makeItems(
  wanted: readonly Wanted[],
  known: readonly ChecklistItem[],
  revision: number,
): KeptItem[] {
  const errors = [...wrongItems(wanted, known), ...missingItems(wanted)];
  if (errors.length > 0) {
    throw new DomainError('invalid-request', errors.map(({ message }) => message).join('; '), { errors });
  }
  return wanted.map(({ key, text, evidence }, index) => ({
    key: key ?? `own-${revision}-${index + 1}`,
    text,
    evidence,
  }));
}

function wrongItems(wanted: readonly Wanted[], known: readonly ChecklistItem[]): FieldError[] {
  const knownKeys = new Set(known.map(({ key }) => key));
  const seen = new Set<string>();
  return wanted.flatMap(({ key, evidence }, index) => {
    if (key === null) return [];
    if (seen.has(key)) return [{ field: `items.${index}.key`, message: `${key} is in the list twice` }];
    seen.add(key);
    if (!knownKeys.has(key)) {
      return [{ field: `items.${index}.key`, message: `${key} is no item of this checklist` }];
    }
    if (evidence !== null && findBuiltInItem(key) !== null) {
      const message = 'a person looks after this item; the data cannot tick it';
      return [{ field: `items.${index}.evidence`, message }];
    }
    return [];
  });
}

function missingItems(wanted: readonly Wanted[]): FieldError[] {
  const keys = new Set(wanted.map(({ key }) => key));
  return signOffKeys
    .filter((key) => !keys.has(key))
    .map((key) => ({
      field: `items.${key}`,
      message: `"${builtInItems[key].text}" cannot be removed: ${builtInItems[key].reason}`,
    }));
}
