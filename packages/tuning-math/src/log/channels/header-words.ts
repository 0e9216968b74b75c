import { unitOfText, type PrintedUnit } from './unit-words.js';

/** A header taken apart. */
export interface HeaderWords {
  /** Lower case, accents and punctuation gone, words parted by single spaces, units and marks left out. */
  readonly name: string;
  readonly unit: PrintedUnit | null;
  readonly reference: 'gauge' | 'absolute' | null;
}

const BRACKETED = /^(.*?)[\s_]*[[({<]\s*([^\])}>]*)\s*[\])}>]\s*$/;
const REFERENCE_WORDS = [
  { words: /\b(abs|absolute|absolut|absolu)\b/, reference: 'absolute' },
  { words: /\b(gauge|gage|rel|relative|relativ)\b/, reference: 'gauge' },
] as const;

/**
 * Name, unit and gauge/absolute mark of a header, such as `Boost Pressure (psi)`, `boostKpa`,
 * `Ladedruck / mbar abs`, `engine_speed_rpm`.
 *
 * @example headerWords('Boost [bar]') // { name: 'boost', unit: { unit: 'bar', … }, reference: null }
 * Source: common practice, no source.
 */
export function headerWords(header: string): HeaderWords {
  const parted = bracketedUnit(header) ?? trailingUnit(header) ?? { rest: header, unit: null };
  const folded = foldWords(header);
  return {
    name: foldWords(parted.rest) || folded,
    unit: parted.unit,
    reference: parted.unit?.reference ?? referenceWord(folded),
  };
}

function referenceWord(folded: string): 'gauge' | 'absolute' | null {
  return REFERENCE_WORDS.find(({ words }) => words.test(folded))?.reference ?? null;
}

function bracketedUnit(header: string): { rest: string; unit: PrintedUnit } | null {
  const [, rest = '', inside = ''] = BRACKETED.exec(header) ?? [];
  const unit = unitOfText(inside);
  return unit === null ? null : { rest, unit };
}

/** A header as it is compared: without case, accents, punctuation; camel case parted. */
export function foldWords(text: string): string {
  return text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/λ/gi, 'lambda')
    .replaceAll('ß', 'ss')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();
}

function trailingUnit(text: string): { rest: string; unit: PrintedUnit } | null {
  const parted = text.trim().replace(/([a-z])([A-Z])/g, '$1 $2');
  const cuts = [...parted.matchAll(/[\s_/,;:|.-]+/g)];
  for (const cut of cuts.slice(-3)) {
    const unit = unitOfText(parted.slice((cut.index ?? 0) + cut[0].length));
    if (unit !== null) return { rest: parted.slice(0, cut.index), unit };
  }
  const whole = unitOfText(parted);
  return whole === null ? null : { rest: parted, unit: whole };
}
