import { searchText } from '../plumbing/search-text.js';
import { plateKey } from './plate-key.js';

interface Findable {
  readonly plate: string;
  readonly model: string;
  readonly vin: string | null;
  readonly buildCode: string | null;
}

/** How a car is found again and doubles are noticed. */
export function carKeys({ plate, model, vin, buildCode }: Findable): {
  plateKey: string;
  searchText: string;
} {
  return { plateKey: plateKey(plate), searchText: searchText(plate, model, vin, buildCode) };
}
