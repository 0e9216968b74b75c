/** The cautions of full-load work, in the same words on screen, job sheet and report. */
export const cautionsBeforePulling = [
  'Over-boost can destroy an engine and hurt people. Pullbook advises; a qualified person decides.',
  'Closed course or dynamometer only, never a public road.',
  'Two people: the driver drives, the passenger works the tablet.',
  'Over-boost cut set, mixture and knock watched on every pull.',
  'Stop at the first odd sign: knock, a lean reading, an odd noise or smell, a slipping wheel.',
  "Local road, noise and emissions law, the makers' limits and licensed practice come first.",
] as const;

/** What a customer must mind with a car that has been set up. */
export const cautionsForDriving = [
  'Over-boost can destroy an engine and hurt people. Use each preset only for what it is meant for, with the fuel named for it.',
  'Full load only where law and surroundings allow it: a closed course, not a public road.',
  'Warm the engine before full load. Ease off at once at knocking, a warning lamp, or a sudden change in how it pulls, and call the workshop.',
  'Do not change settings, springs, hoses or the over-boost cut yourself: what is written here holds only for the car as it was handed over.',
  'Weather, height and a long hard drive each move boost by a few per cent.',
  "Local road, noise and emissions law and the makers' limits come first.",
] as const;
