import type { ChannelQuantity } from '../channel-quantities.js';
import type { ChannelRecipe, RecipeColumn } from '../channel-recipe.js';
import { LogError } from '../log-error.js';
import { headerOccurrences } from './header-occurrences.js';
import { foldWords, headerWords } from './header-words.js';
import { RECIPE_UNITS, recipeUnit } from './recipe-units.js';
import { QUANTITY_WORDS, type QuantityWords } from './quantity-words.js';
import { unitOfText, type PrintedUnit } from './unit-words.js';

/** What a column's header, unit row and recipe say of it, before its samples are looked at. */
export interface ColumnClaim {
  readonly header: string;
  readonly column: number;
  /** Which of several columns of that header, from 0. */
  readonly occurrence: number;
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
  const occurrences = headerOccurrences(heads.headers);
  const claims = heads.headers.map((header, column) => ({
    ...(told.find((claim) => claim.column === column) ?? claimOfHeader(heads, header, column)),
    occurrence: occurrences[column] ?? 0,
  }));
  return keepOnePerQuantity(claims);
}

type HeadClaim = Omit<ColumnClaim, 'occurrence'>;

function claimOfRecipe(heads: ColumnHeads, entry: RecipeColumn): HeadClaim {
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
  const unit = requireUnit(entry);
  const absolute =
    entry.quantity === 'manifold-absolute-pressure' || entry.quantity === 'barometric-pressure';
  return {
    header: heads.headers[column] ?? entry.header,
    column,
    quantity: entry.quantity,
    unit,
    reference: unit.dimension === 'pressure' ? (absolute ? 'absolute' : 'gauge') : null,
    byRecipe: true,
  };
}

function requireUnit(entry: RecipeColumn): PrintedUnit {
  const unit = recipeUnit(entry.quantity, entry.unit);
  if (unit !== null) return unit;
  throw new LogError(
    'setting-out-of-range',
    `the channel recipe gives column "${entry.header}" the unit "${entry.unit}", which ${entry.quantity} cannot have`,
    `a unit for ${entry.quantity} is for example ${RECIPE_UNITS[entry.quantity][0] ?? 'none'}`,
  );
}

function claimOfHeader(heads: ColumnHeads, header: string, column: number): HeadClaim {
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
