// The last line of a test run, in the plain form that any reader of logs knows: N passed, N failed.
import type { Reporter, TestModule } from 'vitest/node';

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const count = (state: string) => tests.filter((test) => test.result().state === state).length;
    const broken = modules.filter((module) => module.errors().length > 0).length;
    process.stdout.write(`${count('passed')} passed, ${count('failed') + broken} failed\n`);
  }
}
