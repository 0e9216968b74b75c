import { CHANNEL_QUANTITIES, type ChannelQuantity } from '../channel-quantities.js';
import type { ChannelRecipe, RecipeColumn } from '../channel-recipe.js';
import { LogError } from '../log-error.js';
import { foldWords, headerWords } from './header-words.js';
import { QUANTITY_WORDS, type QuantityWords } from './quantity-words.js';
import { unitOfText, type PrintedUnit } from './unit-words.js';

/** What a column's header, unit row and recipe say of it, before its samples are looked at. */
export interface ColumnClaim {
  readonly header: string;
  readonly column: number;
  readonly quantity: ChannelQuantity;
  readonly unit: PrintedUnit | null;
  readonly reference: 'gauge' | 'absolute' | null;
  readonly byRecipe: boolean;
}

/** What the head of a log says about its columns. */
export interface ColumnHeads {
  readonly headers: readonly string[];
  readonly unitTexts: readonly string[];
  /** Units printed behind the numbers of the first rows, '' where none. */
  readonly cellUnitTexts: readonly string[];
}

/**
 * Which column holds what, by the workshop's recipe, else by header and unit. One column for each
 * quantity: the first whose unit is printed, else the first; the others stay unknown.
 *
 * @throws LogError `recipe-column-missing` naming the column of the recipe that the file does not have
 * Source: common practice, no source.
 */
export function recogniseColumns(heads: ColumnHeads, recipe: ChannelRecipe | null): ColumnClaim[] {
  const told = recipe === null ? [] : recipe.columns.map((entry) => claimOfRecipe(heads, entry));
  const claims = heads.headers.map(
    (header, column) => told.find((claim) => claim.column === column) ?? claimOfHeader(heads, header, column),
  );
  return keepOnePerQuantity(claims);
}

function claimOfRecipe(heads: ColumnHeads, entry: RecipeColumn): ColumnClaim {
  const wanted = foldWords(entry.header);
  const matches = heads.headers.flatMap((header, column) => (foldWords(header) === wanted ? [column] : []));
  const column = matches[entry.occurrence ?? 0];
  if (column === undefined) {
    throw new LogError(
      'recipe-column-missing',
      `the channel recipe names a column "${entry.header}" that this file does not have`,
      `the file has: ${heads.headers.slice(0, 30).join(', ')}`,
    );
  }
  const unit = unitOfText(entry.unit) ?? bareUnit(entry);
  const absolute =
    entry.quantity === 'manifold-absolute-pressure' || entry.quantity === 'barometric-pressure';
  return {
    header: heads.headers[column] ?? entry.header,
    column,
    quantity: entry.quantity,
    unit,
    reference: unit?.dimension === 'pressure' ? (absolute ? 'absolute' : 'gauge') : null,
    byRecipe: true,
  };
}

/** Quantities without a unit of their own (gear, marker) take any word. */
function bareUnit(entry: RecipeColumn): PrintedUnit {
  const base = CHANNEL_QUANTITIES[entry.quantity];
  if (base === 'none' || base === 'gear' || base === 'count' || entry.unit === base) {
    return { unit: base, dimension: 'number', reference: null };
  }
  throw new LogError(
    'setting-out-of-range',
    `the channel recipe gives column "${entry.header}" the unknown unit "${entry.unit}"`,
    `a unit for ${entry.quantity} is for example ${base}`,
  );
}

function claimOfHeader(heads: ColumnHeads, header: string, column: number): ColumnClaim {
  const words = headerWords(header);
  const unit = words.unit ?? unitBeside(heads, column);
  const named = QUANTITY_WORDS.filter(
    ({ words: fits, not }) => fits.test(words.name) && !not?.test(words.name),
  );
  const rule = named.find((candidate) => suits(candidate, unit)) ?? ruleDespiteUnit(named, words.unit, unit);
  return {
    header,
    column,
    quantity: rule?.quantity ?? 'unknown',
    unit: rule !== undefined && suits(rule, unit) ? unit : null,
    reference: words.reference ?? unit?.reference ?? null,
    byRecipe: false,
  };
}

/** Unit from the unit row, else from behind the numbers. */
function unitBeside(heads: ColumnHeads, column: number): PrintedUnit | null {
  return unitOfText(heads.unitTexts[column] ?? '') ?? unitOfText(heads.cellUnitTexts[column] ?? '');
}

function suits(rule: QuantityWords, unit: PrintedUnit | null): boolean {
  return unit === null || rule.dimension.includes(unit.dimension);
}

/** A last word that only looks like a unit (`Gear n`, `RPM`) must not hide the quantity. */
function ruleDespiteUnit(
  named: readonly QuantityWords[],
  inHeader: PrintedUnit | null,
  unit: PrintedUnit | null,
): QuantityWords | undefined {
  const isWeak = inHeader === null || inHeader.dimension === 'number';
  return unit !== null && isWeak ? named[0] : undefined;
}

function keepOnePerQuantity(claims: readonly ColumnClaim[]): ColumnClaim[] {
  return claims.map((claim) => {
    if (claim.quantity === 'unknown' || claim.quantity === 'marker') return claim;
    const rivals = claims.filter((other) => other.quantity === claim.quantity);
    const best =
      rivals.find((other) => other.byRecipe) ?? rivals.find((other) => other.unit !== null) ?? rivals[0];
    return best === claim ? claim : { ...claim, quantity: 'unknown' };
  });
}
