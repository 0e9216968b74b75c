import { amount, sentence, type Amount, type Sentence } from '../../sentences/index.js';
import { baseConversion } from './base-unit.js';
import type { ColumnFacts } from './column-facts.js';
import type { ColumnClaim } from './recognise-columns.js';

/** What a pressure column turned out to be. */
export interface SettledPressure {
  readonly unit: string;
  readonly reference: 'gauge' | 'absolute';
  /** False where unit or reference is a guess. */
  readonly certain: boolean;
  /** Set where name, unit and values contradict each other, or where several units fit. */
  readonly doubt: Sentence | null;
}

const UNITS_BY_USE = ['kPa', 'bar', 'psi', 'mbar'] as const;
/** What boost of a road engine spans, kPa; wide on purpose. */
const GAUGE_SPAN = { leastHigh: 25, mostHigh: 400, leastLow: -103 };
const ABSOLUTE_SPAN = { leastHigh: 85, mostHigh: 500, leastLow: 5 };
const VACUUM_KPA = -3;
/** A person may log an engine beyond the usual span. */
const TOLD_SPAN = 2;

/**
 * Unit and reference of a pressure column from its claim and its values. A printed unit is believed
 * unless the values cannot be (a "psi" column that reaches 900 kPa). Without a unit the values choose:
 * boost of a road engine lies between 25 and 400 kPa, which leaves one of kPa, bar, psi, mbar, or the
 * answer is doubtful. Values under -3 kPa can only be gauge; a column called absolute or manifold that
 * shows none is absolute. What a person or recipe says is believed unless the values cannot be. A column
 * without samples raises no doubt.
 *
 * @param claim what header, unit row and recipe say
 * @param facts of the column in the file's unit
 * Source: common practice, no source.
 */
export function settlePressure(claim: ColumnClaim, facts: ColumnFacts): SettledPressure {
  const printed = claim.unit?.dimension === 'pressure' ? claim.unit.unit : null;
  if (facts.sampleCount === 0) {
    const certain = printed !== null && claim.reference !== null;
    return { unit: printed ?? 'kPa', reference: claim.reference ?? 'gauge', certain, doubt: null };
  }
  return printed === null ? settleByValues(claim, facts) : settleByPrint(printed, claim, facts);
}

function settleByPrint(printed: string, claim: ColumnClaim, facts: ColumnFacts): SettledPressure {
  const scale = baseConversion(printed).scale;
  const settled = settleReference(claim, facts, scale);
  const doubt = (claim.byRecipe ? doubtOfTold : doubtOf)(settled.reference, facts, scale);
  return { unit: printed, ...settled, doubt: settled.doubt ?? doubt };
}

function settleByValues(claim: ColumnClaim, facts: ColumnFacts): SettledPressure {
  const fitting = UNITS_BY_USE.filter((unit) => {
    const scale = baseConversion(unit).scale;
    return fits(settleReference(claim, facts, scale).reference, facts, scale);
  });
  const unit = fitting[0] ?? 'kPa';
  const settled = settleReference(claim, facts, baseConversion(unit).scale);
  const doubt =
    fitting.length === 1
      ? settled.doubt
      : fitting.length === 0
        ? sentence`no usual unit fits values from ${show(facts.low)} to ${show(facts.high)}`
        : sentence`values up to ${show(facts.high)} could be ${fitting.join(' or ')}`;
  return { unit, reference: settled.reference, certain: false, doubt };
}

interface SettledReference {
  readonly reference: 'gauge' | 'absolute';
  readonly certain: boolean;
  readonly doubt: Sentence | null;
}

const GAUGE: SettledReference = { reference: 'gauge', certain: true, doubt: null };

function settleReference(claim: ColumnClaim, facts: ColumnFacts, scale: number): SettledReference {
  const lowKpa = facts.low * scale;
  const isVacuumSeen = lowKpa < VACUUM_KPA;
  if (claim.reference === 'absolute' && isVacuumSeen) {
    return { ...GAUGE, certain: false, doubt: sentence`it is called absolute but falls to ${kpa(lowKpa)}` };
  }
  if (claim.reference !== null) return { reference: claim.reference, certain: true, doubt: null };
  if (isVacuumSeen) return GAUGE;
  return claim.quantity === 'manifold-absolute-pressure'
    ? settleManifold(lowKpa, facts.high * scale)
    : settleUnmarked(lowKpa, facts.high * scale);
}

function settleManifold(lowKpa: number, highKpa: number): SettledReference {
  if (lowKpa > 8 && highKpa > ABSOLUTE_SPAN.leastHigh) return { ...GAUGE, reference: 'absolute' };
  const doubt = sentence`its name says absolute, its values up to ${kpa(highKpa)} do not`;
  return { ...GAUGE, certain: false, doubt };
}

function settleUnmarked(lowKpa: number, highKpa: number): SettledReference {
  if (lowKpa <= 15 || highKpa <= 85) return GAUGE;
  const doubt = sentence`it never falls to zero: gauge or absolute cannot be told`;
  return { reference: lowKpa > 80 ? 'absolute' : 'gauge', certain: false, doubt };
}

function fits(reference: 'gauge' | 'absolute', facts: ColumnFacts, scale: number): boolean {
  const span = reference === 'gauge' ? GAUGE_SPAN : ABSOLUTE_SPAN;
  const highKpa = facts.high * scale;
  return highKpa >= span.leastHigh && highKpa <= span.mostHigh && facts.low * scale >= span.leastLow;
}

function doubtOf(reference: 'gauge' | 'absolute', facts: ColumnFacts, scale: number): Sentence | null {
  const span = reference === 'gauge' ? GAUGE_SPAN : ABSOLUTE_SPAN;
  const [lowKpa, highKpa] = [facts.low * scale, facts.high * scale];
  if (highKpa <= span.mostHigh && lowKpa >= span.leastLow) return null;
  return sentence`${rangeKpa(lowKpa, highKpa)} is no boost of a road engine`;
}

/**
 * What a person or recipe said is believed as far as it can be: a logger that was set to another unit since, under
 * the same header, must not pass in silence.
 */
function doubtOfTold(reference: 'gauge' | 'absolute', facts: ColumnFacts, scale: number): Sentence | null {
  const [lowKpa, highKpa] = [facts.low * scale, facts.high * scale];
  const { mostHigh, leastLow } = reference === 'gauge' ? GAUGE_SPAN : ABSOLUTE_SPAN;
  if (highKpa > TOLD_SPAN * mostHigh || lowKpa < Math.min(leastLow, 0))
    return sentence`it is said to be ${reference}, but ${rangeKpa(lowKpa, highKpa)} cannot be`;
  if (reference === 'gauge' && lowKpa > ABSOLUTE_SPAN.leastHigh)
    return sentence`it is said to be gauge, but ${rangeKpa(lowKpa, highKpa)} never falls near zero`;
  return null;
}

/** Read off the values: four figures say enough. */
function show(value: number): string {
  return String(Number(value.toPrecision(4)));
}

const kpa = (value: number): Amount => amount(Number(show(value)), 'kPa', 3);
const rangeKpa = (lowKpa: number, highKpa: number): Amount => ({ ...kpa(lowKpa), to: kpa(highKpa).value });
