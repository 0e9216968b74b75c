import type { PaperHeader } from './paper-header.js';

/** A workshop's head and foot as page and papers print them: what is empty is left out. */
export interface Letterhead {
  readonly name: string;
  /** Below the name: the address, then how the workshop is reached. */
  readonly lines: readonly string[];
  readonly footLines: readonly string[];
}

const BETWEEN = ' · ';

/** What is printed of a workshop. @param name as signed, which may differ from today's */
export function letterheadOf(name: string, header: PaperHeader): Letterhead {
  const { addressLines, phone, online, registration, foot } = header;
  return {
    name,
    lines: [joined(addressLines), joined([phone, online])].filter(isFilled),
    footLines: [foot, registration].filter(isFilled),
  };
}

const isFilled = (text: string): boolean => text !== '';
const joined = (texts: readonly string[]): string => texts.filter(isFilled).join(BETWEEN);
