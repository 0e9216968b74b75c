/** A visit's running number as it stands on the job sheet: '0231'. */
export function visitNumber(number: number): string {
  return String(number).padStart(4, '0');
}
