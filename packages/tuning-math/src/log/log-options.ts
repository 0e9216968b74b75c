import type { ChannelRecipe } from './channel-recipe.js';
import type { PullSettings } from './pull-settings.js';

/** What is known beside the file. Everything may be left out or null: then it is taken from the log, or said to be unknown. */
export interface LogOptions {
  /** Target peak of the preset, kPa gauge: onset speed refers to it. */
  readonly targetKpa?: number | null;
  /** Air pressure of the place, kPa absolute: turns absolute manifold pressure into boost. */
  readonly barometricAbsKpa?: number | null;
  /** Full scale of the boost sensor, kPa gauge. */
  readonly sensorFullScaleKpa?: number | null;
  readonly revLimitRpm?: number | null;
  /** Ratios of the gears, first gear first. */
  readonly gearRatios?: readonly number[];
  readonly finalDriveRatio?: number | null;
  readonly tyreRollingCircumferenceM?: number | null;
  /** Rows a second where the file has no time column. */
  readonly sampleRateHz?: number | null;
  /** Size of the file, where it is known: lets the columns be laid out once, which halves the memory of a large log. */
  readonly byteCount?: number | null;
  readonly recipe?: ChannelRecipe | null;
  /** Positions in the file of the columns to keep instead of those that the analysis looks at; pressures stay beside them. */
  readonly keptColumns?: ReadonlySet<number> | undefined;
  /** Changes to DEFAULT_PULL_SETTINGS. */
  readonly settings?: Partial<PullSettings>;
}
