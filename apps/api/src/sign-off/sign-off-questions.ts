import type { signOffKeys } from '@pullbook/contracts';

/** The checklist that closes a visit, in plain words; all must be done. */
export const signOffQuestions: Readonly<Record<(typeof signOffKeys)[number], string>> = {
  'presets-stored-in-controller': 'Are the presets below stored in the controller, and read back from it?',
  'over-boost-cut-back-in-place': 'Is the over-boost cut back at the level that the car is to keep?',
  'lines-and-clamps-seen': 'Have all control lines, hoses and clamps been looked at after the last pull?',
  'no-fault-lamps': 'Are no fault lamps lit and no fault codes stored?',
  'fluids-and-leaks-seen': 'Have oil, coolant and fuel been checked, and is nothing leaking?',
  'road-equipment-as-it-came':
    'Is all equipment for the road, exhaust treatment too, fitted as the car came?',
  'customer-told-how-to-use-it': 'Has the customer been told, or will be, how to use each preset with care?',
};
