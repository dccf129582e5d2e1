import { expect, it } from 'vitest';
import { balanceAgainstSolver } from '../support/balance-laws.ts';

it('power-balance: 5 random rigs of up to 16 loads × 4 setups come out equal to a mixed-integer solver’s answer', {
  timeout: 120_000,
}, async () => {
  await expect(balanceAgainstSolver(5, 1)).resolves.toBeUndefined();
});
