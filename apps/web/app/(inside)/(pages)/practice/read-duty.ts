import type { PracticeSheet } from '@pullbook/practice-car';

const gridSlack = 1e-6;

/** A typed duty that the controller can be set to, or what is wrong with it. */
export function readDuty(
  text: string,
  { dutyMin, dutyMax, dutyStep }: PracticeSheet['controller'],
): { readonly duty: number } | { readonly fault: string } {
  const duty = Number(text.replace(',', '.'));
  if (text.trim() === '' || !Number.isFinite(duty)) return { fault: 'A number, such as 20.' };
  if (duty < dutyMin || duty > dutyMax)
    return { fault: `This controller goes from ${dutyMin} to ${dutyMax} %.` };
  const steps = (duty - dutyMin) / dutyStep;
  if (Math.abs(steps - Math.round(steps)) > gridSlack)
    return { fault: `This controller goes in steps of ${dutyStep} from ${dutyMin} %.` };
  return { duty };
}
