/** Four-stroke engine, air-limited: what it breathes and what that air is worth. */
export interface EnginePart {
  readonly displacementM3: number;
  /** Share of the swept volume filled at the best speed, and how fast that falls away from it. */
  readonly volumetricPeakRatio: number;
  readonly volumetricPeakRpm: number;
  readonly volumetricFallRatio: number;
  /** Share of the fuel's heat (as far as the air can burn it) that reaches the pistons as work. */
  readonly indicatedEfficiencyRatio: number;
  readonly frictionMepPa: number;
  readonly idleRpm: number;
  readonly revLimitRpm: number;
  /** Exhaust gas before the turbine, at idle and at full load. */
  readonly exhaustIdleK: number;
  readonly exhaustFullK: number;
  /** Effective flow area of the open throttle. */
  readonly throttleM2: number;
}

export interface CompressorPart {
  readonly wheelM: number;
  /** Work coefficient at which flow stops, cp T1 (PR^k - 1) / (U^2 / 2). */
  readonly headMaxRatio: number;
  /** Flow coefficient at free delivery, flow / (density * pi/4 * D^2 * U). */
  readonly flowMaxRatio: number;
  /** How sharply flow bends towards its maximum as head falls. */
  readonly bendRatio: number;
  readonly efficiencyMaxRatio: number;
  /** Flow coefficient of best efficiency as a share of flowMaxRatio. */
  readonly efficiencyFlowRatio: number;
  /** Pressure lost in the air filter per square of flow. */
  readonly filterLossPaS2PerKg2: number;
}

export interface TurbinePart {
  readonly wheelM: number;
  /** Choked flow times root of temperature over inlet pressure, kg/s * K^0.5 / Pa. */
  readonly capacityKgK05PerSPa: number;
  readonly efficiencyMaxRatio: number;
  /** Pressure lost from the turbine to the open air per square of flow. */
  readonly tailpipeLossPaS2PerKg2: number;
}

export interface ShaftPart {
  readonly inertiaKgM2: number;
  readonly frictionNmS: number;
}

/** The gate: a flap over a port beside the turbine, and the diaphragm that lifts it. */
export interface GatePart {
  readonly portM: number;
  readonly dischargeRatio: number;
  readonly leakM2: number;
  readonly strokeM: number;
  /** Flap lift for each metre of rod. */
  readonly leverRatio: number;
  readonly diaphragmM2: number;
  readonly preloadN: number;
  readonly rateNPerM: number;
  readonly dampingNSPerM: number;
  readonly frictionN: number;
}

/**
 * How the solenoid is plumbed.
 * bleed: a restrictor feeds the actuator, the energised solenoid lets it out.
 * interrupt: at rest the solenoid passes pressure to the actuator, energised it empties it.
 * two-chamber: pressure always lifts, the energised solenoid also pushes the far side shut.
 */
export type Plumbing = 'bleed' | 'interrupt' | 'two-chamber';

export interface SolenoidPart {
  readonly plumbing: Plumbing;
  readonly frequencyHz: number;
  /** Dead time from current on to valve open, and from current off to valve shut. */
  readonly openS: number;
  readonly closeS: number;
  readonly restrictorM2: number;
  readonly valveM2: number;
  readonly lineM3: number;
  /** Dead times grow by this share for each kelvin above the reference, as copper's resistance does. */
  readonly heatPerK: number;
}

export interface ChargePart {
  /** Everything between compressor and valves. */
  readonly volumeM3: number;
  readonly coolerEffectivenessRatio: number;
  readonly coolerHeatJPerK: number;
  readonly coolerStillWPerK: number;
  readonly coolerMovingWPerKPerMps: number;
  readonly coolerLossPaS2PerKg2: number;
  readonly recirculationM2: number;
}

export interface VehiclePart {
  readonly massKg: number;
  /** Road load F = A + B v + C v^2 with v in m/s. */
  readonly roadLoadN: number;
  readonly roadLoadNPerMps: number;
  readonly roadLoadNPerMps2: number;
  readonly wheelRadiusM: number;
  readonly finalDriveRatio: number;
  /** First gear first. */
  readonly gearRatios: readonly number[];
  readonly drivelineEfficiencyRatio: number;
  /** Largest force the driven wheels pass to the road. */
  readonly gripN: number;
}

/** One simulated car: every figure that the equations of motion need, in SI units. */
export interface PhysicalCar {
  /** In the workshop's words, for example 'interrupt plumbing, 2.0 l, gate 62 % of turbine'. */
  readonly description: string;
  readonly engine: EnginePart;
  readonly compressor: CompressorPart;
  readonly turbine: TurbinePart;
  readonly shaft: ShaftPart;
  readonly gate: GatePart;
  readonly solenoid: SolenoidPart;
  readonly charge: ChargePart;
  readonly vehicle: VehiclePart;
}

/** The air a pull is made in. */
export interface Ambient {
  readonly pressureAbsKpa: number;
  readonly temperatureC: number;
}
