/** What the exit code says; documented in the help and in docs/users/command-line.md. */
export const exitCodes = {
  fine: 0,
  /** `assess`, `check`, `route`, `gears`, `threadplan`: there is a finding of level stop. */
  stop: 1,
  badInput: 2,
  cannotWrite: 3,
  fault: 70,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
