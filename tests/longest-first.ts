// The order of test files: those that take longest begin, so that both cores end together. Without it the order is by size of file, and
// some of the smallest start a browser, install the package or make whole samples.
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders whose files take long, whatever their size. */
const long = /[\\/]tests[\\/](?:page|cli|hostile|package|pictures)[\\/]/;

export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification): boolean => long.test(moduleId);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
