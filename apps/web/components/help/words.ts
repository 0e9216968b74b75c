/** What a word of this book means, for whoever meets it beside a figure. */
export interface Word {
  readonly name: string;
  /** What its figures are counted in; null where it has none. */
  readonly unit: string | null;
  /** At most three sentences. */
  readonly text: string;
}

const boost = 'your unit of pressure, above the air outside';

/** All words that screens explain, by key, in the order of the alphabet. */
export const words = {
  base_boost: {
    name: 'Base boost',
    unit: boost,
    text: 'The peak that the car makes with the solenoid idle: what the spring of the actuator allows. No setting brings the boost below it.',
  },
  ceiling: {
    name: 'Ceiling',
    unit: boost,
    text: 'The level that no pull may pass. It lies above target and tolerance and below whatever would harm the engine. Without a ceiling there is no advice.',
  },
  chance_of_passing: {
    name: 'Chance of passing the ceiling',
    unit: '%',
    text: 'How likely the next pull is to peak above the ceiling, as far as the pulls so far tell. The workshop sets a limit; the advice never goes past it.',
  },
  confidence: {
    name: 'Confidence',
    unit: '%',
    text: 'How sure a proof is: of many proofs that say 95 %, about 95 in a hundred hold. More confidence asks for more pulls.',
  },
  correction_strength: {
    name: 'Correction strength',
    unit: 'the controller’s own',
    text: 'How hard a closed-loop controller reacts when boost is off its target. Too much and boost swings up and down, too little and it sags.',
  },
  drift: {
    name: 'Drift',
    unit: '%',
    text: 'Peaks that have moved since the settings were proven, by more than pulls scatter of themselves. Look for a leak, a loose line or a tired actuator before you touch a setting.',
  },
  duty: {
    name: 'Duty',
    unit: '%',
    text: 'The share of each period in which the solenoid is energised; 10 % is a tenth of the time. More duty keeps more pressure away from the actuator, so boost rises.',
  },
  gate_hold: {
    name: 'Gate hold',
    unit: '% of the target',
    text: 'Up to this share of the target the actuator is kept shut. More makes boost rise sooner; too much makes the peak overshoot.',
  },
  'heat-soaked_pull': {
    name: 'Heat-soaked pull',
    unit: null,
    text: 'A pull made after minutes of hard driving, with engine bay and charge air hot. Heat moves the peak, so a preset is proven only with at least one of them.',
  },
  hunting: {
    name: 'Hunting',
    unit: 'Hz, and size in your unit of pressure',
    text: 'Boost that swings up and down about its level instead of settling. On a closed-loop controller the correction is then often too strong.',
  },
  onset: {
    name: 'Onset speed',
    unit: 'r/min',
    text: 'The engine speed at which 90 % of the target is first reached. The lower, the sooner the boost is there.',
  },
  overshoot: {
    name: 'Overshoot',
    unit: '% of the settled boost',
    text: 'How far the peak stands above the boost that remains once it has settled. Too much gate hold shows here first.',
  },
  peak: {
    name: 'Peak',
    unit: boost,
    text: 'The highest boost of a pull, with single stray samples taken out. The recorded peak is the one written down for the pull.',
  },
  predicted_range: {
    name: 'Expected peak',
    unit: boost,
    text: 'Of a hundred pulls like the next one, about 95 should peak within this range. It is wide after the first pulls and narrows as pulls agree.',
  },
  proven: {
    name: 'Proven',
    unit: null,
    text: 'The pulls show that the promised share of all pulls stays inside the tolerance and under the ceiling, with the confidence that the workshop asks for (a tolerance interval, ISO 16269-6). At least one of them is heat-soaked. An accepted duty alone is less.',
  },
  pull: {
    name: 'Pull',
    unit: null,
    text: 'One full-load run through the engine speeds in one gear. It is made on a closed course or dynamometer, with two people.',
  },
  reference_conditions: {
    name: 'Reference conditions',
    unit: null,
    text: 'The air, gear, height and gradient that peaks are brought to before they are compared. What the pulls cannot tell apart is left as it was and said so.',
  },
  revision: {
    name: 'Revision',
    unit: null,
    text: 'The settings of a preset as they stood at one time. Every change makes a new one, and old ones stay readable.',
  },
  rise_time: {
    name: 'Rise time',
    unit: 's',
    text: 'The time from 10 % to 90 % of the settled boost (as IEEE 181 counts it). Shorter is harder.',
  },
  settled_boost: {
    name: 'Settled boost',
    unit: boost,
    text: 'The mean boost after the overshoot has died away.',
  },
  spread_of_pulls: {
    name: 'Lowest and highest peak',
    unit: boost,
    text: 'How far the peaks of pulls at the same settings lie apart. About 3 % is normal: gear, gradient, weather and heat move every one of them.',
  },
  step_limit: {
    name: 'Step limit',
    unit: 'points of duty',
    text: 'How far one pull may go above the highest duty that was driven safely. It is never more than 10 points.',
  },
  target: {
    name: 'Target',
    unit: boost,
    text: 'The peak boost agreed with the customer for this preset.',
  },
  timed_override: {
    name: 'Timed override',
    unit: 's',
    text: 'A preset that holds for a few seconds only and then gives way to the one before it. It has its own target and ceiling.',
  },
  tolerance: {
    name: 'Tolerance',
    unit: boost,
    text: 'How far from the target a peak may lie and still count as on target, above and below alike.',
  },
  volumetric_efficiency: {
    name: 'Volumetric efficiency',
    unit: '%',
    text: 'How much of its displacement an engine really fills with each stroke, at the pressure in its intake. It is an estimate and carries over into air, fuel and power.',
  },
  injector_duty: {
    name: 'Injector duty',
    unit: '%',
    text: 'The share of time that the injectors have to be open to feed the engine at this boost. Near 100 % they cannot give more, and the mixture turns lean.',
  },
  surge_margin: {
    name: 'Distance from surge',
    unit: '%',
    text: 'How far the air flow lies above the surge line of the compressor’s map. Below that line the flow breaks away in pulses, which harms the compressor.',
  },
} as const satisfies Readonly<Record<string, Word>>;

export type HelpWord = keyof typeof words;
