/** A running point on the map: corrected flow in the map's reference air. */
export interface MapSpot {
  readonly flowKgPerS: number;
  readonly pressureRatio: number;
}

/** One line of constant shaft speed, from surge to choke. */
export interface MapSpeedLine {
  readonly shaftSpeedRpm: number;
  readonly spots: readonly MapSpot[];
  /** Efficiency at each of them; null where it is not known. */
  readonly efficienciesPct: readonly number[] | null;
}

/** A line that the engine runs along at one boost, from low to high engine speed. */
export interface MapGoalLine {
  /** One or two letters that stand at its end. */
  readonly letter: string;
  /** In words: 'Everyday, target 74 kPa'. */
  readonly name: string;
  readonly spots: readonly MapSpot[];
}

/** The way of one pull across the map. */
export interface MapPull {
  readonly number: number;
  readonly name: string;
  readonly spots: readonly MapSpot[];
  readonly peak: MapSpot;
  /** Beyond surge, choke or the map somewhere on its way: drawn square. */
  readonly isOutside: boolean;
  /** Where it lies, in words, for the table. */
  readonly standing: string;
}

/** All that a compressor map shows. Lines slowest first. */
export interface MapFigures {
  readonly lines: readonly MapSpeedLine[];
  readonly goals: readonly MapGoalLine[];
  readonly pulls: readonly MapPull[];
}

/** In px on screen; at least 240 wide and 200 high. */
export interface MapSize {
  readonly width: number;
  readonly height: number;
}
