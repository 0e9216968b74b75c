import { expect } from 'vitest';
import {
  convertPressure,
  convertQuantity,
  dieselPowerCorrection,
  dryAirPressure,
  expectedIdleVacuum,
  geopotentialAltitude,
  moistAirDensity,
  powerCorrection,
  standardAtmosphere,
  vapourPressure,
  type VapourFormula,
} from '@pullbook/tuning-math';
import { expectPrinted } from './expect-printed.js';
import { outsideCheck } from './outside-check.js';

const US76 = 'U.S. Standard Atmosphere 1976, tables by geopotential altitude';
const atmosphere = [
  [-500, '291.400', '107477.5', '1.28489'],
  [0, '288.150', '101325.0', '1.22500'],
  [500, '284.900', '95460.8', '1.16727'],
  [1000, '281.650', '89874.6', '1.11164'],
  [1500, '278.400', '84556.0', '1.05807'],
  [2000, '275.150', '79495.2', '1.00649'],
  [2500, '271.900', '74682.5', '0.95686'],
  [3000, '268.650', '70108.5', '0.90912'],
] as const;
for (const [altitudeM, k, pa, density] of atmosphere) {
  outsideCheck(
    {
      id: `air/atmosphere-${String(altitudeM).replace('-', 'minus-')}-m`,
      checks: `temperature, pressure, density at ${altitudeM} m`,
      source: US76,
      // Read in print for these heights; recomputed from the same equations for the others.
      origin: [500, 1000, 1500, 2000].includes(altitudeM) ? 'published' : 'recomputed',
    },
    () => {
      const air = standardAtmosphere(altitudeM);
      expectPrinted(air.temperatureK, k);
      expectPrinted(air.pressureAbsKpa * 1000, pa);
      expectPrinted(air.densityKgPerM3, density);
    },
  );
}

outsideCheck(
  {
    id: 'air/atmosphere-geometric',
    checks: 'geometric heights 1000, 2000, 3000 m',
    source: 'U.S. Standard Atmosphere 1976, eq. 18',
    origin: 'recomputed',
  },
  () => {
    for (const [heightM, k, pa] of [
      [1000, '281.6510', '89876.3'],
      [2000, '275.1541', '79501.4'],
      [3000, '268.6592', '70121.2'],
    ] as const) {
      const air = standardAtmosphere(geopotentialAltitude(heightM));
      expectPrinted(air.temperatureK, k);
      expectPrinted(air.pressureAbsKpa * 1000, pa);
    }
  },
);

outsideCheck(
  {
    id: 'air/atmosphere-feet',
    checks: 'barometer in inHg at 1000 to 8000 ft',
    source: US76,
    origin: 'recomputed',
  },
  () => {
    for (const [feet, inHg] of [
      [1000, '28.856'],
      [2000, '27.821'],
      [3000, '26.817'],
      [5000, '24.896'],
      [8000, '22.225'],
    ] as const) {
      const altitudeM = convertQuantity(feet, { quantity: 'length', from: 'ft', to: 'm' });
      expectPrinted(convertPressure(standardAtmosphere(altitudeM).pressureAbsKpa, 'kPa', 'inHg'), inHg);
    }
  },
);

const temperatures = [0, 10, 15, 20, 25, 30, 35, 40];
const vapour: readonly (readonly [VapourFormula, string, readonly string[]])[] = [
  [
    'sonntag',
    'Sonntag (1990)',
    ['6.1121', '12.2813', '17.0571', '23.3925', '31.6990', '42.4703', '56.2920', '73.8530'],
  ],
  [
    'wmo-magnus',
    'WMO-No. 8 (2008), Annex 4.B',
    ['6.1120', '12.2603', '17.0167', '23.3260', '31.6006', '42.3372', '56.1284', '73.6746'],
  ],
  [
    'buck-1996',
    'Buck (1996), coefficients from memory',
    ['6.1121', '12.2786', '17.0517', '23.3834', '31.6853', '42.4513', '56.2675', '73.8236'],
  ],
  [
    'cipm-2007',
    'Picard et al., Metrologia 45 (2008) 149',
    ['6.1121', '12.2811', '17.0567', '23.3916', '31.6976', '42.4680', '56.2886', '73.8482'],
  ],
];
for (const [formula, source, values] of vapour) {
  outsideCheck(
    {
      id: `air/vapour-${formula}`,
      checks: 'saturation vapour pressure, 0 to 40 °C, hPa',
      source,
      origin: formula === 'buck-1996' ? 'from memory' : 'recomputed',
    },
    () =>
      values.forEach((hpa, index) =>
        expectPrinted(vapourPressure(temperatures[index] ?? NaN, formula) * 10, hpa),
      ),
  );
}
outsideCheck(
  {
    id: 'air/vapour-iapws',
    checks: 'Sonntag and CIPM formulas within 0.01 %, WMO Magnus within 0.32 % of the reference equation',
    source: 'Wagner & Pruss (1995), IAPWS auxiliary equation (from memory)',
    origin: 'from memory',
  },
  () => {
    [6.1121, 12.2811, 17.0568, 23.3919, 31.6982, 42.4692, 56.2906, 73.8511].forEach((hpa, index) => {
      const t = temperatures[index] ?? NaN;
      expect(Math.abs((vapourPressure(t, 'sonntag') * 10) / hpa - 1)).toBeLessThan(1e-4);
      expect(Math.abs((vapourPressure(t, 'cipm-2007') * 10) / hpa - 1)).toBeLessThan(1e-4);
      expect(Math.abs((vapourPressure(t) * 10) / hpa - 1)).toBeLessThan(0.0032);
    });
  },
);

const densities = [
  [20, 101.325, 50, '1.199314'],
  [20, 100, 50, '1.183557'],
  [15, 101.325, 0, '1.225521'],
  [25, 99, 0, '1.157118'],
  [25, 99, 50, '1.150132'],
  [23, 101.325, 50, '1.186084'],
  [30, 101.325, 80, '1.150012'],
  [0, 101.325, 0, '1.293049'],
] as const;
outsideCheck(
  {
    id: 'air/moist-density',
    checks: 'density of moist air, eight states',
    source: 'CIPM-2007, Picard et al., Metrologia 45 (2008) 149',
    origin: 'recomputed',
  },
  () => {
    for (const [temperatureC, barometerAbsKpa, humidityPct, density] of densities) {
      expectPrinted(moistAirDensity({ temperatureC, barometerAbsKpa, humidityPct }).densityKgPerM3, density);
    }
  },
);
outsideCheck(
  {
    id: 'air/moist-density-oiml',
    checks: 'within 0.02 % of the simple formula of mass calibration',
    source: 'OIML R 111-1:2004, Annex E (from memory)',
    origin: 'from memory',
  },
  () => {
    for (const [t, kpa, rh] of [
      [20, 101.325, 50],
      [25, 99, 50],
    ] as const) {
      const simple = (0.34848 * kpa * 10 - 0.009 * rh * Math.exp(0.061 * t)) / (273.15 + t);
      const ours = moistAirDensity({ temperatureC: t, barometerAbsKpa: kpa, humidityPct: rh }).densityKgPerM3;
      expect(Math.abs(ours / simple - 1)).toBeLessThan(2e-4);
    }
  },
);

const corrections = [
  [99, 25, '1.00000', '1.00000', '1.00000', '1.03193'],
  [99, 15, '0.98003', '0.98010', '0.97973', '1.01446'],
  [99, 35, '1.01964', '1.01957', '1.02000', '1.04910'],
  [97, 25, '1.02433', '1.02425', '1.02479', '1.05320'],
  [95, 20, '1.03932', '1.03919', '1.04012', '1.06632'],
  [101.325, 20, '0.96321', '0.96334', '0.96270', '0.99975'],
  [98, 30, '1.02200', '1.02192', '1.02241', '1.05116'],
  [90, 30, '1.12884', '1.12841', '1.13242', '1.14460'],
  [85, 25, '1.19435', '1.19369', '1.20077', '1.20189'],
] as const;
const standards = [
  ['sae-j1349-1990', 'SAE J1349 JUN1990'],
  ['sae-j1349-2004', 'SAE J1349 AUG2004, constants from memory'],
  ['iso-1585-spark', 'ISO 1585 / UN R85 spark ignition, exponents from memory'],
  ['din-70020', 'DIN 70020 (withdrawn), from memory'],
] as const;
standards.forEach(([standard, source], column) => {
  outsideCheck(
    {
      id: `air/correction-${standard}`,
      checks: 'power-correction factor, nine states',
      source,
      origin: column === 0 ? 'recomputed' : 'from memory',
    },
    () => {
      for (const [inletAbsKpa, inletC, ...factors] of corrections) {
        expectPrinted(powerCorrection({ inletAbsKpa, inletC }, standard).factor, factors[column] ?? '');
      }
    },
  );
});

outsideCheck(
  {
    id: 'air/correction-chain',
    checks: 'humidity to dry pressure to factor at 98 kPa, 30 °C, 50 %',
    source: 'WMO-No. 8 (2008) Annex 4.B with SAE J1349 and ISO 1585',
    origin: 'recomputed',
  },
  () => {
    const inletAbsKpa = dryAirPressure({ barometerAbsKpa: 98, temperatureC: 30, humidityPct: 50 });
    expectPrinted(98 - inletAbsKpa, '2.116862');
    expectPrinted(inletAbsKpa, '95.883138');
    const air = { inletAbsKpa, inletC: 30 };
    expectPrinted(powerCorrection(air, 'sae-j1349-1990').factor, '1.048537');
    expectPrinted(powerCorrection(air, 'sae-j1349-2004').factor, '1.048372');
    expectPrinted(powerCorrection(air, 'iso-1585-spark').factor, '1.049560');
    expectPrinted(powerCorrection({ inletAbsKpa: 98, inletC: 30 }, 'din-70020').factor, '1.051165');
  },
);
outsideCheck(
  {
    id: 'air/correction-flag',
    checks: 'a factor outside 0.93 to 1.07 is given and flagged',
    source: 'Regulation (EU) 134/2014, Appendix 2.2, pt 3.3.1 (limits from memory)',
    origin: 'published',
  },
  () => {
    expect(powerCorrection({ inletAbsKpa: 90, inletC: 30 }, 'iso-1585-spark')).toMatchObject({
      valid: false,
    });
    expect(powerCorrection({ inletAbsKpa: 95, inletC: 20 }, 'iso-1585-spark')).toMatchObject({
      valid: true,
      flags: [],
    });
  },
);

const diesel = [
  [97, 30, 50, 0.66, '1.02138', '1.02624', '1.02286', '1.01726'],
  [95, 35, 45, 0.48, '1.03137', '1.03834', '1.03342', '1.02526'],
  [101.3, 15, 65, 1.2, '0.94532', '0.92244', '0.93385', '0.95317'],
] as const;
const dieselCases = [
  ['aspirated', 'un-r85', '30 CFR 7.87 and UN R85'],
  ['turbo', 'un-r85', '30 CFR 7.87 and UN R85'],
  ['turbo', 'iso-1585', 'ISO 1585, exponents from memory'],
  ['turbo-liquid-cooled', 'iso-1585', 'ISO 1585, exponents from memory'],
] as const;
dieselCases.forEach(([charging, standard, source], column) => {
  outsideCheck(
    {
      id: `air/diesel-${charging}-${standard}`,
      checks: 'compression-ignition factor, three states',
      source,
      origin: column < 2 ? 'recomputed' : 'from memory',
    },
    () => {
      for (const [inletAbsKpa, inletC, correctedFuelMg, engineFactor, ...factors] of diesel) {
        const ours = dieselPowerCorrection({ inletAbsKpa, inletC }, { charging, standard, correctedFuelMg });
        expect(ours.engineFactor).toBeCloseTo(engineFactor, 12);
        expectPrinted(ours.factor, factors[column] ?? '');
      }
    },
  );
});
outsideCheck(
  {
    id: 'air/diesel-engine-factor-ends',
    checks: 'engine factor 0.300 at 40, 1.200 at 65 and constant beyond',
    source: 'UN R85 (ends from memory)',
    origin: 'from memory',
  },
  () => {
    const factorAt = (correctedFuelMg: number, standard: 'un-r85' | 'iso-1585'): number =>
      dieselPowerCorrection({ inletAbsKpa: 97, inletC: 30 }, { charging: 'turbo', standard, correctedFuelMg })
        .engineFactor;
    expect(factorAt(40, 'un-r85')).toBeCloseTo(0.3, 12);
    expect(factorAt(20, 'un-r85')).toBe(0.3);
    expectPrinted(factorAt(37.2, 'iso-1585'), '0.1992');
    expect(factorAt(20, 'iso-1585')).toBe(0.2);
    expect(factorAt(65, 'un-r85')).toBeCloseTo(1.2, 12);
    expect(factorAt(80, 'un-r85')).toBe(1.2);
  },
);

outsideCheck(
  {
    id: 'air/idle-vacuum',
    checks: '17 and 22 inHg as absolute pressure at 29.92 inHg',
    source: 'common practice, no source; conversion by NIST SP 811',
    origin: 'recomputed',
  },
  () => {
    const barometerAbsKpa = convertPressure(29.92, 'inHg', 'kPa');
    expectPrinted(barometerAbsKpa - expectedIdleVacuum(0).lowKpa, '43.75');
    expectPrinted(barometerAbsKpa - expectedIdleVacuum(0).highKpa, '26.82');
  },
);
