import { expect } from 'vitest';
import {
  absoluteKpa,
  airMassFlow,
  chargeDensityRatio,
  chargeTemperature,
  compressorOutletTemperature,
  convertQuantity,
  correctedFlow,
  correctedShaftSpeed,
  powerBand,
  torqueAtPower,
} from '@pullbook/tuning-math';
import { expectPrinted } from './expect-printed.js';
import { outsideCheck } from './outside-check.js';

const HEYWOOD =
  'Heywood, Internal Combustion Engine Fundamentals (1988), ch. 6 (equation numbers from memory)';
const points = [
  [298, 1.8, 0.72, '373.686', '1.4354', '1.6726'],
  [298, 2, 0.7, '391.237', '1.5234', '1.8284'],
  [298.15, 2, 0.75, '385.215', '1.5480', '1.8389'],
  [293.15, 1.5, 0.7, '344.587', '1.2761', '1.4250'],
  [303.15, 2.5, 0.68, '436.564', '1.7360', '2.2084'],
] as const;
outsideCheck(
  {
    id: 'engine/outlet-temperature',
    checks: 'compressor outlet temperature, five points',
    source: HEYWOOD,
    origin: 'recomputed',
  },
  () => {
    for (const [inletK, pressureRatio, efficiencyRatio, outletK] of points) {
      expectPrinted(compressorOutletTemperature({ inletK, pressureRatio, efficiencyRatio }), outletK);
    }
  },
);
outsideCheck(
  {
    id: 'engine/density-ratio',
    checks: 'charge density ratio without and with a cooler of effectiveness 0.7',
    source: HEYWOOD,
    origin: 'recomputed',
  },
  () => {
    for (const [inletK, pressureRatio, efficiencyRatio, , hot, cooled] of points) {
      const outletK = compressorOutletTemperature({ inletK, pressureRatio, efficiencyRatio });
      const chargeK = chargeTemperature({ outletK, coolantK: inletK, effectivenessRatio: 0.7 });
      expectPrinted(chargeDensityRatio({ pressureRatio, ambientK: inletK, chargeK: outletK }), hot);
      expectPrinted(chargeDensityRatio({ pressureRatio, ambientK: inletK, chargeK }), cooled);
    }
  },
);
outsideCheck(
  {
    id: 'engine/turbocharger-problem',
    checks: 'efficiency 0.642 and outlet 126.1 °C (within 0.003 and 0.3 °C)',
    source: 'Çengel & Boles, Thermodynamics, 8th ed., problem 7-214 (printed answers from memory)',
    origin: 'worked example',
  },
  () => {
    const isentropicK = compressorOutletTemperature({
      inletK: 343.15,
      pressureRatio: 135 / 95,
      efficiencyRatio: 1,
    });
    expectPrinted(isentropicK - 273.15, '106.2');
    // The turbine's balance gives T2 = 126.3 °C: 0.95 · 0.02 · 1.075 · 50 / (0.018 · 1.008) above 70 °C.
    const balanceC = 70 + (0.95 * 0.02 * 1.075 * 50) / (0.018 * 1.008);
    const efficiencyRatio = (isentropicK - 343.15) / (balanceC - 70);
    expect(Math.abs(efficiencyRatio - 0.642)).toBeLessThan(0.003);
    const outletC =
      compressorOutletTemperature({ inletK: 343.15, pressureRatio: 135 / 95, efficiencyRatio }) - 273.15;
    expectPrinted(outletC, '126.3');
    expect(Math.abs(outletC - 126.1)).toBeLessThan(0.3);
  },
);
outsideCheck(
  {
    id: 'engine/corrected-flow',
    checks: 'flow and speed brought to the air of both map references',
    source: 'SAE J1826 (298 K, 100 kPa, from memory) and gas-turbine practice (288.15 K, 101.325 kPa)',
    origin: 'recomputed',
  },
  () => {
    const inlet = { inletK: 308, inletAbsKpa: 97 };
    expectPrinted(correctedFlow(0.15, inlet, 'gas-stand'), '0.157212');
    expectPrinted(correctedFlow(0.15, inlet, 'standard-day'), '0.161995');
    expectPrinted(correctedShaftSpeed(100_000, inlet, 'gas-stand'), '98363');
    expectPrinted(correctedShaftSpeed(100_000, inlet, 'standard-day'), '96724');
  },
);
outsideCheck(
  {
    id: 'engine/speed-density',
    checks: 'air flow of three engines in kg/s and lb/min',
    source: 'speed-density relation, Heywood section 2.10',
    origin: 'recomputed',
  },
  () => {
    const pounds = (kgPerS: number): number =>
      convertQuantity(kgPerS, { quantity: 'massFlow', from: 'kgPerS', to: 'lbPerMin' });
    const boosted = {
      displacementLitre: 2,
      engineSpeedRpm: 6000,
      volumetricEfficiencyRatio: 1,
      manifoldAbsKpa: absoluteKpa(200),
      chargeK: 313.15,
    };
    expectPrinted(airMassFlow(boosted), '0.222495');
    expectPrinted(pounds(airMassFlow(boosted)), '29.431');
    const unblown = {
      ...boosted,
      volumetricEfficiencyRatio: 0.9,
      manifoldAbsKpa: absoluteKpa(101.325),
      chargeK: 298.15,
    };
    expectPrinted(airMassFlow(unblown), '0.106553');
    expectPrinted(pounds(airMassFlow(unblown)), '14.0946');
    const small = {
      displacementLitre: 1.6,
      engineSpeedRpm: 3000,
      volumetricEfficiencyRatio: 0.85,
      manifoldAbsKpa: absoluteKpa(150),
      chargeK: 318.15,
    };
    expectPrinted(airMassFlow(small), '0.055845');
  },
);
outsideCheck(
  {
    id: 'engine/torque-at-power',
    checks: 'one horsepower is one pound-force foot at 5252.113 r/min',
    source: 'definition of the horsepower, 33 000 ft·lbf/min, and units of NIST SP 811: 33 000 / 2π',
    origin: 'exact',
  },
  () => {
    const powerKw = convertQuantity(1, { quantity: 'power', from: 'hp', to: 'kW' });
    const torqueNm = torqueAtPower(powerKw, 5252.113122032546);
    const inPounds = convertQuantity(torqueNm, { quantity: 'torque', from: 'nm', to: 'lbfFt' });
    expectPrinted(inPounds, '1.000000000');
    expectPrinted(torqueAtPower(100, 9549.296585513721), '100.000000000');
  },
);
outsideCheck(
  {
    id: 'engine/power-of-fuel',
    checks: 'fuel for each kilowatt-hour of 270 g at petrol’s 44.0 MJ/kg is an efficiency of 30.3 %',
    source:
      'efficiency = 3600 / (sfc · heating value), Heywood eq. 2.24b (number from memory), Q = 44.0 MJ/kg',
    origin: 'recomputed',
  },
  () => {
    const exactly = (value: number): { value: number; uncertaintyPct: number } => ({
      value,
      uncertaintyPct: 0,
    });
    const { powerKw } = powerBand({
      airKgPerS: exactly(0.12),
      airFuelRatio: exactly(12),
      fuelGramsPerKwh: exactly(270),
    });
    // 0.01 kg/s of fuel brings 440 kW of heat.
    expectPrinted(powerKw, '133.33');
    expectPrinted((100 * powerKw) / (0.01 * 44_000), '30.3');
  },
);
