import type { Reporter, TestModule } from 'vitest/node';

/**
 * Closes the run with one plain line: `N passed, N failed[, N skipped]`. A run without a test counts as failed; a test that passed
 * at its second try only is named above it.
 */
export default class PlainReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0;
    let failed = errors.length;
    let skipped = 0;
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (test.diagnostic()?.flaky) process.stdout.write(`\nPassed at the second try only: ${test.fullName}\n`);
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped += 1;
      }
    }
    if (passed + failed === 0) failed = 1;
    process.stdout.write(`\n${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}\n`);
  }
}
