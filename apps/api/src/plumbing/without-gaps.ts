type Filled<T> = { [Key in keyof T]: Exclude<T[Key], undefined> };

/** The same fields without those that hold `undefined`: what a change leaves out stays as it is. */
export function withoutGaps<T extends object>(fields: T): Partial<Filled<T>> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<
    Filled<T>
  >;
}
