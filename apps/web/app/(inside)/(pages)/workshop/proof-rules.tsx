'use client';

import { CheckField } from '../../../../components/field/check-field';
import { TextField } from '../../../../components/field/text-field';
import type { Draft, Faults } from '../../../../components/form/use-draft';

type RuleTexts = {
  readonly overshootLimitPct: string;
  readonly coverageRatio: string;
  readonly confidenceRatio: string;
  readonly signOffNeedsProof: string;
};

interface ProofRulesProps {
  readonly draft: Pick<Draft<RuleTexts>, 'values' | 'faults' | 'set'>;
}

/** What a proof promises, and what a raised gate hold may bring. */
export function ProofRules({ draft }: ProofRulesProps) {
  const bind = (name: 'coverageRatio' | 'confidenceRatio' | 'overshootLimitPct') => ({
    value: draft.values[name],
    error: draft.faults[name],
    onChange: (text: string) => draft.set({ [name]: text }),
  });
  return (
    <>
      <div className="columns">
        <TextField
          label="Share of all pulls inside the tolerance, %"
          unit="%"
          inputMode="decimal"
          hint="What a proof promises; 50 to 99 %."
          {...bind('coverageRatio')}
        />
        <TextField
          label="Confidence of a proof, %"
          unit="%"
          inputMode="decimal"
          hint="More of either asks for more pulls; 50 to 99 %."
          {...bind('confidenceRatio')}
        />
        <TextField
          label="Overshoot limit for gate hold, %"
          unit="%"
          inputMode="decimal"
          {...bind('overshootLimitPct')}
        />
      </div>
      <CheckField
        label="Sign off only what is proven; left open, an accepted duty is enough and the report says what was missing"
        checked={draft.values.signOffNeedsProof === 'yes'}
        onChange={(isAsked) => draft.set({ signOffNeedsProof: isAsked ? 'yes' : '' })}
      />
    </>
  );
}

/** The contract speaks of shares, the fields of per cent. */
export function sayInPercent(faults: Faults): Faults {
  const inPercent: Faults = {
    riskLimit: 'Above 0 and at most 5 %.',
    coverageRatio: 'Between 50 and 99 %.',
    confidenceRatio: 'Between 50 and 99 %.',
  };
  const isLimit = (text: string) => !text.includes('is not a number') && !text.startsWith('Fill');
  return Object.fromEntries(
    Object.entries(faults).map(([name, text]) => [name, isLimit(text) ? (inPercent[name] ?? text) : text]),
  );
}
