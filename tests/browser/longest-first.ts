import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take a minute or more: begun last, one of them would run on alone. */
const long = ['without-network.test.ts', 'screens.test.ts'];

/** Begins the long files first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isLong = ({ moduleId }: TestSpecification) => long.some((name) => moduleId.endsWith(`/${name}`));
    const sorted = await super.sort(files);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
