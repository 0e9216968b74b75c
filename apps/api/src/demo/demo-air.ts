/** The air of a day of the scenario. */
export interface DemoAir {
  readonly temperatureC: number;
  readonly pressureAbsKpa: number;
  readonly humidityPct: number;
}

/** The air on a day so many days from today: today it is a cool morning, half a year off a warm one. */
export function demoAir(day: number): DemoAir {
  const season = Math.cos((2 * Math.PI * day) / 365);
  return {
    temperatureC: Math.round(15 - 9 * season),
    pressureAbsKpa: Math.round(10 * (100.6 + 0.8 * Math.sin(day))) / 10,
    humidityPct: 60,
  };
}
