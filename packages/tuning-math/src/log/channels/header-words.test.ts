import { describe, expect, it } from 'vitest';
import { headerWords } from './header-words.js';
import { recogniseColumns } from './recognise-columns.js';

describe('headerWords', () => {
  it.each([
    ['Boost Pressure (psi)', 'boost pressure', 'psi', null],
    ['Boost [bar rel]', 'boost', 'bar', 'gauge'],
    ['boostKpa', 'boost', 'kPa', null],
    ['engine_speed_rpm', 'engine speed', 'rpm', null],
    ['Ladedruck / mbar abs', 'ladedruck', 'mbar', 'absolute'],
    ['IAT °C', 'iat', 'C', null],
    ['Drehzahl [1/min]', 'drehzahl', 'rpm', null],
    ['MAP (kPa)', 'map', 'kPa', null],
    ['Time', 'time', null, null],
  ])('takes %j apart', (header, name, unit, reference) => {
    const words = headerWords(header);
    expect([words.name, words.unit?.unit ?? null, words.reference]).toEqual([name, unit, reference]);
  });
});

const quantityOf = (header: string): string => {
  const heads = { headers: [header], unitTexts: [''], cellUnitTexts: [''] };
  return recogniseColumns(heads, null)[0]?.quantity ?? '';
};

describe('recogniseColumns', () => {
  it.each([
    ['Boost', 'boost-pressure'],
    ['MAP kPa', 'manifold-absolute-pressure'],
    ['Manifold Absolute Pressure', 'manifold-absolute-pressure'],
    ['Target boost (kPa)', 'target-boost-pressure'],
    ['Baro (kPa)', 'barometric-pressure'],
    ['RPM', 'engine-speed'],
    ['Engine Speed', 'engine-speed'],
    ['Drehzahl', 'engine-speed'],
    ['Vehicle speed (km/h)', 'vehicle-speed'],
    ['GPS Speed', 'undriven-wheel-speed'],
    ['TPS', 'throttle'],
    ['Throttle Position (%)', 'throttle'],
    ['Pedal %', 'pedal'],
    ['Intake Air Temp', 'intake-temperature'],
    ['Coolant temp (C)', 'coolant-temperature'],
    ['AFR', 'lambda'],
    ['Boost solenoid duty (%)', 'solenoid-duty'],
    ['Gear', 'gear'],
    ['Elapsed (s)', 'time'],
  ])('takes %j for %s', (header, quantity) => {
    expect(quantityOf(header)).toBe(quantity);
  });

  it.each([
    'Fuel pressure (bar)',
    'Oil Pressure',
    'Boost error (kPa)',
    'Boost (%)',
    'Turbo speed (rpm)',
    'Injector time (ms)',
    'Battery (V)',
    'Brake pressure',
  ])('does not take %j for boost, engine speed or time', (header) => {
    expect(['unknown', 'solenoid-duty']).toContain(quantityOf(header));
  });

  it('follows the recipe against the header, and names a column that the file lacks', () => {
    const heads = { headers: ['A', 'B', 'A'], unitTexts: ['', '', ''], cellUnitTexts: ['', '', ''] };
    const recipe = {
      columns: [{ header: 'a', occurrence: 1, quantity: 'boost-pressure', unit: 'psi' } as const],
    };
    expect(recogniseColumns(heads, recipe)[2]).toMatchObject({ quantity: 'boost-pressure', byRecipe: true });
    const wrong = { columns: [{ header: 'Z', quantity: 'throttle', unit: '%' } as const] };
    expect(() => recogniseColumns(heads, wrong)).toThrow('a column "Z" that this file does not have');
  });
});
