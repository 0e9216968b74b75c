import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { drawCar } from './draw-car.js';
import { engineBreath, engineTorqueNm, exhaustK } from './engine.js';
import { orificeFlow } from './orifice-flow.js';
import { gateCapacity, turbinePoint } from './turbine.js';

/** Saint-Venant and Wantzel's nozzle equation for gamma 1.4, choked below its critical ratio. */
function nozzleFlow(areaM2: number, upPa: number, downPa: number, temperatureK: number): number {
  const ratio = Math.max(downPa / upPa, (2 / 2.4) ** 3.5);
  const psi = Math.sqrt(7 * (ratio ** (2 / 1.4) - ratio ** (2.4 / 1.4)));
  return (areaM2 * upPa * psi) / Math.sqrt(287.05 * temperatureK);
}

describe('orificeFlow', () => {
  it('meets the nozzle equation towards vacuum and passes up to a third less, never more, towards equal pressures', () => {
    expect(orificeFlow(1e-5, 3e5, 1, 300) / nozzleFlow(1e-5, 3e5, 1, 300)).toBeCloseTo(1, 3);
    for (const ratio of [0.2, 0.5, 0.6, 0.7, 0.8, 0.9]) {
      const share = orificeFlow(1e-5, 2e5, ratio * 2e5, 300) / nozzleFlow(1e-5, 2e5, ratio * 2e5, 300);
      expect(share).toBeLessThan(1);
      expect(share).toBeGreaterThan(0.67);
    }
  });

  it('is zero without a difference, odd in it, and has a finite slope there', () => {
    expect(orificeFlow(1e-5, 2e5, 2e5, 300)).toBe(0);
    expect(orificeFlow(1e-5, 2e5, 1.5e5, 300)).toBe(-orificeFlow(1e-5, 1.5e5, 2e5, 300));
    const slope = orificeFlow(1e-5, 2e5 + 1, 2e5, 300);
    expect(orificeFlow(1e-5, 2e5 + 2, 2e5, 300) / slope).toBeCloseTo(2, 3);
  });
});

describe('engineBreath', () => {
  const { engine } = drawCar(seededRandom(1));
  const open = {
    ...engine,
    throttleM2: 10,
    volumetricPeakRpm: 6000,
    volumetricPeakRatio: 0.9,
    displacementM3: 0.002,
  };

  it('gives the speed-density flow of 0.106553 kg/s for 2.0 l, 6000 r/min, VE 0.9, 101.325 kPa, 298.15 K', () => {
    // m = VE V (N/120) p / (R T), Heywood chapter 6; recomputed independently.
    const { airKgPerS } = engineBreath(open, 6000, { chargePa: 101_325, chargeK: 298.15, throttleRatio: 1 });
    expect(airKgPerS / 0.106553).toBeCloseTo(1, 4);
  });

  it('draws a steady vacuum with the throttle shut and never a negative pressure', () => {
    for (const rpm of [800, 2000, 7000]) {
      const shut = engineBreath(engine, rpm, { chargePa: 101_325, chargeK: 293, throttleRatio: 0 });
      expect(shut.manifoldPa).toBeGreaterThan(9_000);
      expect(shut.manifoldPa).toBeLessThan(60_000);
    }
  });

  it('brakes when the fuel is cut and pulls when it burns', () => {
    const breath = engineBreath(engine, 4000, { chargePa: 180_000, chargeK: 320, throttleRatio: 1 });
    const at = (fuelRatio: number) =>
      engineTorqueNm(engine, breath, { engineRpm: 4000, exhaustPa: 190_000, fuelRatio });
    expect(at(0)).toBeLessThan(0);
    expect(at(1)).toBeGreaterThan(100);
    expect(exhaustK(engine, 180_000, 4000, 1)).toBeGreaterThan(exhaustK(engine, 40_000, 4000, 1));
  });
});

describe('turbinePoint', () => {
  const { turbine, gate } = drawCar(seededRandom(2));
  const exhaust = { flowKgPerS: 0.18, temperatureK: 1150, ambientPa: 101_325 };

  it('loses no exhaust between turbine and gate, and each obeys its own ellipse at the same pressures', () => {
    const capacity = gateCapacity(gate, 0.006);
    const point = turbinePoint(turbine, capacity, exhaust, 12_000);
    const ellipse = Math.sqrt(point.inletPa ** 2 - point.outletPa ** 2) / Math.sqrt(1150);
    expect((point.turbineFlowKgPerS + point.gateFlowKgPerS) / 0.18).toBeCloseTo(1, 12);
    expect((turbine.capacityKgK05PerSPa * ellipse) / point.turbineFlowKgPerS).toBeCloseTo(1, 10);
    expect((capacity * ellipse) / point.gateFlowKgPerS).toBeCloseTo(1, 10);
  });

  it('never gives more work than an ideal expansion, and less the wider the gate opens', () => {
    const powers = [0, 0.002, 0.004, 0.008, 0.012].map((rodM) => {
      const point = turbinePoint(turbine, gateCapacity(gate, rodM), exhaust, 11_000);
      const ideal =
        point.turbineFlowKgPerS * 1150 * 1150 * (1 - (point.outletPa / point.inletPa) ** (0.33 / 1.33));
      expect(point.powerW).toBeLessThanOrEqual(turbine.efficiencyMaxRatio * ideal + 1e-9);
      return point.powerW;
    });
    expect([...powers].sort((a, b) => b - a)).toEqual(powers);
  });

  it('stays finite without any exhaust', () => {
    const point = turbinePoint(turbine, gateCapacity(gate, 0), { ...exhaust, flowKgPerS: 0 }, 5000);
    expect(point.inletPa).toBe(101_325);
    expect(point.powerW).toBeCloseTo(0, 12);
  });
});
