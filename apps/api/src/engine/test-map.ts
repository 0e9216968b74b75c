/** An invented compressor map: surge and choke flows, pressure ratio and efficiency rise with shaft speed. */
export const testMapCsv = `speed,flow,pressure ratio,efficiency
60000,0.04,1.4,66
60000,0.08,1.36,74
60000,0.12,1.2,60
100000,0.06,2.0,66
100000,0.14,1.92,76
100000,0.20,1.6,60
140000,0.10,2.9,64
140000,0.20,2.75,73
140000,0.28,2.2,58
160000,0.13,3.4,60
160000,0.23,3.2,70
160000,0.31,2.5,55
`;

export const testMap = {
  csv: testMapCsv,
  flowUnit: 'kgPerS',
  reference: 'gas-stand',
  source: 'invented for tests',
} as const;
