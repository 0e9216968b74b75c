/** The rules that practice goes by: those that a workshop starts with. */
export const practiceRules = { stepLimit: 10, riskLimit: 0.02, requiredPulls: 3 } as const;
