import { vinCheckDigit } from '@pullbook/contracts';

const vinLength = 17;
const notInVin = /[^A-HJ-NPR-Z0-9]/;

/** What to say below the field while a VIN is being typed; nothing while it is empty. */
export function sayVin(typed: string): string | undefined {
  const vin = typed.trim().toUpperCase();
  if (vin === '') return undefined;
  if (vin.length > vinLength || notInVin.test(vin)) {
    return 'A VIN has 17 letters and digits, without I, O and Q.';
  }
  if (vin.length < vinLength) return `${vin.length} of 17 characters.`;
  return vinCheckDigit(vin) === 'agrees'
    ? '✓ The check digit agrees.'
    : 'The check digit differs: look once more. Not every market uses it.';
}
