/** How the person who looks reads a pressure. */
export interface PressureFormat {
  /** Name of the unit as printed: 'kPa', 'bar', 'psi'. */
  readonly unit: string;
  /** How many kPa one unit is, > 0: where the tidy ticks stand. */
  readonly kpaPerUnit: number;
  /** A gauge pressure in kPa as a figure in the unit, without the unit's name: 140 becomes '1.40' in bar. */
  readonly write: (kpa: number) => string;
}
