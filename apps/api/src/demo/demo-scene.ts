import type { CarLimits } from '@pullbook/contracts';
import type { DemoControllerKey } from './demo-controllers.js';
import type { demoEngines } from './demo-engines.js';

/** What a preset of the scenario is for; target and ceiling follow from the car. */
export interface DemoPreset {
  readonly name: string;
  readonly purpose: string;
  /** Target as a multiple of the boost that the spring alone gives. */
  readonly targetRatio: number;
  /** Left out: it is agreed. */
  readonly hasNoCeiling?: boolean;
}

/** Pulls at the stored settings, to see whether they still hold. */
export interface DemoCheck {
  /** Gears of the pulls, one after the other. */
  readonly gears: readonly number[];
  /** Peaks as a multiple of what the car made when it was set up; below 1 it has lost some. */
  readonly peakRatio: number;
}

/** One stay of a car. */
export interface DemoVisit {
  /** Days from today to the visit's first day; below zero it lies in the past. */
  readonly day: number;
  readonly wishes: string;
  readonly bay?: string;
  /** How far it got. */
  readonly until: 'booked' | 'arrived' | 'climbing' | 'stopped' | 'proven' | 'ready' | 'collected';
  /** Presets worked on in it, by their place in the car's list. */
  readonly presets: readonly number[];
  /** The duties are not sought: the stored ones are checked. */
  readonly check?: DemoCheck;
  /** Pulls of the last preset before the scene ends, for `climbing`. */
  readonly pullCount?: number;
}

/** A customer, a car and its visits. */
export interface DemoScene {
  readonly customer: { readonly name: string; readonly phone: string; readonly email: string | null };
  readonly plate: string;
  readonly model: string;
  readonly modelYear: number;
  readonly buildCode: string;
  readonly controller: DemoControllerKey;
  readonly limits: Partial<CarLimits>;
  /** Left out: nobody has described its engine. */
  readonly engine?: keyof typeof demoEngines;
  /** Draws the car's response. */
  readonly seed: number;
  /** The control line comes off during the last visit. */
  readonly hasLooseLine?: boolean;
  readonly presets: readonly DemoPreset[];
  readonly visits: readonly DemoVisit[];
}
