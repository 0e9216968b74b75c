import type { ControllerNew, SettingRange } from '@pullbook/contracts';

/** Kinds of controller as this workshop describes them. */
export const demoControllers = {
  threeSlots: {
    name: 'Three slots, open loop',
    presetSlots: 3,
    hasTimedOverride: true,
    loop: 'open',
    dutyPct: range(0, 90, 1),
    holdPct: range(0, 100, 5),
    correction: null,
    note: 'Solenoid at 20 Hz. Slot 4 is the timed override.',
  },
  fiveSlots: {
    name: 'Five slots, closed loop',
    presetSlots: 5,
    hasTimedOverride: false,
    loop: 'closed',
    dutyPct: range(0, 100, 0.5),
    holdPct: range(0, 100, 1),
    correction: range(0, 20, 1),
    note: 'Corrects itself above 90 % of target.',
  },
  oneSlot: {
    name: 'One slot, dial',
    presetSlots: 1,
    hasTimedOverride: false,
    loop: 'open',
    dutyPct: range(0, 80, 2),
    holdPct: null,
    correction: null,
    note: 'Dial marked in steps of two.',
  },
} as const satisfies Record<string, ControllerNew>;

/** Which of them a car has. */
export type DemoControllerKey = keyof typeof demoControllers;

function range(min: number, max: number, step: number): SettingRange {
  return { min, max, step };
}
