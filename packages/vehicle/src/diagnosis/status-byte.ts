/** Bits of the status byte of a fault code (ISO 14229-1), by the standard's names. */
export const statusBit = {
  testFailed: 0x01,
  testFailedThisOperationCycle: 0x02,
  pendingDTC: 0x04,
  confirmedDTC: 0x08,
  testNotCompletedSinceLastClear: 0x10,
  testFailedSinceLastClear: 0x20,
  testNotCompletedThisOperationCycle: 0x40,
  warningIndicatorRequested: 0x80,
} as const;

/** After a clear: nothing has been tested yet (from memory). */
export const clearedStatus =
  statusBit.testNotCompletedSinceLastClear | statusBit.testNotCompletedThisOperationCycle;

/** The names of the bits that are set, lowest first. */
export const statusText = (status: number): string[] =>
  Object.entries(statusBit)
    .filter(([, bit]) => (status & bit) !== 0)
    .map(([name]) => name);

/** A monitor has matured as failed: failed now, in this cycle and since the clear, pending and confirmed. */
export const markFailed = (status: number, warningLamp: boolean): number =>
  (status |
    statusBit.testFailed |
    statusBit.testFailedThisOperationCycle |
    statusBit.pendingDTC |
    statusBit.confirmedDTC |
    statusBit.testFailedSinceLastClear |
    (warningLamp ? statusBit.warningIndicatorRequested : 0)) &
  ~(statusBit.testNotCompletedSinceLastClear | statusBit.testNotCompletedThisOperationCycle);

/** A monitor has run and passed: not failed now, lamp no longer asked for; pending and confirmed stay. */
export const markPassed = (status: number): number =>
  status &
  ~(
    statusBit.testFailed |
    statusBit.warningIndicatorRequested |
    statusBit.testNotCompletedSinceLastClear |
    statusBit.testNotCompletedThisOperationCycle
  );

/**
 * A new operation cycle begins: bit 1 clears, bit 6 sets; pending clears only when the cycle that ended has completed
 * its test without a failure.
 */
export function markNewCycle(status: number): number {
  const failed = (status & statusBit.testFailedThisOperationCycle) !== 0;
  const completed = (status & statusBit.testNotCompletedThisOperationCycle) === 0;
  const kept = completed && !failed ? status & ~statusBit.pendingDTC : status;
  return (kept & ~statusBit.testFailedThisOperationCycle) | statusBit.testNotCompletedThisOperationCycle;
}
